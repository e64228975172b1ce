/**
 * The film in pictures of docs/crew.md: one morning on a phone (sorting), a tablet (planning) and a
 * laptop (judging), which share a job through a hub, while the phone's network is cut and restored.
 * Taken of the built app and a real hub; each picture waits for what it is to show. `npm run
 * pictures` runs it.
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import { hubKeyLink, openHubForServer } from './hub.js';
import { serve } from './serve.js';
import { ensureChromium } from './tools.js';

/** @typedef {import('@playwright/test').Page} Page */

const FOLDER = fileURLToPath(new URL('../docs/crew/', import.meta.url));
const MINUTE = 60_000;
/** The morning, by the clocks of hub and devices. */
const MORNING = Date.UTC(2026, 4, 6, 7, 30);

const realNow = Date.now;
let shift = MORNING - realNow();
Date.now = () => realNow() + shift;

const data = mkdtempSync(join(tmpdir(), 'evencourse-film-'));
mkdirSync(FOLDER, { recursive: true });
const hub = await openHubForServer({ HUB_DATA: data });
const { url, close } = await serve(0, { handlers: [hub.answer] });
const browser = await chromium.launch({
  executablePath: ensureChromium(),
  args: ['--no-sandbox', '--disable-gpu']
});

const FINGERS = { hasTouch: true, isMobile: true };
try {
  const tablet = await device({ viewport: { width: 820, height: 1180 }, ...FINGERS });
  const phone = await device({ viewport: { width: 390, height: 844 }, ...FINGERS });
  const laptop = await device({ viewport: { width: 1280, height: 800 } });
  const pages = [phone, tablet, laptop];
  const film = await filmOf(pages);

  // Wren starts the crew on his tablet and invites the two others.
  await tablet.goto(hubKeyLink(url, String(hub.newKey)));
  await says(tablet, 'This device can start crews now.');
  await tablet.goto(url);
  await tablet.getByRole('button', { name: 'Open the worked example' }).click();
  await tablet.waitForURL(/\/job\/[0-9a-f-]+$/);
  const job = tablet.url();
  await tablet.goto(`${job}/crew`);
  await tablet.getByLabel('Your name, as the crew sees it').fill('Wren');
  await tablet.getByRole('button', { name: 'Start a crew for this job' }).click();
  await says(tablet, 'All your entries are with the crew.');
  for (const [page, name] of /** @type {const} */ ([
    [laptop, 'Linnet'],
    [phone, 'Robin']
  ])) {
    await page.goto(await invite(tablet));
    await page.getByLabel('Your name, as the crew sees it').fill(name);
  }
  await film.take('invited', 'Wren invites two', [
    'He starts a crew for the job on his tablet and makes an invitation for each.',
    'Robin scans the code off his screen; Linnet opens the link that he sent her.'
  ]);
  for (const page of [phone, laptop]) {
    await page.getByRole('button', { name: 'Join', exact: true }).click();
    await page.waitForURL(job);
  }

  await later(25);
  await phone.goto(`${job}/sort`);
  await tablet.goto(`${job}/courses`);
  await says(tablet, 'In use');
  await laptop.goto(`${job}/delivery/findings`);
  for (const page of pages) await says(page, 'Shared with the crew');
  await sortSlates(phone, 12);
  for (const page of [tablet, laptop]) await newsOf(page, /^Robin: \d+ more sorted/);
  await film.take('sorting', 'Robin sorts, Wren plans, Linnet judges', [
    'What Robin sorts is on the other two within seconds, with a line of news beside the job’s name.',
    'After a minute the line goes.'
  ]);
  for (const page of [tablet, laptop]) await newsOf(page, /^$/);

  await later(50);
  await phone.context().setOffline(true);
  await sortSlates(phone, 17);
  await says(phone, '17 entries not shared yet');
  await tablet.getByRole('radio', { name: /^Most even/ }).check({ force: true });
  await tablet.getByRole('button', { name: 'Use this plan' }).waitFor();
  await tablet
    .locator('label', { hasText: /Most even.*runs out/s })
    .first()
    .waitFor();
  await laptop.getByRole('button', { name: 'Sign the verdict' }).click();
  await laptop.getByLabel('Signed by').fill('Linnet');
  await film.take('cut', 'The phone has no signal', [
    'Robin sorts on: his line says what waits.',
    'Wren tries another plan, Linnet is about to sign. Nobody waits for anybody.'
  ]);

  await later(40);
  await sortSlates(phone, 9);
  await says(phone, '26 entries not shared yet');
  await tablet.getByRole('button', { name: 'Use this plan' }).click();
  await says(tablet, 'In use, up to date.');
  await laptop.getByRole('button', { name: 'Sign', exact: true }).click();
  await says(laptop, 'signed by Linnet');
  await tablet.getByRole('link', { name: 'Lay', exact: true }).click();
  await tablet.getByRole('button', { name: 'Course laid' }).click();
  await says(tablet, '1 of 72 courses laid');
  await tablet.locator('button:enabled', { hasText: 'Course laid' }).waitFor();
  await says(laptop, '1 course is laid');
  for (const page of [tablet, laptop]) await says(page, 'Shared with the crew');
  await film.take('apart', 'Still cut: a plan, a course and a signature', [
    'Wren uses his plan and lays the first course; Linnet, who signed, sees it at once.',
    'Robin has neither yet, and they have none of his 26 slates.'
  ]);

  await later(30);
  await phone.context().setOffline(false);
  await says(phone, 'Shared with the crew');
  await newsOf(tablet, 'Robin: 26 more sorted');
  await phone.getByRole('link', { name: 'Job', exact: true }).click();
  await says(phone, 'Queried by Linnet');
  await says(phone, '1 of 72');
  await film.take('restored', 'Signal again', [
    'All that waited goes out by itself, and what the others did comes in.',
    'Robin’s phone has the course and the signature, the tablet his 26 slates.'
  ]);

  await later(5);
  /** @type {string[]} */
  const signs = [];
  for (const page of pages) {
    await page.goto(`${job}/crew`);
    await page.locator('main').getByText('Linnet', { exact: true }).waitFor();
    await page.getByText('Compare fingerprints').click();
    await page.getByRole('button', { name: 'Show the fingerprint' }).click();
    signs.push(await page.locator('.signs').innerText());
  }
  if (new Set(signs).size !== 1) throw new Error(`not the same job: ${signs.join(', ')}`);
  await film.take(
    'same',
    'One job on three devices',
    [
      'Crew says who is on the job and when each was last heard from.',
      'The same fingerprint on all three: they hold the same entries, to the letter.'
    ],
    '.signs'
  );
} finally {
  await browser.close();
  close();
  await hub.close();
  rmSync(data, { recursive: true, force: true });
}

