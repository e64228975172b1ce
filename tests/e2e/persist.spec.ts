import { gaugeSlate, startSorting } from '../faults/sorting.ts';
import { expect, test } from './helpers.ts';

test('the browser is asked to keep the data with the first saved entry, and once', async ({
  page
}) => {
  await page.addInitScript(() => {
    Object.assign(window, { asked: 0 });
    navigator.storage.persisted = async () => false;
    navigator.storage.persist = async () => {
      (window as unknown as { asked: number }).asked++;
      return true;
    };
  });
  const asked = (): Promise<number> =>
    page.evaluate(() => (window as unknown as { asked: number }).asked);
  await startSorting(page);
  await page.reload();
  await expect(page.locator('.verdict')).toBeVisible();
  expect(await asked(), 'nothing was saved since the app started').toBe(0);
  for (const hundredths of [510, 640]) await gaugeSlate(page, hundredths);
  expect(await asked()).toBe(1);
});
