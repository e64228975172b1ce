import { largeJob } from '../faults/large-job.ts';
import { expect, test } from './helpers.ts';
import { seedJob } from './seed-job.ts';

const SLOPES = 40;

test('Setting out builds slopes as they are scrolled to, and all of them for print', async ({
  page
}) => {
  const jobId = await seedJob(page, largeJob({ pallets: 1, slopes: SLOPES, sorted: 0 }));
  await page.goto(`/job/${jobId}/sheet`);
  const built = page.locator('article').filter({ has: page.locator('table') });
  await expect(page.locator('article')).toHaveCount(SLOPES);
  await expect(page.locator('article').first().getByRole('table').first()).toBeVisible();
  expect(await built.count()).toBeLessThan(10);
  await expect(page.locator('#s40').getByRole('heading', { level: 2 })).toHaveText('Slope 40');

  await page.getByRole('link', { name: 'Slope 30', exact: true }).click();
  await expect(page.locator('#s30').getByRole('table').first()).toBeVisible();
  expect(await built.count()).toBeLessThan(20);

  await page.emulateMedia({ media: 'print' });
  await expect(built).toHaveCount(SLOPES);
});
