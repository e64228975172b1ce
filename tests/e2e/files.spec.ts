import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
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
  ['ragged', 'pallet,thickness_mm\nA,6.1\nA\nA,6.3\n', /Line 3 has 1 column; the headings have 2/],
  ['failed formula', 'pallet,thickness_mm\nA,#DIV/0!\n', /when a formula fails/],
  ['fraction', 'pallet,thickness_mm\nA,3/8\n', /may be a fraction of an inch or two points/],
  ['T for a grade', 'pallet,grade\nA,T\n', /“T” may be thick or thin/],
  ['centimetres', 'pallet,thickness (cm)\nA,0.62\n', /has a unit that is not read/],
  ['wrong mean', 'pallet,P1,P2,mean\nA,6.1,6.3,6.9\n', /its points have the mean 6\.20 mm/],
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
  await page.getByRole('button', { name: 'CSV for a spreadsheet with decimal comma' }).click();
  await expect(page.getByText(/^First readings decimal comma\.csv is ready/)).toBeVisible();
  await page.getByRole('button', { name: 'CSV, point and comma' }).click();
  await expect(page.getByText(/^First readings\.csv is ready/)).toBeVisible();
  const download = page.waitForEvent('download');
  const save = page.getByRole('button', { name: 'Save the file' });
  await expect(save).toBeInViewport({ ratio: 1 });
  await save.click();
  const saved = await (await download).path();
  const second = await startJob(page, 'Second');
  await page.goto(`${second}/files`);
  await page.getByLabel('Choose a CSV file').setInputFiles(saved);
  await expect(page.getByText('Taken in: 2,000 slates on 6 pallets.')).toBeVisible();
});

test('a spreadsheet as a person types it is taken, and what was made of it is said', async ({
  page
}) => {
  const job = await startJob(page, 'By hand');
  await page.goto(`${job}/files`);
  const answer = page.getByRole('status');
  await choose(
    page,
    'Gate delivery;\nPallet No;Th. (mm)\nNorth;6,1\n;6,3/6,5\n;6,2\nSouth;5,9\n;6,0\nMean;6,12\n'
  );
  await expect(answer).toContainText('Is this line a slate, or a mean or total of the others?');
  await expect(answer).toContainText('Line 8: “Mean 6,12”');
  await expect(page.getByText('1 entry not backed up')).toBeVisible();
  await page.getByRole('button', { name: 'Leave the line out' }).click();
  await expect(answer).toContainText('Taken in: 5 slates on 2 pallets.');
  await expect(answer).toContainText(
    'New pallets, each as large as its lines in the file: North 3 slates, South 2 slates.'
  );
  await expect(answer).toContainText(
    'Lines 4–5, 7 name no pallet: taken as that of the line above.'
  );
  await expect(answer).toContainText('Not read, since it is no slate: line 1 “Gate delivery”.');
  await expect(answer).toContainText('“Th. (mm)” as thickness_mm');
  await expect(answer).toContainText('Left out as a mean or total: 1 line.');
  await page.getByRole('link', { name: 'Sizes of the pallets' }).click();
  await expect(page.getByRole('row', { name: /North/ })).toContainText('3');
  await expect(page.getByText('Mean', { exact: true })).toHaveCount(0);
});

test('what was measured and seen of the sample goes out and comes in again whole', async ({
  page
}) => {
  const first = await startJob(page, 'Sample');
  await page.goto(`${first}/files`);
  await choose(
    page,
    'pallet,layer,slate,P1,P2,length,width,ring,defects\nA,3,81,6.20,6.40,500,250,dull,twisted/tapered\n'
  );
  const answer = page.getByRole('status');
  await expect(answer).toContainText('Taken in: 1 slate on 1 pallet.');
  await expect(answer).toContainText('One slate of the sample is kept apart');
  const columns = await exportedLine(page);
  const second = await startJob(page, 'Sample again');
  await page.goto(`${second}/files`);
  await choose(page, columns);
  await expect(answer).toContainText('Taken in: 1 slate on 1 pallet.');
  const timeless = (csv: string): string => csv.replace(/\d{4}-\d\d-\d\dT[^,]*/, 'time');
  expect(timeless(await exportedLine(page))).toBe(timeless(columns));
  expect(columns).toContain('6.20/6.40,file,3,81,dull,twisted/tapered,500,250,,,,,yes');
});

/** The file of readings with points and commas, as it is saved. */
async function exportedLine(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'CSV, point and comma' }).click();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the file' }).click();
  return readFileSync(await (await download).path(), 'utf8');
}

