/**
 * Weighs the JavaScript that each screen fetches before a person can do anything: gzipped as a
 * server sends it, in a browser with an empty cache. Aim: at most 118 kB on any screen.
 */
import { MOST_BYTES, firstLoad } from '../faults/first-load.ts';
import { JOB_SCREENS } from '../faults/screens.ts';
import { launchBrowser } from './bench-browser.ts';

// Not bundled with the bench: the script serves the folder beside it.
const script = `${process.cwd()}/scripts/serve.js`;
const { BUILD, serve } = (await import(
  /* @vite-ignore */ script
)) as typeof import('../../scripts/serve.js');

const site = await serve(0);
const browser = await launchBrowser();
const context = await browser.newContext({ baseURL: site.url, serviceWorkers: 'block' });
const page = await context.newPage();
await page.goto('/');
await page.getByRole('button', { name: 'Open the worked example' }).click();
await page.waitForURL(/\/job\//);
const job = new URL(page.url()).pathname;
let heaviest = 0;
console.log('screen | scripts | kB | gzipped kB');
for (const address of ['/', '/settings', ...JOB_SCREENS.map((screen) => `${job}${screen}`)]) {
  const fresh = await browser.newContext({
    baseURL: site.url,
    serviceWorkers: 'block',
    storageState: await context.storageState({ indexedDB: true })
  });
  const { files, bytes, gzipped } = await firstLoad(await fresh.newPage(), address, BUILD);
  await fresh.close();
  heaviest = Math.max(heaviest, gzipped);
  const kilobytes = [bytes, gzipped].map((size) => (size / 1000).toFixed(1));
  console.log(`${address.replace(job, '/job/…')} | ${files} | ${kilobytes.join(' | ')}`);
}
console.log(`heaviest ${(heaviest / 1000).toFixed(1)} kB, aim ${MOST_BYTES / 1000} kB`);
await browser.close();
site.close();
