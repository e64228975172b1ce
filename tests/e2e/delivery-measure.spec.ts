import { readFileSync } from 'node:fs';
import { delivery, seedDelivery } from './delivery-job.ts';
import { expect, test } from './helpers.ts';

test('a slate in hand: one tap says it is sound, and every fault stands above the fold', async ({
  page
}) => {
  const job = await seedDelivery(page, delivery(10));
  await page.goto(`${job}/delivery/measure`);
  await expect(page.getByText('10 of 80 measured')).toBeVisible();
  await expect(page.getByText('100 such slates weigh about 180 kg: never lift')).toBeVisible();
  // All points of a slate may come in one text.
  await page.keyboard.type('6.20/6.30/6.10', { delay: 10 });
  await page.keyboard.press('Enter');
  await expect(page.locator('.verdict .title')).toHaveText('6.20 mm');
  await expect(page.getByText('taper 0.20 mm')).toBeVisible();
  const steps = await page.getByRole('navigation', { name: 'Steps of the job' }).boundingBox();
  await page.evaluate(() => scrollTo(0, 0));
  const faults = page.getByRole('group', { name: 'Defects' }).getByRole('button');
  await expect(faults).toHaveCount(8);
  for (const button of [...(await faults.all()), page.getByRole('button', { name: 'Dull' })]) {
    const box = await button.boundingBox();
    expect((box?.y ?? Infinity) + (box?.height ?? 0)).toBeLessThanOrEqual(steps?.y ?? 0);
  }
  await page.getByRole('button', { name: 'Rings clear, no fault' }).click();
  await expect(page.getByText('11 of 80 measured')).toBeVisible();

  // A second Enter half a second after the reading's own is a person's: it saves the slate.
  await page.keyboard.type('5.10', { delay: 10 });
  await page.keyboard.press('Enter');
  await expect(page.locator('.verdict .title')).toHaveText('5.10 mm');
  const typedAt = await page.evaluate(() => performance.now());
  await page.waitForFunction((since) => performance.now() - since > 500, typedAt);
  await page.keyboard.press('Enter');
  await expect(page.getByText('12 of 80 measured')).toBeVisible();
  await page.goto(`${job}/files`);
  await page.getByRole('button', { name: 'CSV, point and comma' }).click();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the file' }).click();
  const lines = readFileSync(await (await download).path(), 'utf8').split('\r\n');
  expect(lines.at(-3)).toContain('6.20/6.30/6.10');
  expect(lines.at(-3)).toContain(',clear,none,');
  expect(lines.at(-2)).toContain('5.10');
  expect(lines.at(-2)).not.toContain('clear');
});
