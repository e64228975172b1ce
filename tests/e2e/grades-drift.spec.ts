import { type Page, expect } from '@playwright/test';
import { SLATE, slope } from './courses-job.ts';
import { openFolds, test } from './helpers.ts';
import { IN_FORCE, type SeedAct, seedJob } from './seed-job.ts';

const PALLETS = ['A', 'B', 'C'];
const OLD_MM = [6.2, 5.2];
const SAMPLED = 24;
const SORTED = 60;

/** Hundredths of a millimetre of a pallet's slates: 3.2 mm wide, from a thinnest on. */
function slatesOf(pallet: number, count: number, thinnest: number): number[] {
  return Array.from({ length: count }, (_, n) => thinnest + ((n * 37 + pallet * 53) % 320));
}

function pileAt(thresholdsMm: readonly number[], hundredths: number): number {
  return 1 + thresholdsMm.filter((mm) => hundredths < Math.round(mm * 100)).length;
}

const gauged = (
  label: string,
  hundredths: number,
  gradesId: string | null,
  pile: number | null
) => ({
  type: 'slateGauged',
  body: { palletId: `pallet-${label}`, points: [hundredths], gradesId, pile }
});

/** Three pallets sampled from 4.2 mm on, graded, and sorted to the last slate from another on. */
function sortedJob(thinnestSorted: number, more: readonly SeedAct[] = []): SeedAct[] {
  return [
    { type: 'jobOpened', body: { name: 'Seeded' } },
    ...PALLETS.map((label) => ({
      type: 'palletAdded',
      body: { palletId: `pallet-${label}`, label, slates: SORTED }
    })),
    ...PALLETS.flatMap((label, pallet) =>
      slatesOf(pallet, SAMPLED, 420).map((hundredths) => gauged(label, hundredths, null, null))
    ),
    { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: OLD_MM } },
    ...more,
    ...PALLETS.flatMap((label, pallet) =>
      slatesOf(pallet, SORTED, thinnestSorted).map((hundredths) =>
        gauged(label, hundredths, IN_FORCE, pileAt(OLD_MM, hundredths))
      )
    )
  ];
}

const all = (count: number, thinnest: number): number[] =>
  PALLETS.flatMap((_label, pallet) => slatesOf(pallet, count, thinnest));
const meanMm = (hundredths: readonly number[]): number =>
  hundredths.reduce((sum, value) => sum + value, 0) / hundredths.length / 100;

/** Opens Grades at the section, which may have opened by itself. */
async function whileSorting(page: Page, acts: readonly SeedAct[]) {
  await page.goto(`/job/${await seedJob(page, acts)}/grades`);
  return openFolds(page, 'Is the stock still like the sample?');
}

test('a stock that drifted from the sample is told with how far, and what moving the boundaries brings', async ({
  page
}) => {
  const section = await whileSorting(page, sortedJob(500));
  const shift = meanMm(all(SORTED, 500)) - meanMm(all(SAMPLED, 420));
  const words = section.getByText(/^The stock has drifted\. /);
  await expect(words).toContainText(
    `are ${shift.toFixed(2)} mm thicker on average than the sample the grades came from`
  );
  const [, low, high] =
    /from ([0-9.]+) mm thicker to ([0-9.]+) mm thicker/.exec(await words.innerText()) ?? [];
  expect(Number(low)).toBeGreaterThan(0);
  expect((Number(low) + Number(high)) / 2).toBeCloseTo(shift, 1);

  const better = await section.getByText(/^By what is measured now/).innerText();
  const [, listed, gain, slates] =
    /boundaries at ([0-9., ]+) mm are better: ([0-9.]+) fewer .*; ([0-9]+) slates/.exec(better) ??
    [];
  const newMm = listed.split(', ').map(Number);
  expect(Number(gain)).toBeGreaterThanOrEqual(0.5);

  // Every slate on the piles was gauged, so who must be looked at again can be counted.
  const moved = new Map<string, number>();
  for (const [pallet, label] of PALLETS.entries())
    for (const hundredths of slatesOf(pallet, SORTED, 500)) {
      const [from, to] = [pileAt(OLD_MM, hundredths), pileAt(newMm, hundredths)];
      if (from === to) continue;
      const key = `${label} ${from} ${to}`;
      moved.set(key, (moved.get(key) ?? 0) + 1);
    }
  const found = new Map<string, number>();
  for (const row of await section.locator('tbody tr').all()) {
    const [label, move, count] = await row.locator('th, td').allInnerTexts();
    const [from, to] = move.match(/[0-9]/g) ?? [];
    found.set(`${label} ${from} ${to}`, Number(count));
  }
  expect([...found].sort()).toEqual([...moved].sort());
  expect(Number(slates)).toBe([...moved.values()].reduce((sum, count) => sum + count, 0));

  await section.getByRole('button', { name: 'Show these boundaries' }).click();
  const handles = page.getByRole('slider');
  await expect(handles).toHaveCount(2);
  for (const mm of newMm)
    await expect(page.locator(`[role="slider"][aria-valuetext="${mm.toFixed(2)} mm"]`)).toHaveCount(
      1
    );
});

