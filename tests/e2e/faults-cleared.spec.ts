import { type Page, expect, test } from '@playwright/test';
import { backUp, restore } from '../faults/files.ts';
import { expectGapless, jobIdOf, jobOnDisk, wholeDatabase } from '../faults/journal-on-disk.ts';
import { gaugeSlate, slatesOnScreen, startSorting, typeReading } from '../faults/sorting.ts';

const CLEARED = /The browser cleared this app's data on this device/;

/** Deletes the app's database from another page, as a browser does that needs the room. */
async function clearData(page: Page): Promise<void> {
  await page.evaluate(
    () =>
      new Promise<void>((done, failed) => {
        const request = indexedDB.deleteDatabase('evencourse');
        request.onsuccess = () => done();
        request.onerror = () => failed(request.error);
      })
  );
}

async function expectStopped(sort: Page, hundredths: number, onScreen: number): Promise<void> {
  await typeReading(sort, hundredths);
  await expect(sort.getByRole('alert')).toContainText(CLEARED);
  // What was sorted and what was not saved stay on the screen.
  await expect(sort.locator('.verdict')).toContainText((hundredths / 100).toFixed(2));
  expect(await slatesOnScreen(sort)).toBe(onScreen);
}

test('J24: data cleared under an open Sort page stop it; nothing goes into a nameless job, and the backup comes back whole', async ({
  page
}) => {
  const address = await startSorting(page);
  const jobId = jobIdOf(page);
  for (const hundredths of [510, 640]) await gaugeSlate(page, hundredths);
  const { text } = await backUp(page, address);
  await page.goto(address);
  await expect(page.locator('.verdict')).toBeVisible();
  await gaugeSlate(page, 655);
  const onScreen = await slatesOnScreen(page);

  const other = await page.context().newPage();
  await other.goto('/settings');
  await expect(other.getByText(/A test entry was written/)).toBeVisible();
  await clearData(other);
  await expectStopped(page, 700, onScreen);
  await expectStopped(page, 710, onScreen);
  expect((await jobOnDisk(other, jobId)).events).toEqual([]);

  // Another page starts afresh with the backup: the old page still adds nothing to it.
  await other.goto('/');
  expect(await restore(other, text)).toContain('Taken in:');
  const before = await wholeDatabase(other);
  await expectStopped(page, 720, onScreen);
  expect(await wholeDatabase(other)).toBe(before);
  expect(await restore(other, text)).toContain('were here already');

  // Loaded again, the page goes on from the backup.
  page.on('dialog', (dialog) => void dialog.accept());
  await page.goto('/');
  await page.goto(address);
  await page.getByRole('button', { name: /^A\b/ }).first().click();
  await gaugeSlate(page, 730);
  const { events } = await jobOnDisk(page, jobId);
  expectGapless(events);
  expect(new Set(events.map(({ deviceId }) => deviceId)).size).toBe(2);
});
