import type { Page } from '@playwright/test';
import { twoSlopesSorted, usePlan } from './courses-job.ts';
import { expect, ownLetters, test } from './helpers.ts';
import { seedJob } from './seed-job.ts';

/** Where a button stands on the page, however far that is scrolled. */
async function placeOf(page: Page, name: string | RegExp) {
  const button = page.getByRole('button', { name, exact: true });
  await expect(button).toBeVisible();
  return button.evaluate((element) => {
    const { x, y, width, height } = element.getBoundingClientRect();
    return { x: x + scrollX, y: y + scrollY, width, height };
  });
}

async function onLay(page: Page): Promise<void> {
  const jobId = await seedJob(page, twoSlopesSorted(260));
  await usePlan(page, `/job/${jobId}`);
  await page.goto(`/job/${jobId}/lay`);
  await expect(page.getByRole('button', { name: 'Course laid' })).toBeVisible();
  await ownLetters(page);
}

for (const size of [
  { width: 390, height: 844 },
  { width: 844, height: 390 },
  { width: 820, height: 1180 }
])
  test.describe(`at ${size.width}x${size.height}`, () => {
    test.use({ viewport: size });

    test('a question, a warning and a note of the course move no button', async ({ page }) => {
      await onLay(page);
      // A question: the course is of another slope than the last.
      await page.getByRole('button', { name: /^South/ }).click();
      await page.getByRole('button', { name: 'Course laid' }).click();
      await expect(page.getByText('1 of 24 courses laid')).toBeVisible();
      await page.getByRole('button', { name: /^North/ }).click();
      await expect(page.getByRole('heading', { name: 'North: course 1 of 12' })).toBeVisible();
      const asks = await placeOf(page, 'Course laid');
      const undo = await placeOf(page, /^Undo/);
      await page.getByRole('button', { name: 'Course laid' }).click();
      await expect(page.getByRole('alert')).toBeVisible();
      expect(await placeOf(page, 'Yes, on North')).toEqual(asks);
      expect(await placeOf(page, /^Undo/)).toEqual(undo);

      // A warning: a pile runs short.
      await page.getByRole('button', { name: /^South/ }).click();
      await expect(page.getByRole('heading', { name: 'South: course 2 of 12' })).toBeVisible();
      const before = await placeOf(page, 'Course laid');
      const mark = page.getByRole('link', { name: /^Read below/ });
      await expect(mark).toBeHidden();
      await page.getByRole('button', { name: 'Several broken' }).click();
      await page.getByRole('button', { name: '2 Medium' }).last().click();
      await page.getByLabel('How many broke?').fill('200');
      await page.getByRole('button', { name: 'Record' }).click();
      await expect(page.getByText(/^2 Medium will run short/)).toBeVisible();
      expect(await placeOf(page, 'Course laid')).toEqual(before);
      await expect(mark).toBeVisible();

      // A note: a part of the course lies, from the end without its slate-and-a-half.
      await page.getByRole('button', { name: 'Part laid' }).click();
      await page.getByLabel('Laid so far').fill('4');
      await page.getByLabel('Counted from').selectOption('right');
      await page.getByRole('button', { name: 'Record' }).click();
      await expect(page.getByText(/^4 of \d+ laid, from the right/)).toBeVisible();
      expect(await placeOf(page, 'Course laid')).toEqual(before);
    });
  });
