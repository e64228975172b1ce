import { readFileSync } from 'node:fs';
import { type Page, expect, test } from '@playwright/test';
import { readInvitation, writeInvitation } from '../../src/lib/sync/invitation.ts';
import {
  CrewPhones,
  expectOnPiles,
  invite,
  join,
  onPiles,
  openExample,
  tapPile
} from './crew-phones.ts';

import { openFolds } from './helpers.ts';

const phones = CrewPhones.ofEachTest();

test('J32, J35: two phones hold one job: invited, sorted on both, a day without signal, removed', async ({
  browser
}) => {
  const keeper = await phones.fresh(browser);
  const job = await phones.startCrew(keeper);
  const link = await invite(keeper);
  expect(link.length).toBeLessThanOrEqual(120);

  const mate = await phones.fresh(browser);
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
  await expectOnPiles(keeper, start + 1);
  await tapPile(keeper);
  await expectOnPiles(mate, start + 2);

  // Without signal both work on; nothing is lost and nothing counted twice.
  await mate.context().setOffline(true);
  for (let tap = 0; tap < 3; tap++) await tapPile(mate);
  await expect(mate.getByText('3 entries not shared yet')).toBeVisible();
  await tapPile(keeper);
  expect(await onPiles(keeper)).toBe(start + 3);
  await mate.context().setOffline(false);
  await expect(mate.getByText('Shared with the crew')).toBeVisible();
  for (const page of [mate, keeper]) await expectOnPiles(page, start + 6);

  // Removed, a device keeps what it has and is told so.
  await keeper.goto(`${job}/crew`);
  await expect(keeper.getByText('Robin', { exact: true })).toBeVisible();
  keeper.on('dialog', (dialog) => void dialog.accept());
  await keeper.getByRole('button', { name: 'Remove Robin' }).click();
  await expect(keeper.getByText('Robin', { exact: true })).toHaveCount(0);
  await tapPile(mate);
  await expect(mate.getByText('Not shared: removed from the crew')).toBeVisible();

  // The hub's file tells nothing of the job.
  const held = readFileSync(phones.site.file).toString('latin1');
  for (const word of ['Wren', 'Robin', 'slateTapped', 'long barn'])
    expect(held).not.toContain(word);
});

test('who leaves a job while it is being shared, and opens it again, goes on sharing', async ({
  browser
}) => {
  const page = await phones.fresh(browser);
  const job = await phones.startCrew(page);
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
  const keeper = await phones.fresh(browser);
  await phones.startCrew(keeper);
  const link = await invite(keeper);
  const first = await phones.fresh(browser);
  await join(first, link, 'Robin');
  await first.waitForURL(/\/job\/[0-9a-f-]+$/);
  const second = await phones.fresh(browser);
  await join(second, link, 'Finch');
  await expect(second.getByText('This invitation was used already.')).toBeVisible();
  await second.goto('/join');
  await second.getByLabel('What you were sent').fill(`Here: ${link.slice(0, -4)}`);
  await second.getByRole('button', { name: 'Open it' }).click();
  await expect(second.getByText('Some of the link is missing.')).toBeVisible();
});

test('a job without a crew asks no hub for anything', async ({ browser }) => {
  const page = await phones.fresh(browser);
  const job = await openExample(page);
  await page.goto(`${job}/sort`);
  await tapPile(page);
  await page.goto(`${job}/crew`);
  await expect(page.getByText('This job is on this device only.')).toBeVisible();
  await expect(page.getByText('To start a crew, open the hub link on this device')).toBeVisible();
  expect(phones.site.asked).toEqual([]);
});

test('the lock is changed: who was not invited again gets nothing more', async ({ browser }) => {
  const { keeper, mate, job } = await phones.two(browser);
  await mate.goto(`${job}/sort`);
  await expect(mate.getByText('Shared with the crew')).toBeVisible();
  keeper.on('dialog', (dialog) => void dialog.accept());
  const fold = await openFolds(keeper, 'Change the lock');
  await fold.getByRole('button', { name: 'Change the lock' }).click();
  await expect(keeper.getByText('Robin', { exact: true })).toHaveCount(0);
  await expect(keeper.getByText('All your entries are with the crew.')).toBeVisible();
  const link = await invite(keeper);

  // What comes after reaches whoever is invited again, with all that was before.
  await keeper.goto(`${job}/sort`);
  await tapPile(keeper);
  await expect(keeper.getByText('Shared with the crew')).toBeVisible();
  const slates = await onPiles(keeper);
  const third = await phones.fresh(browser);
  await join(third, link, 'Finch');
  await third.waitForURL(new RegExp(`${job}$`));
  await third.goto(`${job}/sort`);
  await expectOnPiles(third, slates);
  // The old space is as it was: he goes on alone in it, and sees nothing of the new one.
  await tapPile(mate);
  await expect(mate.getByText('Shared with the crew')).toBeVisible();
  await tapPile(third);
  await expectOnPiles(keeper, slates + 1);
  expect(await onPiles(mate)).toBe(slates);
});