/**
 * A device of its own, whose clock is that of the morning.
 *
 * @param {import('@playwright/test').BrowserContextOptions} options
 * @returns {Promise<Page>}
 */
async function device(options) {
  const context = await browser.newContext({
    locale: 'en-GB',
    timezoneId: 'UTC',
    reducedMotion: 'reduce',
    ...options
  });
  await context.addInitScript((first) => {
    const Real = Date;
    const now = () => Real.now() + (Number(localStorage.getItem('film.shift')) || first);
    window.Date = class extends Real {
      /** @param {unknown[]} given */
      constructor(...given) {
        // @ts-expect-error The arguments of a date are of several kinds.
        super(...(given.length > 0 ? given : [now()]));
      }
      static now() {
        return now();
      }
    };
  }, shift);
  const page = await context.newPage();
  page.setDefaultTimeout(180_000);
  return page;
}

/**
 * Lets the morning go on.
 *
 * @param {number} minutes
 */
async function later(minutes) {
  shift += minutes * MINUTE;
  for (const context of browser.contexts())
    for (const page of context.pages())
      if (page.url().startsWith('http'))
        await page.evaluate((to) => localStorage.setItem('film.shift', String(to)), shift);
}

/**
 * @param {Page} page
 * @param {string} words
 */
function says(page, words) {
  return page.getByText(words).first().waitFor();
}

/**
 * @param {Page} page
 * @param {string | RegExp} words
 */
function newsOf(page, words) {
  return page.locator('.top small', { hasText: words }).waitFor({ state: 'attached' });
}

/**
 * @param {Page} page
 * @returns {Promise<string>} the link of a new invitation
 */
async function invite(page) {
  const link = page.locator('.url');
  const before = (await link.count()) > 0 ? await link.innerText() : '';
  await page.getByRole('button', { name: 'Invite somebody', exact: true }).click();
  await link.filter({ hasNotText: before || 'nothing yet' }).waitFor();
  return link.innerText();
}

