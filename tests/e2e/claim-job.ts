import { readFileSync } from 'node:fs';
import { type Page, expect } from '@playwright/test';
import { openFolds, startJob } from './helpers.ts';

/** Enters five pallets of 1,000 slates, each ten layers of a hundred. */
export async function enterPallets(page: Page): Promise<void> {
  for (const label of ['A', 'B', 'C', 'D', 'E']) {
    await page.getByLabel('Name on the pallet').fill(label);
    await page.getByLabel('Slates', { exact: true }).fill('1 000');
    await page.getByLabel('Layers', { exact: true }).fill('10');
    await page.getByLabel('Slates in a layer').fill('100');
    await page.getByRole('button', { name: 'Add pallet' }).click();
    await expect(page.getByRole('rowheader', { name: label, exact: true })).toBeVisible();
  }
}

/** Draws a list by an own plan: good and poor delivery as share outside and chance, per cent. */
export async function drawOwnList(
  page: Page,
  [good, goodChance, poor, poorChance]: readonly string[],
  drawAtLeast: string
): Promise<void> {
  await page.getByRole('radio', { name: /Own plan from two risks/ }).check();
  await page.getByLabel('Good delivery: share outside').fill(good);
  await page.getByLabel('Good delivery: accepted at least').fill(goodChance);
  await page.getByLabel('Poor delivery: share outside').fill(poor);
  await page.getByLabel('Poor delivery: accepted at most').fill(poorChance);
  await page.getByLabel('Draw more than the plan asks').fill(drawAtLeast);
}

/** Says that sizes come later, where the slate in hand gets the full check and it is asked. */
export async function sizesLater(page: Page): Promise<void> {
  const later = page.getByRole('button', { name: 'Save, sizes later' });
  if (await later.isVisible()) await later.click();
}

/** Saves the slate in hand by its button, without sizes where it gets the full check. */
export async function saveSlate(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Save slate' }).click();
  await sizesLater(page);
}

/**
 * Types readings as a gauge does; each saves the slate before it, the last by its button. At the
 * first that gets the full check it is said that sizes come later.
 */
export async function gaugeSlates(page: Page, readings: readonly string[]): Promise<void> {
  for (const reading of readings) {
    await page.keyboard.type(reading, { delay: 5 });
    await page.keyboard.press('Enter');
    const later = page.getByRole('button', { name: 'Save, sizes later' });
    const inHand = page.locator('.verdict .title').getByText(`${reading} mm`, { exact: true });
    await expect(later.or(inHand)).toBeVisible();
    await sizesLater(page);
    await expect(inHand).toBeVisible();
  }
  await saveSlate(page);
}

/** A day as a date field takes it, so many days from today. */
export function dayFromNow(days: number): string {
  return new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10);
}

/** The order of the claim, with all that a buyer has on paper. */
async function enterOrder(page: Page, job: string): Promise<void> {
  const fill = async (fields: readonly (readonly [string, string])[]): Promise<void> => {
    for (const [label, value] of fields) await page.getByLabel(label, { exact: true }).fill(value);
  };
  await page.goto(`${job}/delivery/order`);
  await fill([
    ['Supplier', 'Heron'],
    ['Length', '500'],
    ['Width', '250'],
    ['Nominal thickness', '6'],
    ['Tolerance, plus or minus', '10'],
    ['Where it states the tolerance', 'order, line 2'],
    ['Slates ordered', '5,020'],
    ['Packed thickness of 100 slates', '610'],
    ['Arrived on', dayFromNow(-2)],
    ['Days to claim', '14']
  ]);
  await openFolds(page, 'Limits the order or contract states');
  for (const [limit, where] of [
    ['Length', 'order, line 1'],
    ['No broken slate', 'terms, clause 4']
  ]) {
    await page.getByRole('checkbox', { name: new RegExp(`^${limit}`) }).check();
    await page.getByLabel(`${limit}: where it says so`).fill(where);
  }
  await page.getByLabel('How far a stack may be off the label').fill('3');
  await openFolds(page, 'Papers of the delivery');
  await fill([
    ['Buyer', 'Wren'],
    ['Order number', 'P-117'],
    ['Number of the delivery note', 'DN-40'],
    ['Batch numbers on the pallets', 'B7 and B8'],
    ['Product, as the order names it', 'Slates 500 × 250'],
    ['Ordered on', dayFromNow(-30)],
    ['Make or number of the gauge, and its step', 'gauge no. 3, step 0.01 mm'],
    ['Who measured', 'Siskin'],
    ['Gauge last checked on', dayFromNow(-3)],
    ['Answer wanted by', dayFromNow(9)]
  ]);
  await page.getByLabel('Credit', { exact: true }).check();
  await page.getByLabel('Collection', { exact: true }).check();
  await openFolds(page, 'What each answer costs');
  await fill([
    ['Price per thousand', '1850'],
    ['Currency', 'EUR'],
    ['Credit per thousand', '120'],
    ['Days a query takes', '3'],
    ['Days until a replacement', '10'],
    ['Cost of a day’s delay', '80'],
    ['Cost of sending the slates back', '250']
  ]);
  await page.getByRole('button', { name: 'Save the order' }).click();
  await expect(page.getByText('Saved.', { exact: true })).toBeVisible();
}

