import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { expectGapless, jobIdOf, jobOnDisk } from '../faults/journal-on-disk.ts';
import { type OwnSite, ownSite } from '../faults/own-site.ts';
import { report } from '../support/rounds.ts';
import { gaugeSlate, startSorting } from '../faults/sorting.ts';

/** Makes the served app a later release: another version in the worker, a mark in its pages. */
function release({ folder }: OwnSite, name: string): void {
  const worker = join(folder, 'service-worker.js');
  const { version } = JSON.parse(readFileSync(join(folder, '_app/version.json'), 'utf8')) as {
    version: string;
  };
  writeFileSync(worker, readFileSync(worker, 'utf8').replaceAll(version, `${version}-${name}`));
  for (const file of ['index.html', 'fallback.html', 'settings.html']) {
    const page = join(folder, file);
    writeFileSync(
      page,
      readFileSync(page, 'utf8').replace('<head>', `<head><meta name="release" content="${name}">`)
    );
  }
}

test('a new version waits beside an open batch, is put in force only by a tap, and spares the old tab', async ({
  browser
}) => {
  const site = await ownSite();
  const context = await browser.newContext({ baseURL: site.url });
  const [page, old] = [await context.newPage(), await context.newPage()];
  const errors: string[] = [];
  for (const tab of [page, old]) tab.on('pageerror', (error) => errors.push(String(error)));
  const address = await startSorting(page);
  const jobId = jobIdOf(page);
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.reload();
  await expect(page.locator('.verdict')).toBeVisible();
  await old.goto(address);
  await expect(old.locator('.verdict')).toBeVisible();
  await gaugeSlate(page, 500);

  release(site, 'second');
  let loads = 0;
  for (const tab of [page, old]) tab.on('load', () => loads++);
  await context.setOffline(true);
  await context.setOffline(false);
  const notice = page.getByText('A new version of the app is ready');
  await expect(notice).toBeVisible();

  // The batch goes on: nothing loads by itself.
  for (let slate = 1; slate <= 10; slate++) await gaugeSlate(page, 500 + slate);
  expect(loads).toBe(0);
  await expect(page.locator('meta[name="release"]')).toHaveCount(0);

  await page.getByRole('button', { name: 'Load it now' }).click();
  await expect(page.locator('meta[name="release"]')).toHaveAttribute('content', 'second');
  await expect(notice).toHaveCount(0);
  await expect(page.locator('.verdict')).toBeVisible();

  // The old tab was not loaded anew: it sorts on, and finds the parts of its own version.
  expect(loads).toBe(1);
  await expect(old.locator('meta[name="release"]')).toHaveCount(0);
  await old.bringToFront();
  await gaugeSlate(old, 600);
  await gaugeSlate(page, 511);
  const kept = await old.evaluate(async () => {
    const names = await caches.keys();
    return names.length;
  });
  expect(kept).toBe(2);
  await old.getByRole('link', { name: 'Roof' }).click();
  await expect(old.locator('h1')).toHaveText(/Roof/);
  await old.getByRole('button', { name: 'Load it now' }).click();
  await expect(old.locator('meta[name="release"]')).toHaveAttribute('content', 'second');

  const { events } = await jobOnDisk(page, jobId);
  const gauged = events.filter(({ type }) => type === 'slateGauged');
  expect(gauged).toHaveLength(13);
  expectGapless(events);
  expect(errors).toEqual([]);
  await context.close();
  site.remove();
  report('update with an old tab open', { readings: gauged.length, 'loads unasked': 0, lost: 0 });
});
