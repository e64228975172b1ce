import type { Locator, Page } from '@playwright/test';
import { twoSlopesSorted, usePlan } from './courses-job.ts';
import { expect, openExample, test } from './helpers.ts';
import { eventsOf, seedJob } from './seed-job.ts';

async function count(page: Page, pile: string, slates: string): Promise<void> {
  await page.getByRole('button', { name: 'Pile ran out' }).click();
  await page
    .getByRole('group', { name: /Of which pile/ })
    .getByText(pile)
    .click();
  await page.getByLabel('Sorted slates standing there').fill(slates);
  await page.getByRole('button', { name: 'Record', exact: true }).click();
}

test('a pile counted as 0 offers sorting, a neighbour, an order and another plan, with prices', async ({
  page
}) => {
  const job = await openExample(page);
  await page.goto(`${job}/lay`);
  await expect(page.getByRole('button', { name: 'Course laid' })).toBeVisible();
  await count(page, '1 Thick', '100');
  const ways = page.getByRole('list', { name: 'Ways out' }).getByRole('listitem');
  await expect(ways.nth(0)).toContainText(/Sort about [\d,]+ slates, and they stand there\./);
  await expectPrices(ways);
  await ways.nth(0).getByRole('link', { name: 'Sort more' }).click();
  await expect(page).toHaveURL(/\/sort$/);

  await page.goto(`${job}/lay`);
  await count(page, '1 Thick', '0');
  await expect(
    page.getByText(/^1 Thick: none stands there\. About \d+ more on the pallets, if sorted\.$/)
  ).toBeVisible();
  // The plan by the rule lays most of the pile: nearly all that is still on the pallets must be sorted.
  await expect(ways.nth(0)).toContainText(/Sort about 2,\d{3} slates, and they stand there\./);
  await expectPrices(ways);
});

/** What borrowing, ordering and another plan cost, after the way of sorting more. */
async function expectPrices(ways: Locator): Promise<void> {
  await expect(ways.nth(1)).toContainText(
    /Borrow [\d,]+ slates of 2 Medium [^]* joints will show\.|2 Medium has none to spare/
  );
  await expect(ways.nth(2)).toContainText(/Order [\d,]+ slates of about [78]\.\d mm\./);
  await expect(ways.nth(3)).toContainText(/joints will show|No other plan gets by/);
}

test('borrowing from the pile below is one tap, and the plan that is laid follows it', async ({
  page
}) => {
  const jobId = await seedJob(page, twoSlopesSorted(260));
  await usePlan(page, `/job/${jobId}`);
  await page.goto(`/job/${jobId}/lay`);
  await expect(page.getByRole('button', { name: 'Course laid' })).toBeVisible();
  await count(page, '1 Thick', '100');
  await expect(page.getByText('1 Thick: 100 slates stand there.')).toBeVisible();
  await expect(page.getByText(/^The plan takes \d+ slates more than stand there\.$/)).toBeVisible();
  const borrow = page.getByRole('button', { name: /^Borrow from/ }).first();
  const said = await page
    .getByText(/^Borrow \d+ slates of/)
    .first()
    .innerText();
  expect(said).toMatch(/the lowest on (South|North), course \d+\. .*joints will show\./);
  await borrow.click();
  await expect(page.getByRole('button', { name: 'Course laid' })).toBeVisible();
  const plans = (await eventsOf(page, jobId)).filter(({ type }) => type === 'planAdopted');
  expect(plans).toHaveLength(2);
  const slatesOf = (at: number): number =>
    (plans[at].body.courses as { piles: { pile: number; pieces: number }[] }[])
      .flatMap(({ piles }) => piles)
      .filter(({ pile }) => pile === 1)
      .reduce((sum, { pieces }) => sum + pieces, 0);
  expect(slatesOf(1)).toBeLessThan(slatesOf(0));
  expect(plans[1].body.way).toBe('own');

  // What was borrowed stays so: it is the slater's own plan, and no other is pressed on him.
  await page.goto(`/job/${jobId}/courses`);
  await expect(page.getByRole('radio', { name: /^My own/ })).toBeChecked();
  await expect(page.getByText(/^In use/)).toBeVisible();
  await expect(page.getByRole('button', { name: /^Use / })).toHaveCount(0);
  await page.goto(`/job/${jobId}/lay`);
  await expect(page.getByRole('button', { name: 'Course laid' })).toBeVisible();
  await expect(page.getByText(/slates? short to lay/)).toHaveCount(0);

  await count(page, '1 Thick', '5000');
  await expect(page.getByText('Only 780 slates came in all.')).toBeVisible();
  expect((await eventsOf(page, jobId)).filter(({ type }) => type === 'pileCounted')).toHaveLength(
    1
  );
});

test('of a neighbour that is empty nothing can be borrowed, and that is said', async ({ page }) => {
  const jobId = await seedJob(page, twoSlopesSorted(260));
  await usePlan(page, `/job/${jobId}`);
  await page.goto(`/job/${jobId}/lay`);
  await expect(page.getByRole('button', { name: 'Course laid' })).toBeVisible();
  await count(page, '2 Medium', '0');
  await page.getByRole('button', { name: 'Back' }).click();
  const before = (await eventsOf(page, jobId)).length;
  await count(page, '1 Thick', '100');
  const ways = page.getByRole('list', { name: 'Ways out' }).getByRole('listitem');
  await expect(ways.filter({ hasText: '2 Medium has none to spare' })).toHaveCount(1);
  await expect(page.getByRole('button', { name: 'Borrow from 2 Medium' })).toHaveCount(0);
  // only the count of the thick pile was stored
  expect((await eventsOf(page, jobId)).slice(before).map(({ type }) => type)).toEqual([
    'pileCounted'
  ]);
});