/** What is found on a slate of the claim besides its thickness; the others ring clear, no fault. */
const MARKED: Readonly<Record<number, { ring: 'Clear' | 'Dull'; defect?: string }>> = {
  2: { ring: 'Dull' },
  6: { ring: 'Clear', defect: 'Broken' },
  7: { ring: 'Dull' },
  8: { ring: 'Clear', defect: 'Inclusion' }
};

/** Thickness of each of the 40 slates, mm: five outside 5.40 to 6.60, one of them by a hundredth. */
const GAUGED = Array.from({ length: 40 }, (_, index) =>
  ([7.1, 4.9, 6.61, 5.3, 6.9][index] ?? 5.5 + index * 0.02).toFixed(2)
);

/** Sizes of the slates that get the full check: the second is too short, the third bows. */
const FULL_CHECKS = Array.from({ length: 10 }, (_, index) => [
  ['Length', index === 1 ? '489' : '499.5'],
  ['Width', '250.5'],
  ['Out of square over the length', '2'],
  ['Long edge from straight', '1.5'],
  ['Face from flat', index === 2 ? '8' : '3']
]);

/** Measures the slate at hand, in full where the list asks for it; tells whether it did. */
async function measureSlate(page: Page, index: number, fullChecked: number): Promise<boolean> {
  await page.keyboard.type(GAUGED[index], { delay: 5 });
  await page.keyboard.press('Enter');
  await expect(page.locator('.verdict .title')).toHaveText(`${GAUGED[index]} mm`);
  const isFull = await page.getByText('Full check: measure size').isVisible();
  const marked = MARKED[index];
  if (isFull) {
    const fold = await openFolds(page, 'Size, squareness, edge, bow');
    for (const [label, value] of FULL_CHECKS[fullChecked])
      await fold.getByLabel(label, { exact: true }).fill(value);
  }
  if (marked || isFull) {
    await page.getByRole('button', { name: marked?.ring ?? 'Clear', exact: true }).click();
    await page.getByRole('button', { name: marked?.defect ?? 'None seen', exact: true }).click();
    await page.getByRole('button', { name: 'Save slate' }).click();
  } else await page.getByRole('button', { name: 'Rings clear, no fault' }).click();
  if (index < GAUGED.length - 1)
    await expect(page.getByText(`${index + 1} of 40 measured`)).toBeVisible();
  return isFull;
}

/** Measures the list of the claim, slate by slate; the fifth is taken back and measured again. */
async function measureClaim(page: Page): Promise<void> {
  let fullChecked = 0;
  for (const index of GAUGED.keys()) {
    if (index === 4) {
      await measureSlate(page, index, fullChecked);
      await page.getByRole('button', { name: 'Undo last slate' }).click();
      await expect(page.getByText('4 of 40 measured')).toBeVisible();
    }
    if (await measureSlate(page, index, fullChecked)) fullChecked++;
  }
  expect(fullChecked).toBe(FULL_CHECKS.length);
  await expect(page.getByText('All places of the list are measured.')).toBeVisible();
}

/**
 * Writes a claim as a buyer does, from an empty job to the signature: 5,020 slates ordered and 5,000
 * delivered, an own plan (4 % outside passes 95 times in 100, 20 % at most 10 times), 40 drawn and
 * measured, faults, a stack and a photo. Gives the address of the job.
 */
export async function writeClaim(page: Page): Promise<string> {
  const job = await startJob(page, 'North shed');
  await enterOrder(page, job);
  await enterPallets(page);
  await page.goto(`${job}/delivery/sample`);
  await drawOwnList(page, ['4', '95', '20', '10'], '40');
  await page.getByRole('button', { name: 'Draw the list' }).click();
  await page.getByRole('link', { name: 'Measure them' }).click();
  await expect(page.getByText('0 of 40 measured')).toBeVisible();
  const photo = await page.screenshot();
  await measureClaim(page);
  await page.getByLabel('Thickness of the stack').fill('622');
  await page.getByRole('button', { name: 'Save stack' }).click();
  await expect(page.getByText('100 slates: 622 mm')).toBeVisible();
  await page.getByLabel('Photo of').selectOption('The delivery');
  await page.getByLabel('What it shows').fill('broken corner');
  await page
    .getByLabel('Add a photo')
    .setInputFiles({ name: 'corner.png', mimeType: 'image/png', buffer: photo });
  await expect(page.getByRole('img', { name: 'The delivery: broken corner' })).toBeVisible();

  await page.goto(`${job}/delivery/findings`);
  await page.getByRole('button', { name: 'Sign the verdict' }).click();
  await page.getByRole('button', { name: 'Sign', exact: true }).click();
  await expect(page.getByText('Write who signs')).toBeVisible();
  await page.getByLabel('Signed by').fill('Wren');
  await page.getByRole('button', { name: 'Sign', exact: true }).click();
  await expect(page.getByText(/^Refuse: signed by Wren/)).toBeVisible();
  return job;
}

/** The text of the job's backup file. */
export async function backupOf(page: Page, job: string): Promise<string> {
  await page.goto(`${job}/files`);
  await page.getByRole('button', { name: 'Make a backup file' }).click();
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the file' }).click();
  return readFileSync(await (await saving).path(), 'utf8');
}
