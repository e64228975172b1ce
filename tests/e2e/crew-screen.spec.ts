import { type Page, expect, test } from '@playwright/test';
import { CrewPhones, expectOnPiles, invite, join, onPiles, tapPile } from './crew-phones.ts';
import { openFolds } from './helpers.ts';

const phones = CrewPhones.ofEachTest();

test('an invitation not used yet is listed, and taken back it lets nobody in', async ({
  browser
}) => {
  const keeper = await phones.fresh(browser);
  await phones.startCrew(keeper);
  const link = await invite(keeper);
  const open = await openFolds(keeper, 'Invitations not used yet');
  await expect(open.getByText(/^made .*, good until /)).toBeVisible();
  keeper.on('dialog', (dialog) => void dialog.accept());
  await open.getByRole('button', { name: 'Take back' }).click();
  await expect(open).toHaveCount(0);
  await expect(keeper.locator('.url')).toHaveCount(0);
  const mate = await phones.fresh(browser);
  await join(mate, link, 'Robin');
  await expect(mate.getByText('This invitation was taken back. Ask for another.')).toBeVisible();
  // One that is used is open no more.
  const another = await invite(keeper);
  await join(mate, another, 'Robin');
  await mate.waitForURL(/\/job\/[0-9a-f-]+$/);
  await keeper.reload();
  await expect(keeper.getByText('Robin', { exact: true })).toBeVisible();
  await expect(keeper.getByText('Invitations not used yet')).toHaveCount(0);
});

test('without signal the screen still says who is on the job; who leaves is there no more', async ({
  browser
}) => {
  const { keeper, mate, job } = await phones.two(browser);
  await mate.goto(`${job}/sort`);
  await tapPile(mate);
  await expect(mate.getByText('Shared with the crew')).toBeVisible();
  await keeper.reload();
  const robin = keeper.getByRole('listitem').filter({ hasText: 'Robin' });
  await expect(robin).toContainText(/last heard from \d\d:\d\d/);
  await keeper.getByRole('link', { name: 'Job', exact: true }).click();
  await keeper.context().setOffline(true);
  await keeper.getByRole('link', { name: 'Crew', exact: true }).click();
  await expect(robin).toContainText(/last heard from \d\d:\d\d/);
  await expect(keeper.getByText('The hub does not answer.')).toBeVisible();
  await keeper.context().setOffline(false);

  mate.on('dialog', (dialog) => void dialog.accept());
  await mate.goto(`${job}/crew`);
  const leave = await openFolds(mate, 'Leave the crew');
  await leave.getByRole('button', { name: 'Leave the crew' }).click();
  await expect(mate.getByText('This job is on this device only.')).toBeVisible();
  await expect(async () => {
    await keeper.reload();
    await expect(keeper.getByText('Wren', { exact: true })).toBeVisible();
    await expect(robin).toHaveCount(0);
  }).toPass();
});

test('on Job, what the crew has is not said to be on this device only', async ({ browser }) => {
  const { keeper, mate, job } = await phones.two(browser);
  for (const page of [keeper, mate]) {
    await page.goto(job);
    await expect(page.getByText('The crew has all your entries.')).toBeVisible();
    await expect(page.getByText('on this device only')).toHaveCount(0);
  }
  await mate.goto('/');
  await expect(mate.getByText(/last entry .*; shared with a crew$/)).toBeVisible();
  await expect(mate.getByText('not backed up')).toHaveCount(0);
  await mate.goto(job);
  // Who was removed has nobody that holds what he adds.
  await keeper.goto(`${job}/crew`);
  keeper.on('dialog', (dialog) => void dialog.accept());
  await keeper.getByRole('button', { name: 'Remove Robin' }).click();
  await expect(mate.getByText('Not shared: removed from the crew')).toBeVisible();
  await expect(mate.getByText(/on this device only/)).toBeVisible();
});

