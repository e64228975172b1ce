import { expect } from '@playwright/test';
import { usePlan, twoSlopes } from './courses-job.ts';
import { openFolds, test } from './helpers.ts';
import { IN_FORCE, type SeedAct, seedJob } from './seed-job.ts';

/** The error of the invented hand, mm. */
const HAND_SD_MM = 0.3;
const THRESHOLDS_MM = [6.2, 5.2];

/** Errors of a hand, in SDs: nine that stand for equal shares of the normal law. */
const ERRORS = [-1.59, -0.97, -0.59, -0.28, 0, 0.28, 0.59, 0.97, 1.59];

/** Slates tapped by a hand that errs and then gauged: each thickness with each error once. */
function checkedTaps(sorter: string): SeedAct[] {
  const thicknesses = Array.from({ length: 17 }, (_, n) => 430 + n * 20);
  return thicknesses.flatMap((hundredths, n) =>
    ERRORS.flatMap((error): SeedAct[] => {
      const feltMm = hundredths / 100 + error * HAND_SD_MM;
      const pile = 1 + THRESHOLDS_MM.filter((mm) => feltMm < mm).length;
      const slate = { palletId: `pallet-${'ABC'[n % 3]}`, pile, gradesId: IN_FORCE };
      return [
        { type: 'slateTapped', body: slate, sorter },
        { type: 'slateChecked', body: { ...slate, of: 'tap', points: [hundredths] }, sorter }
      ];
    })
  );
}

test('the computer test sorts with the hand that was measured, and says so', async ({ page }) => {
  const job = `/job/${await seedJob(page, [...twoSlopes(260), ...checkedTaps('Wren')])}`;
  await usePlan(page, job);
  await openFolds(page, 'Computer test');
  await page.getByRole('button', { name: /^Lay it/ }).click();
  const byHand = page.getByRole('row', { name: /^Sorted by eye/ });
  await expect(byHand).toBeVisible();
  await expect(page.getByText(/assumed/)).toHaveCount(0);
  const said = /off by ([0-9.]+) mm as measured/.exec(await byHand.innerText());
  expect(Number(said?.[1])).toBeGreaterThan(HAND_SD_MM - 0.08);
  expect(Number(said?.[1])).toBeLessThan(HAND_SD_MM + 0.08);

  // A hand that errs so little lays a roof that is far more even than an unsorted one.
  const kickers = async (way: RegExp): Promise<number> =>
    Number(
      (await page.getByRole('row', { name: way }).locator('td').first().innerText()).split(' ')[0]
    );
  expect(await kickers(/^Sorted by eye/)).toBeLessThan(await kickers(/^Unsorted/));
});
