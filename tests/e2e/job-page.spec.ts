import type { Page } from '@playwright/test';
import { usePlan, isTooWide, twoSlopesSorted } from './courses-job.ts';
import { expect, openExample, openFolds, test } from './helpers.ts';
import { type SeedAct, seedJob, smallJob } from './seed-job.ts';

/** The whole numbers of a text, in their order. */
function numbersOf(text: string): number[] {
  return [...text.replaceAll(',', '').matchAll(/\d+/g)].map(([found]) => Number(found));
}

async function fact(page: Page, name: string): Promise<number> {
  await openFolds(page, 'Every count');
  const row = page.locator('dl > div').filter({ hasText: name });
  return numbersOf(await row.locator('dd').innerText())[0];
}

/** What the Lay screen says is left and lost of each pile. */
async function bookOfLay(page: Page): Promise<{ left: number; lost: number }[]> {
  await openFolds(page, 'What is left on the piles?');
  const rows = page.getByRole('table').filter({ hasText: 'Still to lay' }).locator('tbody tr');
  await expect(rows).toHaveCount(3);
  const cells = await rows.evaluateAll((all) =>
    all.map((row) => [...row.querySelectorAll('td')].map((cell) => cell.textContent ?? ''))
  );
  // Standing, on the pallets while slates are to come, still to lay, lost.
  return cells.map((row) => {
    const numbers = row.map((cell) => numbersOf(cell)[0]);
    const left = numbers.slice(0, -2).reduce((sum, slates) => sum + slates, 0);
    return { left, lost: numbers[numbers.length - 1] };
  });
}

/** What the job page says of each pile: left, of these piled, laid, lost. */
async function pilesOfJob(page: Page): Promise<number[][]> {
  await openFolds(page, 'What is on each pile?');
  const piles = page.locator('.piles li > span:last-child');
  await expect(piles).toHaveCount(3);
  return (await piles.allInnerTexts()).map(numbersOf);
}

test('once laying began, the job page tells what is left of each pile, as Lay does', async ({
  page
}) => {
  const jobId = await seedJob(page, twoSlopesSorted(260));
  const job = `/job/${jobId}`;
  await page.goto(job);
  expect(await pilesOfJob(page)).toEqual([
    [261, 261],
    [261, 261],
    [258, 258]
  ]);
  await expect(page.getByText('What is left of each pile now')).toHaveCount(0);

  await usePlan(page, job);
  await page.goto(`${job}/lay`);
  const laid = page.getByRole('button', { name: 'Course laid' });
  for (let course = 1; course <= 2; course++) {
    await laid.click();
    await expect(page.getByText(`${course} of 24 courses laid`)).toBeVisible();
    await expect(laid).toBeEnabled();
  }
  await page.getByRole('button', { name: 'Several' }).click();
  await page.getByLabel('How many broke?').fill('3');
  await page.getByRole('button', { name: 'Record' }).click();
  await expect(page.getByText(/^Saved: 3 slates of/)).toBeVisible();
  const book = await bookOfLay(page);
  expect(book.map(({ lost }) => lost).sort()).toEqual([0, 0, 3]);

  await page.goto(job);
  await openFolds(page, 'What is on each pile?');
  await expect(page.getByText('What is left of each pile now')).toBeVisible();
  const piles = await pilesOfJob(page);
  const began = [261, 261, 258];
  for (const [index, [left, standing, taken = 0, lost = 0]] of piles.entries()) {
    expect({ left, lost }).toEqual(book[index]);
    expect(standing).toBe(left); // every slate of this job is sorted
    expect(left + taken + lost).toBe(began[index]);
  }
  expect(piles.reduce((sum, [, , taken = 0]) => sum + taken, 0)).toBeGreaterThan(30);
  expect(await isTooWide(page)).toBe(false);
});

