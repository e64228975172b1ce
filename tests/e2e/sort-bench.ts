import { type Page, expect } from '@playwright/test';
import { seedJob, smallJob } from './seed-job.ts';

/**
 * Opens Sort in a small job with three pallets, on a device that keeps these preferences and was
 * told the unit of its gauge. Gives the job's id.
 */
export async function openSortBench(
  page: Page,
  preferences: object = {},
  thresholdsMm: readonly number[] = [6, 5]
): Promise<string> {
  const jobId = await seedJob(page, smallJob(thresholdsMm));
  await page.evaluate((kept) => {
    localStorage.setItem('evencourse.preferences', JSON.stringify(kept));
    sessionStorage.setItem('evencourse.unit', 'yes');
  }, preferences);
  await page.goto(`/job/${jobId}/sort`);
  await expect(page.getByRole('button', { name: 'Set aside' })).toBeVisible();
  return jobId;
}
