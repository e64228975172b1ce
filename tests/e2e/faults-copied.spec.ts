import { type BrowserContext, type Page, expect, test } from '@playwright/test';
import { backUp, restore } from '../faults/files.ts';
import { expectGapless, gaugedCounts, jobIdOf, jobOnDisk } from '../faults/journal-on-disk.ts';
import { gaugeSlate, startSorting } from '../faults/sorting.ts';
import { CopiedPhones } from './copied-phone.ts';

const phones = CopiedPhones.ofEachTest();

test('J25, J26: of a copied browser profile both are kept, and a third device takes the result', async ({
  browser,
  baseURL,
  launchOptions
}) => {
  const start = (folder: string) => phones.start(folder, { ...launchOptions, baseURL });
  const onSort = async (context: BrowserContext, address: string): Promise<Page> => {
    const page = await context.newPage();
    await page.goto(address);
    await page.getByRole('button', { name: /^A\b/ }).first().click();
    return page;
  };

  test.setTimeout(300_000);
  const phoneFolder = phones.fresh();
  let phone = await start(phoneFolder);
  let page = await phone.newPage();
  const address = await startSorting(page);
  const jobId = jobIdOf(page);
  await gaugeSlate(page, 510);
  await phone.close();
  const copyFolder = phones.copyOf(phoneFolder);

  phone = await start(phoneFolder);
  page = await onSort(phone, address);
  for (const hundredths of [600, 610, 620]) await gaugeSlate(page, hundredths);
  const ofPhone = (await backUp(page, address)).text;

  const copy = await start(copyFolder);
  const other = await onSort(copy, address);
  for (const hundredths of [700, 710]) await gaugeSlate(other, hundredths);
  const ofCopy = (await backUp(other, address)).text;
  await other.goto('/');
  await restore(other, ofPhone);
  await expect(other.getByText('This phone was copied.')).toBeVisible();
  await other.getByRole('button', { name: 'Keep both' }).click();
  await expect(other.getByText('Taken in: 3 entries')).toBeVisible();
  const kept = await jobOnDisk(other, jobId);
  expectGapless(kept.events);
  const readings = [510, 600, 610, 620, 700, 710];
  expect([...gaugedCounts(kept.events)].sort()).toEqual(readings.map((reading) => [reading, 1]));
  const result = (await backUp(other, address)).text;

  // The first phone, a device that holds the copy's branch, and a new one take the result.
  const third = await browser.newContext({ baseURL });
  const thirdPage = await third.newPage();
  await thirdPage.goto('/');
  expect(await restore(thirdPage, ofCopy)).toContain('Taken in:');
  await page.goto('/');
  for (const taking of [page, thirdPage]) {
    expect(await restore(taking, result)).toContain('Taken in:');
    const there = await jobOnDisk(taking, jobId);
    expectGapless(there.events);
    expect([...gaugedCounts(there.events)].sort()).toEqual([...gaugedCounts(kept.events)].sort());
    expect(there.parts).toBe((await jobOnDisk(other, jobId)).parts);
  }
  await Promise.all([phone.close(), copy.close(), third.close()]);
});