test('what stands on a pile is told apart from what is left of it while slates are to come', async ({
  page
}) => {
  const job = await openExample(page);
  const before = await pilesOfJob(page);
  await page.goto(`${job}/lay`);
  await page.getByRole('button', { name: 'Course laid' }).click();
  await expect(page.getByText('1 of 72 courses laid')).toBeVisible();
  const book = await bookOfLay(page);
  await page.goto(job);
  await openFolds(page, 'What is on each pile?');
  await expect(page.getByText('What is left of each pile now')).toBeVisible();
  for (const [index, [left, standing, taken = 0]] of (await pilesOfJob(page)).entries()) {
    expect(left).toBe(book[index].left);
    expect(left).toBe(before[index][0] - taken);
    expect(standing).toBe(before[index][1] - taken);
  }
});

test('without a roof to tell it by, the job page says that laid slates are still counted', async ({
  page
}) => {
  const piles = [{ pile: 1, pieces: 20 }];
  const jobId = await seedJob(page, [
    ...smallJob([6.2, 5.2]),
    { type: 'courseLaid', body: { slopeId: 'gone', course: 1, piles } }
  ]);
  await page.goto(`/job/${jobId}`);
  await openFolds(page, 'What is on each pile?');
  await expect(page.getByText('what 1 course took since is not taken off')).toBeVisible();
});

test('the readings of the job page add up: the sample, before the grades, and while sorting', async ({
  page
}) => {
  await openExample(page);
  const parts = [
    await fact(page, 'Sample list'),
    await fact(page, 'Sample slates measured'),
    await fact(page, 'of these measured')
  ];
  expect(parts).toEqual([100, 325, 369]);
  expect(await fact(page, 'Thickness measured')).toBe(794);
});

/** Slates measured on Sort before there were grades. */
const measured = (pallet: string, count: number): SeedAct[] =>
  Array.from({ length: count }, (_, slate) => ({
    type: 'slateGauged',
    body: { palletId: `pallet-${pallet}`, points: [500 + slate], gradesId: null, pile: null }
  }));

test('before a slate is measured, the delivery can be checked first', async ({ page }) => {
  const jobId = await seedJob(page, smallJob([]));
  await page.goto(`/job/${jobId}`);
  await page.getByRole('link', { name: 'Or check the delivery first' }).click();
  await expect(page.getByRole('heading', { name: 'Delivery' })).toBeVisible();
});

test('slates measured on Sort lead on to the grades, and until then each pallet says how many more', async ({
  page
}) => {
  const jobId = await seedJob(page, [...smallJob([]), ...measured('A', 25), ...measured('B', 18)]);
  await page.goto(`/job/${jobId}`);
  const next = page.locator('.next');
  await expect(next).toContainText('Measure a sample');
  await expect(next).toContainText('Still to measure: 2 slates from pallet B, 20 slates from');
  expect(await fact(page, 'Sample slates measured')).toBe(43);
  await expect(page.getByText('Sample list', { exact: true })).toHaveCount(0);
  await next.getByRole('link', { name: 'Measure a sample' }).click();
  // Sort opens at the gauge, and asks for no unit where measured slates stand in the job.
  await expect(page.getByRole('button', { name: 'By hand', exact: true })).toBeVisible();
  for (let slate = 0; slate < 17; slate++) {
    await page.keyboard.type(`6.${20 + slate}`);
    await page.keyboard.press('Enter');
  }
  await expect(page.getByRole('button', { name: 'A 400 left, 42 measured' })).toBeVisible();
  // Sixty slates of two pallets: the third differs, and is asked for before the grades.
  await expect(page.locator('.verdict')).toContainText('Pallet A: 42 measured. Take pallet C.');
  await page.getByRole('link', { name: 'Job', exact: true }).click();
  await expect(next).toContainText('Still to measure: 5 slates from pallet C.');
  await next.getByRole('link', { name: 'Measure a sample' }).click();
  await page.locator('.chip', { hasText: /^C/ }).click();
  for (let slate = 0; slate < 5; slate++) {
    await page.keyboard.type(`6.${30 + slate}`);
    await page.keyboard.press('Enter');
  }
  await expect(page.locator('.verdict')).toContainText('Enough measured: set the grades.');
  await page.getByRole('link', { name: 'Job', exact: true }).click();
  await expect(next).toContainText('Next: Set the grades');
  await next.getByRole('link', { name: 'Set the grades' }).click();
  await expect(page).toHaveURL(/grades$/);
});
