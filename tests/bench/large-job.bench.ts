/**
 * A large job on a slow phone: 60 pallets and 8 piles, 390 × 844, processor slowed 4×. For every
 * screen the time to its first view, by a tap on the job's page and when the app is started on it; the
 * longest task of the page until all stood still, what of the longest the processor worked for the page
 * (on a busy machine the wall clock counts other programs too), and all that lasted over 50 ms
 * together; then "Course laid" to the next course. Setting out with 40 slopes: its nodes as well.
 * Tasks are recorded on a page of their own, since that slows it. Aims: first view 1.5 s, no task over
 * 200 ms, "Course laid" 300 ms.
 *
 * `npm run bench large-job`; ONLY=grades,lay for some screens. Needs a build (npm run build).
 */
import { setTimeout as pause } from 'node:timers/promises';
import type { BrowserContext, Page } from '@playwright/test';
import { seedJob } from '../e2e/seed-job.ts';
import { largeJob } from '../faults/large-job.ts';
import { launchBrowser } from './bench-browser.ts';
import { type Task, recordTasks } from './main-thread.ts';

// Not bundled with the bench: the script serves the folder beside it.
const script = `${process.cwd()}/scripts/serve.js`;
const { serve } = (await import(
  /* @vite-ignore */ script
)) as typeof import('../../scripts/serve.js');

const SLOWDOWN = 4;
const QUIET_MS = 4000;
const MOST_MS = 120_000;
const ONLY = process.env.ONLY?.split(',');

/** A screen, and what stands on it once its answer is there. */
const SCREENS: readonly (readonly [screen: string, answer: string])[] = [
  ['', 'main h2'],
  ['sort', '.verdict'],
  ['grades', '[role="slider"]'],
  ['courses', 'main:has-text("joints show")'],
  ['lay', 'main button:has-text("Course laid")'],
  ['sheet', 'main h1']
];

declare global {
  interface Window {
    /** When the last long task ended, ms since the page was asked for. */
    lastLongTaskAt: number;
  }
}

const site = await serve(0);
const browser = await launchBrowser();

async function newPage(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  await page.addInitScript(() => {
    window.lastLongTaskAt = 0;
    new PerformanceObserver((list) => {
      for (const { startTime, duration } of list.getEntries())
        window.lastLongTaskAt = startTime + duration;
    }).observe({ type: 'longtask', buffered: true });
  });
  const session = await context.newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWDOWN });
  return page;
}

/** Waits until the page has had no long task for a while. */
async function quiet(page: Page): Promise<void> {
  const began = Date.now();
  for (;;) {
    await pause(QUIET_MS / 4);
    const quietMs = await page.evaluate(() => performance.now() - window.lastLongTaskAt);
    if (quietMs > QUIET_MS || Date.now() - began > MOST_MS) return;
  }
}

/** How long the first view took, by the page's own clock. */
async function opened(context: BrowserContext, url: string, answer: string): Promise<number> {
  const page = await newPage(context);
  await page.goto(url, { waitUntil: 'commit' });
  await page.locator(answer).first().waitFor({ timeout: MOST_MS });
  const firstMs = await page.evaluate(() => performance.now());
  await page.close();
  return firstMs;
}

/** From a tap on the job's page to the screen's first view; nothing where it is the job's page itself. */
async function tapped(context: BrowserContext, job: string, screen: string, answer: string) {
  const page = await newPage(context);
  await page.goto(job);
  await page.locator('main h2').first().waitFor({ timeout: MOST_MS });
  await quiet(page);
  const tookMs = await page.evaluate(
    ([path, selector, text]) =>
      new Promise<number>((done) => {
        const link = document.querySelector<HTMLAnchorElement>(`a[href="${path}"]`);
        const began = performance.now();
        const look = (): void => {
          const found = location.pathname === path && document.querySelectorAll(selector);
          const isThere = found && [...found].some(({ textContent }) => textContent.includes(text));
          if (isThere) done(performance.now() - began);
          else requestAnimationFrame(look);
        };
        link?.click();
        look();
      }),
    [`${job}/${screen}`, ...answer.replace('")', '').split(':has-text("'), ''] as const
  );
  await page.close();
  return tookMs;
}

