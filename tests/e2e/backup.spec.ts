import { backUp, restore, saved } from '../faults/files.ts';
import { jobIdOf, jobOnDisk } from '../faults/journal-on-disk.ts';
import { gaugeSlate, startSorting } from '../faults/sorting.ts';
import { expect, openExample, test } from './helpers.ts';

test('J14: a backup restored on another device gives the same entries and the same view', async ({
  page,
  browser,
  baseURL
}) => {
  const address = await openExample(page);
  const jobId = jobIdOf(page);
  const file = await backUp(page, address);
  await expect(page.getByText('Noted as backed up.')).toBeVisible();
  await expect(page.getByText('All backed up')).toBeVisible();
  expect(file.name).toMatch(/\.evencourse\.jsonl$/);

  const elsewhere = await browser.newContext({ baseURL });
  const other = await elsewhere.newPage();
  await other.goto('/');
  expect(await restore(other, file.text)).toContain('Taken in:');
  await other.goto(`/job/${jobId}`);
  await expect(other.locator('h1')).toBeVisible();
  const [here, there] = [await jobOnDisk(page, jobId), await jobOnDisk(other, jobId)];
  expect(there.events).toEqual(here.events);
  expect(there.parts).toBe(here.parts);
  await other.goto('/');
  expect(await restore(other, file.text)).toContain('were here already');
  expect((await jobOnDisk(other, jobId)).events).toHaveLength(here.events.length);
  await other.goto(`/job/${jobId}`);
  await expect(other.getByText('All backed up')).toBeVisible();
  await elsewhere.close();
});

test('J20: own entries on top of a restored job are not backed up until a file holds them', async ({
  page,
  browser,
  baseURL
}) => {
  const address = await startSorting(page);
  await gaugeSlate(page, 640);
  const file = await backUp(page, address);
  const elsewhere = await browser.newContext({ baseURL });
  const other = await elsewhere.newPage();
  await other.goto('/');
  await restore(other, file.text);
  await other.goto(address);
  await expect(other.getByText('All backed up')).toBeVisible();
  await other.getByRole('button', { name: /^A\b/ }).first().click();
  await gaugeSlate(other, 650);
  await expect(other.getByText('1 entry not backed up')).toBeVisible();

  // More from the first device backs up nothing of this one.
  await page.goto(address);
  await expect(page.locator('.verdict')).toBeVisible();
  await gaugeSlate(page, 660);
  const longer = await backUp(page, address);
  await other.goto('/');
  expect(await restore(other, longer.text)).toContain('Taken in: 1 entry');
  await expect(other.getByText('1 entry not backed up')).toBeVisible();
  await elsewhere.close();
});

test('J20: a backup counts once the share sheet took it, not when it was closed', async ({
  page
}) => {
  await page.addInitScript(() => {
    let sheets = 0;
    Object.assign(navigator, {
      canShare: () => true,
      share: () =>
        sheets++ === 0
          ? Promise.reject(new DOMException('closed', 'AbortError'))
          : Promise.resolve()
    });
  });
  const address = await startSorting(page);
  await gaugeSlate(page, 640);
  await page.goto(address.replace('/sort', '/files'));
  await page.getByRole('button', { name: 'Make a backup file' }).click();
  const share = page.getByRole('button', { name: 'Share the file' });
  await share.click();
  await expect(page.getByText('It was not shared: the file is still here.')).toBeVisible();
  await expect(page.getByText('3 entries not backed up')).toBeVisible();
  await share.click();
  await expect(page.getByText('Noted as backed up.')).toBeVisible();
  await expect(page.getByText('All backed up')).toBeVisible();
});

test('J20: what is not backed up is counted on every screen of the job, also after one more slate', async ({
  page
}) => {
  const address = await startSorting(page);
  await gaugeSlate(page, 640);
  await expect(page.getByText('3 entries not backed up')).toBeVisible();
  await backUp(page, address);
  await expect(page.getByText('All backed up')).toBeVisible();
  await page.goto(address);
  await expect(page.locator('.verdict')).toBeVisible();
  await gaugeSlate(page, 650);
  await expect(page.getByText('1 entry not backed up')).toBeVisible();
});

test('text cells that a spreadsheet would run as formulas are escaped, numbers are not', async ({
  page
}) => {
  const address = await startSorting(page, '=HYPERLINK("http://x")');
  await page.getByRole('button', { name: 'Pallets' }).click();
  await page.getByLabel('Name on the pallet').fill('=1+cmd|calc');
  await page.getByLabel('Slates on it').fill('100');
  await page.getByRole('button', { name: 'Add pallet' }).click();
  await expect(page.getByRole('button', { name: /=1\+cmd/ }).first()).toBeVisible();
  await page.goto(address);
  await page.getByRole('button', { name: 'Pallets' }).click();
  await page
    .getByRole('button', { name: /=1\+cmd/ })
    .first()
    .click();
  await gaugeSlate(page, 640);
  await page.goto(address.replace('/sort', '/files'));
  await page.getByRole('button', { name: 'CSV, point and comma' }).click();
  const file = await saved(page, () => page.getByRole('button', { name: 'Save the file' }).click());
  expect(file.text).toContain("'=1+cmd|calc");
  expect(file.text).not.toMatch(/(^|[,;"])=1/m);
  expect(file.text).toContain('6.4');
  expect(file.name).not.toMatch(/[="/:]/);
});

test('J27: a file that reads back otherwise than it was written is not called a backup', async ({
  page
}) => {
  const address = await startSorting(page);
  await gaugeSlate(page, 640);
  await page.addInitScript(() => {
    // A disk that keeps all but the end of a file.
    File.prototype.slice = function (from, to) {
      return Blob.prototype.slice.call(this, from, Math.min(to ?? this.size, this.size - 40));
    };
  });
  await page.goto(address.replace('/sort', '/files'));
  await page.getByRole('button', { name: 'Make a backup file' }).click();
  await expect(page.getByText('No backup was made: the file did not pass')).toBeVisible();
  await expect(page.getByText('The file is cut off.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Save the file' })).toHaveCount(0);
  await expect(page.getByText('3 entries not backed up')).toBeVisible();
});
