/**
 * A job of 10,000, 100,000 and, when asked for, 1,000,000 events in the IndexedDB of a browser:
 * time and JavaScript heap of each step, in a fresh page each, so that nothing is remembered.
 * `npm run bench scale`; EVENTS=1000000 for the largest,
 * STEPS=fill,open for some steps only. Aim there: open within 2 s and 200 MB.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type CDPSession, type Page, chromium } from '@playwright/test';
import { bundlePage } from '../faults/bundle.ts';
import type { ScaleStep } from './scale-page.ts';

// Not bundled with the bench: the script serves the folder beside it.
const script = `${process.cwd()}/scripts/serve.js`;
const { serve } = (await import(
  /* @vite-ignore */ script
)) as typeof import('../../scripts/serve.js');

const SIZES = process.env.EVENTS ? [Number(process.env.EVENTS)] : [10_000, 100_000];
const ALL_STEPS: readonly ScaleStep[] = [
  'fill',
  'open',
  'sort one more',
  'grades',
  'plan',
  'rebuild',
  'export',
  'import',
  'import again',
  'rebuild the import'
];
const WANTED = process.env.STEPS?.split(',');
const STEPS = ALL_STEPS.filter((step) => !WANTED || WANTED.includes(step));

const folder = await bundlePage('tests/bench/scale-page.ts');
const site = await serve(0, { folder });
console.log('events | step | ms | heap MB at its most | heap MB kept | answer');
for (const events of SIZES) {
  const profile = mkdtempSync(join(tmpdir(), 'evencourse-scale-'));
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: process.env.CHROMIUM_PATH ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu']
  });
  const page = await context.newPage();
  const browser = await context.newCDPSession(page);
  for (const step of STEPS) {
    // The import takes the file that the export made, so it stays on the page.
    if (!step.startsWith('import')) {
      await page.goto(site.url);
      await page.waitForFunction(() => 'scaleStep' in window);
    }
    const { tookMs, most, kept, answer } = await measured(page, browser, step, events);
    const figures = [tookMs.toFixed(0), most.toFixed(0), kept.toFixed(0)];
    console.log([events, step, ...figures, answer.slice(0, 60)].join(' | '));
  }
  await context.close();
  rmSync(profile, { recursive: true, force: true });
}
site.close();
rmSync(folder, { recursive: true, force: true });

async function measured(page: Page, browser: CDPSession, step: ScaleStep, events: number) {
  let most = 0;
  let isDone = false;
  const watch = (async () => {
    while (!isDone) {
      most = Math.max(most, await heapMegabytes(browser));
      await new Promise((resume) => setTimeout(resume, 100));
    }
  })();
  const timed = await page.evaluate(([name, count]) => window.scaleStep(name, count), [
    step,
    events
  ] as const);
  isDone = true;
  await watch;
  most = Math.max(most, await heapMegabytes(browser));
  await browser.send('HeapProfiler.collectGarbage');
  return { ...timed, most, kept: await heapMegabytes(browser) };
}

async function heapMegabytes(browser: CDPSession): Promise<number> {
  const { usedSize } = await browser.send('Runtime.getHeapUsage');
  return usedSize / 2 ** 20;
}
