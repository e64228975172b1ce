import { type Page, expect, test } from '@playwright/test';
import { expectGapless, jobIdOf, jobOnDisk } from '../faults/journal-on-disk.ts';
import { report } from '../support/rounds.ts';
import { slatesOnScreen, startSorting, tapSlates } from '../faults/sorting.ts';

/** Eight hours at a slate every 3.6 seconds. */
const SLATES = 8000;
const PART = SLATES / 8;
/** More than this from the second part to the last is a leak: a slate leaves nothing behind. */
const GROWTH = 1.25;

async function heapMegabytes(page: Page): Promise<number> {
  const browser = await page.context().newCDPSession(page);
  await browser.send('HeapProfiler.collectGarbage');
  const { usedSize } = await browser.send('Runtime.getHeapUsage');
  await browser.detach();
  return usedSize / 2 ** 20;
}

test('a day of sorting keeps the memory flat, and every slate', async ({ page }) => {
  test.setTimeout(300_000 + SLATES * 500);
  await startSorting(page);
  await expect(page.locator('.piles')).toBeVisible();
  const heaps: number[] = [];
  const gaps: number[] = [];
  const speeds: number[] = [];
  for (let part = 1; part <= 8; part++) {
    const { milliseconds, frameGaps } = await tapSlates(page, PART, (part - 1) * PART);
    speeds.push(milliseconds / PART);
    gaps.push(...frameGaps);
    heaps.push(await heapMegabytes(page));
    expect(await slatesOnScreen(page)).toBe(part * PART);
  }
  expect(heaps[7]).toBeLessThan(heaps[1] * GROWTH);
  const { events } = await jobOnDisk(page, jobIdOf(page));
  expect(events.filter(({ type }) => type === 'slateTapped')).toHaveLength(SLATES);
  expectGapless(events);
  gaps.sort((one, other) => one - other);
  const late = gaps.filter((gap) => gap > 25).length;
  report('soak', {
    slates: SLATES,
    lost: 0,
    'heap MB by part': heaps.map((heap) => heap.toFixed(1)).join(' '),
    'ms a slate by part': speeds.map((speed) => speed.toFixed(1)).join(' '),
    frames: gaps.length,
    'frames late by half or more': late,
    'longest gap ms': gaps[gaps.length - 1].toFixed(0)
  });
});
