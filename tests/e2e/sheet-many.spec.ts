import { largeJob } from '../faults/large-job.ts';
import { expect, test } from './helpers.ts';
import { PAPERS, asPrinted, expectHeads, printed, smallestLetters } from './paper.ts';
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

test('a slope of 130 courses takes more than two pages, each of them whole and named', async ({
  page
}) => {
  const acts = largeJob({ pallets: 1, slopes: 1, sorted: 0 }).map(({ type, body }) =>
    type === 'slopeSet' ? { type, body: { ...body, rafterLengthMm: 26_000 } } : { type, body }
  );
  await page.goto(`/job/${await seedJob(page, acts)}/sheet`);
  await expect(page.locator('article').getByRole('table').first()).toBeVisible();
  for (const paper of PAPERS) {
    const pages = await printed(page, paper);
    // the whole roof, drawing and marking stick, then 131 lines in columns of at most 42, two to a page
    expect(pages).toHaveLength(4);
    expectHeads(pages, 'Long row', 'Setting out');
    for (const { lines } of pages.slice(1)) expect(lines[0]).toContain('Slope 1');
  }
  const back = await asPrinted(page);
  const courses = await page
    .locator('.print-page tbody th[scope="row"]')
    .evaluateAll((all) => all.map((head) => (head as HTMLElement).innerText.trim()));
  const listed = courses.slice(courses.indexOf('Under'));
  expect(listed).toEqual(['Under', ...Array.from({ length: 130 }, (_, n) => String(n + 1))]);
  const smallest = await smallestLetters(page);
  expect(smallest.pt, smallest.text).toBeGreaterThanOrEqual(11 - 0.1);
  await back();
});
