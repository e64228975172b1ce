import { type BrowserContext, type Page, devices, expect, test } from '@playwright/test';
import { type CrewSite, crewSite } from '../faults/crew-site.ts';
import { jobIdOf, jobOnDisk } from '../faults/journal-on-disk.ts';

let site: CrewSite;
const phones: BrowserContext[] = [];
test.beforeEach(async () => {
  site = await crewSite();
});
test.afterEach(async () => {
  for (const phone of phones.splice(0)) await phone.close();
  await site.end();
});

async function joinBy(page: Page, link: string): Promise<void> {
  await page.goto(link);
  await page.getByLabel('Your name, as the crew sees it').fill('Robin');
  await page.getByRole('button', { name: 'Join', exact: true }).click();
  await page.waitForURL(/\/job\/[0-9a-f-]+$/);
}

async function inviteFrom(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Invite somebody', exact: true }).click();
  await expect(page.getByRole('img', { name: 'The invitation as a QR code' })).toBeVisible();
  return page.locator('.url').innerText();
}

/** Asks to remove the only job of the list, by its name. */
async function removeJob(page: Page, name: string): Promise<void> {
  await page.goto('/');
  await page.getByRole('button', { name: `More: ${name}`, exact: true }).click();
  const menu = page.locator('.menu');
  await menu.getByRole('button', { name: 'Remove from this device' }).click();
  await menu.getByLabel(/type its name/).fill(name);
  await menu.getByRole('button', { name: 'Remove from this device' }).click();
}

test('J36, J37: a shared job goes from one phone, the crew keeps it, an invitation brings it back', async ({
  browser
}) => {
  const [keeper, mate] = await Promise.all(
    [0, 1].map(async () => {
      const context = await browser.newContext({ ...devices['Pixel 7'], baseURL: site.url });
      phones.push(context);
      return context.newPage();
    })
  );
  const name = 'Shared barn';
  await keeper.goto(site.keyLink);
  await expect(keeper.getByText('This device can start crews now.')).toBeVisible();
  await keeper.goto('/');
  await keeper.getByLabel('Name of the job').fill(name);
  await keeper.getByRole('button', { name: 'Start' }).click();
  await keeper.waitForURL(/\/job\/[0-9a-f-]+$/);
  const jobId = jobIdOf(keeper);
  await keeper.goto(`/job/${jobId}/crew`);
  await keeper.getByLabel('Your name, as the crew sees it').fill('Wren');
  await keeper.getByRole('button', { name: 'Start a crew for this job' }).click();
  await expect(keeper.getByText('All your entries are with the crew.')).toBeVisible();

  await joinBy(mate, await inviteFrom(keeper));
  await mate.goto(`/job/${jobId}/sort`);
  await mate.getByLabel('Name on the pallet').fill('A');
  await mate.getByLabel('Slates on it').fill('400');
  await mate.getByRole('button', { name: 'Add pallet' }).click();
  await expect(mate.getByText('Shared with the crew')).toBeVisible();
  const palletOn = async (page: Page) => (await jobOnDisk(page, jobId)).events.length;
  await expect.poll(() => palletOn(keeper)).toBe(2);
  const before = await jobOnDisk(keeper, jobId);

  // Whoever holds the lock needs a backup: nobody else could be let in again.
  await removeJob(keeper, name);
  await expect(keeper.getByText(/^You hold the lock of this crew/)).toBeVisible();
  expect(await jobOnDisk(keeper, jobId)).toEqual(before);

  // A member needs none: the hub acknowledged all that is on his phone.
  await removeJob(mate, name);
  await expect(mate.getByText(`Removed from this device: ${name}.`)).toBeVisible();
  expect((await jobOnDisk(mate, jobId)).events).toEqual([]);
  expect(await jobOnDisk(keeper, jobId)).toEqual(before);

  await keeper.goto(`/job/${jobId}/crew`);
  await joinBy(mate, await inviteFrom(keeper));
  await expect.poll(() => palletOn(mate)).toBe(2);
  expect(await jobOnDisk(mate, jobId)).toEqual(before);
  await mate.goto(`/job/${jobId}/sort`);
  await mate.getByRole('button', { name: 'Pallets' }).click();
  await mate.getByLabel('Name on the pallet').fill('B');
  await mate.getByLabel('Slates on it').fill('300');
  await mate.getByRole('button', { name: 'Add pallet' }).click();
  await expect.poll(() => palletOn(keeper)).toBe(3);
});
