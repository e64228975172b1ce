import { readFileSync } from 'node:fs';
import {
  type BrowserContext,
  type Locator,
  type Page,
  test as base,
  expect
} from '@playwright/test';

/** Where example.setup.ts keeps the worked example for the other tests of a run. */
export const EXAMPLE_FILE = 'test-results/start/example.json';

/** What Playwright says where it keeps the app's service worker from starting. */
const BLOCKED = 'Service Worker registration blocked by Playwright';

/**
 * A test that fails on any console error or warning, page error or request to another host. The
 * app's service worker would fetch the whole app anew for each test: a file about updates or about
 * working offline says `test.use({ serviceWorkers: 'allow' })`.
 */
export const test = base.extend<{ quiet: void }>({
  serviceWorkers: 'block',
  quiet: [
    async ({ page, baseURL }, use) => {
      const noises: string[] = [];
      page.on('console', (message) => {
        const isNoise = ['error', 'warning'].includes(message.type());
        if (isNoise && message.text() !== BLOCKED) noises.push(message.text());
      });
      page.on('pageerror', (error) => noises.push(String(error)));
      page.on('request', (request) => {
        const url = request.url();
        if (/^https?:/.test(url) && !url.startsWith(baseURL ?? ''))
          noises.push(`request to ${url}`);
      });
      await use();
      expect(noises).toEqual([]);
    },
    { auto: true }
  ]
});

export { expect };

interface KeptExample {
  readonly pathname: string;
  readonly origins: Exclude<Parameters<BrowserContext['setStorageState']>[0], string>['origins'];
}

/** Puts the worked example on the device as it was kept, opens it and gives its address. */
export async function openExample(page: Page): Promise<string> {
  const { pathname, origins } = JSON.parse(readFileSync(EXAMPLE_FILE, 'utf8')) as KeptExample;
  // An empty page tells which site this browser is on: some tests have one of their own.
  const empty = { contentType: 'text/html', body: '<link rel="icon" href="data:,">' };
  await page.route('**/empty', (route) => route.fulfill(empty));
  await page.goto('/empty');
  const { origin } = new URL(page.url());
  const here = origins.map((kept) => ({ ...kept, origin }));
  await page.context().setStorageState({ cookies: [], origins: here });
  await page.goto(pathname);
  return page.url();
}

/** Opens a fresh copy of the worked example as a person does, and gives its address. */
export async function openExampleByTap(page: Page): Promise<string> {
  await page.goto('/');
  await page.getByRole('button', { name: 'Open the worked example' }).click();
  await page.waitForURL(/\/job\/[0-9a-f-]+$/);
  return page.url();
}

/** Opens folds by their titles, outer ones first, and gives the last one. */
export async function openFolds(page: Page, ...titles: string[]): Promise<Locator> {
  let fold = page.locator('main');
  for (const title of titles) {
    const titled = page.locator('details', {
      has: page.locator(`:scope > summary h2:text-is(${JSON.stringify(title)})`)
    });
    fold = titled;
    await expect(titled).toBeVisible();
    // A fold may open by itself when its figures are there, just as it is tapped.
    await expect(async () => {
      if ((await titled.getAttribute('open')) === null)
        await titled.locator(':scope > summary').click();
      expect(await titled.getAttribute('open')).not.toBeNull();
    }).toPass();
  }
  return fold;
}

/** Opens every fold of the screen; what is folded is made when its fold opens, and may hold more. */
export async function openEveryFold(page: Page): Promise<void> {
  await expect(async () => {
    const closed = await page.locator('main details').evaluateAll((parts) => {
      const folds = (parts as HTMLDetailsElement[]).filter((part) => !part.open);
      for (const fold of folds) fold.open = true;
      return folds.length;
    });
    expect(closed).toBe(0);
  }).toPass();
}

/** Starts a new job and gives its address. */
export async function startJob(page: Page, name: string): Promise<string> {
  await page.goto('/');
  await page.getByLabel('Name of the job').fill(name);
  await page.getByRole('button', { name: 'Start' }).click();
  await page.waitForURL(/\/job\/[0-9a-f-]+$/);
  return page.url();
}

/** Takes readings in a file into a job. */
export async function takeIn(page: Page, job: string, csv: string): Promise<void> {
  await page.goto(`${job}/files`);
  await page
    .getByLabel('Choose a CSV file')
    .setInputFiles({ name: 'readings.csv', mimeType: 'text/csv', buffer: Buffer.from(csv) });
  await expect(page.getByText(/^Taken in:/)).toBeVisible();
}

/**
 * Waits until the page shows the app's own letters, which come once the page is idle: words are as
 * wide and high as they make them.
 */
export async function ownLetters(page: Page): Promise<void> {
  await expect(page.locator('html')).toHaveClass(/own-letters/);
  await page.evaluate(async () => {
    // A look at the height makes the browser ask for the letters.
    void document.body.offsetHeight;
    await document.fonts.ready;
  });
}
