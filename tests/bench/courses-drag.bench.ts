/**
 * How long Courses takes from a step of a change that is dragged on the drawn roof until the frame with
 * the change drawn is painted, and the frame after it, which has the new figures, in the built app in a
 * real browser, with the processor slowed down four times: on the worked example, and on a roof of 12
 * slopes, 600 courses and 6 piles. A frame at 60 a second lasts 16.7 ms, and a move waits for the next
 * one in any case. Beside it the processor time of the page's main thread for one step, whatever else
 * the machine does.
 *
 * Needs a build (npm run build) and a Chromium (CHROMIUM_PATH, else the system's).
 */
import type { BrowserContext, Locator, Page } from '@playwright/test';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { pathToFileURL } from 'node:url';
import { type SeedAct, seedJob } from '../e2e/seed-job.ts';
import { launchBrowser } from './bench-browser.ts';
import {
  PHONE,
  compareSpeeds,
  openWorkedExample,
  painted,
  startAnew,
  timePainted
} from './painted.ts';

const WARM_UP = 20;
const MOVES = 80;
/** So many courses to one side and back. */
const ROUND = 8;
/** Between two moves: longer than a slow one takes, so that none waits for the other. */
const PAUSE_MS = 250;

const SLOPES = 12;
const SLATES = 30_000;
const THRESHOLDS_MM = [7.4, 6.8, 6.2, 5.6, 5];

/** A job of 12 slopes of 50 courses, six piles, every pallet gauged in part. */
function largeRoof(): SeedAct[] {
  const pallets = ['A', 'B', 'C', 'D'].map((label) => ({
    type: 'palletAdded',
    body: { palletId: `pallet-${label}`, label, slates: SLATES / 4 }
  }));
  const readings = pallets.flatMap(({ body: { palletId } }, pallet) =>
    Array.from({ length: 60 }, (_, n) => ({
      type: 'slateGauged',
      body: {
        palletId,
        points: [440 + ((n * 37 + pallet * 53) % 360)],
        gradesId: null,
        pile: null
      }
    }))
  );
  const slopes = Array.from({ length: SLOPES }, (_, at) => ({
    type: 'slopeSet',
    body: {
      ...{ slopeId: `slope-${at}`, name: `Slope ${at + 1}` },
      ...{ rafterLengthMm: 10_000, eaveWidthMm: 9000 + 400 * at, pitchDegrees: 35 },
      ...{ eaveHeightMm: 300 * (at % 4), openings: [] },
      ...{ left: { kind: 'verge' }, right: { kind: 'verge' } }
    }
  }));
  return [
    { type: 'jobOpened', body: { name: 'Large' } },
    ...pallets,
    ...readings,
    { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: THRESHOLDS_MM } },
    {
      type: 'slateSpecSet',
      body: {
        ...{ lengthMm: 500, widthMm: 250, nailing: 'centre', headlapMm: 100 },
        ...{ jointMinMm: 3, jointMaxMm: 5, eaveOverhangMm: 50, vergeOverhangMm: 50 }
      }
    },
    ...slopes
  ];
}

async function openLargeRoof(page: Page): Promise<string> {
  return `/job/${await seedJob(page, largeRoof())}`;
}

/** Drags the grip course by course, up and down; gives how long each step took, ms. */
async function drag(page: Page, grip: Locator, moves: number): Promise<number[]> {
  const box = await grip.locator('.pill').boundingBox();
  if (!box) throw new Error('the grip is not drawn');
  const [least, most, now] = await Promise.all(
    ['aria-valuemin', 'aria-valuemax', 'aria-valuenow'].map(async (name) =>
      Number(await grip.getAttribute(name))
    )
  );
  // Of the slope that is dragged: the small pictures of the cards have bands of their own.
  const courseMm = await grip.evaluate((element) => {
    const bands = [...(element.closest('figure')?.querySelectorAll('path.band') ?? [])].slice(
      0,
      40
    );
    return Math.min(...bands.map((band) => band.getBoundingClientRect().height));
  });
  if (most - least < 2 * ROUND) throw new Error(`${most - least} courses leave no room to drag`);
  const up = now - least > most - now ? 1 : -1;
  const x = box.x + box.width / 2;
  const y = box.y + box.height / 2;
  await page.mouse.move(x, y);
  await page.mouse.down();
  await startAnew(page);
  // Counted in the page: to ask it at each step would be work of its main thread too.
  const changes = await grip.evaluateHandle((element) => {
    const seen = { count: 0 };
    new MutationObserver((records) => (seen.count += records.length)).observe(element, {
      attributeFilter: ['aria-valuenow']
    });
    return seen;
  });
  for (let at = 1; at <= moves; at++) {
    const place = at % (2 * ROUND);
    const courses = place <= ROUND ? place : 2 * ROUND - place;
    await page.mouse.move(x, y + up * courses * courseMm);
    await pause(PAUSE_MS);
  }
  await page.mouse.up();
  const changed = await changes.evaluate(({ count }) => count);
  if (changed < moves / 2) throw new Error(`${changed} of ${moves} moves changed the plan`);
  return painted(page);
}

async function run(
  context: BrowserContext,
  name: string,
  open: (page: Page) => Promise<string>
): Promise<void> {
  const page = await context.newPage();
  const job = await open(page);
  await page.goto(`${job}/courses`);
  const own = page.getByRole('radio', { name: /^My own/ });
  await own.waitFor({ state: 'attached', timeout: 120_000 });
  await own.check({ force: true });
  const grip = page.locator('.grip').first();
  await grip.scrollIntoViewIfNeeded({ timeout: 60_000 });
  await timePainted(page, 'pointermove');
  await drag(page, grip, WARM_UP);
  await compareSpeeds(context, page, MOVES, name, () => drag(page, grip, MOVES));
  await page.close();
}

const script = pathToFileURL(join(process.cwd(), 'scripts/serve.js')).href;
const { serve } = await import(/* @vite-ignore */ script);
const server = await serve(0, { folder: process.env.SITE_FOLDER });
const browser = await launchBrowser();
try {
  const context = await browser.newContext({
    ...PHONE,
    baseURL: server.url
  });
  console.log(`Courses, a change dragged ${MOVES} times`);
  await run(context, 'worked example', openWorkedExample);
  await run(context, '12 slopes, 600 courses, 6 piles', openLargeRoof);
} finally {
  await browser.close();
  server.close();
}
