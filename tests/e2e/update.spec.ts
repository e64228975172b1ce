import { type BrowserContext, type Page, expect, test } from '@playwright/test';
import { expectGapless, jobIdOf, jobOnDisk } from '../faults/journal-on-disk.ts';
import { type OwnSite, ownSite } from '../faults/own-site.ts';
import { hostWith, release } from '../faults/releases.ts';
import { report } from '../support/rounds.ts';
import { gaugeSlate, startSorting } from '../faults/sorting.ts';
import { startJob } from './helpers.ts';

const notice = (page: Page) => page.getByText('A new version of the app is ready');
const mark = (page: Page) => page.locator('meta[name="release"]');

/** Waits until all of the app is on the device. */
async function whole(page: Page): Promise<void> {
  await page.goto('/settings');
  await expect(page.getByRole('row', { name: /^Starts without a network yes/ })).toBeVisible();
}

/** What becomes of the next version that comes. Call it before that can come. */
function nextWorker(page: Page): Promise<string> {
  return page.evaluate(async () => {
    const found = await navigator.serviceWorker.getRegistration();
    return new Promise<string>((done) => {
      found?.addEventListener('updatefound', () => {
        const incoming = found.installing;
        incoming?.addEventListener('statechange', () => done(incoming.state));
      });
    });
  });
}

/** As when a phone finds its network again: the app looks for a new version. */
async function backOnline(context: BrowserContext): Promise<void> {
  await context.setOffline(true);
  await context.setOffline(false);
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
  await backOnline(context);
  await expect(notice(page)).toBeVisible();

  // The batch goes on: nothing loads by itself.
  for (let slate = 1; slate <= 10; slate++) await gaugeSlate(page, 500 + slate);
  expect(loads).toBe(0);
  await expect(page.locator('meta[name="release"]')).toHaveCount(0);

  await page.getByRole('button', { name: 'Load it now' }).click();
  await expect(page.locator('meta[name="release"]')).toHaveAttribute('content', 'second');
  await expect(notice(page)).toHaveCount(0);
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

const MONTH_AGO = new Date(Date.now() - 30 * 86_400_000).toUTCString();
const isHashed = (path: string): boolean => path.startsWith('/_app/immutable/');
// RFC 9111, 4.2: what a cache may take for fresh, by max-age or, without one, by the last change.
const HOSTS: Record<string, (path: string) => Record<string, string>> = {
  'everything for a minute': () => ({ 'Cache-Control': 'max-age=60' }),
  'by the last change alone': () => ({ 'Last-Modified': MONTH_AGO }),
  'hashed files for good, pages for a minute': (path) => ({
    'Cache-Control': isHashed(path) ? 'max-age=31536000, immutable' : 'max-age=60'
  })
};

for (const [how, headers] of Object.entries(HOSTS))
  test(`a host that lets browsers keep ${how}: the new version opens, and opens again`, async ({
    browser
  }) => {
    const site: OwnSite = await ownSite([hostWith(() => site, headers)]);
    const context = await browser.newContext({ baseURL: site.url });
    const page = await context.newPage();
    await startJob(page, 'Long barn');
    await whole(page);
    await page.goto('/');
    release(site, 'second');
    await backOnline(context);
    await expect(notice(page)).toBeVisible();
    await page.getByRole('button', { name: 'Load it now' }).click();
    await expect(mark(page)).toHaveAttribute('content', 'second');
    // Once the new version has started, the one before is gone from the device.
    await page.waitForFunction(async () => (await caches.keys()).length === 1);
    await page.close();
    const again = await context.newPage();
    for (const address of ['/', '/settings']) {
      await again.goto(address);
      await expect(mark(again)).toHaveAttribute('content', 'second');
      await expect(again.locator('h1')).toBeVisible();
    }
    await again.goto('/');
    await again.getByRole('link', { name: /Long barn/ }).click();
    await expect(again.getByText('Long barn').first()).toBeVisible();
    await expect(again.locator('#starting')).toHaveCount(0);
    await context.close();
    site.remove();
  });

test('the network goes while a new version comes: the old one starts, and the new one comes later', async ({
  browser
}) => {
  let left = Infinity;
  const site = await ownSite([
    ({ socket }) => {
      if (left-- > 0) return false;
      socket.destroy();
      return true;
    }
  ]);
  const context = await browser.newContext({ baseURL: site.url });
  const page = await context.newPage();
  await whole(page);
  release(site, 'second');
  const given = nextWorker(page);
  left = 20;
  await backOnline(context);
  expect(await given).toBe('redundant');
  left = 0;
  await page.close();
  const offline = await context.newPage();
  await offline.goto('/');
  await expect(offline.getByRole('button', { name: 'Open the worked example' })).toBeVisible();
  await expect(mark(offline)).toHaveCount(0);
  left = Infinity;
  await backOnline(context);
  await expect(notice(offline)).toBeVisible();
  await offline.getByRole('button', { name: 'Load it now' }).click();
  await expect(mark(offline)).toHaveAttribute('content', 'second');
  await expect(offline.getByRole('button', { name: 'Open the worked example' })).toBeVisible();
  await context.close();
  site.remove();
});

test('a host that sends a page for a missing script: the version that cannot run is not taken', async ({
  browser
}) => {
  let isLacking = false;
  const site: OwnSite = await ownSite([
    ({ url }, response) => {
      if (!isLacking || !/entry\/app\./.test(url ?? '')) return false;
      response.writeHead(200, { 'Content-Type': 'text/html' }).end('<h1>Not found</h1>');
      return true;
    }
  ]);
  const context = await browser.newContext({ baseURL: site.url });
  const page = await context.newPage();
  await whole(page);
  release(site, 'second');
  isLacking = true;
  const given = nextWorker(page);
  await backOnline(context);
  expect(await given).toBe('redundant');
  await page.goto('/');
  await expect(page.getByRole('button', { name: 'Open the worked example' })).toBeVisible();
  await expect(mark(page)).toHaveCount(0);
  await context.close();
  site.remove();
});
