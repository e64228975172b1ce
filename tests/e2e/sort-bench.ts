import AxeBuilder from '@axe-core/playwright';
import { type Page, expect } from '@playwright/test';
import { type SeedAct, seedJob, smallJob } from './seed-job.ts';

/**
 * Opens Sort in a small job with three pallets, on a device that keeps these preferences and was
 * told the unit of its gauge. Gives the job's id.
 */
export async function openSortBench(
  page: Page,
  preferences: object = {},
  thresholdsMm: readonly number[] = [6, 5],
  more: readonly SeedAct[] = []
): Promise<string> {
  const jobId = await seedJob(page, [...smallJob(thresholdsMm), ...more]);
  await page.evaluate((kept) => {
    localStorage.setItem('evencourse.preferences', JSON.stringify(kept));
    sessionStorage.setItem('evencourse.unit', 'yes');
  }, preferences);
  await page.goto(`/job/${jobId}/sort`);
  await expect(page.getByRole('button', { name: 'Set aside' })).toBeVisible();
  return jobId;
}

/** What Sort says of the slate last taken. */
export const verdict = (page: Page) => page.locator('.verdict');

/** The bench of {@link openSortBench}, by hand or by gauge, where to measure seen already. */
export async function openBench(
  page: Page,
  thresholdsMm: readonly number[],
  way: 'hand' | 'gauge',
  more: readonly SeedAct[] = []
) {
  const jobId = await openSortBench(page, { way }, thresholdsMm, more);
  const seen = page.getByRole('button', { name: 'Seen' });
  if (way === 'gauge') await seen.click();
  return jobId;
}

/** Types a reading as a gauge does. */
export async function gauge(page: Page, text: string) {
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

/** By axe, on a screen so tall that the bar at its foot covers nothing. */
export async function expectAccessible(page: Page) {
  const size = page.viewportSize() ?? { width: 390, height: 844 };
  await page.setViewportSize({ width: size.width, height: 3000 });
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .analyze();
  await page.setViewportSize(size);
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`)).toEqual([]);
}