/**
 * Taps the piles in turn, each tap seen to be saved.
 *
 * @param {Page} page
 * @param {number} slates
 */
async function sortSlates(page, slates) {
  const piles = page.locator('.piles button');
  const counts = piles.locator('.count');
  await counts.first().waitFor();
  for (let slate = 0; slate < slates; slate++) {
    const pile = slate % 3;
    const before = await counts.nth(pile).innerText();
    await piles.nth(pile).tap();
    await counts
      .nth(pile)
      .filter({ hasNotText: new RegExp(`^${before}$`) })
      .waitFor();
  }
}

/**
 * Puts what the three screens show into one picture.
 *
 * @param {readonly Page[]} pages phone, tablet, laptop
 */
async function filmOf(pages) {
  const NAMES = ['Robin’s phone', 'Wren’s tablet', 'Linnet’s laptop'];
  const table = await (await browser.newContext()).newPage();
  let number = 0;
  return {
    /**
     * @param {string} name of the file
     * @param {string} caption
     * @param {readonly string[]} told what is to be seen
     * @param {string} [inSight] what must not lie below the screen, as a selector
     */
    async take(name, caption, told, inSight = 'body') {
      const time = new Date(Date.now()).toISOString().slice(11, 16);
      const screens = await Promise.all(
        pages.map(async (page, at) => {
          await page.evaluate(async (wanted) => {
            await document.fonts.ready;
            scrollTo(0, 0);
            const below = document.querySelector(wanted);
            if (wanted !== 'body') below?.scrollIntoView({ block: 'center' });
          }, inSight);
          const size = page.viewportSize();
          const png = (await page.screenshot()).toString('base64');
          return { png, label: NAMES[at], isWide: (size?.width ?? 0) > (size?.height ?? 0) };
        })
      );
      const webp = await table.evaluate(draw, { screens, title: `${time}  ${caption}`, told });
      const file = `${++number}-${name}.webp`;
      writeFileSync(join(FOLDER, file), Buffer.from(webp, 'base64'));
      console.log(`${file}: ${Math.round((webp.length * 3) / 4000)} kB`);
    }
  };
}

/**
 * Runs in a page: draws the screens side by side, each as high as the others but the laptop's,
 * under which stands what is to be seen, and gives the picture as WebP.
 *
 * @param {{ screens: { png: string, label: string, isWide: boolean }[], title: string,
 *   told: readonly string[] }} what
 */
async function draw({ screens, title, told }) {
  const [HIGH, WIDE_HIGH, GAP, TOP, LABEL] = [760, 600, 24, 56, 34];
  const images = await Promise.all(
    screens.map(async ({ png }) => {
      const image = new Image();
      image.src = `data:image/png;base64,${png}`;
      await image.decode();
      return image;
    })
  );
  const sizes = images.map((image, at) => {
    const height = screens[at].isWide ? WIDE_HIGH : HIGH;
    return { height, width: Math.round((image.width / image.height) * height) };
  });
  const canvas = document.createElement('canvas');
  canvas.width = sizes.reduce((sum, { width }) => sum + width + GAP, GAP);
  canvas.height = TOP + LABEL + HIGH + GAP;
  const pen = /** @type {CanvasRenderingContext2D} */ (canvas.getContext('2d'));
  pen.fillStyle = '#e9edf0';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.fillStyle = '#16232c';
  pen.font = '600 26px sans-serif';
  pen.fillText(title, GAP, 40);
  pen.imageSmoothingQuality = 'high';
  let left = GAP;
  images.forEach((image, at) => {
    const { width, height } = sizes[at];
    pen.font = '20px sans-serif';
    pen.fillText(screens[at].label, left, TOP + 22);
    pen.drawImage(image, left, TOP + LABEL, width, height);
    pen.strokeStyle = '#5b6b76';
    pen.strokeRect(left - 0.5, TOP + LABEL - 0.5, width + 1, height + 1);
    if (screens[at].isWide)
      told.forEach((line, below) =>
        pen.fillText(line, left, TOP + LABEL + height + 50 + below * 32, width)
      );
    left += width + GAP;
  });
  return canvas.toDataURL('image/webp', 0.82).split(',')[1];
}
