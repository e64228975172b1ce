import { largeJob } from '../faults/large-job.ts';
import { expect, test } from './helpers.ts';
import { PAPERS, expectHeads, printed } from './paper.ts';
import { seedJob } from './seed-job.ts';

const SLOPES = 40;

test('Setting out builds slopes as they are scrolled to, and prints all of them on two pages each', async ({
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

  for (const paper of PAPERS) {
    const pages = await printed(page, paper);
    expectHeads(pages, 'Long row', 'Setting out');
    // two pages a slope at most, and the table of the whole roof on two
    expect(pages.length).toBeLessThanOrEqual(2 * SLOPES + 2);
    for (let slope = 1; slope <= SLOPES; slope++)
      expect(
        pages.filter(({ lines }) => lines[0].includes(`Slope ${slope} `)).length
      ).toBeLessThanOrEqual(2);
  }
});
