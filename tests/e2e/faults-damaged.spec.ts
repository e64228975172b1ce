import { deleteRow, spoilRow } from '../faults/damage-rows.ts';
import { backUp, restore, saved } from '../faults/files.ts';
import { jobIdOf, jobOnDisk } from '../faults/journal-on-disk.ts';
import { gaugeSlate, slatesOnScreen, startSorting } from '../faults/sorting.ts';
import { expect, test } from './helpers.ts';

const THICKNESSES = [510, 640, 700, 655, 660];

test('J27, J30: of a damaged job what is left is saved, called no backup, and opens as a job of its own; the old backup heals it', async ({
  page
}) => {
  const address = await startSorting(page, 'Long barn');
  const jobId = jobIdOf(page);
  for (const hundredths of THICKNESSES) await gaugeSlate(page, hundredths);
  const whole = await backUp(page, address);
  await expect(page.getByText('Noted as backed up.')).toBeVisible();
  await page.goto(address);
  await expect(page.locator('.verdict')).toBeVisible();
  await gaugeSlate(page, 720);

  // Entries 1 and 2 are the job and its pallet, 3 to 8 the slates.
  const { events } = await jobOnDisk(page, jobId);
  await page.goto('/settings');
  await deleteRow(page, 'events', [jobId, events[3].id]);
  await spoilRow(page, 'events', [jobId, events[5].id], 'body');
  await page.reload();
  await page
    .getByRole('button', { name: /^Recalculate/ })
    .first()
    .click();
  await expect(page.getByText('Long barn: recalculated from 6 entries.')).toBeVisible();
  await expect(page.getByText('Entry 4 made on this device is gone.')).toBeVisible();
  await expect(page.getByText('Entry 6 made on this device cannot be read.')).toBeVisible();

  await page.goto(address.replace('/sort', '/files'));
  await page.getByRole('button', { name: 'Make a backup file' }).click();
  await expect(page.getByText('This is not a whole backup')).toBeVisible();
  await expect(page.getByText('Entry 4 made on this device is gone.')).toBeVisible();
  const rest = await saved(page, () => page.getByRole('button', { name: 'Save the file' }).click());
  await expect(page.getByText('Noted as backed up.')).toHaveCount(0);
  await expect(page.getByText('1 entry not backed up')).toBeVisible();

  await page.goto('/');
  expect(await restore(page, rest.text)).toContain('entries are missing in it');
  await page.getByRole('button', { name: 'Take it in as a job of its own' }).click();
  await page.getByRole('link', { name: 'Open the job' }).click();
  await expect(page.getByRole('heading', { name: 'Long barn (2)' })).toBeVisible();
  await expect(page.getByText('2 entries of that one are missing here.')).toBeVisible();
  expect(jobIdOf(page)).not.toBe(jobId);
  const own = await backUp(page, page.url());
  await expect(page.getByText('Noted as backed up.')).toBeVisible();
  expect(own.text.split('\n')[0]).not.toContain('missing');

  await page.goto('/');
  expect(await restore(page, whole.text)).toContain('Taken in: 2 entries');
  await page.goto(address);
  await expect(page.locator('.verdict')).toBeVisible();
  await page.getByRole('button', { name: /^A\b/ }).first().click();
  expect(await slatesOnScreen(page)).toBe(0); // no grades yet: the slates are measured, on no pile
  const again = await backUp(page, address);
  await expect(page.getByText('Noted as backed up.')).toBeVisible();
  expect(again.text.split('\n').length).toBe(1 + events.length + 1);
});

test('J28: a lost part of the view and a lost row of the job are repaired at the start', async ({
  page
}) => {
  const address = await startSorting(page, 'Long barn');
  const jobId = jobIdOf(page);
  await gaugeSlate(page, 640);
  const before = await jobOnDisk(page, jobId);
  const [pallet] = (JSON.parse(before.parts) as { part: string }[])
    .map(({ part }) => part)
    .filter((part) => part.startsWith('pallet:'));
  for (const damage of [
    () => deleteRow(page, 'parts', [jobId, pallet]),
    () => spoilRow(page, 'parts', [jobId, pallet], 'value'),
    () => deleteRow(page, 'jobs', jobId)
  ]) {
    await page.goto('/settings');
    await damage();
    await page.goto(address);
    await expect(page.getByRole('button', { name: /^A\b/ }).first()).toBeVisible();
    expect(await jobOnDisk(page, jobId)).toEqual(before);
  }
  await page.goto('/settings');
  await deleteRow(page, 'jobs', jobId);
  await page.goto('/');
  await expect(page.getByRole('link', { name: /Long barn/ })).toBeVisible();
});
