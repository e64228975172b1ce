/**
 * A cold start on a poor line and a slow phone: 400 kbit/s, 400 ms, processor slowed 6×. Aims:
 * first words 2 s, button 5 s over at most 15 requests and 110 kB, all of the app on the device
 * after 30 s. The line is slow for the page and for the app's worker alike.
 */
import { coldStart, slowProcessor } from '../faults/cold-start.ts';
import { slowLine } from '../faults/slow-line.ts';
import { launchBrowser } from './bench-browser.ts';

// Not bundled with the bench: the script serves the folder beside it.
const script = `${process.cwd()}/scripts/serve.js`;
const { serve } = (await import(
  /* @vite-ignore */ script
)) as typeof import('../../scripts/serve.js');

const site = await serve(0);
const line = await slowLine(site.port, 400_000, 400);
const browser = await launchBrowser();
const context = await browser.newContext({
  baseURL: line.url,
  viewport: { width: 390, height: 844 }
});
const page = await context.newPage();
await slowProcessor(page, 6);
const { wordsMs, buttonMs, requests, bytes } = await coldStart(page);
const offlineMs = await page.evaluate(() =>
  navigator.serviceWorker.ready.then(() => performance.now())
);
const seconds = (ms: number): string => `${(ms / 1000).toFixed(1)} s`;
console.log('first words | button | requests before it | kB before it | all offline');
console.log(
  [
    seconds(wordsMs),
    seconds(buttonMs),
    requests,
    (bytes / 1000).toFixed(1),
    seconds(offlineMs)
  ].join(' | ')
);
console.log('aim: 2 s | 5 s | 15 | 110 | 30 s');
await browser.close();
line.close();
site.close();
