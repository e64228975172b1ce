import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { type OwnSite, ownSite } from '../faults/own-site.ts';
import { startJob } from './helpers.ts';

const safe = 'What you saved is safe on this device';
let site: OwnSite;
test.beforeEach(async () => {
  site = await ownSite();
});
test.afterEach(() => site.remove());

test('where the scripts are gone, words say so, and loading again is enough once they are back', async ({
  browser
}) => {
  const context = await browser.newContext({ baseURL: site.url, serviceWorkers: 'block' });
  let isGone = true;
  await context.route('**/entry/*.js', (route) =>
    isGone ? route.fulfill({ status: 404 }) : route.continue()
  );
  const page = await context.newPage();
  for (const address of ['/', '/settings', '/job/1/sort']) {
    await page.goto(address);
    await expect(page.getByText(safe)).toBeVisible();
    await expect(page.getByRole('link', { name: 'Repair' })).toBeVisible();
  }
  await page.goto('/');
  await expect(page.getByText(safe)).toBeVisible();
  isGone = false;
  await page.getByRole('link', { name: 'Load again' }).click();
  await expect(page.getByRole('button', { name: 'Open the worked example' })).toBeVisible();
  await expect(page.getByText(safe)).toHaveCount(0);
  await context.close();
});

test('every page says in its own text that JavaScript is needed', async ({ request }) => {
  for (const path of ['', 'settings', 'job/1/sort']) {
    const html = await (await request.get(site.url + path)).text();
    expect(html, path).toMatch(/<noscript>[^]*This app needs JavaScript[^]*<\/noscript>/);
  }
});

test('Repair takes a stored app that cannot start away, fetches it again and keeps every job', async ({
  browser
}) => {
  const context = await browser.newContext({ baseURL: site.url });
  const page = await context.newPage();
  await startJob(page, 'Long barn');
  await page.goto('/settings');
  await expect(page.getByRole('row', { name: /^Starts without a network yes/ })).toBeVisible();
  // What is stored names a script that is nowhere: the white page of the attack.
  await page.evaluate(async () => {
    const [name] = await caches.keys();
    const cache = await caches.open(name);
    const html = await (await cache.match('/'))!.text();
    const spoilt = html.replaceAll(/entry\/app\.[\w-]+\.js/g, 'entry/app.gone.js');
    await cache.put('/', new Response(spoilt, { headers: { 'Content-Type': 'text/html' } }));
  });
  await page.goto('/');
  await expect(page.getByText(safe)).toBeVisible();
  await page.getByRole('link', { name: 'Repair' }).click();

  // Without a network the stored copy is all there is: it stays.
  await context.setOffline(true);
  await page.getByRole('button', { name: 'Repair' }).click();
  await expect(page.getByText('There is no network here. Nothing was changed')).toBeVisible();
  expect(await page.evaluate(() => caches.keys())).toHaveLength(1);
  await context.setOffline(false);
  await page.getByRole('button', { name: 'Repair' }).click();
  await expect(page.getByRole('link', { name: /Long barn/ })).toBeVisible();
  await expect(page.getByText(safe)).toHaveCount(0);
  await page.goto('/settings');
  await expect(page.getByRole('row', { name: /^Starts without a network yes/ })).toBeVisible();
  await context.close();
});

test('parts that the browser dropped are fetched again, and Settings says so', async ({
  browser
}) => {
  const context = await browser.newContext({ baseURL: site.url });
  const page = await context.newPage();
  const row = (words: string) =>
    page.getByRole('row', { name: `Starts without a network ${words}`, exact: true });
  await page.goto('/settings');
  await expect(row('yes')).toBeVisible();
  const drop = (): Promise<number> =>
    page.evaluate(async () => {
      const cache = await caches.open((await caches.keys())[0]);
      const parts = (await cache.keys()).filter(({ url }) => /chunks|fallback/.test(url));
      for (const part of parts.slice(0, 9)) await cache.delete(part);
      return parts.length;
    });
  const parts = await drop();
  await page.reload();
  await expect(row('yes: parts were missing and have been fetched again')).toBeVisible();
  expect(await drop()).toBe(parts);

  // What the host no longer has cannot be fetched: then it is not said to be there.
  rmSync(join(site.folder, 'fallback.html'));
  rmSync(join(site.folder, '_app/immutable'), { recursive: true });
  await page.reload();
  await expect(row('not yet: load the app once more while online')).toBeVisible();
  await context.close();
});
