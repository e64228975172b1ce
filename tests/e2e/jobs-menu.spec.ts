import type { Locator, Page } from '@playwright/test';
import { twoSlopes } from './courses-job.ts';
import { backUp, restore } from '../faults/files.ts';
import { jobIdOf, jobOnDisk } from '../faults/journal-on-disk.ts';
import { gaugeSlate, startSorting } from '../faults/sorting.ts';
import { expect, openFolds, startJob, test } from './helpers.ts';
import { eventsOf, seedJob } from './seed-job.ts';

const line = (page: Page, name: string): Locator =>
  page.locator('li').filter({ has: page.getByText(name, { exact: true }) });
const told = (page: Page): Locator => page.locator('.told');

/** Opens the menu of a job's line, and what it asks for. */
async function choose(page: Page, name: string, what: string): Promise<Locator> {
  await page.goto('/');
  await page.getByRole('button', { name: `More: ${name}`, exact: true }).click();
  const menu = line(page, name).locator('.menu');
  await menu.getByRole('button', { name: what, exact: true }).click();
  return menu;
}

test('a job is renamed by an entry; no name and a name given before are refused', async ({
  page
}) => {
  await startJob(page, 'Chapel');
  const address = await startJob(page, 'Barn');
  const jobId = jobIdOf(page);
  const menu = await choose(page, 'Barn', 'Rename');
  const field = menu.getByLabel('New name');
  await expect(field).toBeFocused();
  await expect(field).toHaveValue('Barn');
  const save = menu.getByRole('button', { name: 'Save the name' });
  await field.fill('   ');
  await save.click();
  await expect(menu.getByText('Give the job a name, so that you find it again.')).toBeVisible();
  await field.fill('chapel ');
  await save.click();
  await expect(menu.getByText(/There is a job called chapel already/)).toBeVisible();
  await expect(field).toHaveValue('chapel ');
  await field.fill('Long barn');
  await save.click();
  await expect(told(page)).toHaveText('Renamed: Long barn.');
  await expect(page.locator('.menu')).toHaveCount(0);
  await expect(line(page, 'Long barn')).toBeVisible();
  await expect(line(page, 'Barn')).toHaveCount(0);
  expect((await eventsOf(page, jobId)).map(({ type }) => type)).toEqual([
    'jobOpened',
    'jobRenamed'
  ]);
  await page.goto(address);
  await expect(page.getByRole('heading', { name: 'Long barn', level: 1 })).toBeVisible();

  // A new job may not take it either.
  await page.goto('/');
  await expect(line(page, 'Long barn')).toBeVisible();
  await page.getByLabel('Name of the job').fill('long barn');
  await page.getByRole('button', { name: 'Start' }).click();
  await expect(page.getByText(/There is a job called long barn already/)).toBeVisible();
});

test('a job put away stays out of sight until it is brought back; its journal is as it was', async ({
  page
}) => {
  await startJob(page, 'Barn');
  const jobId = jobIdOf(page);
  await startJob(page, 'Chapel');
  const before = await jobOnDisk(page, jobId);
  await choose(page, 'Barn', 'Put away');
  await expect(told(page)).toContainText('Put away: Barn.');
  await expect(line(page, 'Barn')).toHaveCount(0);
  await page.reload();
  await expect(line(page, 'Chapel')).toBeVisible();
  await expect(line(page, 'Barn')).toHaveCount(0);
  const fold = await openFolds(page, 'Put away');
  await expect(fold.getByRole('link', { name: /^Barn/ })).toBeVisible();
  await fold.getByRole('button', { name: 'More: Barn' }).click();
  await fold.getByRole('button', { name: 'Bring back' }).click();
  await expect(page.locator('details', { hasText: 'Put away' })).toHaveCount(0);
  await expect(line(page, 'Barn')).toBeVisible();
  await choose(page, 'Barn', 'Put away');
  await choose(page, 'Chapel', 'Put away');
  await expect(page.getByText('Every job is put away.')).toBeVisible();
  expect(await jobOnDisk(page, jobId)).toEqual(before);
});

