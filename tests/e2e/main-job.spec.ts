import type { Locator, Page } from '@playwright/test';
import { expect, openExample, openExampleByTap, openFolds, startJob, test } from './helpers.ts';

const READINGS = 'seeds/readings.csv';

/** A whole number in a cell, however it is grouped. */
async function count(cell: Locator): Promise<number> {
  return Number((await cell.innerText()).replace(/[^0-9]/g, '') || '0');
}

/** What the plan's courses take together, added up from the rows of its tables. */
async function planned(page: Page) {
  await openFolds(page, 'Every course');
  const tables = page.getByRole('table', { name: /from the eaves up/ });
  await expect(tables.first()).toBeVisible();
  const rows = await tables.locator('tbody tr').all();
  const total = { courses: rows.length, slates: 0, slateAndAHalves: 0 };
  for (const row of rows) {
    for (const part of await row.locator('td').nth(1).locator('div').all())
      total.slates += await count(part);
    for (const part of await row.locator('td').nth(2).locator('div').all())
      total.slateAndAHalves += await count(part);
  }
  return total;
}

test.describe('with the worker of the app', () => {
  test.use({ serviceWorkers: 'allow' });

  test('from a file of readings to a plan that meets the roof, kept over a reload and offline', async ({
    page,
    context
  }) => {
    const job = await startJob(page, 'Store behind the mill');

    await page.goto(`${job}/files`);
    await page.getByLabel('Choose a CSV file').setInputFiles(READINGS);
    await expect(page.getByText('Taken in: 2,000 slates on 6 pallets.')).toBeVisible();

    await page.goto(`${job}/grades`);
    await openFolds(page, 'How to split');
    await page.getByRole('radio', { name: /Split at the gaps/ }).check();
    await page.getByRole('button', { name: 'Use these grades' }).click();
    await expect(page.getByText('These grades are in use.')).toBeVisible();

    await page.getByRole('link', { name: 'Enter the roof', exact: true }).first().click();
    await page.getByLabel('Length', { exact: true }).fill('500');
    await page.getByLabel('Width', { exact: true }).fill('250');
    await page.getByLabel('Headlap', { exact: true }).fill('90');
    await page.getByRole('button', { name: 'Save the slate' }).click();
    await page.getByRole('button', { name: 'Add a slope' }).click();
    await page.getByLabel(/Rafter length/).fill('5200');
    await page.getByLabel(/Width along the eave/).fill('9000');
    await page.getByLabel('Pitch', { exact: true }).fill('35');
    await page.getByRole('button', { name: /^Save Slope/ }).click();
    await expect(page.getByText(/Not saved yet/)).toHaveCount(0);
    await openFolds(page, 'What to order?');
    const whole = page.getByRole('row', { name: /^Whole roof/ }).getByRole('cell');
    const demand = { courses: 0, slates: 0, slateAndAHalves: 0 };
    demand.courses = await count(whole.nth(0));
    demand.slates = await count(whole.nth(2));
    demand.slateAndAHalves = await count(whole.nth(5));
    // 5.2 m by 9.0 m at about 19.3 slates of 500 by 250 mm a square metre is about 900 of them.
    expect(demand.slates).toBeGreaterThan(850);
    expect(demand.slates).toBeLessThan(950);

    await page.goto(`${job}/courses`);
    await page.getByRole('button', { name: 'Use this plan' }).click();
    await expect(page.getByText('In use, up to date.')).toBeVisible();
    expect(await planned(page)).toEqual(demand);

    await page.reload();
    await expect(page.getByText('In use, up to date.')).toBeVisible();
    expect(await planned(page)).toEqual(demand);

    await page.evaluate(async () => void (await navigator.serviceWorker.ready));
    await context.setOffline(true);
    await page.reload();
    await expect(page.getByText('In use, up to date.')).toBeVisible();
    expect(await planned(page)).toEqual(demand);
    await context.setOffline(false);
  });
});

test('the worked example opens with one tap and holds readings, taps, a roof and a plan', async ({
  page
}) => {
  await openExampleByTap(page);
  const track = page.getByRole('list', { name: 'How far the job is' });
  await expect(track).toContainText(/Pallets\s*6 with 4,200 slates/);
  await expect(track).toContainText(/Plan\s*72 courses/);
  await expect(track).toContainText(/Laid\s*0 of 72/);
  await openFolds(page, 'Every count');
  const facts = page.locator('dl');
  await expect(facts).toContainText('4,200 slates, 6 pallets');
  await expect(facts).toContainText(
    /Sample list\s*[1-9]\d* slates measured and put back on their pallets/
  );
  await expect(facts).toContainText(/of these measured\s*[1-9]\d* slates/);
  await expect(facts).toContainText(/of these sorted by eye\s*[1-9]\d* slates/);
  await expect(page.getByRole('link', { name: 'Sort the slates' })).toBeVisible();
});

test('a job counts no slate twice: measured, sorted by eye and set aside make up what is sorted', async ({
  page
}) => {
  await openExample(page);
  await openFolds(page, 'Every count');
  const fact = (name: string | RegExp) =>
    page.locator('dl > div').filter({ hasText: name }).locator('dd');
  const [sorted, ofStock] = (await fact(/^Sorted/).innerText())
    .split(' of ')
    .map((text) => Number(text.replace(/[^0-9]/g, '')));
  const parts = [
    await count(fact('of these measured')),
    await count(fact('of these sorted by eye')),
    await count(fact('set aside'))
  ];
  expect(Math.min(...parts)).toBeGreaterThan(0);
  expect(parts[0] + parts[1] + parts[2]).toBe(sorted);
  await expect(fact('Stock')).toHaveText(`${ofStock.toLocaleString('en')} slates, 6 pallets`);
});

test('an empty job says in words what is not there yet', async ({ page }) => {
  await startJob(page, 'Nothing yet');
  const track = page.getByRole('list', { name: 'How far the job is' });
  await expect(track).toContainText(/Plan\s*not yet/);
  await expect(track).toContainText(/Laid\s*not yet/);
  await expect(track).toContainText(/Sorted\s*not yet/);
  expect(await track.innerText()).not.toMatch(/\b0 /);
});