test('only what the hub acknowledged counts as shared, on Jobs and after a reload', async ({
  browser
}) => {
  const { keeper, mate, job } = await phones.two(browser);
  // The hub answers no more: what is entered now stays on this phone.
  await mate.context().route('**/hub/**', (route) => route.abort());
  await mate.goto(`${job}/sort`);
  await tapPile(mate);
  await tapPile(mate);
  await expect(mate.getByText('2 entries not shared yet')).toBeVisible();
  await mate.reload();
  await expect(mate.getByText('2 entries not shared yet')).toBeVisible();
  await mate.goto('/');
  await expect(mate.getByText(/last entry .*; 2 entries not shared yet$/)).toBeVisible();
  await mate.context().unroute('**/hub/**');
  await mate.goto(`${job}/sort`);
  await expect(mate.getByText('Shared with the crew')).toBeVisible();
  await mate.goto('/');
  await expect(mate.getByText(/last entry .*; shared with a crew$/)).toBeVisible();

  // Of who was removed nobody holds what he adds; that is known without asking again.
  await mate.goto(job);
  await keeper.goto(`${job}/crew`);
  keeper.on('dialog', (dialog) => void dialog.accept());
  await keeper.getByRole('button', { name: 'Remove Robin' }).click();
  await expect(mate.getByText('Not shared: removed from the crew')).toBeVisible();
  await mate.context().route('**/hub/**', (route) => route.abort());
  await mate.reload();
  await expect(mate.getByText('Not shared: removed from the crew')).toBeVisible();
  await mate.goto('/');
  await expect(mate.getByText(/last entry .*; .* not backed up$/)).toBeVisible();
});

test('two devices with the same entries show the same fingerprint', async ({ browser }) => {
  const { keeper, mate, job } = await phones.two(browser);
  await keeper.goto(`${job}/sort`);
  await mate.goto(`${job}/sort`);
  await tapPile(keeper);
  await expectOnPiles(mate, await onPiles(keeper));
  const signs: string[] = [];
  for (const page of [keeper, mate]) {
    await page.goto(`${job}/crew`);
    const fold = await openFolds(page, 'Compare fingerprints');
    await fold.getByRole('button', { name: 'Show the fingerprint' }).click();
    await expect(fold.getByRole('status')).toHaveText(
      /^([0-9a-f]{4} ){3}[0-9a-f]{4} of [\d,]+ entries$/
    );
    signs.push(await fold.getByRole('status').innerText());
  }
  expect(signs[0]).toBe(signs[1]);
});

test('a clock three hours ahead is told, and the entries are shared all the same', async ({
  browser
}) => {
  const keeper = await phones.fresh(browser);
  await keeper.addInitScript(() => {
    const { now } = Date;
    Date.now = () => now() + 3 * 3_600_000;
  });
  await phones.startCrew(keeper);
  await expect(
    keeper.getByText('The clock of this device is 3 hours ahead of the hub’s.')
  ).toBeVisible();
  await expect(keeper.getByText('All your entries are with the crew.')).toBeVisible();
});

test('what a hub refuses is said in a sentence, waits, and is shared in the end', async ({
  browser
}) => {
  const { keeper, mate, job } = await phones.two(browser);
  await mate.goto(`${job}/sort`);
  await expect(mate.getByText('Shared with the crew')).toBeVisible();
  const start = await onPiles(mate);
  const refused = async (status: number, told: object, sentence: string): Promise<void> => {
    await mate.route('**/hub/1/*/parcel?**', (route) => route.fulfill({ status, json: told }));
    await tapPile(mate);
    await toCrew(mate);
    await expect(mate.getByText(sentence)).toBeVisible();
    await mate.unroute('**/hub/1/*/parcel?**');
    await mate.getByRole('link', { name: 'Sort', exact: true }).click();
  };
  await refused(507, { error: 'hub-full' }, 'The hub has no room left. Entries wait here');
  await refused(429, { error: 'too-many' }, 'The hub is busy.');
  const old = { error: 'other-version', versions: [0] };
  await refused(404, old, 'The hub is older than this app. Entries wait here');
  const newer = { error: 'other-version', versions: [2] };
  await refused(404, newer, 'The hub refused the entries. They wait here; load the newest');
  await tapPile(mate);
  await expect(mate.getByText('Shared with the crew')).toBeVisible();
  await keeper.goto(`${job}/sort`);
  await expectOnPiles(keeper, start + 5);
});

async function toCrew(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Job', exact: true }).click();
  await page.getByRole('link', { name: 'Crew', exact: true }).click();
}
