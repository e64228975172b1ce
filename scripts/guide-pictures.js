/**
 * The pictures of docs/guide.md and the README, taken of the built app on a phone: first of a new
 * job, then of the worked example. `npm run pictures` runs it.
 */
import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import { serve } from './serve.js';
import { ensureChromium } from './tools.js';

const FOLDER = fileURLToPath(new URL('../docs/guide/', import.meta.url));
/** Readings for the pictures, mm: invented. */
const READINGS = ['6.2', '5.4', '7.1', '6.6', '4.9', '6.3', '5.8'];
/** What each screen of the worked example shows once its figures are there. */
const EXAMPLE = {
  grades: { path: '/grades', ready: /joints? in 100 will show/ },
  sort: { path: '/sort', ready: /Tap the pile of each slate/ },
  roof: { path: '/roof', ready: /courses/ },
  courses: { path: '/courses', ready: /Most even/ },
  lay: { path: '/lay', ready: /course 1 of/ },
  findings: { path: '/delivery/findings', ready: /Verdict:/ }
};

mkdirSync(FOLDER, { recursive: true });
const { url, close } = await serve(0);
const browser = await chromium.launch({
  executablePath: ensureChromium(),
  args: ['--no-sandbox', '--disable-gpu']
});
try {
  const page = await browser.newPage({
    viewport: { width: 390, height: 844 },
    locale: 'en-GB',
    timezoneId: 'UTC',
    reducedMotion: 'reduce'
  });
  page.setDefaultTimeout(60_000);
  const shot = async (/** @type {string} */ name) => {
    await page.evaluate(() => document.fonts.ready);
    await page.screenshot({ path: `${FOLDER}${name}.png` });
  };

  await page.goto(url);
  await page.getByLabel('Name of the job').fill('Barn behind the mill');
  await page.getByRole('button', { name: 'Start' }).click();
  await page.waitForURL(/\/job\/[0-9a-f-]+$/);
  await page.goto(`${page.url()}/sort`);
  await page.getByLabel('Name on the pallet').fill('A');
  await page.getByLabel('Slates on it').fill('480');
  await shot('pallet');
  await page.getByRole('button', { name: 'Add pallet' }).click();
  await page.getByRole('button', { name: 'Gauge', exact: true }).click();
  await page.getByRole('button', { name: 'Yes, millimetres' }).click();
  await page.getByRole('button', { name: 'Seen' }).click();
  for (const reading of READINGS) {
    await page.keyboard.type(reading);
    await page.keyboard.press('Enter');
  }
  await page.locator('.verdict', { hasText: '5.80 mm' }).getByText('saved').waitFor();
  await shot('measure');

  // The worked example is sorted by hand: a new job was just set to the gauge.
  await page.evaluate(() => localStorage.clear());
  await page.goto(url);
  await page.getByRole('button', { name: 'Open the worked example' }).click();
  await page.waitForURL(/\/job\/[0-9a-f-]+$/);
  const job = page.url();
  for (const [name, { path, ready }] of Object.entries(EXAMPLE)) {
    await page.goto(job + path);
    await page.locator('main h1').first().waitFor({ state: 'attached' });
    await page.locator('main').getByText(ready).first().waitFor();
    if (name === 'sort') {
      await page.locator('.piles button').nth(1).click();
      await page.locator('.verdict').getByText('saved').waitFor();
    }
    await page.evaluate(() => new Promise((done) => requestIdleCallback(done, { timeout: 5000 })));
    await shot(name);
  }
} finally {
  await browser.close();
  close();
}
