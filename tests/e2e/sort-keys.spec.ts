import type { Page } from '@playwright/test';
import { burst } from './gauge-burst.ts';
import { expect, test } from './helpers.ts';
import { eventsOf } from './seed-job.ts';
import { openSortBench } from './sort-bench.ts';

const verdict = (page: Page) => page.locator('.verdict');

/** What was done to the slates of a job, in order, in few words. */
async function doneTo(page: Page, jobId: string): Promise<string[]> {
  const events = await eventsOf(page, jobId);
  return events.flatMap(({ type, body }) => {
    if (type === 'slateTapped') return [`pile ${String(body.pile)}`];
    if (type === 'slateGauged') return [String(body.points)];
    return type === 'entryVoided' ? ['undo'] : [];
  });
}

test('by hand the keys 1, 2 and 3 sort at once and never stand in the number box', async ({
  page
}) => {
  const jobId = await openSortBench(page, { way: 'hand' });
  for (const key of ['1', '2', '3', 'Numpad2']) await page.keyboard.press(key);
  await expect(verdict(page)).toContainText(/Medium.*saved/);
  await expect(page.locator('.entry .value')).toHaveText('–');
  await expect.poll(() => doneTo(page, jobId)).toEqual(['pile 1', 'pile 2', 'pile 3', 'pile 2']);
});

test('a held key counts once', async ({ page }) => {
  const jobId = await openSortBench(page, { way: 'hand' });
  // A second `down` of a key that is down comes with the sign of a repeat.
  for (let turn = 0; turn < 6; turn++) await page.keyboard.down('2');
  await page.keyboard.up('2');
  await page.keyboard.press('3');
  await expect(verdict(page)).toContainText(/Thin.*saved/);
  await expect.poll(() => doneTo(page, jobId)).toEqual(['pile 2', 'pile 3']);
});

test('a number that comes slowly gives back the slates that its digits sorted', async ({
  page
}) => {
  const jobId = await openSortBench(page, { way: 'hand' });
  const pressedAt = Date.now();
  await page.keyboard.press('3', { delay: 100 });
  await expect(verdict(page)).toContainText(/Thin.*saved/);
  // A second later by the person's time, however long the page took.
  await burst(page, ['.', '9', 'Enter'], 10, pressedAt + 1000);
  await expect(verdict(page)).toContainText(/3\.90 mm.*saved/);
  await expect
    .poll(async () => (await doneTo(page, jobId)).toSorted())
    .toEqual(['390', 'pile 3', 'undo']);
  await expect(page.getByRole('button', { name: 'A 399 left' })).toBeVisible();
});

test('a clicker learnt in Options sorts and takes back by any key', async ({ page }) => {
  const jobId = await openSortBench(page, { way: 'hand' });
  await page.getByRole('button', { name: 'Options' }).click();
  const keys = { '1 Thick': 'PageDown', '2 Medium': 'AudioVolumeUp', Undo: 'MediaTrackNext' };
  for (const [what, key] of Object.entries(keys)) {
    await page.getByRole('button', { name: `Learn: ${what}` }).click();
    await expect(page.getByText('Press the key now')).toBeVisible();
    await page.keyboard.press(key);
    await expect(page.getByRole('button', { name: `Remove: ${what}` })).toBeVisible();
  }
  await page.reload();
  await expect(page.getByRole('button', { name: 'Set aside' })).toBeVisible();
  for (const [key, says] of [
    ['PageDown', 'Thick'],
    ['AudioVolumeUp', 'Medium'],
    ['MediaTrackNext', 'Undone'],
    ['3', 'Thin']
  ]) {
    await page.keyboard.press(key);
    await expect(verdict(page)).toContainText(says);
  }
  await expect(verdict(page)).toContainText(/Thin.*saved/);
  await expect.poll(() => doneTo(page, jobId)).toEqual(['pile 1', 'pile 2', 'undo', 'pile 3']);
  await page.getByRole('button', { name: 'Options' }).click();
  await page.getByRole('button', { name: 'Remove: 1 Thick' }).click();
  await page.keyboard.press('PageDown');
  await page.keyboard.press('2');
  await expect.poll(async () => (await doneTo(page, jobId)).at(-1)).toBe('pile 2');
  expect(await doneTo(page, jobId)).toHaveLength(5);
});

test('a spot check is typed on a keyboard, and keys sort again after it', async ({ page }) => {
  const jobId = await openSortBench(page, { way: 'hand' });
  await page.getByRole('button', { name: 'Gauge', exact: true }).click();
  await page.getByRole('button', { name: 'Seen' }).click();
  for (const key of ['3', '.', '2', 'Enter']) await page.keyboard.press(key);
  await expect(verdict(page)).toContainText(/3\.20 mm.*saved/);
  await page.getByRole('button', { name: 'By hand' }).click();
  await page.keyboard.press('3');
  await expect.poll(() => doneTo(page, jobId)).toEqual(['320', 'pile 3']);
});
