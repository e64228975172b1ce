import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { expect, openFolds, startJob, test } from './helpers.ts';
import { PAPERS, asPrinted, expectHeads, printed, smallestLetters, spaceless } from './paper.ts';

/** A job with a slate and one roof to start from; gives the job's address. */
async function startShape(page: Page, shape: string, measures: readonly string[]): Promise<string> {
  const job = await startJob(page, 'Barn');
  await page.goto(`${job}/roof`);
  await page.getByLabel('Length', { exact: true }).fill('500');
  await page.getByLabel('Width', { exact: true }).fill('250');
  await page.getByLabel('Headlap', { exact: true }).fill('100');
  await page.getByRole('button', { name: 'Save the slate' }).click();
  const shapes = page.getByRole('form', { name: 'Start from a shape' });
  await shapes.getByRole('button', { name: shape, exact: true }).click();
  const [length, depth, pitch] = measures;
  await shapes.getByLabel(/^Length/).fill(length);
  await shapes.getByLabel(/^Depth/).fill(depth);
  await shapes.getByLabel('Pitch').fill(pitch);
  await shapes.getByRole('button', { name: 'Draw this roof' }).click();
  return job;
}

test('a hipped roof is drawn from its shape and three measures, refused where it is none', async ({
  page
}) => {
  await startShape(page, 'Hipped', ['5000', '7000', '35']);
  await expect(page.getByText('Too small: at least 7,000 mm works here.')).toBeVisible();
  const shapes = page.getByRole('form', { name: 'Start from a shape' });
  await shapes.getByLabel(/^Length/).fill('12000');
  await shapes.getByRole('button', { name: 'Draw this roof' }).click();
  await expect(page.getByRole('img', { name: 'The roof from above, 4 slopes' })).toBeVisible();
  await openFolds(page, 'Hips, valleys and ridges');
  // rafter 3500 / cos 35° = 4273 in whole mm, its run 3500.2: √(4273² + 3500.2²) = 5523.6; ridge 12 − 7 m
  await expect(page.getByText('Hip, Front slope with Right end: 5,524 mm')).toBeVisible();
  await expect(page.getByText(/^Ridge, .*: 5,000 mm$/)).toBeVisible();
});

test('the slope round a hip is one tap, its rafter and pitch copied, and joins at once', async ({
  page
}) => {
  await startShape(page, 'Hipped', ['12000', '7000', '35']);
  await openFolds(page, 'Each slope');
  await page
    .getByRole('list', { name: /Slopes of this roof/ })
    .getByRole('button', { name: /Right end/ })
    .click();
  await page.getByRole('button', { name: 'Change Right end' }).click();
  await page.getByRole('button', { name: 'Remove Right end' }).click();
  await page.getByRole('button', { name: /^Add the slope round the .* hip of/ }).click();
  await expect(page.getByLabel('Rafter length, eave to ridge')).toHaveValue('4273');
  await expect(page.getByLabel('Pitch')).toHaveValue('35');
  await page.getByRole('button', { name: /^Save Slope/ }).click();
  await expect(page.getByRole('img', { name: 'The roof from above, 4 slopes' })).toBeVisible();
  await expect(page.getByRole('button', { name: /^Add the slope round/ })).toHaveCount(0);
});

test('a shape says how its depth is measured; a second slope takes the measures of the first', async ({
  page
}) => {
  const job = await startShape(page, 'Lean-to', ['8000', '3500', '35']);
  await expect(page.getByRole('img', { name: /The roof from above/ })).toBeVisible();
  await page.getByRole('button', { name: 'Add a slope' }).click();
  await page.getByRole('button', { name: 'Same as Lean-to' }).click();
  // 3500 / cos 35° = 4273 in whole mm
  await expect(page.getByLabel('Rafter length, eave to ridge')).toHaveValue('4273');
  await expect(page.getByLabel('Width along the eave')).toHaveValue('8000');
  await expect(page.getByLabel('Name of the slope')).not.toHaveValue('Lean-to');
  await expect(page.getByRole('button', { name: /^Same as/ })).toHaveCount(0);
  await page.getByRole('button', { name: /^Save Slope/ }).click();
  await expect(page.getByRole('img', { name: 'The roof from above, 2 slopes' })).toBeVisible();
  const other = await startJob(page, 'Shed');
  expect(other).not.toBe(job);
  await page.goto(`${other}/roof`);
  await page.getByLabel('Length', { exact: true }).fill('500');
  await page.getByLabel('Width', { exact: true }).fill('250');
  await page.getByLabel('Headlap', { exact: true }).fill('100');
  await page.getByRole('button', { name: 'Save the slate' }).click();
  const shapes = page.getByRole('form', { name: 'Start from a shape' });
  await expect(shapes.getByLabel('Depth of the house, eave to eave')).toHaveAccessibleDescription(
    'Measured level, as on a drawing: not up the slope.'
  );
});

test('the order stands on one page, is saved as CSV and printed on either paper', async ({
  page
}) => {
  const job = await startShape(page, 'Two slopes', ['8000', '7000', '35']);
  await openFolds(page, 'What to order?');
  await page.getByRole('link', { name: 'See what to order' }).click();
  await expect(page.getByText(/^Order [\d,]+ slates/)).toBeVisible();
  await openFolds(page, 'Breakage, battens and pace');
  await page.getByLabel('Slates laid an hour, whole gang').fill('0');
  await page.getByRole('button', { name: 'Use these' }).click();
  await expect(page.getByText('Give 1 to 1,000 slates an hour')).toBeVisible();
  await page.getByLabel('Slates laid an hour, whole gang').fill('50');
  await page.getByRole('button', { name: 'Use these' }).click();
  await expect(page.getByText(/about [\d,]+ hours/)).toBeVisible();
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as CSV' }).click();
  const file = await saving;
  expect(file.suggestedFilename()).toBe('Barn order.csv');
  const rows = readFileSync(await file.path(), 'utf8')
    .trim()
    .split('\r\n');
  expect(rows[0]).toBe('Item,Size,Roof takes,Breakage,Spares,Order,m');
  const slates = rows[1]
    .match(/,(\d+),(\d+),(\d+),(\d+),$/)!
    .slice(1)
    .map(Number);
  expect(slates[3]).toBe(slates[0] + slates[1] + slates[2]);
  expect(rows.some((row) => row.startsWith('Battens'))).toBe(true);
  for (const paper of PAPERS) {
    const pages = await printed(page, paper);
    expect(pages).toHaveLength(1);
    expectHeads(pages, 'Barn', 'Order');
    for (const words of ['Slates', 'Slate-and-a-halves', 'Nails', 'Battens'])
      expect(pages[0].says).toContain(spaceless(words));
  }
  const back = await asPrinted(page);
  const smallest = await smallestLetters(page);
  expect(smallest.pt, smallest.text).toBeGreaterThanOrEqual(11 - 0.1);
  await back();
  await page.goto(`${job}/roof`);
});
