import { expect as plainExpect, test as plainTest } from '@playwright/test';
import { expectSameWhenRebuilt, jobIdOf, jobOnDisk } from '../faults/journal-on-disk.ts';
import { saved } from '../faults/files.ts';
import { gaugeSlate, startSorting } from '../faults/sorting.ts';
import { expect, startJob, test } from './helpers.ts';

test('J7, J23: the health page shows a good write, what is kept, and recalculates every view', async ({
  page
}) => {
  await startSorting(page, 'Secret Barn');
  const jobId = jobIdOf(page);
  for (const hundredths of [510, 640]) await gaugeSlate(page, hundredths);
  await startJob(page, 'Other roof');
  await page.goto('/settings');
  await expect(page.getByText('A test entry was written and read back')).toBeVisible();
  await expect(page.getByRole('row', { name: 'Jobs 2', exact: true })).toBeVisible();
  await expect(page.getByRole('row', { name: 'Entries 5', exact: true })).toBeVisible();
  await expect(page.getByRole('row', { name: 'Entries not backed up 5' })).toBeVisible();
  await expect(page.getByRole('row', { name: 'Jobs to recalculate 0' })).toBeVisible();
  await expect(page.getByText('The browser may clear the data')).toBeVisible();
  await page.getByRole('button', { name: 'Ask the browser to keep the data' }).click();
  await expect(
    page.getByText(/The browser has promised to keep|The browser said no/)
  ).toBeVisible();

  const diagnostic = await page.locator('pre').innerText();
  expect(JSON.parse(diagnostic)).toMatchObject({ jobs: 2, events: 5, write: { ok: true } });
  expect(diagnostic).not.toMatch(/Secret|Barn|Other roof/);
  expect(diagnostic).not.toContain(jobId);

  await page.getByRole('button', { name: 'Make a file of each job' }).click();
  const saves = page.getByRole('button', { name: /^Save the file/ });
  await expect(saves).toHaveCount(2);
  const names: string[] = [];
  for (const save of await saves.all()) {
    const { text } = await saved(page, () => save.click());
    names.push((JSON.parse(text.split('\n')[0]) as { name: string }).name);
  }
  expect(names.sort()).toEqual(['Other roof', 'Secret Barn']);
  await expect(page.getByText('Noted as backed up.')).toHaveCount(2);
  await expect(page.getByRole('row', { name: 'Entries not backed up 0' })).toBeVisible();
  await page.reload();
  await expect(page.getByRole('row', { name: 'Entries not backed up 0' })).toBeVisible();
  await expectSameWhenRebuilt(page, jobId);
  expect((await jobOnDisk(page, jobId)).events).toHaveLength(4);
});

// The failing write is said in the console by the browser, so this test does not ask for silence.
plainTest(
  'a device that cannot write says so at the start, in red, with what to do',
  async ({ page }) => {
    await page.addInitScript(() => {
      const put = IDBObjectStore.prototype.put;
      Object.assign(window, { cannotWrite: true });
      IDBObjectStore.prototype.put = function (...given) {
        if ((window as { cannotWrite?: boolean }).cannotWrite)
          throw new DOMException('no room', 'QuotaExceededError');
        return put.apply(this, given);
      };
    });
    await page.goto('/');
    const alert = page.getByRole('alert');
    await plainExpect(alert).toContainText('The device is full');
    await plainExpect(alert).toContainText('Free some space');
    await page.evaluate(() => Object.assign(window, { cannotWrite: false }));
    await alert.getByRole('button', { name: 'Try again' }).click();
    await plainExpect(alert).toHaveCount(0);
  }
);
