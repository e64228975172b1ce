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
import type { Page } from '@playwright/test';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { pathToFileURL } from 'node:url';
import { launchBrowser } from './bench-browser.ts';
import {
  PHONE,
  compareSpeeds,
  openWorkedExample,
  painted,
  startAnew,
  timePainted
} from './painted.ts';

const WARM_UP = 80;
const MOVES = 200;
/** So many moves to one side and back. */
const ROUND = 40;
/** Between two moves: longer than a slow one takes, so that none waits for the other. */
const PAUSE_MS = 120;
const SETTLE_MS = 15_000;

/** Opens Grades with its sections closed and nothing left to be worked out. */
async function openGrades(page: Page): Promise<void> {
  await page.goto(`${await openWorkedExample(page)}/grades`);
  await page.getByText('The spread as a table').waitFor({ timeout: 60_000 });
  for (const summary of await page.locator('details[open] > summary').all()) await summary.tap();
  // Meanwhile the worker searches boundaries that suit the roof, and tries deliveries.
  await pause(SETTLE_MS);
  const working = page.getByText(/working (it )?out|worked out…/i);
  if ((await working.count()) > 0) throw new Error('something is still being worked out');
  await page.getByRole('slider').first().focus();
}

/** Moves the boundary to and fro by so many keys, and gives how long each took, ms. */
async function move(page: Page, moves: number): Promise<number[]> {
  const slider = page.getByRole('slider').first();
  const before = await slider.getAttribute('aria-valuenow');
  await startAnew(page);
  for (let at = 0; at < moves; at++) {
    await page.keyboard.press(at % ROUND < ROUND / 2 ? 'ArrowRight' : 'ArrowLeft');
    await pause(PAUSE_MS);
    if (at === ROUND / 2 - 1 && (await slider.getAttribute('aria-valuenow')) === before)
      throw new Error('the boundary did not move');
  }
  const times = await painted(page);
  if (times.length !== moves) throw new Error(`${times.length} of ${moves} moves were timed`);
  return times;
}

const script = pathToFileURL(join(process.cwd(), 'scripts/serve.js')).href;
const { serve } = await import(/* @vite-ignore */ script);
const server = await serve(0, { folder: process.env.SITE_FOLDER });
const browser = await launchBrowser();
try {
  console.log(`Grades of the worked example, a boundary moved ${MOVES} times by key`);
  const context = await browser.newContext({ ...PHONE, baseURL: server.url });
  const page = await context.newPage();
  await openGrades(page);
  await timePainted(page, 'keydown');
  await move(page, WARM_UP);
  await compareSpeeds(context, page, MOVES, 'worked example', () => move(page, MOVES));
} finally {
  await browser.close();
  server.close();
}
