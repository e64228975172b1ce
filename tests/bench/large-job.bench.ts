/**
 * A large job on a slow phone: 60 pallets and 8 piles, 390 × 844, processor slowed 4×. For every
 * screen the time from asking for it to its first view, the longest task of the page until all stood
 * still, and all that lasted over 50 ms together; then "Course laid" to the next course on screen.
 * Setting out with 40 slopes: its nodes as well. Aims: first view 1.5 s, no task over 200 ms,
 * "Course laid" 300 ms.
 *
 * `npm run bench large-job`; ONLY=grades,lay for some screens. Needs a build (npm run build).
 */
import { setTimeout as pause } from 'node:timers/promises';
import type { BrowserContext, Page } from '@playwright/test';
import { seedJob } from '../e2e/seed-job.ts';
import { largeJob } from '../faults/large-job.ts';
import { launchBrowser } from './bench-browser.ts';

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
  ['courses', 'main button:has-text("plan")'],
  ['lay', 'main button:has-text("Course laid"), main a:has-text("ourses")'],
  ['sheet', 'main h1']
];

declare global {
  interface Window {
    longTasks: { start: number; ms: number }[];
  }
}

const site = await serve(0);
const browser = await launchBrowser();

async function newPage(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  await page.addInitScript(() => {
    window.longTasks = [];
    new PerformanceObserver((list) => {
      for (const { startTime, duration } of list.getEntries())
        window.longTasks.push({ start: startTime, ms: duration });
    }).observe({ type: 'longtask', buffered: true });
  });
  const session = await context.newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWDOWN });
  return page;
}

/** Waits until the page has had no long task for a while. */
async function quiet(page: Page): Promise<readonly { start: number; ms: number }[]> {
  const began = Date.now();
  for (;;) {
    await pause(QUIET_MS / 4);
    const { tasks, now } = await page.evaluate(() => ({
      tasks: window.longTasks,
      now: performance.now()
    }));
    const last = tasks.at(-1);
    const isQuiet = now - (last ? last.start + last.ms : 0) > QUIET_MS;
    if (isQuiet || Date.now() - began > MOST_MS) return tasks;
  }
}

async function measure(context: BrowserContext, url: string, answer: string) {
  const page = await newPage(context);
  await page.goto(url, { waitUntil: 'commit' });
  await page.locator(answer).first().waitFor({ timeout: MOST_MS });
  const firstMs = await page.evaluate(() => performance.now());
  const tasks = await quiet(page);
  const nodes = await page.evaluate(() => document.querySelectorAll('*').length);
  return { page, firstMs, tasks, nodes };
}

const whole = (ms: number): string => ms.toFixed(0);
const longest = (tasks: readonly { ms: number }[]): string =>
  whole(tasks.reduce((most, { ms }) => Math.max(most, ms), 0));
const sum = (tasks: readonly { ms: number }[]): string =>
  whole(tasks.reduce((all, { ms }) => all + ms, 0));

async function run(slopes: number, screens: typeof SCREENS): Promise<void> {
  const context = await browser.newContext({
    baseURL: site.url,
    viewport: { width: 390, height: 844 },
    serviceWorkers: 'block'
  });
  const start = await context.newPage();
  const acts = largeJob({ pallets: 60, slopes, sorted: 40 });
  const address = `/job/${await seedJob(start, acts, 1)}`;
  await start.goto(address);
  await start.getByRole('heading', { level: 1 }).waitFor({ timeout: MOST_MS });
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
    const { page, firstMs, tasks, nodes } = await measure(context, `${address}/${screen}`, answer);
    console.log(
      [screen || 'job', slopes, whole(firstMs), longest(tasks), sum(tasks), nodes].join(' | ')
    );
    if (screen === 'lay') await layCourses(page);
    await page.close();
  }
  await context.close();
}

/** From a tap on "Course laid" to the change of what stands next, five times. */
async function layCourses(page: Page): Promise<void> {
  for (let course = 0; course < 5; course++) {
    await page.evaluate(() => (window.longTasks = []));
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
    const tasks = await quiet(page);
    console.log(`course laid | ${whole(tookMs)} ms | longest ${longest(tasks)} | ${sum(tasks)}`);
  }
}

console.log('screen | slopes | first view ms | longest task ms | tasks over 50 ms, ms | nodes');
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
