import type { Page } from '@playwright/test';
import { expect, openExample, openFolds, test } from './helpers.ts';

/** A picture of one pixel. */
const PIXEL = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64'
);

async function addPhoto(page: Page, caption: string): Promise<void> {
  const fold = await openFolds(page, 'Photos');
  if (caption) await fold.getByLabel('What it shows').fill(caption);
  await fold
    .getByLabel('Add a photo')
    .setInputFiles({ name: 'photo.png', mimeType: 'image/png', buffer: PIXEL });
}

test('photos taken while sorting and laying show on the job in order of time', async ({ page }) => {
  const job = await openExample(page);
  await page.goto(`${job}/sort`);
  await addPhoto(page, 'rogue with a twist');
  await expect(page.getByRole('img', { name: 'Photo: rogue with a twist' })).toBeVisible();
  // What is not said is filled in: the pallet and the slate.
  await page.locator('.piles button').first().click();
  await expect(page.locator('.verdict')).toContainText('saved');
  await addPhoto(page, '');
  await expect(page.getByRole('img', { name: /Photo: Pallet A1: 1 Thick/ })).toBeVisible();

  await page.goto(`${job}/lay`);
  await addPhoto(page, '');
  await expect(page.getByRole('img', { name: /Photo: Course 1, / })).toBeVisible();

  await page.goto(job);
  const fold = await openFolds(page, 'Photos');
  const shown = fold.getByRole('img');
  await expect(shown).toHaveCount(3);
  const names = await shown.evaluateAll((all) => all.map((img) => img.getAttribute('alt')));
  expect(names.map((name) => name?.slice(0, 14))).toEqual([
    'Photo: rogue w',
    'Photo: Pallet ',
    'Photo: Course '
  ]);
  await page.reload();
  await expect((await openFolds(page, 'Photos')).getByRole('img')).toHaveCount(3);
});
