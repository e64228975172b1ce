/**
 * npm run pictures [FOLDER] [SCREEN…]: makes the pictures of the guide, then photographs every screen of the built app with the worked
 * example, on a phone, a tablet and a desktop, light and dark, and tells how many words and how
 * many screens high each is on the phone. Run "npm run build" first.
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from '@playwright/test';
import { serve } from './serve.js';
import { ensureChromium } from './tools.js';

const [folder = 'pictures', ...wanted] = process.argv.slice(2);
const SCREENS = {
  job: '',
  sort: '/sort',
  grades: '/grades',
  roof: '/roof',
  courses: '/courses',
  lay: '/lay',
  delivery: '/delivery',
  findings: '/delivery/findings',
  'agreed-order': '/delivery/order',
  sample: '/delivery/sample',
  measure: '/delivery/measure',
  compare: '/delivery/compare',
  claim: '/delivery/sheet',
  order: '/order',
  sizes: '/sizes',
  crew: '/crew',
  sheet: '/sheet',
  tags: '/tags',
  files: '/files'
};
/** Screens of no job. */
const OUTSIDE = { jobs: '', quick: 'quick', settings: 'settings', join: 'join' };
const SIZES = /** @type {const} */ ({
  phone: { width: 390, height: 844 },
  tablet: { width: 820, height: 1180 },
  desktop: { width: 1280, height: 800 },
  wide: { width: 1920, height: 1080 }
});

mkdirSync(folder, { recursive: true });
const { url, close } = await serve(0);
const browser = await chromium.launch({
  executablePath: ensureChromium(),
  args: ['--no-sandbox', '--disable-gpu']
});
try {
  for (const colorScheme of /** @type {const} */ (['light', 'dark'])) {
    const context = await browser.newContext({ colorScheme, locale: 'en-GB', timezoneId: 'UTC' });
    const page = await context.newPage();
    page.setDefaultTimeout(120_000);
    await page.setViewportSize(SIZES.phone);
    await page.goto(url);
    await page.getByRole('button', { name: 'Open the worked example' }).click();
    await page.waitForURL(/\/job\/[0-9a-f-]+$/);
    const job = page.url();
    const pages = [
      ...Object.entries(OUTSIDE).map(([name, path]) => [name, new URL(path, url).href]),
      ...Object.entries(SCREENS).map(([name, path]) => [name, job + path])
    ];
    for (const [name, address] of pages) {
      if (wanted.length > 0 && !wanted.includes(name)) continue;
      for (const [size, viewport] of Object.entries(SIZES)) {
        await page.setViewportSize(viewport);
        await page.goto(address);
        await page.locator('main h1, main h2, main button').first().waitFor();
        await settled(page);
        const file = join(folder, `${name}-${size}-${colorScheme}.png`);
        await page.screenshot({ path: file, fullPage: size === 'phone' });
        if (size === 'phone' && colorScheme === 'light') console.log(name, await sizeOf(page));
      }
    }
    await context.close();
  }
} finally {
  await browser.close();
  close();
}

/**
 * Waits until main has not changed for a second.
 *
 * @param {import('@playwright/test').Page} page
 */
function settled(page) {
  return page.evaluate(
    () =>
      new Promise((resolve) => {
        let timer = setTimeout(resolve, 1000);
        new MutationObserver(() => {
          clearTimeout(timer);
          timer = setTimeout(resolve, 1000);
        }).observe(document.body, { childList: true, subtree: true, characterData: true });
      })
  );
}

/** @param {import('@playwright/test').Page} page */
function sizeOf(page) {
  return page.locator('main').evaluate((main) => {
    const words = main.innerText.split(/\s+/).filter((word) => /[\p{L}\p{N}]/u.test(word));
    const screens = main.getBoundingClientRect().height / window.innerHeight;
    return `${words.length} words, ${screens.toFixed(2)} screens`;
  });
}
