import { expect, test } from './helpers.ts';
import {
  expectGapless,
  expectSameWhenRebuilt,
  jobIdOf,
  jobOnDisk
} from '../faults/journal-on-disk.ts';
import { report, rounds } from '../support/rounds.ts';
import { gaugeSlate, slatesOnScreen, startSorting, tapSlates } from '../faults/sorting.ts';

const SLATES = rounds(60, 1500);

test('J3, J16: two tabs that sort the same job at once agree, and lose nothing', async ({
  page
}) => {
  test.setTimeout(300_000 + SLATES * 500);
  const address = await startSorting(page);
  const jobId = jobIdOf(page);
  const other = await page.context().newPage();
  await other.goto(address);
  await expect(other.locator('.piles')).toBeVisible();
  await Promise.all([tapSlates(page, SLATES), tapSlates(other, SLATES)]);
  for (const tab of [page, other])
    await expect.poll(() => slatesOnScreen(tab), { message: 'slates on screen' }).toBe(2 * SLATES);
  const { events } = await jobOnDisk(page, jobId);
  expect(events.filter(({ type }) => type === 'slateTapped')).toHaveLength(2 * SLATES);
  expect(new Set(events.map(({ deviceId }) => deviceId)).size).toBe(1);
  expectGapless(events);
  await expectSameWhenRebuilt(other, jobId);
  report('two tabs', { slates: 2 * SLATES, lost: 0, gaps: 0 });
});

test('J5: a clock set back a day and then a year keeps the order of acts', async ({ page }) => {
  await page.addInitScript(() => {
    const now = Date.now.bind(Date);
    // The clock of each page load: set by the test between loads.
    Date.now = () => now() + Number(sessionStorage.getItem('clock') ?? 0);
  });
  const address = await startSorting(page);
  const jobId = jobIdOf(page);
  const readings: number[] = [];
  for (const days of [0, -1, -365, 0]) {
    await page.evaluate(
      (offset) => sessionStorage.setItem('clock', String(offset)),
      days * 86_400_000
    );
    await page.goto(address);
    await expect(page.locator('.verdict')).toBeVisible();
    for (let slate = 0; slate < 3; slate++) {
      readings.push(500 + readings.length);
      await gaugeSlate(page, readings[readings.length - 1]);
    }
  }
  const { events } = await jobOnDisk(page, jobId);
  const gauged = events.filter(({ type }) => type === 'slateGauged');
  expect(gauged.map(({ body }) => (body.points as number[])[0])).toEqual(readings);
  expectGapless(events);
  await expectSameWhenRebuilt(page, jobId);
  report('clock set back', { readings: readings.length, lost: 0, 'out of order': 0 });
});
