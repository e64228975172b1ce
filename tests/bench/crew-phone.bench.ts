/**
 * A day without signal comes in: 8,000 entries go to the hub from a phone slowed four times, while
 * its holder goes on sorting; and the time from a tap on one device until another shows it. Aims:
 * all shared within 5 s, a reading shown within 50 ms meanwhile (p99), the other device within 2 s.
 *
 * `npm run bench crew-phone`; needs a build (npm run build).
 */
import type { BrowserContext, Page } from '@playwright/test';
import { type SeedAct, seedJob, smallJob } from '../e2e/seed-job.ts';
import { launchBrowser } from './bench-browser.ts';
import { hubProcess } from './hub-process.ts';
import { quantile } from './quantile.ts';
import { typeReadings } from './typed-readings.ts';

const ENTRIES = 8000;
const SLOWDOWN = 4;
const READINGS = 60;
const TAPS = 20;
const MOST_MS = 120_000;

const gauged = Array.from({ length: ENTRIES }, (_, index): SeedAct => ({
  type: 'slateGauged',
  body: {
    palletId: `pallet-${'ABC'[index % 3]}`,
    points: [400 + ((index * 7919) % 400)],
    gradesId: null,
    pile: 1 + (index % 3)
  }
}));

const hub = await hubProcess();
const browser = await launchBrowser();

function fresh(): Promise<BrowserContext> {
  return browser.newContext({
    baseURL: hub.url,
    viewport: { width: 390, height: 844 },
    locale: 'en-GB'
  });
}

/** The keeper's phone, with a crew for a job of so many entries of which the hub has none yet. */
async function keeper(): Promise<{ page: Page; job: string; release: () => void }> {
  const page = await (await fresh()).newPage();
  await page.goto(hub.keyLink);
  await page.getByText('This device can start crews now.').waitFor();
  const job = `/job/${await seedJob(page, [...smallJob([6, 5]), ...gauged], 1)}`;
  await page.evaluate(() => {
    localStorage.setItem('evencourse.preferences', JSON.stringify({ way: 'gauge' }));
    sessionStorage.setItem('evencourse.unit', 'yes');
  });
  let release: () => void = () => undefined;
  const held = new Promise<void>((resolve) => (release = resolve));
  let isAsked: () => void = () => undefined;
  const asked = new Promise<void>((resolve) => (isAsked = resolve));
  await page.route('**/hub/1/*/parcel*', async (route) => {
    isAsked();
    await held;
    await route.continue();
  });
  await page.goto(`${job}/crew`);
  await page.getByLabel('Your name, as the crew sees it').fill('Wren', { timeout: MOST_MS });
  await page.getByRole('button', { name: 'Start a crew for this job' }).click();
  await asked;
  return { page, job, release };
}

/** When something is first so in a page, by the clock that all pages share, ms. */
function since(page: Page, text: string): Promise<number> {
  return page.evaluate(
    (wanted) =>
      new Promise<number>((resolve) => {
        const look = (): void => {
          if (document.body.innerText.includes(wanted)) resolve(Date.now());
          else requestAnimationFrame(look);
        };
        look();
      }),
    text
  );
}

const { page, job, release } = await keeper();
await page.goto(`${job}/sort`);
await page.getByRole('button', { name: 'Seen' }).click({ timeout: MOST_MS });
const session = await page.context().newCDPSession(page);
await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWDOWN });
await typeReadings(page, 10);
const alone = await typeReadings(page, READINGS);
const start = Date.now();
release();
const shared = since(page, 'Shared with the crew');
const meanwhile = await typeReadings(page, READINGS);
const say = (times: readonly number[]): string =>
  `p50 ${quantile(times, 0.5).toFixed(1)}, p99 ${quantile(times, 0.99).toFixed(1)} ms`;
console.log(`${ENTRIES} entries shared, slowed ${SLOWDOWN}×: ${(await shared) - start} ms`);
console.log(`a reading shown: before ${say(alone.shown)}; while sharing ${say(meanwhile.shown)}`);
await session.send('Emulation.setCPUThrottlingRate', { rate: 1 });
await page.goto(`${job}/crew`);
await page.getByRole('button', { name: 'Invite somebody', exact: true }).click();
const link = await page.locator('.url').innerText();
const mate = await (await fresh()).newPage();
const joined = Date.now();
await mate.goto(link);
await mate.getByLabel('Your name, as the crew sees it').fill('Robin');
await mate.getByRole('button', { name: 'Join', exact: true }).click();
await mate.waitForURL(new RegExp(`${job}$`), { timeout: MOST_MS });
console.log(`joined, with all ${ENTRIES} entries: ${Date.now() - joined} ms`);
await page.evaluate(() =>
  localStorage.setItem('evencourse.preferences', JSON.stringify({ way: 'hand' }))
);
await mate.goto(`${job}/sort`);
await mate.getByText('Shared with the crew').waitFor({ timeout: MOST_MS });
await page.goto(`${job}/sort`);
await page.getByText('Shared with the crew').waitFor({ timeout: MOST_MS });
await page.locator('.piles button').first().waitFor();

/** Slates on the piles of the pallet in use, as Sort shows them. */
const piles = (): string =>
  [...document.querySelectorAll('.piles button .count')].map((one) => one.textContent).join();
const times: number[] = [];
for (let tap = 0; tap < TAPS; tap++) {
  const before = await mate.evaluate(piles);
  const changed = mate.evaluate(
    ({ said, read }) =>
      new Promise<number>((resolve) => {
        const now = new Function(`return (${read})()`) as () => string;
        const look = (): void => {
          if (now() !== said) resolve(Date.now());
          else requestAnimationFrame(look);
        };
        look();
      }),
    { said: before, read: String(piles) }
  );
  const tapped = Date.now();
  await page
    .locator('.piles button')
    .nth(tap % 3)
    .click();
  times.push((await changed) - tapped);
}
console.log(`from a tap to the other's screen, ${TAPS} taps: ${say(times)}`);
await browser.close();
await hub.end();