test('photos go through the hub, and to a mate in his file', async ({ browser }) => {
  const { keeper, mate, job } = await phones.two(browser);
  await keeper.goto(`${job}/sort`);
  const pixel = Buffer.from(
    'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
    'base64'
  );
  const photos = await openFolds(keeper, 'Photos');
  await photos.getByLabel('What it shows').fill('rogue with a twist');
  await photos
    .getByLabel('Add a photo')
    .setInputFiles({ name: 'photo.png', mimeType: 'image/png', buffer: pixel });
  const shown = (page: Page) => page.getByRole('img', { name: 'Photo: rogue with a twist' });
  await expect(shown(keeper)).toBeVisible();
  await mate.goto(job);
  await openFolds(mate, 'Photos');
  await expect(shown(mate)).toBeVisible();

  await mate.goto(`${job}/crew`);
  const part = await openFolds(mate, 'Send to a mate');
  await expect(part.getByText(/ and 1 photo, /)).toBeVisible();
  const saved = mate.waitForEvent('download');
  await part.getByRole('button', { name: 'Save the file' }).click();
  const third = await phones.fresh(browser);
  await third.goto('/');
  await third.getByLabel('Choose a job file').setInputFiles(await (await saved).path());
  await third.getByRole('link', { name: 'Open the job' }).click();
  await openFolds(third, 'Photos');
  await expect(shown(third)).toBeVisible();
});

test('an invitation that is over, of another site, or of no hub here is said so', async ({
  browser
}) => {
  const keeper = await phones.fresh(browser);
  await phones.startCrew(keeper);
  const link = await invite(keeper);
  const mate = await phones.fresh(browser);
  const paste = async (text: string, sentence: string): Promise<void> => {
    await mate.goto('/join');
    await mate.getByLabel('What you were sent').fill(text);
    await mate.getByRole('button', { name: 'Open it' }).click();
    await expect(mate.getByText(sentence)).toBeVisible();
  };
  await paste('Good morning', 'That is no invitation and no job.');
  await paste(link.slice(0, -9), 'Some of the link is missing.');
  await paste(link.replace('#1.', '#2.'), 'The link is of a newer version.');
  // Rightly made, for another address.
  const read = await readInvitation(link);
  if (!read.ok) throw new Error(read.fault);
  const elsewhere = await writeInvitation({ ...read.invitation, origin: 'https://hub.example' });
  await paste(elsewhere, 'This invitation is for another address.');

  // What a hub answers, each in a sentence.
  for (const [status, error, sentence] of [
    [410, 'invite-expired', 'This invitation is older than seven days.'],
    [410, 'invite-revoked', 'This invitation was taken back.'],
    [404, 'invite-unknown', 'The hub does not know this invitation.'],
    [429, 'too-many', 'Too many tries in a minute.'],
    [400, 'other-version', 'Hub and app do not fit each other.'],
    [507, 'hub-full', 'The hub has no room left.']
  ] as const) {
    await mate.route('**/hub/**', (route) => route.fulfill({ status, json: { error } }));
    await join(mate, link, 'Robin');
    await expect(mate.getByText(sentence)).toBeVisible();
    await mate.unroute('**/hub/**');
  }
  // A page of some other server stands where the hub should be.
  await mate.route('**/hub/**', (route) => route.fulfill({ status: 404, body: '<html>' }));
  await join(mate, link, 'Robin');
  await expect(mate.getByText('The hub does not answer.')).toBeVisible();
  await mate.unroute('**/hub/**');
  // None of it used the invitation up.
  await join(mate, link, 'Robin');
  await mate.waitForURL(/\/job\/[0-9a-f-]+$/);
});
