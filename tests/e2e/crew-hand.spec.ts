import { readFileSync } from 'node:fs';
import { type Page, devices } from '@playwright/test';
import { giveCamera, lookAt } from '../faults/camera.ts';
import { CrewPhones, invite, onPiles, tapPile } from './crew-phones.ts';
import { expect, openExample, openFolds, startJob, takeIn, test } from './helpers.ts';

const phones = CrewPhones.ofEachTest();

/** Opens the job's part about sending, with a mate's code where he has one, and saves the file. */
async function saveForMate(page: Page, job: string, code = ''): Promise<string> {
  await page.goto(`${job}/crew`);
  const part = await openFolds(page, 'Send to a mate');
  await part.getByLabel('His code, if he has the job already').fill(code);
  const saved = page.waitForEvent('download');
  await part.getByRole('button', { name: 'Save the file' }).click();
  const file = await saved;
  expect(file.suggestedFilename()).toMatch(/, for a mate\.txt$/);
  return readFileSync(await file.path(), 'utf8');
}

async function ownCode(page: Page, job: string): Promise<string> {
  await page.goto(`${job}/crew`);
  const part = await openFolds(page, 'Send to a mate');
  return part.locator('.own').innerText();
}

async function openSent(page: Page, text: string): Promise<void> {
  await page.goto('/');
  await page
    .getByLabel('Choose a job file')
    .setInputFiles({ name: 'sent.txt', mimeType: 'text/plain', buffer: Buffer.from(text) });
}

test('a job goes to a mate as a file, and back only what is missing', async ({
  page,
  browser,
  baseURL
}) => {
  const job = new URL(await openExample(page)).pathname;
  const all = await saveForMate(page, job);
  expect(all).toContain('To open it in the app: Jobs, Open a job sent to me.');
  const context = await browser.newContext({ ...devices['Pixel 7'], baseURL });
  const mate = await context.newPage();
  await openSent(mate, all);
  await expect(mate.getByText(/^Taken in: [\d,]+ entries\.$/)).toBeVisible();
  await mate.getByRole('link', { name: 'Open the job' }).click();
  await mate.goto(`${job}/sort`);
  for (let tap = 0; tap < 3; tap++) await tapPile(mate);
  const sorted = await onPiles(mate);

  const code = await ownCode(page, job);
  const rest = await saveForMate(mate, job, code.toLowerCase());
  await expect(mate.getByText(/3 entries, \d+ kB\./)).toBeVisible();
  expect(rest.length).toBeLessThan(all.length / 10);
  // Pasted is as good as a file.
  await page.goto('/join');
  await page.getByLabel('What you were sent').fill(`Here you are!\n${rest}`);
  await page.getByRole('button', { name: 'Open it' }).click();
  await expect(page.getByText(/^Taken in: 3 entries/)).toBeVisible();
  await page.goto(`${job}/sort`);
  await expect(page.locator('.piles button .count').first()).toBeVisible();
  expect(await onPiles(page)).toBe(sorted);

  // A slip in the code, and one who has all.
  await mate.goto(`${job}/crew`);
  const part = await openFolds(mate, 'Send to a mate');
  const field = part.getByLabel('His code, if he has the job already');
  await field.fill(code.replace(/.$/, (last) => (last === 'A' ? 'B' : 'A')));
  await expect(part.getByText('That is no code of this job.')).toBeVisible();
  await field.fill(await ownCode(page, job));
  await expect(part.getByText('He has all of it already.')).toBeVisible();
  // Cut on the way.
  await openSent(mate, rest.slice(0, -40));
  await expect(mate.getByText('The file is cut off.')).toBeVisible();
  await context.close();
});

test('a job goes over as codes, from one screen to the camera of the other', async ({
  page,
  browser,
  baseURL
}) => {
  const job = await startJob(page, 'Long barn');
  const readings = Array.from(
    { length: 150 },
    (_, at) => `A,${(5 + ((at * 37) % 200) / 100).toFixed(2)}`
  );
  await takeIn(page, job, `pallet,thickness mm\n${readings.join('\n')}\n`);
  await page.goto(`${job}/crew`);
  const part = await openFolds(page, 'Send to a mate');
  await part.getByRole('button', { name: 'Show as codes' }).click();
  await expect(part.getByText(/^Code \d+ of [2-9]$/)).toBeVisible();

  const context = await browser.newContext({ ...devices['Pixel 7'], baseURL });
  const mate = await context.newPage();
  await giveCamera(mate);
  await mate.goto('/join');
  await mate.getByRole('button', { name: 'Scan a code' }).click();
  await expect(mate.getByText('Hold the camera over the code.')).toBeVisible();
  const isRead = mate.getByText(/^Taken in: 15\d entries\.$/);
  await lookAt(mate, part.getByRole('img', { name: 'A part of the job as a QR code' }), isRead);
  await mate.getByRole('link', { name: 'Open the job' }).click();
  await mate.waitForURL(new URL(job).pathname);
  await context.close();
});

test('an invitation is scanned from inside the app', async ({ browser }) => {
  const keeper = await phones.fresh(browser);
  const job = await phones.startCrew(keeper);
  await invite(keeper);
  const mate = await phones.fresh(browser);
  await giveCamera(mate);
  await mate.goto('/join');
  await mate.getByRole('button', { name: 'Scan a code' }).click();
  const shown = keeper.getByRole('img', { name: 'The invitation as a QR code' });
  await lookAt(mate, shown, mate.getByText('You are invited to a job.'));
  await mate.getByLabel('Your name, as the crew sees it').fill('Robin');
  await mate.getByRole('button', { name: 'Join', exact: true }).click();
  await mate.waitForURL(new RegExp(`${job}$`));
});

test('without a camera, or where it is not allowed, the app says so', async ({ page }) => {
  await page.goto('/join');
  for (const [name, sentence] of [
    ['NotFoundError', 'No camera found. Paste the text or open the file.'],
    ['NotAllowedError', 'The camera is not allowed.']
  ]) {
    await page.evaluate((fault) => {
      navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('', fault));
    }, name);
    await page.getByRole('button', { name: 'Scan a code' }).click();
    await expect(page.getByText(sentence)).toBeVisible();
  }
  await page.getByLabel('What you were sent').fill('Good morning');
  await page.getByRole('button', { name: 'Open it' }).click();
  await expect(page.getByText('That is no invitation and no job.')).toBeVisible();
});
