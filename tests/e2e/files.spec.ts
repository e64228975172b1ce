import { expect, startJob, test } from './helpers.ts';

/** A wrong file, and words of the sentence that says what to mend. */
const WRONG: readonly (readonly [string, string | Buffer, RegExp])[] = [
  ['0', 'pallet,thickness_mm\nA,0\n', /Line 2: the thickness is 0/],
  ['-3', 'pallet,thickness_mm\nA,6.1\nA,-3\n', /Line 3: -3 is below zero/],
  ['60 mm', 'pallet,thickness_mm\nA,60\n', /Line 2: 60 mm is thicker than 40 mm/],
  ['abc', 'pallet,thickness_mm\nA,abc\n', /Line 2: “abc” is not a number/],
  ['6,4,2', 'pallet;thickness_mm\nA;6,4,2\n', /Line 2: “6,4,2” has more than one decimal mark/],
  ['1e9', 'pallet,thickness_mm\nA,1e9\n', /Line 2/],
  ['inches', 'pallet,thickness_mm\nA,0.25\nA,0.26\nA,0.24\n', /look like inches/],
  ['no column', 'pallet,colour\nA,grey\n', /There is no column thickness_mm or grade/],
  ['two decimal styles', 'pallet;thickness_mm\nA;6,4\nA;6.5\n', /Use one of them throughout/],
  ['torn last line', 'pallet,thickness_mm\nA,6.40\nA,6.50\nA,6.30\nA', /cut off|columns/],
  ['empty', '', /The file is empty/],
  ['junk', Buffer.alloc(4096, 7), /This is no text file/]
];

test('each wrong file gets a clear sentence, and nothing of it is stored', async ({ page }) => {
  const job = await startJob(page, 'Wrong files');
  await page.goto(`${job}/files`);
  for (const [name, content, sentence] of WRONG) {
    await page.getByLabel('Choose a CSV file').setInputFiles({
      name: 'readings.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(content)
    });
    await expect(page.getByText('Nothing was taken in.'), name).toBeVisible();
    await expect(page.getByRole('listitem').filter({ hasText: sentence }).first()).toBeVisible();
  }
  await expect(page.getByText('1 entry not backed up')).toBeVisible();
});

test('a file too large to be readings is refused before it is read', async ({ page }) => {
  const job = await startJob(page, 'Large file');
  await page.goto(`${job}/files`);
  const large = Buffer.alloc(25 * 1024 * 1024, 'pallet,thickness_mm\n');
  await page.getByLabel('Choose a CSV file').setInputFiles({
    name: 'readings.csv',
    mimeType: 'text/csv',
    buffer: large
  });
  await expect(page.getByText(/a file of readings has at most 20 MB/)).toBeVisible();
});

test('readings go out and come back the same in another job', async ({ page }) => {
  const first = await startJob(page, 'First');
  await page.goto(`${first}/files`);
  await page.getByLabel('Choose a CSV file').setInputFiles('seeds/readings.csv');
  await expect(page.getByText('Taken in: 2,000 slates on 6 pallets.')).toBeVisible();
  await page.getByRole('button', { name: 'CSV, point and comma' }).click();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the file' }).click();
  const saved = await (await download).path();
  const second = await startJob(page, 'Second');
  await page.goto(`${second}/files`);
  await page.getByLabel('Choose a CSV file').setInputFiles(saved);
  await expect(page.getByText('Taken in: 2,000 slates on 6 pallets.')).toBeVisible();
});
