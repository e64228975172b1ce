import type { Page } from '@playwright/test';
import { delivery, seedDelivery } from './delivery-job.ts';
import { expect, openExample, test } from './helpers.ts';

/** The worked example, with 4 of 100 slates outside, and a delivery with 30 of 80. */
async function openTwo(page: Page): Promise<void> {
  const example = await openExample(page);
  await seedDelivery(page, delivery(80, { thick: 30 }));
  await page.goto(`${example}/delivery/compare`);
}

test('compare says in one sentence which delivery is better, and why', async ({ page }) => {
  await openTwo(page);
  await expect(
    page.getByText(
      /^Worked example: the long barn is better than Seeded: 4 of 100 slates outside against 30 of 80 slates outside, more than chance explains\./
    )
  ).toBeVisible();
});

test('the charts stand side by side on one scale @desktop', async ({ page }) => {
  await openTwo(page);
  await page.setViewportSize({ width: 1280, height: 800 });
  const charts = page.locator('figure').filter({ hasText: 'Pallet averages of' });
  await expect(charts).toHaveCount(2);
  const [one, other] = [await charts.nth(0).boundingBox(), await charts.nth(1).boundingBox()];
  expect(one?.y).toBe(other?.y);
  expect((one?.x ?? 0) + (one?.width ?? 0)).toBeLessThanOrEqual(other?.x ?? 0);
  const scaleOf = (at: number) => charts.nth(at).locator('svg text').allTextContents();
  const ticks = async (at: number) =>
    (await scaleOf(at)).filter((text) => /^\d+\.\d$/.test(text.trim()));
  expect((await ticks(0)).length).toBeGreaterThan(1);
  expect(await ticks(0)).toEqual(await ticks(1));
});