async function measure(context: BrowserContext, url: string, answer: string) {
  const page = await newPage(context);
  const stop = await recordTasks(browser, page);
  await page.goto(url, { waitUntil: 'commit' });
  await page.locator(answer).first().waitFor({ timeout: MOST_MS });
  await quiet(page);
  const tasks = await stop();
  const nodes = await page.evaluate(() => document.querySelectorAll('*').length);
  return { page, tasks, nodes };
}

const whole = (ms: number): string => ms.toFixed(0);
const longest = (tasks: readonly Task[]): string =>
  [
    whole(tasks.reduce((most, { ms }) => Math.max(most, ms), 0)),
    whole(tasks.reduce((most, { processorMs }) => Math.max(most, processorMs), 0))
  ].join(' | ');
const LONG_MS = 50;
const sum = (tasks: readonly Task[]): string =>
  whole(tasks.reduce((all, { ms }) => (ms > LONG_MS ? all + ms : all), 0));

async function run(slopes: number, screens: typeof SCREENS): Promise<void> {
  const context = await browser.newContext({
    baseURL: site.url,
    viewport: { width: 390, height: 844 }
  });
  const start = await context.newPage();
  const acts = largeJob({ pallets: 60, slopes, sorted: 40 });
  const address = `/job/${await seedJob(start, acts, 1)}`;
  await start.goto(address);
  await start.getByRole('heading', { level: 1 }).waitFor({ timeout: MOST_MS });
  // As on a phone on which the app was used before: all of its parts are there.
  await start.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await start.waitForFunction(() => navigator.serviceWorker.controller, undefined, {
    timeout: MOST_MS
  });
  if (screens.some(([screen]) => screen === 'lay')) {
    await start.goto(`${address}/courses`);
    await start
      .getByRole('button', { name: /^Use this plan/ })
      .first()
      .click({ timeout: MOST_MS });
    await start
      .getByText(/^In use/)
      .first()
      .waitFor({ timeout: MOST_MS });
  }
  await start.close();
  for (const [screen, answer] of screens) {
    const url = screen ? `${address}/${screen}` : address;
    const startedMs = await opened(context, url, answer);
    const tappedMs =
      screen && screen !== 'sheet' ? await tapped(context, address, screen, answer) : 0;
    const { page, tasks, nodes } = await measure(context, url, answer);
    const tap = tappedMs ? whole(tappedMs) : '';
    console.log(
      [screen || 'job', slopes, tap, whole(startedMs), longest(tasks), sum(tasks), nodes].join(
        ' | '
      )
    );
    if (screen === 'lay') await layCourses(page);
    await page.close();
  }
  await context.close();
}

/** From a tap on "Course laid" to the change of what stands next, five times. */
async function layCourses(page: Page): Promise<void> {
  for (let course = 0; course < 5; course++) {
    const stop = await recordTasks(browser, page);
    const tookMs = await page.evaluate(
      () =>
        new Promise<number>((done) => {
          const main = document.querySelector('main') as HTMLElement;
          const laid = [...document.querySelectorAll('button')].find(({ textContent }) =>
            textContent.includes('Course laid')
          );
          const before = main.innerText;
          const began = performance.now();
          const look = (): void => {
            if (main.innerText !== before) done(performance.now() - began);
            else requestAnimationFrame(look);
          };
          laid?.click();
          requestAnimationFrame(look);
        })
    );
    await quiet(page);
    const tasks = await stop();
    console.log(`course laid | ${whole(tookMs)} ms | longest ${longest(tasks)} | ${sum(tasks)}`);
  }
}

console.log(
  'screen | slopes | by a tap ms | started ms | longest task ms | its processor ms | over 50 ms together | nodes'
);
const wanted = SCREENS.filter(([screen]) => !ONLY || ONLY.includes(screen || 'job'));
await run(
  4,
  wanted.filter(([screen]) => screen !== 'sheet')
);
if (wanted.some(([screen]) => screen === 'sheet'))
  await run(
    40,
    wanted.filter(([screen]) => screen === 'sheet')
  );
await browser.close();
site.close();
