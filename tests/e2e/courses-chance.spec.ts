import type { Page } from '@playwright/test';
import { isTooWide, twoSlopes } from './courses-job.ts';
import { expect, openFolds, test } from './helpers.ts';
import { eventsOf, seedJob } from './seed-job.ts';

const whole = (text: string): number => Number(text.replace(/[^0-9−-]/g, '').replace('−', '-'));

/** The rows of the pile table: left over, lays, kept back, has. */
async function pileRows(page: Page): Promise<number[][]> {
  await openFolds(page, 'Will each pile last?');
  const rows = page
    .getByRole('region', { name: 'Left over beyond the reserve' })
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
const shownChance = async (page: Page): Promise<number> =>
  Number(
    /[\d.]+/.exec(await page.getByText(/^Chance that some pile runs out: at most/).innerText())?.[0]
  );

/** Opens a job of two slopes with the plan made, whose piles are far from counted. */
async function plainPlan(page: Page): Promise<{ job: string; jobId: string }> {
  const jobId = await seedJob(page, twoSlopes(CHANCY));
  await page.goto(`/job/${jobId}/courses`);
  await expect(page.getByRole('button', { name: 'Use this plan' })).toBeVisible();
  return { job: `/job/${jobId}`, jobId };
}

/** Slates on each of the three pallets with which a plan can hold 10 % and the most even one does not. */
const CHANCY = 220;

test('a safer plan stands beside one that may run out, is taken with one tap, and every row adds up', async ({
  page
}) => {
  const { jobId } = await plainPlan(page);
  await expect(
    page.getByText(/^\d (Thick|Medium|Thin) is tight: \d in \d+ that/).first()
  ).toBeVisible();
  await openFolds(page, 'Will each pile last?');
  const safer = page.getByText(/^The safer plan holds each pile to 10 %: [\d.]+ more joints will/);
  await expect(safer).toBeVisible();
  const offered = Number(/at most ([\d.]+) %/.exec(await safer.innerText())?.[1]);
  const plain = await rowsAddUp(page);
  await openFolds(page, 'How even?');
  await expect(
    page.getByText(/Of the plans that keep as many slates back, none has/)
  ).toBeVisible();
  expect(await shownChance(page)).toBeGreaterThan(10);
  await page.setViewportSize({ width: 320, height: 640 });
  expect(await isTooWide(page)).toBe(false);

  await page.getByRole('button', { name: 'Use the safer plan' }).click();
  await expect(page.getByText('In use, up to date.')).toBeVisible();
  await expect(safer).toHaveCount(0);
  await expect(page.getByText(/is tight/)).toHaveCount(0);
  await expect(page.getByText(/Of the plans that hold each pile to 10 %, none has/)).toBeVisible();
  const held = await rowsAddUp(page);
  expect(keptBack(held)).toBeGreaterThan(keptBack(plain));
  expect(await shownChance(page)).toBe(offered);
  const kept = page.getByText(
    /^Kept back:.*Of that, \d+ slates? of .* only to hold each pile to 10 %/
  );
  await expect(kept).toBeVisible();
  await page.reload();
  await expect(kept).toBeVisible();
  expect(await rowsAddUp(page)).toEqual(held);
  const plans = (await eventsOf(page, jobId)).filter(({ type }) => type === 'planAdopted');
  expect(plans.map(({ body }) => body.heldUnder)).toEqual([0.1]);
});

test('a plan that differs only by its chance is not said to come from sorting', async ({
  page
}) => {
  await plainPlan(page);
  await page.getByRole('button', { name: 'Use this plan' }).click();
  await expect(page.getByText('In use, up to date.')).toBeVisible();
  await openFolds(page, 'Will each pile last?');
  await page.getByLabel('Keep each chance under').fill('10');
  await page.getByRole('button', { name: 'Plan with this limit' }).click();
  await expect(
    page.getByText(/^To hold each pile to a chance of 10 %, \d+ courses? would change/)
  ).toBeVisible();
  await expect(page.getByText(/Stock or settings changed/)).toHaveCount(0);
  await rowsAddUp(page);
  await page.getByRole('button', { name: 'Use the new plan' }).click();
  await expect(page.getByText('In use, up to date.')).toBeVisible();

  await page.getByRole('button', { name: 'Plan without a limit' }).click();
  await expect(
    page.getByText(/^The plan in use holds each pile to a chance of 10 %. Without that/)
  ).toBeVisible();
  await rowsAddUp(page);
});

/** The chances that some pile runs out that Lay tells: with the plan in use and with the new one. */
async function chancesOnLay(page: Page): Promise<number[]> {
  const told = page.getByText(/^Chance that some pile runs out, at most:/);
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
  await page.getByRole('button', { name: 'Use the safer plan' }).click();
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
  await expect(
    page.getByText(/the new one keeps each pile's chance of running out to 10 %/)
  ).toBeVisible();
  const [, now] = await chancesOnLay(page);
  expect(now).toBeLessThanOrEqual(30);
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
    page.getByText(/^The current plan kept each pile's chance of running out to 10 %/)
  ).toContainText('Use it, and no limit is kept from then on');
  const raised = await chancesOnLay(page);
  expect(raised[1]).toBeGreaterThan(10);
  await page.getByRole('button', { name: 'Use the new plan' }).click();
  await expect.poll(heldUnder).toEqual([0.1, 0.1, undefined]);
});