test('a pallet that is called Mean can be one', async ({ page }) => {
  const job = await startJob(page, 'Mean');
  await page.goto(`${job}/files`);
  await choose(page, 'pallet,thickness_mm\nA,6.1\nA,6.3\nMean,6.2\n');
  await page.getByRole('button', { name: 'It is a slate' }).click();
  await expect(page.getByText('Taken in: 3 slates on 2 pallets.')).toBeVisible();
});

async function choose(page: Page, csv: string): Promise<void> {
  await page.getByLabel('Choose a CSV file').setInputFiles({
    name: 'readings.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(csv)
  });
}

test('the same file once more is asked about, and left out the job stays as it was', async ({
  page
}) => {
  const job = await startJob(page, 'Twice');
  await page.goto(`${job}/files`);
  const picker = page.getByLabel('Choose a CSV file');
  await picker.setInputFiles('seeds/readings.csv');
  await expect(page.getByText('Taken in: 2,000 slates on 6 pallets.')).toBeVisible();
  await expect(page.getByText('2,007 entries not backed up')).toBeVisible();
  await picker.setInputFiles('seeds/readings.csv');
  const question = page.getByText('All 2,000 readings of this file are already in this job');
  await expect(question).toBeVisible();
  await expect(question).toBeInViewport();
  await page.getByRole('button', { name: 'Leave them out' }).click();
  await expect(page.getByText('Nothing was taken in: the job is as it was.')).toBeVisible();
  await expect(page.getByText('2,007 entries not backed up')).toBeVisible();

  await picker.setInputFiles('seeds/readings.csv');
  await page.getByRole('button', { name: 'Take in all 2,000 all the same' }).click();
  await expect(page.getByText('Taken in: 2,000 slates on 6 pallets.')).toBeVisible();
  await expect(page.getByText('4,007 entries not backed up')).toBeVisible();
});

test('of a file that goes on from an earlier one only what is new is taken in', async ({
  page
}) => {
  const job = await startJob(page, 'Longer');
  await page.goto(`${job}/files`);
  const early = 'pallet,thickness_mm\nA,6.10\nA,6.10\nA,6.30\n';
  await choose(page, early);
  await expect(page.getByText('Taken in: 3 slates on 1 pallet.')).toBeVisible();
  await choose(page, `${early}A,6.10\nB,5.20\n`);
  await expect(
    page.getByText(/^3 of the 5 readings of this file are already in this job.* 2 are new\.$/)
  ).toBeVisible();
  await page.getByRole('button', { name: 'Take in only the 2 new ones' }).click();
  await expect(page.getByText('Taken in: 2 slates on 2 pallets.')).toBeVisible();
  await expect(
    page.getByText('Left out, because the job has them already: 3 readings.')
  ).toBeVisible();
  // Other slates of the same pallet, few of them alike, are no reason to ask.
  await choose(page, 'pallet,thickness_mm\nA,6.10\nA,7.11\nA,7.12\n');
  await expect(page.getByText('Taken in: 3 slates on 1 pallet.')).toBeVisible();
  await expect(page.getByText('11 entries not backed up')).toBeVisible(); // 1 job, 2 pallets, 8 slates
});

test('a long refusal stands clear of the bar of steps, and no file counts as not chosen', async ({
  page
}) => {
  const job = await startJob(page, 'Long refusal');
  await page.goto(`${job}/files`);
  const wrong = Array.from({ length: 60 }, (_, row) => `A,${60 + row}`).join('\n');
  await choose(page, `pallet,thickness_mm\n${wrong}\n`);
  const refusal = page.getByText('Nothing was taken in. Fix the file:');
  await expect(refusal).toBeInViewport({ ratio: 1 });
  await expect(page.getByText('readings.csv:')).toBeInViewport({ ratio: 1 });
  const bar = await page.getByRole('navigation', { name: 'Steps of the job' }).boundingBox();
  const listed = page.getByRole('listitem');
  await expect(listed.filter({ visible: true })).toHaveCount(8);
  for (const problem of await listed.filter({ visible: true }).all()) {
    const box = await problem.boundingBox();
    const isBeside = (bar?.x ?? 0) + (bar?.width ?? 0) <= (box?.x ?? 0);
    expect(isBeside || (box?.y ?? 0) + (box?.height ?? 0) <= (bar?.y ?? 0)).toBe(true);
  }
  await page.getByText('52 more problems').click();
  await expect(listed.filter({ visible: true })).toHaveCount(60);
  await expect(page.locator('input[type="file"]')).toHaveCSS('opacity', '0');
});
