/**
 * How long a reading takes from its Enter until its pile is shown and until it is committed, in the
 * built app in a real browser whose processor is slowed down six times, in a job of 50 and of
 * 100,000 readings. Strict durability: committed means on the disk.
 *
 * Needs a build (npm run build) and a Chromium (CHROMIUM_PATH, else the system's).
 */
import type { CDPSession } from '@playwright/test';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type SeedAct, seedJob, smallJob } from '../e2e/seed-job.ts';
import { launchBrowser } from './bench-browser.ts';
import { quantile } from './quantile.ts';
import { type Times, typeReadings } from './typed-readings.ts';

const SLOWDOWN = 6;
const WARM_UP = 20;
const TRIALS = 200;

/** Times, and the processor's own time of the page for one reading, whatever else the machine does. */
interface Measured extends Times {
  processorMs: number;
}

/** A job with so many readings on three pallets, over the working days that they would take. */
function jobOf(readings: number): SeedAct[] {
  const gauged = Array.from({ length: readings }, (_, index): SeedAct => ({
    type: 'slateGauged',
    body: {
      palletId: `pallet-${'ABC'[index % 3]}`,
      points: [400 + ((index * 7919) % 400)],
      gradesId: null,
      pile: 1 + (index % 3)
    }
  }));
  return [...smallJob([6, 5]), ...gauged];
}

/** Processor time that the page's main thread has used so far, ms. */
async function processorTime(session: CDPSession): Promise<number> {
  const { metrics } = await session.send('Performance.getMetrics');
  return 1000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? NaN);
}

async function run(url: string, readings: number): Promise<Measured> {
  const browser = await launchBrowser();
  try {
    const context = await browser.newContext({
      baseURL: url,
      viewport: { width: 390, height: 844 },
      locale: 'en-GB'
    });
    const page = await context.newPage();
    const jobId = await seedJob(page, jobOf(readings));
    await page.evaluate(() => {
      localStorage.setItem('evencourse.preferences', JSON.stringify({ way: 'gauge' }));
      sessionStorage.setItem('evencourse.unit', 'yes');
    });
    await page.goto(`/job/${jobId}/sort`);
    await page.getByRole('button', { name: 'Seen' }).click({ timeout: 120_000 });
    const session = await context.newCDPSession(page);
    await session.send('Performance.enable', { timeDomain: 'threadTicks' });
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWDOWN });
    await typeReadings(page, WARM_UP);
    await session.send('Emulation.setCPUThrottlingRate', { rate: 1 });
    const before = await processorTime(session);
    await typeReadings(page, TRIALS);
    const processorMs = ((await processorTime(session)) - before) / TRIALS;
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWDOWN });
    return { ...(await typeReadings(page, TRIALS)), processorMs };
  } finally {
    await browser.close();
  }
}

const script = pathToFileURL(join(process.cwd(), 'scripts/serve.js')).href;
const { serve } = await import(/* @vite-ignore */ script);
const server = await serve(0, { folder: process.env.SITE_FOLDER });
try {
  console.log(`Processor slowed ${SLOWDOWN} times, ${TRIALS} readings each, milliseconds`);
  const p99: Record<number, number> = {};
  for (const readings of [50, 100_000]) {
    const { shown, committed, processorMs } = await run(server.url, readings);
    p99[readings] = quantile(committed, 0.99);
    const say = (name: string, times: readonly number[]): string =>
      `${name} min ${Math.min(...times).toFixed(1)}, p50 ${quantile(times, 0.5).toFixed(1)}, p99 ${quantile(times, 0.99).toFixed(1)}`;
    console.log(
      `${readings} readings in the job: ${say('shown', shown)}; ${say('committed', committed)}; processor, not slowed, ${processorMs.toFixed(1)} a reading`
    );
  }
  console.log(`p99 committed, 100,000 over 50 readings: ${(p99[100_000] / p99[50]).toFixed(2)}`);
} finally {
  server.close();
}
