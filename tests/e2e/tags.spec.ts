import AxeBuilder from '@axe-core/playwright';
import { expect, test } from './helpers.ts';
import { eventsOf, seedJob, smallJob } from './seed-job.ts';

/** CSS pixels in a millimetre: 96 an inch by definition (CSS Values and Units, absolute lengths). */
const PX_PER_MM = 96 / 25.4;

test('the card is drawn to scale: slots as wide as the limits, the check line 100 mm', async ({
  page
}) => {
  const jobId = await seedJob(page, smallJob([6.4, 5.25]));
  await page.goto(`/job/${jobId}/tags`);
  await expect(page.getByText('6.40 mm and thicker')).toBeVisible();
  await page.getByRole('button', { name: 'Go/no-go card' }).click();
  const card = page.getByRole('img', { name: 'Go/no-go card' });
  const linePx = await card.locator('.check').evaluate((line) => {
    const path = line as SVGPathElement;
    return path.getBBox().width * (path.getScreenCTM()?.a ?? 0);
  });
  expect(linePx / PX_PER_MM).toBeCloseTo(100, 1);
  const outline = (await card.locator('path').first().getAttribute('d')) ?? '';
  const edges = [...outline.matchAll(/H([\d.]+) V26 H([\d.]+) V0/g)];
  expect(edges.map(([, left, right]) => Number((Number(right) - Number(left)).toFixed(6)))).toEqual(
    [6.4, 5.25]
  );
  await expect(page.getByText('Does not enter 6.40: 1 Thick')).toBeVisible();
});

test('tags, tally sheet and card are accessible', async ({ page }) => {
  const jobId = await seedJob(page, smallJob([6, 5]));
  await page.goto(`/job/${jobId}/tags`);
  for (const sheet of ['Pile tags', 'Pallet tags', 'Tally sheet', 'Go/no-go card']) {
    await page.getByRole('button', { name: sheet }).click();
    const { violations } = await new AxeBuilder({ page })
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
      .analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`)).toEqual([]);
  }
});

test('a tally sheet is typed back in one act, refused whole when a box is wrong', async ({
  page
}) => {
  const jobId = await seedJob(page, smallJob([6, 5]));
  const before = (await eventsOf(page, jobId)).length;
  await page.goto(`/job/${jobId}/tags`);
  await page.getByRole('button', { name: 'Save all' }).click();
  await expect(page.getByRole('alert')).toContainText('Type at least one number');
  await page.getByLabel('Pallet A, 1 Thick').fill('120');
  await page.getByLabel('Pallet B, 3 Thin').fill('8x');
  await page.getByRole('button', { name: 'Save all' }).click();
  await expect(page.getByRole('alert')).toContainText('Pallet B, 3 Thin');
  expect((await eventsOf(page, jobId)).length).toBe(before);
  await page.getByLabel('Pallet B, 3 Thin').fill('80');
  await page.getByRole('button', { name: 'Save all' }).click();
  await expect(page.getByText('200 slates saved.')).toBeVisible();
  const taps = (await eventsOf(page, jobId)).slice(before);
  expect(taps.filter(({ body }) => body.palletId === 'pallet-A' && body.pile === 1)).toHaveLength(
    120
  );
  expect(taps.filter(({ body }) => body.palletId === 'pallet-B' && body.pile === 3)).toHaveLength(
    80
  );
  await page.getByRole('button', { name: 'Undo all of it' }).click();
  await expect(page.getByText('200 slates saved.')).toBeHidden();
  await page.goto(`/job/${jobId}/sort`);
  await expect(page.getByRole('button', { name: 'A 400 left' })).toBeVisible();
});
