import type { Page } from '@playwright/test';
import { isTooWide, twoSlopes } from './courses-job.ts';
import { expect, openFolds, test } from './helpers.ts';
import { eventsOf, seedJob } from './seed-job.ts';

const whole = (text: string): number => Number(text.replace(/[^0-9−-]/g, '').replace('−', '-'));

/** The rows of the pile table: left over, lays, kept back, has. */
async function pileRows(page: Page): Promise<number[][]> {
  await openFolds(page, 'Will each pile last?');
  const rows = page
    .getByRole('region', { name: 'Left over after the reserve' })
    .locator('tbody tr');
  await expect(rows).toHaveCount(3);
  const told = await rows.evaluateAll((all) =>
    all.map((row) => [...row.querySelectorAll('td')].map((cell) => cell.innerText))
  );
  return told.map((cells) => cells.map(whole));
}

/** Every pile's slates are left over, laid or kept back, and none of these is below nothing. */
async function rowsAddUp(page: Page): Promise<number[][]> {
  const rows = await pileRows(page);
  for (const [leftOver, lays, keptBack, has] of rows) {
    expect(leftOver + lays + keptBack, `${leftOver} + ${lays} + ${keptBack}`).toBe(has);
    expect(Math.min(leftOver, lays, keptBack)).toBeGreaterThanOrEqual(0);
  }
  return rows;
}

const keptBack = (rows: number[][]): number => rows.reduce((sum, row) => sum + row[2], 0);
/** The chance of the pile likeliest to run out, as the fold says it. */
const shownChance = async (page: Page): Promise<number> =>
  Number(/[\d.]+(?= %)/.exec(await page.getByText(/^Likeliest to run out: /).innerText())?.[0]);

/** Opens a job of two slopes with the plan made, whose piles are far from counted. */
async function plainPlan(page: Page): Promise<{ job: string; jobId: string }> {
  const jobId = await seedJob(page, twoSlopes(CHANCY));
  await page.goto(`/job/${jobId}/courses`);
  await expect(page.getByRole('button', { name: 'Use this plan' })).toBeVisible();
  return { job: `/job/${jobId}`, jobId };
}

/** Slates on each of the three pallets with which a plan can hold 10 % and the most even one does not. */
const CHANCY = 233;

test('by the rule no pile is likelier to run out than the limit, the most even plan says what it risks', async ({
  page
}) => {
  const { jobId } = await plainPlan(page);
  const way = (name: RegExp) => page.getByRole('group').getByRole('radio', { name });
  await expect(way(/^By the rule/)).toBeChecked();
  await expect(page.getByText(/may run out: /)).toHaveCount(0);
  const held = await rowsAddUp(page);
  expect(await shownChance(page)).toBeLessThanOrEqual(10);
  await expect(
    page.getByText(/^By the rule, no pile is likelier to run out than 10 %/)
  ).toBeVisible();
  const kept = page.getByText(
    /^Kept back:.*Of that, \d+ slates? of .* only to hold each pile to 10 %/
  );
  await expect(kept).toBeVisible();
  await openFolds(page, 'How even?');
  await expect(page.getByText(/every pile used in proportion.*proved, not guessed/)).toBeVisible();

  await way(/^Most even/).check({ force: true });
  await expect(
    page.getByText(/of the plans that keep as many slates back, none has/)
  ).toBeVisible();
  await expect(
    page.getByText(/^(Thick|Medium|Thin) may run out: \d in \d+\./).first()
  ).toBeVisible();
  expect(await shownChance(page)).toBeGreaterThan(10);
  expect(keptBack(await rowsAddUp(page))).toBeLessThan(keptBack(held));
  await page.setViewportSize({ width: 320, height: 640 });
  expect(await isTooWide(page)).toBe(false);

  await way(/^By the rule/).check({ force: true });
  await page.getByRole('button', { name: 'Use this plan' }).click();
  await expect(page.getByText('In use, up to date.')).toBeVisible();
  expect(await rowsAddUp(page)).toEqual(held);
  await page.reload();
  await expect(kept).toBeVisible();
  expect(await rowsAddUp(page)).toEqual(held);
  const plans = (await eventsOf(page, jobId)).filter(({ type }) => type === 'planAdopted');
  expect(plans.map(({ body }) => [body.way, body.heldUnder])).toEqual([['byRule', 0.1]]);
});

