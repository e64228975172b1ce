import { readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from '@playwright/test';
import { type OwnSite, ownSite } from '../faults/own-site.ts';
import { expect, test } from './helpers.ts';

test.use({ serviceWorkers: 'allow' });

const HASHED = '/_app/immutable/';
let site: OwnSite;
let asked: string[];
test.beforeEach(async () => {
  asked = [];
  site = await ownSite([
    ({ url }) => {
      asked.push(url ?? '');
      return false;
    }
  ]);
});
test.afterEach(() => site.remove());

/** The app with all of it on the device, as Settings says. */
async function openWhole(browser: Browser): Promise<Page> {
  const context = await browser.newContext({ baseURL: site.url });
  const page = await context.newPage();
  await page.goto('/');
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
  return page;
}

/** Holds every script and style that the device keeps to the file that was built. */
async function expectAsBuilt(page: Page): Promise<void> {
  const kept = await page.evaluate(async (hashed) => {
    const cache = await caches.open((await caches.keys())[0]);
    const requests = (await cache.keys()).filter(({ url }) => url.includes(hashed));
    const texts = requests.map(async (request) => {
      const response = (await cache.match(request))!;
      const type = response.headers.get('content-type') ?? '';
      return [new URL(request.url).pathname, type, await response.text()] as const;
    });
    return Promise.all(texts);
  }, HASHED);
  const built = readdirSync(join(site.folder, HASHED), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(js|css)$/.test(name))
    .map((name) => HASHED + name.replaceAll('\\', '/'));
  const texts = new Map(kept.map(([path, type, text]) => [path, { type, text }]));
  expect(built.length).toBeGreaterThan(200);
  for (const path of built) {
    const found = texts.get(path);
    expect(found?.text === readFileSync(join(site.folder, path), 'utf8'), path).toBe(true);
    expect(found?.type, path).toMatch(path.endsWith('.js') ? /^text\/javascript/ : /^text\/css/);
  }
}

const packs = (): string[] =>
  readdirSync(join(site.folder, HASHED, 'packs')).map((name) => `${HASHED}packs/${name}`);
const scriptsAsked = (): string[] => asked.filter((path) => /immutable\/.*\.(js|css)$/.test(path));

test('a first visit fetches the app in packs, each part once, and starts without a network', async ({
  browser
}) => {
  const page = await openWhole(browser);
  for (const pack of packs()) expect(asked.filter((path) => path === pack)).toHaveLength(1);
  // The page's own scripts, and no other part by itself.
  expect(new Set(scriptsAsked()).size).toBeLessThan(20);
  expect(scriptsAsked()).toHaveLength(new Set(scriptsAsked()).size);
  console.log(`a first visit: ${asked.length} requests`);
  expect(asked.length).toBeLessThanOrEqual(60);
  await expectAsBuilt(page);

  site.stop();
  await page.context().setOffline(true);
  await page.goto('/settings');
  await expect(page.getByRole('row', { name: 'Starts without a network yes' })).toBeVisible();
  await page.context().close();
});

const SPOILT: Record<string, (path: string) => void> = {
  'is gone': (path) => rmSync(path),
  'is cut off': (path) => writeFileSync(path, readFileSync(path, 'utf8').slice(0, -1000)),
  'has another letter in a part': (path) =>
    writeFileSync(path, readFileSync(path, 'utf8').replace('function', 'funktion')),
  'is a page of the host': (path) => writeFileSync(path, '<h1>Not found</h1>')
};
for (const [what, spoil] of Object.entries(SPOILT))
  test(`where a pack ${what}, its parts come by themselves`, async ({ browser }) => {
    const [first] = packs();
    const { packs: listed } = JSON.parse(readFileSync(join(site.folder, 'packs.json'), 'utf8')) as {
      packs: { path: string; parts: string[] }[];
    };
    const parts = listed.find(({ path }) => `/${path}` === first)!.parts;
    expect(parts.length).toBeGreaterThan(0);
    spoil(join(site.folder, first));
    const page = await openWhole(browser);
    for (const part of parts) expect(scriptsAsked()).toContain(`/${part}`);
    if (what !== 'is gone') expect(asked).toContain(first);
    await expectAsBuilt(page);
    await page.context().close();
  });

test('a host without packs gives every part by itself', async ({ browser }) => {
  rmSync(join(site.folder, HASHED, 'packs'), { recursive: true });
  rmSync(join(site.folder, 'packs.json'));
  const page = await openWhole(browser);
  expect(new Set(scriptsAsked()).size).toBeGreaterThan(200);
  await expectAsBuilt(page);
  await page.context().close();
});

test('a script that the browser keeps in another form than was built is fetched anew', async ({
  browser
}) => {
  // A host between that changes the first page's script once, as one that serves a stale copy.
  let isStale = true;
  const entry = readdirSync(join(site.folder, HASHED, 'entry')).find((name) =>
    name.startsWith('app.')
  );
  const path = `${HASHED}entry/${entry}`;
  const text = readFileSync(join(site.folder, path), 'utf8');
  const other = await ownSite([
    ({ url }, response) => {
      if (!isStale || url !== path) return false;
      isStale = false;
      const headers = { 'Content-Type': 'text/javascript', 'Cache-Control': 'max-age=60' };
      response.writeHead(200, headers).end(`${text}\n// stale`);
      return true;
    }
  ]);
  site.remove();
  site = other;
  const page = await openWhole(browser);
  expect(isStale).toBe(false);
  await expectAsBuilt(page);
  await page.context().close();
});

test('a few parts that the browser dropped come by themselves, many in their packs', async ({
  browser
}) => {
  const page = await openWhole(browser);
  const drop = (most: number): Promise<void> =>
    page.evaluate(async (most) => {
      const cache = await caches.open((await caches.keys())[0]);
      const parts = (await cache.keys()).filter(({ url }) => url.includes('/chunks/'));
      for (const part of parts.slice(-most)) await cache.delete(part);
    }, most);
  const refilled = page.getByRole('row', { name: /parts were missing and have been fetched/ });
  for (const [most, arePacked] of [
    [2, false],
    [40, true]
  ] as const) {
    await page.goto('/settings');
    await expect(page.getByRole('row', { name: 'Starts without a network yes' })).toBeVisible();
    await drop(most);
    asked.length = 0;
    await page.reload();
    await expect(refilled).toBeVisible();
    expect(asked.some((path) => path.startsWith(`${HASHED}packs/`))).toBe(arePacked);
    await expectAsBuilt(page);
  }
  await page.context().close();
});
