import { craftedAddress, craftedFile } from '../faults/crafted-files.ts';
import { deleteRow } from '../faults/damage-rows.ts';
import { restore, saved } from '../faults/files.ts';
import { jobOnDisk } from '../faults/journal-on-disk.ts';
import { expect, test } from './helpers.ts';

const JOBS = 100;

/** One file with a hundred jobs of two entries each, the higher the number the newer. */
const hundred = Array.from({ length: JOBS }, (_, at) =>
  craftedFile(
    at + 1,
    `Grange ${at + 1}`,
    [
      { type: 'jobOpened', body: { name: `Grange ${at + 1}` } },
      { type: 'palletAdded', body: { palletId: 'p1', label: 'A', slates: 400 } }
    ],
    Date.UTC(2026, 1, 2, 8) + at * 60_000
  )
).join('');

test('100 jobs: newest first, found by name, backed up in one file that says what it lacks', async ({
  page,
  browser,
  baseURL
}) => {
  await page.goto('/');
  await expect(page.getByText('No job on this device yet.')).toBeVisible();
  expect(await restore(page, hundred)).toContain('Taken in: 100 jobs, 200 entries of them new.');
  const jobs = page.locator('li a');
  await expect(jobs.first()).toContainText('Grange 100');
  await expect(jobs.nth(1)).toContainText('Grange 99');
  await page.getByRole('button', { name: 'Show 88 more' }).click();
  await expect(jobs).toHaveCount(JOBS);

  const find = page.getByLabel('Find a job');
  await find.fill('GRÁNGE 77');
  await expect(jobs).toHaveCount(1);
  await expect(jobs.first()).toHaveAttribute('href', craftedAddress(77));
  await find.fill('mill');
  await expect(page.getByText('No job has “mill” in its name.')).toBeVisible();
  await find.fill('');

  // Of one job half is lost, of another all.
  for (const [job, lost] of [
    [13, 1],
    [14, 2]
  ]) {
    const jobId = craftedAddress(job).slice('/job/'.length);
    const { events } = await jobOnDisk(page, jobId);
    for (const { id } of events.slice(0, lost)) await deleteRow(page, 'events', [jobId, id]);
  }
  await page.getByRole('button', { name: 'Back up every job' }).click();
  await expect(page.getByText('In one file, read back and whole: 98 jobs.')).toBeVisible();
  await expect(page.getByText(/^Grange 13: This is not a whole backup/)).toBeVisible();
  await expect(page.getByText(/^Grange 14: No backup was made/)).toBeVisible();
  const file = await saved(page, () => page.getByRole('button', { name: 'Save the file' }).click());
  await expect(page.getByText('Noted as backed up.')).toBeVisible();

  const elsewhere = await browser.newContext({ baseURL });
  const other = await elsewhere.newPage();
  await other.goto('/');
  const answer = await restore(other, file.text);
  expect(answer).toContain('Taken in: 98 jobs, 196 entries of them new.');
  expect(answer).toContain('Not taken in: 1 job.');
  expect(answer).toContain('Grange 13: This file was made of a damaged job');
  await other.goto(craftedAddress(100));
  await expect(other.getByRole('heading', { name: 'Grange 100' })).toBeVisible();
  await expect(other.getByText('All backed up')).toBeVisible();
  await elsewhere.close();
});

test('with seven jobs there is nothing to search', async ({ page }) => {
  await page.goto('/');
  const parts = hundred.split(/(?<=\n)(?=\{"format")/);
  await restore(page, parts.slice(0, 7).join(''));
  await expect(page.locator('li a')).toHaveCount(7);
  await expect(page.getByLabel('Find a job')).toHaveCount(0);
  await restore(page, parts[7]);
  await expect(page.getByLabel('Find a job')).toBeVisible();
});
