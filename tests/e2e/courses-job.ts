import { type Locator, type Page, expect } from '@playwright/test';
import { openFolds, ownLetters } from './helpers.ts';
import { type SeedAct, smallJob } from './seed-job.ts';

const PALLETS = ['A', 'B', 'C'];

/** A slate of 500 × 250 mm. */
export const SLATE: SeedAct = {
  type: 'slateSpecSet',
  body: {
    ...{ lengthMm: 500, widthMm: 250, nailing: 'centre', headlapMm: 100 },
    ...{ jointMinMm: 3, jointMaxMm: 5, eaveOverhangMm: 50, vergeOverhangMm: 50 }
  }
};

/** A slope with square verges, 12 courses high. */
export function slope(name: string, eaveWidthMm = 5000): SeedAct {
  return {
    type: 'slopeSet',
    body: {
      ...{ slopeId: name.toLowerCase(), name, rafterLengthMm: 2400, eaveWidthMm },
      ...{ pitchDegrees: 35, eaveHeightMm: 0, openings: [] },
      ...{ left: { kind: 'verge' }, right: { kind: 'verge' } }
    }
  };
}

/** Readings of each pallet, 4.2 to 7.4 mm, a different mixture on each. */
export function readings(each = 24): SeedAct[] {
  return PALLETS.flatMap((label, pallet) =>
    Array.from({ length: each }, (_, n) => ({
      type: 'slateGauged',
      body: {
        palletId: `pallet-${label}`,
        points: [420 + ((n * 37 + pallet * 53) % 320)],
        gradesId: null,
        pile: null
      }
    }))
  );
}

/** Three pallets gauged and graded, and two slopes; `slatesPerPallet` decides whether it lasts. */
export function twoSlopes(slatesPerPallet: number): SeedAct[] {
  const [opened, ...rest] = smallJob([6.2, 5.2]);
  const pallets = rest.filter(({ type }) => type === 'palletAdded');
  const grades = rest.filter(({ type }) => type === 'gradesSet');
  return [
    opened,
    ...pallets.map(({ type, body }) => ({ type, body: { ...body, slates: slatesPerPallet } })),
    ...readings(),
    ...grades,
    SLATE,
    slope('South'),
    slope('North')
  ];
}

/** The same with every slate tapped on to a pile, as many on each of the three. */
export function twoSlopesSorted(slatesPerPallet: number): SeedAct[] {
  const taps = PALLETS.flatMap((label) =>
    Array.from({ length: slatesPerPallet }, (_, n) => ({
      type: 'slateTapped',
      body: { palletId: `pallet-${label}`, pile: 1 + (n % 3), gradesId: null }
    }))
  );
  return [...twoSlopes(slatesPerPallet), ...taps];
}

/** A whole number in a cell, however it is grouped. */
async function count(cell: Locator): Promise<number> {
  return Number((await cell.innerText()).replace(/[^0-9]/g, '') || '0');
}

/** Slates and slate-and-a-halves that the tables of courses give in their last rows. */
export async function totalsOfTables(page: Page): Promise<{ slates: number; wide: number }> {
  await openFolds(page, 'Every course');
  await page.locator('tfoot').first().waitFor();
  const totals = { slates: 0, wide: 0 };
  for (const row of await page.locator('tfoot tr').all()) {
    totals.slates += await count(row.locator('td').nth(0));
    totals.wide += await count(row.locator('td').nth(1));
  }
  return totals;
}

/** Slates and slate-and-a-halves that the Roof screen says the whole roof takes. */
export async function totalsOfRoof(
  page: Page,
  job: string
): Promise<{ slates: number; wide: number }> {
  await page.goto(`${job}/roof`);
  await openFolds(page, 'What to order?');
  const whole = page.getByRole('row', { name: /^Whole roof/ }).getByRole('cell');
  await whole.first().waitFor();
  return { slates: await count(whole.nth(2)), wide: await count(whole.nth(5)) };
}

/** Undereave slates that the Roof screen, which is open, says the whole roof takes. */
export async function undereaveOfRoof(page: Page): Promise<number> {
  await openFolds(page, 'Undereave slates');
  const said = await page.getByText(/^The roof takes \d+ undereave slates/).innerText();
  return Number(/\d+/.exec(said)?.[0]);
}

/** Uses the plan that the Courses screen offers. */
export async function usePlan(page: Page, job: string): Promise<void> {
  await page.goto(`${job}/courses`);
  await page.getByRole('button', { name: 'Use this plan' }).click();
  await expect(page.getByText('In use, up to date.')).toBeVisible();
}

/** Whether the page is wider than the screen. */
export async function isTooWide(page: Page): Promise<boolean> {
  await ownLetters(page);
  return page.evaluate(() => document.documentElement.scrollWidth > innerWidth);
}

/** The choice of a way on Courses: "By the rule", "Most even" or "My own". */
export const way = (page: Page, name: string): Locator =>
  page.getByRole('radio', { name: new RegExp(`^${name}`) });

/** The card of a way, with its figures and its picture. */
export const cardOf = (page: Page, name: string): Locator =>
  page.locator('fieldset label').filter({ has: page.getByText(name, { exact: true }) });
