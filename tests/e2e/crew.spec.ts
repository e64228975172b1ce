import { readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import {
  CrewPhones,
  expectOnPiles,
  invite,
  join,
  onPiles,
  openExample,
  tapPile
} from './crew-phones.ts';

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