test('another limit makes the plan by the rule again, which waits for a tap', async ({ page }) => {
  await plainPlan(page);
  await page.getByRole('button', { name: 'Use this plan' }).click();
  await expect(page.getByText('In use, up to date.')).toBeVisible();
  await openFolds(page, 'Will each pile last?');
  await page.getByLabel('Keep each chance under').fill('0.001');
  await page.getByRole('button', { name: 'Plan with this limit' }).click();
  await expect(page.getByText('Give a chance from 0.1 to 50 %.')).toBeVisible();
  await page.getByLabel('Keep each chance under').fill('0.1');
  await page.getByRole('button', { name: 'Plan with this limit' }).click();
  await expect(
    page.getByText(/^With what is left, no plan holds each pile to 0.1 %/)
  ).toBeVisible();
  await expect(page.getByText(/may run out: /).first()).toBeVisible();
  await rowsAddUp(page);
  await page.getByRole('button', { name: 'Use the new plan' }).click();
  await expect(page.getByText('In use, up to date.')).toBeVisible();
});

/** The chance of the likeliest pile to run out that Lay tells: with the plan in use and the new one. */
async function chancesOnLay(page: Page): Promise<number[]> {
  const told = page.getByText(/^Likeliest to run out: /);
  await expect(told).toBeVisible();
  return [...(await told.innerText()).matchAll(/[\d.]+(?= %)/g)].map(([text]) => Number(text));
}

async function lose(page: Page, pile: string, slates: number): Promise<void> {
  await page.getByRole('button', { name: 'Several' }).click();
  await page.getByRole('button', { name: pile }).last().click();
  await page.getByLabel('How many broke?').fill(String(slates));
  await page.getByRole('button', { name: 'Record' }).click();
  await expect(
    page.getByText(new RegExp(`^Saved: ${slates} slates of ${pile} lost`))
  ).toBeVisible();
}

test('the rest is planned under the chance that the plan in use holds, until nothing holds it', async ({
  page
}) => {
  const { job, jobId } = await plainPlan(page);
  await page.getByRole('button', { name: 'Use this plan' }).click();
  await expect(page.getByText('In use, up to date.')).toBeVisible();
  await page.goto(`${job}/lay`);
  for (let course = 1; course <= 2; course++) {
    await page.getByRole('button', { name: 'Course laid' }).click();
    await expect(page.getByText(`${course} of 24 courses laid`)).toBeVisible();
    await expect(page.getByRole('button', { name: 'Course laid' })).toBeEnabled();
  }
  await lose(page, '2 Medium', 30);
  const again = page.getByRole('button', { name: 'Plan the rest again' });
  await again.click();
  await expect(page.getByText(/^No pile is likelier to run out than 10 %/)).toBeVisible();
  const [, now] = await chancesOnLay(page);
  expect(now).toBeLessThanOrEqual(10);
  await page.getByRole('button', { name: 'Use the new plan' }).click();
  await expect(page.getByRole('table', { name: 'What changes' })).toHaveCount(0);
  const heldUnder = async () =>
    (await eventsOf(page, jobId))
      .filter(({ type }) => type === 'planAdopted')
      .map(({ body }) => body.heldUnder);
  expect(await heldUnder()).toEqual([0.1, 0.1]);

  await lose(page, '1 Thick', 70);
  await again.click();
  await expect(
    page.getByText(/^With what is left no plan keeps each pile's chance of running out to 10 %/)
  ).toBeVisible();
  const raised = await chancesOnLay(page);
  expect(raised[1]).toBeGreaterThan(10);
  await page.getByRole('button', { name: 'Use the new plan' }).click();
  await expect.poll(heldUnder).toEqual([0.1, 0.1, undefined]);
});
