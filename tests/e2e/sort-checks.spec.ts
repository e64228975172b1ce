import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { createRandom, randomNormal } from '../../src/lib/engine/index.ts';
import { pileOf } from '../../src/lib/engine/grading/index.ts';
import { expect, test } from './helpers.ts';
import { IN_FORCE, type SeedAct, eventsOf, seedJob, smallJob } from './seed-job.ts';

const THRESHOLDS = [6, 5];
const question = (page: Page) => page.getByText('Spot check: gauge the slate');
const verdict = (page: Page) => page.locator('.verdict');

/** So many spot checks of a hand that strays by 0.3 mm: it is known within a few hundredths. */
function checksOf(sorter: string, count: number): SeedAct[] {
  const random = createRandom(11);
  return Array.from({ length: count }, () => {
    const thicknessMm = 4 + 3 * random();
    const pile = pileOf(thicknessMm + 0.3 * randomNormal(random), THRESHOLDS);
    const points = [Math.round(100 * thicknessMm)];
    const body = { palletId: 'pallet-A', of: 'tap', pile, gradesId: IN_FORCE, points };
    return { type: 'slateChecked', sorter, body };
  });
}

/** Opens Sort for Wren, whose hand is known by so many spot checks. */
async function openForWren(page: Page, checks: number): Promise<string> {
  const jobId = await seedJob(page, [...smallJob(THRESHOLDS), ...checksOf('Wren', checks)]);
  await page.evaluate(() => {
    localStorage.setItem(
      'evencourse.preferences',
      JSON.stringify({ way: 'hand', nickname: 'Wren' })
    );
    sessionStorage.setItem('evencourse.unit', 'yes');
  });
  await page.goto(`/job/${jobId}/sort`);
  return jobId;
}

/**
 * Taps pile after pile until a question comes up, and gives how many taps that took.
 *
 * @param before taps before: none goes on the pile of the last, which within 150 ms is a bounce
 */
async function tapsToQuestion(page: Page, before = 0): Promise<number> {
  const piles = page.getByRole('group', { name: 'On the piles' }).getByRole('button');
  await expect(question(page)).toBeHidden();
  for (let taps = 1; taps <= 60; taps++) {
    await piles.nth((before + taps) % 3).click();
    if (await question(page).isVisible()) return taps;
  }
  throw new Error('no question in 60 taps');
}

const putOff = (page: Page): Promise<void> => page.getByRole('button', { name: 'Not now' }).click();

function expectAbout(taps: number, interval: number): void {
  expect(taps).toBeGreaterThanOrEqual(Math.round(0.75 * interval));
  expect(taps).toBeLessThanOrEqual(Math.round(1.25 * interval));
}

test('a spot check is asked beside the work and saved as one', async ({ page }) => {
  const jobId = await openForWren(page, 0);
  await tapsToQuestion(page);
  const size = page.viewportSize() ?? { width: 390, height: 844 };
  await page.setViewportSize({ width: size.width, height: 3000 });
  const { violations } = await new AxeBuilder({ page }).analyze();
  await page.setViewportSize(size);
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`)).toEqual([]);
  await page.keyboard.type('6.4');
  await page.keyboard.press('Enter');
  await expect(verdict(page)).toContainText('Spot check');
  await expect(question(page)).toBeHidden();
  await expect
    .poll(async () => (await eventsOf(page, jobId)).at(-1))
    .toMatchObject({ type: 'slateChecked', sorter: 'Wren', body: { of: 'tap', points: [640] } });
});

test('every 20 taps or so of a hand that is known, every 5 of one that is not', async ({
  page
}) => {
  const jobId = await openForWren(page, 400);
  let taps = 0;
  const next = async (): Promise<number> => {
    const needed = await tapsToQuestion(page, taps);
    taps += needed;
    return needed;
  };
  // Its first question waits until the hand was looked at, in the background.
  expect(await next()).toBeGreaterThanOrEqual(15);
  await putOff(page);
  expectAbout(await next(), 20);

  // Another takes over while the question is up: it was of the former one's slate.
  await page.getByRole('button', { name: 'Options' }).click();
  await page.getByLabel('Who sorts').fill('Finch');
  await page.getByLabel('Who sorts').blur();
  await page.getByRole('button', { name: 'Back', exact: true }).click();
  expectAbout(await next(), 5);
  await page.keyboard.type('6.4');
  await page.keyboard.press('Enter');
  await expect(verdict(page)).toContainText('Spot check');
  expectAbout(await next(), 5);

  const tapped = async () =>
    (await eventsOf(page, jobId)).filter(({ type }) => type === 'slateTapped').length;
  await expect.poll(tapped).toBe(taps);
});

test('a slate that the gauge finds on the wrong pile goes there by one tap, and the hand keeps it', async ({
  page
}) => {
  const jobId = await openForWren(page, 0);
  await tapsToQuestion(page);
  const felt = (await eventsOf(page, jobId)).findLast(({ type }) => type === 'slateTapped')?.body;
  const piles = page.getByRole('group', { name: 'On the piles' }).getByRole('button');
  const counts = async () =>
    (await piles.locator('.count').allInnerTexts()).map((text) => Number.parseInt(text, 10));
  const before = await counts();
  // Of a pile that it was not put on.
  const found = felt?.pile === 1 ? 3 : 1;
  await page.keyboard.type(found === 1 ? '6.4' : '4.4');
  await page.keyboard.press('Enter');
  await expect(verdict(page)).toContainText('Spot check: differs');
  const name = found === 1 ? '1 Thick' : '3 Thin';
  await expect(page.getByText(`It belongs on ${name}.`)).toBeVisible();
  // Unanswered it changes nothing.
  expect(await counts()).toEqual(before);
  await page.getByRole('button', { name: `Put it on ${name}` }).click();
  await expect(verdict(page)).toContainText(/by hand, from pallet A.*saved/s);
  await expect(page.getByText(`It belongs on ${name}.`)).toBeHidden();
  const moved = before.map(
    (n, at) => n + (at === found - 1 ? 1 : at === Number(felt?.pile) - 1 ? -1 : 0)
  );
  expect(await counts()).toEqual(moved);
  const events = await eventsOf(page, jobId);
  expect(events.slice(-3).map(({ type }) => type)).toEqual([
    'slateChecked',
    'entryVoided',
    'slateTapped'
  ]);
  expect(events.at(-3)).toMatchObject({ sorter: 'Wren', body: { of: 'tap', pile: felt?.pile } });
});
