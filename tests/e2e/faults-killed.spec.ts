import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { expect, test } from '@playwright/test';
import { createRandom } from '../../src/lib/engine/index.ts';
import { BrowserProcess } from '../faults/browser-process.ts';
import {
  expectGapless,
  expectSameWhenRebuilt,
  gaugedCounts,
  jobIdOf,
  jobOnDisk,
  lostOf
} from '../faults/journal-on-disk.ts';
import { report } from '../support/rounds.ts';
import { gaugeSlate, startSorting } from '../faults/sorting.ts';

const ROUNDS = 100;

test('J1, J3: a browser killed at any moment has lost no acknowledged reading and no number', async ({
  baseURL
}) => {
  test.setTimeout(ROUNDS * 60_000 + 120_000);
  const site = baseURL ?? '';
  const profile = mkdtempSync(join(tmpdir(), 'evencourse-profile-'));
  const random = createRandom(20260302);
  const typed: number[] = [];
  const acknowledged: number[] = [];
  let unanswered = 0;
  let kept = 0;
  let browser = await BrowserProcess.start(profile, site);
  try {
    const address = await startSorting(browser.page);
    const jobId = jobIdOf(browser.page);
    for (let round = 0; round < ROUNDS; round++) {
      const { page } = browser;
      await page.goto(address);
      await page.locator('.verdict').waitFor();
      let isKilled = false;
      const wanted = acknowledged.length + 1 + Math.floor(5 * random());
      let lastTookMs = 0;
      const work = (async () => {
        for (;;) {
          const hundredths = 300 + (typed.length % 600);
          typed.push(hundredths);
          const began = performance.now();
          await gaugeSlate(page, hundredths);
          // Counted also when the kill is already on its way: the screen said that it is saved.
          acknowledged.push(hundredths);
          lastTookMs = performance.now() - began;
        }
      })().catch((error: unknown) => {
        if (!isKilled) throw error;
      });
      // However slow the machine: some readings are saved, then the kill falls into the next one.
      await expect
        .poll(() => acknowledged.length, { intervals: [10] })
        .toBeGreaterThanOrEqual(wanted);
      await pause(lastTookMs * random());
      isKilled = true;
      await browser.kill();
      await work;

      browser = await BrowserProcess.start(profile, site);
      await browser.page.goto('/');
      const { events } = await jobOnDisk(browser.page, jobId);
      expect(lostOf(acknowledged, events), `lost in round ${round + 1}`).toEqual([]);
      expectGapless(events);
      kept = [...gaugedCounts(events).values()].reduce((sum, count) => sum + count, 0);
      expect(kept, 'no reading twice').toBeLessThanOrEqual(typed.length);
      unanswered = typed.length - acknowledged.length;
    }
    expect(acknowledged.length).toBeGreaterThanOrEqual(ROUNDS);
    await expectSameWhenRebuilt(browser.page, jobId);
  } finally {
    await browser.kill();
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  }
  report('browser killed', {
    rounds: ROUNDS,
    'readings acknowledged': acknowledged.length,
    'under way at a kill': unanswered,
    'of these on the disk': kept - acknowledged.length,
    lost: 0
  });
});
