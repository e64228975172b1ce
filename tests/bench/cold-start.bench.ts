/**
 * A cold start on a poor line and a slow phone: 400 kbit/s, 400 ms, processor slowed 6×. Aims:
 * first words 2 s, button 5 s over at most 15 requests and 110 kB. The line of
 * the app's worker, which fetches the rest afterwards, is not slowed here.
 */
import { coldStart, slowDown } from '../faults/cold-start.ts';
import { launchBrowser } from './bench-browser.ts';

// Not bundled with the bench: the script serves the folder beside it.
const script = `${process.cwd()}/scripts/serve.js`;
const { serve } = (await import(
  /* @vite-ignore */ script
)) as typeof import('../../scripts/serve.js');

const LINE = { bitsPerSecond: 400_000, latencyMs: 400, slowdown: 6 };

const site = await serve(0);
const browser = await launchBrowser();
const context = await browser.newContext({
  baseURL: site.url,
  viewport: { width: 390, height: 844 }
});
const page = await context.newPage();
await slowDown(page, LINE);
const { wordsMs, buttonMs, requests, bytes } = await coldStart(page);
const seconds = (ms: number): string => `${(ms / 1000).toFixed(1)} s`;
console.log('first words | button | requests before it | kB before it');
console.log([seconds(wordsMs), seconds(buttonMs), requests, (bytes / 1000).toFixed(1)].join(' | '));
console.log('aim: 2 s | 5 s | 15 | 110');
await browser.close();
site.close();
