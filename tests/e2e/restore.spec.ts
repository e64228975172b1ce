import { backUp, restore } from '../faults/files.ts';
import { isTooWide } from './courses-job.ts';
import { expect, openEveryFold, openExample, openFolds, startJob, test } from './helpers.ts';

test('a backup restored on a fresh device opens the same job, and one tap leads on', async ({
  page,
  browser,
  baseURL,
  viewport
}) => {
  const address = await openExample(page);
  const facts = async (on: typeof page): Promise<string> => {
    await expect(on.getByRole('heading', { name: 'Every count' })).toBeVisible();
    await openEveryFold(on);
    await expect(on.getByText('Thickness measured', { exact: true })).toBeVisible();
    await expect(on.getByRole('img', { name: /^The roof/ })).toBeVisible();
    // What each device says of its own backups differs; the job does not.
    return (await on.locator('main').innerText()).replace(
      /\n+.*(?:on this device only|is backed up)[^]*?Files and backup\n+/,
      '\n'
    );
  };
  const before = await facts(page);
  const file = await backUp(page, address);

  const elsewhere = await browser.newContext({ baseURL, viewport });
  const other = await elsewhere.newPage();
  await other.goto('/');
  expect(await restore(other, file.text)).toMatch(/^Taken in: [0-9,]+ entries\.$/m);
  await expect(other.getByText(/^Taken in/)).toBeInViewport({ ratio: 1 });
  const open = other.getByRole('link', { name: 'Open the job' });
  await expect(open).toBeInViewport({ ratio: 1 });
  await open.click();
  await other.waitForURL(new URL(address).pathname);
  expect(await facts(other)).toBe(before);
  for (const screen of ['grades', 'roof', 'courses', 'sort']) {
    await other.goto(`${new URL(address).pathname}/${screen}`);
    await expect(other.locator('h1').first()).toBeAttached();
  }
  await elsewhere.close();
});

test('a file of readings is refused with its lines and taken in once mended', async ({ page }) => {
  const job = await startJob(page, 'Barn');
  await page.getByRole('link', { name: 'Files and backup' }).click();
  const choose = async (csv: string): Promise<void> =>
    page.getByLabel('Choose a CSV file').setInputFiles({
      name: 'readings.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(csv)
    });
  await choose('pallet,thickness_mm\nA,6.10\nA,61\nB,abc\n');
  await expect(page.getByText('Nothing was taken in.')).toBeVisible();
  await expect(page.getByRole('listitem')).toHaveText([
    /^Line 3: 61 mm is thicker/,
    /^Line 4: “abc”/
  ]);
  expect(await isTooWide(page)).toBe(false);
  await choose('pallet,thickness_mm\nA,6.10\nA,6.12\nB,5.40\n');
  await expect(page.getByText('Taken in: 3 slates on 2 pallets.')).toBeVisible();
  await expect(page.getByText('Nothing was taken in.')).toHaveCount(0);
  await page.goto(job);
  await openFolds(page, 'Every count');
  await expect(page.getByText('3 readings average 5.87 mm')).toBeVisible();
});