test('the roof of a job is copied into a new one: slopes and slate size, no readings', async ({
  page
}) => {
  await startJob(page, 'Empty');
  const jobId = await seedJob(page, twoSlopes(260));
  await page.goto(`/job/${jobId}`); // its row takes its name from its entries
  await expect(page.getByRole('link', { name: 'Courses' }).first()).toBeVisible();
  const before = await eventsOf(page, jobId);
  const menu = await choose(page, 'Seeded', 'Copy the roof');
  const field = menu.getByLabel('Name of the new job');
  await expect(field).toHaveValue('Seeded, copy');
  await field.fill('empty');
  await menu.getByRole('button', { name: 'Make the new job' }).click();
  await expect(menu.getByText(/There is a job called empty already/)).toBeVisible();
  await field.fill('Next door');
  await menu.getByRole('button', { name: 'Make the new job' }).click();
  await expect(page.getByRole('heading', { name: 'Next door', level: 1 })).toBeVisible();
  const copied = await eventsOf(page, jobIdOf(page));
  expect(copied.map(({ type }) => type)).toEqual([
    'jobOpened',
    'jobSettingsSet',
    'slateSpecSet',
    'slopeSet',
    'slopeSet'
  ]);
  const roofOf = (events: typeof before) =>
    ['slateSpecSet', 'slopeSet'].map((wanted) =>
      events
        .filter(({ type }) => type === wanted)
        .map(({ body }) => body)
        .sort((one, other) => (String(one.slopeId) < String(other.slopeId) ? -1 : 1))
    );
  expect(roofOf(copied)).toEqual(roofOf(before));
  expect(await eventsOf(page, jobId)).toEqual(before);

  const empty = await choose(page, 'Empty', 'Copy the roof');
  await empty.getByRole('button', { name: 'Make the new job' }).click();
  await expect(empty.getByText(/This job has no roof and no slate size yet/)).toBeVisible();
});

test('J36, J37: a job goes from this device only when backed up and named; its file brings it back', async ({
  page
}) => {
  await startJob(page, 'Chapel');
  const other = jobIdOf(page);
  const address = await startSorting(page);
  await gaugeSlate(page, 640);
  const jobId = jobIdOf(page);
  const untouched = await jobOnDisk(page, other);

  let menu = await choose(page, 'Long barn', 'Remove from this device');
  await menu.getByLabel('To remove it, type its name: Long barn').fill('long barn');
  await menu.getByRole('button', { name: 'Remove from this device' }).click();
  await expect(menu.getByText(/entries on this device only\. Back the job up/)).toBeVisible();
  await menu.getByRole('link', { name: 'Files and backup' }).click();
  await expect(page).toHaveURL(`${address.replace(/\/sort$/, '')}/files`);
  const file = await backUp(page, address);
  await expect(page.getByText('Noted as backed up.')).toBeVisible();
  const before = await jobOnDisk(page, jobId);

  menu = await choose(page, 'Long barn', 'Remove from this device');
  await expect(menu.getByText(/^Only this device loses the job\. .* Its backup of/)).toBeVisible();
  const field = menu.getByLabel('To remove it, type its name: Long barn');
  const remove = menu.getByRole('button', { name: 'Remove from this device' });
  for (const wrong of ['', 'Chapel', 'Long']) {
    await field.fill(wrong);
    await remove.click();
    await expect(menu.getByText('That is not its name. Type Long barn, or cancel.')).toBeVisible();
  }
  expect(await jobOnDisk(page, jobId)).toEqual(before);
  await field.fill('long barn');
  await remove.click();
  await expect(told(page)).toHaveText('Removed from this device: Long barn.');
  await expect(line(page, 'Long barn')).toHaveCount(0);
  expect((await jobOnDisk(page, jobId)).events).toEqual([]);
  expect((await jobOnDisk(page, jobId)).parts).toBe('[]');
  expect(await jobOnDisk(page, other)).toEqual(untouched);
  await page.goto(address);
  await expect(page.getByText(/This job is not on this device/)).toBeVisible();

  await page.goto('/');
  await expect(line(page, 'Chapel')).toBeVisible();
  expect(await restore(page, file.text)).toContain('Taken in:');
  expect(await jobOnDisk(page, jobId)).toEqual(before);
  await page.goto(address);
  await page.getByRole('button', { name: /^A\b/ }).first().click();
  await gaugeSlate(page, 650);
  const numbers = (await eventsOf(page, jobId)).map((event) => JSON.stringify(event));
  expect(numbers.length).toBeGreaterThan(0);
  await expect(page.getByText('1 entry not backed up')).toBeVisible();
  menu = await choose(page, 'Long barn', 'Remove from this device');
  await expect(
    menu.getByText(/1 entry not backed up: it goes only once they are backed up or shared\./)
  ).toBeVisible();
  await expect(menu.getByText('brings it back')).toHaveCount(0);
});

test('J38: a page on which a removed job is still open says so and saves nothing more', async ({
  page
}) => {
  const address = await startSorting(page);
  await gaugeSlate(page, 640);
  await backUp(page, address);
  await expect(page.getByText('Noted as backed up.')).toBeVisible();
  const jobId = jobIdOf(page);
  const open = await page.context().newPage();
  await open.goto(address);
  await expect(open.locator('main').getByRole('button').first()).toBeVisible();
  const menu = await choose(page, 'Long barn', 'Remove from this device');
  await menu.getByLabel(/type its name/).fill('Long barn');
  await menu.getByRole('button', { name: 'Remove from this device' }).click();
  await expect(told(page)).toHaveText('Removed from this device: Long barn.');
  await expect(open.getByText(/This job is not on this device/)).toBeVisible();
  expect((await jobOnDisk(page, jobId)).events).toEqual([]);
});
