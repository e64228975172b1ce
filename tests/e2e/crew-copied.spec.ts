import { type BrowserContext, type Page, devices, expect, test } from '@playwright/test';
import { jobOnDisk } from '../faults/journal-on-disk.ts';
import { CopiedPhones } from './copied-phone.ts';
import {
  CrewPhones,
  expectOnPiles,
  invite,
  join as joinJob,
  onPiles,
  tapPile
} from './crew-phones.ts';

const phones = CrewPhones.ofEachTest();
const copied = CopiedPhones.ofEachTest();

test('J25 over the hub: a copied phone is refused, one tap keeps both, a third takes it all', async ({
  browser,
  launchOptions
}) => {
  const start = (folder: string) =>
    copied.start(folder, { ...devices['Pixel 7'], ...launchOptions, baseURL: phones.site.url });
  const onSort = async (phone: BrowserContext, job: string): Promise<Page> => {
    const page = await phone.newPage();
    await page.goto(`${job}/sort`);
    await expect(page.locator('.piles button .count').first()).toBeVisible();
    return page;
  };
  const keeper = await phones.fresh(browser);
  const job = await phones.startCrew(keeper);
  const jobId = job.split('/').at(-1) ?? '';
  const link = await invite(keeper);

  const folder = copied.fresh();
  let phone = await start(folder);
  const first = await phone.newPage();
  await joinJob(first, link, 'Robin');
  await first.waitForURL(new RegExp(`${job}$`));
  await first.goto(`${job}/sort`);
  await tapPile(first);
  await expect(first.getByText('Shared with the crew')).toBeVisible();
  const before = await onPiles(first);
  await phone.close();
  const copyFolder = copied.copyOf(folder);

  phone = await start(folder);
  const page = await onSort(phone, job);
  for (let tap = 0; tap < 3; tap++) await tapPile(page);
  await expect(page.getByText('Shared with the crew')).toBeVisible();

  const copy = await start(copyFolder);
  // The copy goes to work where there is no signal.
  await copy.route('**/hub/**', (route) => route.abort());
  const other = await onSort(copy, job);
  await tapPile(other);
  await copy.unroute('**/hub/**');
  await tapPile(other);
  await expect(other.getByText('Not shared: this phone was copied. See Crew')).toBeVisible();
  // Refused: nothing of either is mixed up.
  await expectOnPiles(other, before + 2);
  await other.goto(`${job}/crew`);
  await expect(other.getByText('This phone was copied: the hub has other entries')).toBeVisible();
  await other.getByRole('button', { name: 'Keep both' }).click();
  await expect(other.getByText('All your entries are with the crew.')).toBeVisible();
  await expect(other.getByRole('button', { name: 'Keep both' })).toHaveCount(0);

  // Both work on; all three come to the same, each slate once.
  await other.goto(`${job}/sort`);
  await expectOnPiles(other, before + 5);
  await tapPile(other);
  await expectOnPiles(page, before + 6);
  await tapPile(page);
  await keeper.goto(`${job}/sort`);
  for (const one of [keeper, page, other]) await expectOnPiles(one, before + 7);
  await expect(other.getByText('Shared with the crew')).toBeVisible();
  const ids = async (on: Page): Promise<string[]> =>
    (await jobOnDisk(on, jobId)).events.map(({ id }) => id).sort();
  const all = await ids(keeper);
  expect(new Set(all).size).toBe(all.length);
  for (const one of [page, other]) expect(await ids(one)).toEqual(all);
  await Promise.all([phone.close(), copy.close()]);
});
