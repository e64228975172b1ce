import type { Page } from '@playwright/test';
import { twoSlopes, usePlan } from './courses-job.ts';
import { expect, openFolds, test } from './helpers.ts';
import { eventsOf, seedJob } from './seed-job.ts';

/** Slates that all piles have left over after their reserve, as the fold of the piles says. */
async function leftOver(page: Page): Promise<number> {
  const table = page.getByRole('region', { name: 'Left over after the reserve' });
  const heads = await table.locator('thead th').allInnerTexts();
  const column = heads.indexOf('Left over');
  const rows = await table.locator('tbody tr').all();
  let sum = 0;
  for (const row of rows)
    sum += Number((await row.locator('th, td').nth(column).innerText()).replace(/[^0-9-]/g, ''));
  return sum;
}

test('undereave slates ordered ready cut come off no pile, on no list, until they are unticked', async ({
  page
}) => {
  const jobId = await seedJob(page, twoSlopes(260));
  await usePlan(page, `/job/${jobId}`);
  const list = await openFolds(page, 'Draw list');
  const loading = await openFolds(page, 'Loading out');
  await openFolds(page, 'Will each pile last?');
  await openFolds(page, 'Slate-and-a-halves and undereave');

  const under = list.getByRole('rowheader', { name: 'Under', exact: true });
  const lies = list.getByText(/undereave slates lie under course 1\.$/);
  const goesUp = loading.getByText(/undereave, under course 1/);
  const says = page.getByText(/^The undereave row comes on top: \d+ undereave slates/);
  const row = Number(/top: (\d+)/.exec(await says.innerText())?.[1]);
  expect(row).toBeGreaterThan(20);
  await expect(says).toContainText('All of them come from stock');
  await expect(under.first()).toBeVisible();
  await expect(lies).toHaveCount(2);
  await expect(goesUp.first()).toBeVisible();
  const before = await leftOver(page);

  const tick = page.getByRole('checkbox', { name: 'The undereave slates are ordered ready cut' });
  await expect(tick).not.toBeChecked();
  await tick.check();
  await expect(says).toContainText('They come ready cut, so no pile gives any.');
  await expect(says).toContainText(`${row} undereave slates`);
  await expect(under).toHaveCount(0);
  await expect(lies).toHaveCount(0);
  await expect(goesUp).toHaveCount(0);
  await expect.poll(() => leftOver(page)).toBe(before + row);
  const set = (await eventsOf(page, jobId)).filter(({ type }) => type === 'jobSettingsSet');
  expect(set.map(({ body }) => body.undereaveOrdered)).toEqual([true]);

  await page.goto(`/job/${jobId}/order`);
  await expect(page.getByRole('rowheader', { name: 'Undereave slates, ready cut' })).toBeVisible();
  await page.goto(`/job/${jobId}/lay`);
  await expect(page.getByRole('button', { name: 'Course laid' })).toBeVisible();
  await expect(page.locator('.next')).not.toContainText(/undereave/i);

  await page.goto(`/job/${jobId}/courses`);
  await expect(tick).toBeChecked();
  await tick.uncheck();
  await expect(lies).toHaveCount(2);
  await expect(under.first()).toBeVisible();
  await expect.poll(() => leftOver(page)).toBe(before);
  await page.goto(`/job/${jobId}/lay`);
  await expect(page.locator('.next')).toContainText(/undereave/i);
});