test('a stock that keeps to its sample is told so', async ({ page }) => {
  const section = await whileSorting(page, sortedJob(420));
  await expect(section.getByText(/^The stock is like the sample/)).toBeVisible();
  await expect(section.getByText(/has drifted/)).toHaveCount(0);
});

test('pallets that differ are no drift when one of them is sorted first', async ({ page }) => {
  const thinnest = [420, 600, 420];
  const others = sortedJob(420).filter(({ type }) => type !== 'slateGauged');
  const section = await whileSorting(page, [
    ...others.slice(0, -1),
    ...PALLETS.flatMap((label, pallet) =>
      slatesOf(pallet, SAMPLED, thinnest[pallet]).map((hundredths) =>
        gauged(label, hundredths, null, null)
      )
    ),
    ...others.slice(-1),
    ...slatesOf(1, SORTED, thinnest[1]).map((hundredths) =>
      gauged('B', hundredths, IN_FORCE, pileAt(OLD_MM, hundredths))
    )
  ]);
  await expect(section.getByText(/^The stock is like the sample/)).toBeVisible();
  await expect(section.getByText(/has drifted/)).toHaveCount(0);
});

test('a pile that the plan takes more from than it holds is told with how many are missing', async ({
  page
}) => {
  const onPile = (pile: number): number =>
    all(SORTED, 500).filter((hundredths) => pileAt(OLD_MM, hundredths) === pile).length;
  expect(onPile(3)).toBeGreaterThan(0);
  const takes = [4, 4, 4].map((courses, index) => ({ pile: index + 1, courses }));
  const plan: SeedAct = {
    type: 'planAdopted',
    body: {
      gradesId: IN_FORCE,
      kickAllowanceMm: 1.5,
      expectedKickers: 0,
      joints: 240,
      courses: takes.flatMap(({ pile, courses }) =>
        Array.from({ length: courses }, (_, n) => ({
          slopeId: 'south',
          course: (pile - 1) * 4 + n + 1,
          piles: [{ pile, pieces: 10 }]
        }))
      )
    }
  };
  const section = await whileSorting(page, sortedJob(500, [SLATE, slope('South', 2500), plan]));
  const short = takes.filter(({ pile }) => onPile(pile) < 40).map(({ pile }) => pile);
  expect(short).toEqual([3]);
  const told = section.getByText(
    /^3 Thin will run short: \d+ slates? short to lay the plan, \d+ with/
  );
  await expect(told).toBeVisible();
  await expect(section.getByText(/will run short/)).toHaveCount(1);
  const [toLay, withReserve] = (await told.innerText()).match(/\d+(?= slates? short| with)/g)!;
  expect(Number(toLay)).toBeGreaterThan(0);
  // The full slates of four courses of 10 pieces, some of which are slate-and-a-halves.
  expect(Number(toLay)).toBeLessThanOrEqual(40 - onPile(3));
  expect(Number(withReserve)).toBeGreaterThan(Number(toLay));

  // Courses and Lay tell the same two numbers.
  const job = page.url().replace(/\/grades$/, '');
  for (const screen of ['courses', 'lay']) {
    await page.goto(`${job}/${screen}`);
    await expect(
      page.getByText(
        new RegExp(
          `^3 Thin will run short: ${toLay} slates? short to lay the plan, ${withReserve} with`
        )
      )
    ).toBeVisible();
  }
});
