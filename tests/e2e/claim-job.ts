import { type Page, expect } from '@playwright/test';

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

/** Types readings as a gauge does; each saves the slate before it, the last by its button. */
export async function gaugeSlates(page: Page, readings: readonly string[]): Promise<void> {
  for (const reading of readings) {
    await page.keyboard.type(reading, { delay: 5 });
    await page.keyboard.press('Enter');
    await expect(page.locator('.verdict .title')).toHaveText(`${reading} mm`);
  }
  await page.getByRole('button', { name: 'Save slate' }).click();
}
