/**
 * How long the Grades screen takes from an arrow key on the handle of a boundary until the frame
 * with the new figures is painted, in the built app in a real browser: the worked example, every
 * section closed, plain and with the processor slowed down four times. A frame at 60 a second lasts
 * 16.7 ms, and a key waits for the next one in any case. Beside it the processor time of the page's
 * main thread for one move, whatever else the machine does, and what of it is script, style and
 * layout.
 *
 * Needs a build (npm run build) and a Chromium (CHROMIUM_PATH, else the system's).
 */
import type { CDPSession, Page } from '@playwright/test';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { pathToFileURL } from 'node:url';
import { launchBrowser } from './bench-browser.ts';

const SLOWDOWN = 4;
const WARM_UP = 80;
const MOVES = 200;
/** So many moves to one side and back. */
const ROUND = 40;
/** Between two moves: longer than a slow one takes, so that none waits for the other. */
const PAUSE_MS = 120;
const SETTLE_MS = 15_000;

declare global {
  interface Window {
    keyTimes: number[];
  }
}

/** Opens Grades with its sections closed and nothing left to be worked out. */
async function openGrades(page: Page): Promise<void> {
  await page.goto('/');
  await page.getByRole('button', { name: 'Open the worked example' }).tap();
  await page.waitForURL(/\/job\/[0-9a-f-]+$/);
  await page.goto(`${page.url()}/grades`);
  await page.getByText('The spread as a table').waitFor({ timeout: 60_000 });
  for (const summary of await page.locator('details[open] > summary').all()) await summary.tap();
  // Meanwhile the worker searches boundaries that suit the roof, and tries deliveries.
  await pause(SETTLE_MS);
  const working = page.getByText(/working (it )?out|worked out…/i);
  if ((await working.count()) > 0) throw new Error('something is still being worked out');
  await page.getByRole('slider').first().focus();
}

/** Has the page time each key from its press until the frame that follows is painted. */
async function timeKeys(page: Page): Promise<void> {
  await page.evaluate(() => {
    window.keyTimes = [];
    const begin = ({ timeStamp }: Event): number =>
      requestAnimationFrame(() => {
        // A message sent in a frame arrives once the frame is painted.
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => window.keyTimes.push(performance.now() - timeStamp);
        port2.postMessage(undefined);
      });
    addEventListener('keydown', begin, { capture: true });
  });
}

/** Moves the boundary to and fro by so many keys, and gives how long each took, ms. */
async function move(page: Page, moves: number): Promise<number[]> {
  const slider = page.getByRole('slider').first();
  const before = await slider.getAttribute('aria-valuenow');
  await page.evaluate(() => (window.keyTimes = []));
  for (let at = 0; at < moves; at++) {
    await page.keyboard.press(at % ROUND < ROUND / 2 ? 'ArrowRight' : 'ArrowLeft');
    await pause(PAUSE_MS);
    if (at === ROUND / 2 - 1 && (await slider.getAttribute('aria-valuenow')) === before)
      throw new Error('the boundary did not move');
  }
  const times = await page.evaluate(() => window.keyTimes);
  if (times.length !== moves) throw new Error(`${times.length} of ${moves} moves were timed`);
  return times;
}

/** Times of the page's main thread so far, ms. */
async function spent(session: CDPSession): Promise<Record<string, number>> {
  const { metrics } = await session.send('Performance.getMetrics');
  return Object.fromEntries(metrics.map(({ name, value }) => [name, 1000 * value]));
}

function say(times: readonly number[]): string {
  const sorted = [...times].sort((one, other) => one - other);
  const at = (share: number): string => sorted[Math.floor(share * (sorted.length - 1))].toFixed(1);
  return `min ${at(0)}, median ${at(0.5)}, 90 % ${at(0.9)}, max ${at(1)}`;
}

async function run(url: string, slowdown: number): Promise<void> {
  const browser = await launchBrowser();
  try {
    const context = await browser.newContext({
      baseURL: url,
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      locale: 'en-GB'
    });
    const page = await context.newPage();
    await openGrades(page);
    const session = await context.newCDPSession(page);
    await session.send('Performance.enable', { timeDomain: 'threadTicks' });
    await timeKeys(page);
    await move(page, WARM_UP);
    await session.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
    const before = await spent(session);
    const times = await move(page, MOVES);
    const after = await spent(session);
    const each = (name: string): string => ((after[name] - before[name]) / MOVES).toFixed(1);
    console.log(
      `${slowdown === 1 ? 'plain' : `slowed ${slowdown} times`}: key to painted ${say(times)} ms; ` +
        `main thread ${each('TaskDuration')} ms a move: script ${each('ScriptDuration')}, ` +
        `style ${each('RecalcStyleDuration')}, layout ${each('LayoutDuration')}`
    );
  } finally {
    await browser.close();
  }
}

const script = pathToFileURL(join(process.cwd(), 'scripts/serve.js')).href;
const { serve } = await import(/* @vite-ignore */ script);
const server = await serve(0, { folder: process.env.SITE_FOLDER });
try {
  console.log(`Grades of the worked example, a boundary moved ${MOVES} times by key`);
  await run(server.url, 1);
  await run(server.url, SLOWDOWN);
} finally {
  server.close();
}
