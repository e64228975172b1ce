import { readFileSync } from 'node:fs';
import {
  type Browser,
  type BrowserContext,
  type Page,
  devices,
  expect,
  test
} from '@playwright/test';
import { type CrewSite, crewSite } from '../faults/crew-site.ts';

let site: CrewSite;
const phones: BrowserContext[] = [];
test.beforeEach(async () => {
  site = await crewSite();
});
test.afterEach(async () => {
  for (const phone of phones.splice(0)) await phone.close();
  await site.end();
});

/** A phone of its own, with nothing on it. */
async function newPhone(browser: Browser): Promise<Page> {
  const context = await browser.newContext({ ...devices['Pixel 7'], baseURL: site.url });
  phones.push(context);
  return context.newPage();
}

async function openExample(page: Page): Promise<string> {
  await page.goto('/');
  await page.getByRole('button', { name: 'Open the worked example' }).click();
  await page.waitForURL(/\/job\/[0-9a-f-]+$/);
  return new URL(page.url()).pathname;
}

/** Starts a crew for the worked example, and gives the job's address. */
async function startCrew(page: Page): Promise<string> {
  await page.goto(site.keyLink);
  await expect(page.getByText('This device can start crews now.')).toBeVisible();
  expect(new URL(page.url()).hash).toBe('');
  const job = await openExample(page);
  await page.goto(`${job}/crew`);
  await page.getByLabel('Your name, as the crew sees it').fill('Wren');
  await page.getByRole('button', { name: 'Start a crew for this job' }).click();
  await expect(page.getByText('All your entries are with the crew.')).toBeVisible();
  return job;
}

async function invite(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Invite somebody', exact: true }).click();
  await expect(page.getByRole('img', { name: 'The invitation as a QR code' })).toBeVisible();
  return page.locator('.url').innerText();
}

async function join(page: Page, link: string, name: string): Promise<void> {
  await page.goto(link);
  await page.getByLabel('Your name, as the crew sees it').fill(name);
  await page.getByRole('button', { name: 'Join', exact: true }).click();
}

/** Slates on the piles of the pallet in use, as Sort shows them. */
async function onPiles(page: Page): Promise<number> {
  const said = await page.locator('.piles button .count').allInnerTexts();
  return said.reduce((sum, one) => sum + Number(one.replace(/\D/g, '')), 0);
}

/** Taps a pile: another than before, since the same one twice at once is a bounce of one tap. */
async function tapPile(page: Page): Promise<void> {
  await expect(page.locator('.piles button .count').first()).toBeVisible();
  const before = await onPiles(page);
  await page
    .locator('.piles button')
    .nth(before % 3)
    .click();
  await expect(async () => expect(await onPiles(page)).toBe(before + 1)).toPass();
  await expect(page.locator('.verdict .status')).toContainText('saved');
}

test('J32, J35: two phones hold one job: invited, sorted on both, a day without signal, removed', async ({
  browser
}) => {
  const keeper = await newPhone(browser);
  const job = await startCrew(keeper);
  const link = await invite(keeper);
  expect(link.length).toBeLessThanOrEqual(120);

  const mate = await newPhone(browser);
  await join(mate, link, 'Robin');
  await mate.waitForURL(new RegExp(`${job}$`));
  await mate.goto(`${job}/sort`);
  await keeper.goto(`${job}/sort`);
  await expect(mate.locator('.piles button').first()).toBeVisible();
  await expect(mate.getByText('Shared with the crew')).toBeVisible();
  const start = await onPiles(keeper);
  expect(await onPiles(mate)).toBe(start);

  // What one does shows on the other, both ways.
  await tapPile(mate);
  await expect(async () => expect(await onPiles(keeper)).toBe(start + 1)).toPass();
  await tapPile(keeper);
  await expect(async () => expect(await onPiles(mate)).toBe(start + 2)).toPass();

  // Without signal both work on; nothing is lost and nothing counted twice.
  await mate.context().setOffline(true);
  for (let tap = 0; tap < 3; tap++) await tapPile(mate);
  await expect(mate.getByText('3 entries not shared yet')).toBeVisible();
  await tapPile(keeper);
  expect(await onPiles(keeper)).toBe(start + 3);
  await mate.context().setOffline(false);
  await expect(mate.getByText('Shared with the crew')).toBeVisible();
  for (const page of [mate, keeper])
    await expect(async () => expect(await onPiles(page)).toBe(start + 6)).toPass();

  // Removed, a device keeps what it has and is told so.
  await keeper.goto(`${job}/crew`);
  await expect(keeper.getByText('Robin', { exact: true })).toBeVisible();
  keeper.on('dialog', (dialog) => void dialog.accept());
  await keeper.getByRole('button', { name: 'Remove Robin' }).click();
  await expect(keeper.getByText('Robin', { exact: true })).toHaveCount(0);
  await tapPile(mate);
  await expect(mate.getByText('Not shared: removed from the crew')).toBeVisible();

  // The hub's file tells nothing of the job.
  const held = readFileSync(site.file).toString('latin1');
  for (const word of ['Wren', 'Robin', 'slateTapped', 'long barn'])
    expect(held).not.toContain(word);
});

test('who leaves a job while it is being shared, and opens it again, goes on sharing', async ({
  browser
}) => {
  const page = await newPhone(browser);
  const job = await startCrew(page);
  await page.goto('/');
  // The hub's first answer comes only once the job was left.
  let answer: () => void = () => undefined;
  const isLeft = new Promise<void>((resolve) => (answer = resolve));
  let isAsked: () => void = () => undefined;
  const asked = new Promise<void>((resolve) => (isAsked = resolve));
  await page.route('**/hub/1/*/pull', async (route) => {
    isAsked();
    await isLeft;
    await route.continue();
  });
  await page.locator(`a[href$="${job}"]`).first().click();
  await asked;
  await expect(page.getByText('Looking for the hub…')).toBeVisible();
  await page.getByRole('link', { name: 'All jobs' }).click();
  await expect(page.getByRole('heading', { name: 'Evencourse' })).toBeVisible();
  answer();
  await page.locator(`a[href$="${job}"]`).first().click();
  await expect(page.getByText('Shared with the crew')).toBeVisible();
});

test('an invitation lets one person in, once', async ({ browser }) => {
  const keeper = await newPhone(browser);
  await startCrew(keeper);
  const link = await invite(keeper);
  const first = await newPhone(browser);
  await join(first, link, 'Robin');
  await first.waitForURL(/\/job\/[0-9a-f-]+$/);
  const second = await newPhone(browser);
  await join(second, link, 'Finch');
  await expect(second.getByText('This invitation was used already.')).toBeVisible();
  await second.goto('/join');
  await second.getByLabel('The link that you were sent').fill(`Here: ${link.slice(0, -4)}`);
  await second.getByRole('button', { name: 'Open the link' }).click();
  await expect(second.getByText('Some of the link is missing.')).toBeVisible();
});

test('a job without a crew asks no hub for anything', async ({ browser }) => {
  const page = await newPhone(browser);
  const job = await openExample(page);
  await page.goto(`${job}/sort`);
  await tapPile(page);
  await page.goto(`${job}/crew`);
  await expect(page.getByText('This job is on this device only.')).toBeVisible();
  await expect(page.getByText('To start a crew, open the hub link on this device')).toBeVisible();
  expect(site.asked).toEqual([]);
});
