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

/** A list of two places that get the full check, and one that does not. */
function fullCheckJob(): ReturnType<typeof delivery> {
  return delivery(0).map((act) => {
    if (act.type !== 'sampleDrawn') return act;
    const positions = [1, 2, 3].map((place) => ({
      ...{ palletId: 'pallet-A', layer: 1, place },
      full: place < 3
    }));
    return { ...act, body: { ...act.body, positions, planSize: 3, acceptAtMost: 0 } };
  });
}

test('a full check saved without sizes is said first, and gets them later from the list', async ({
  page
}) => {
  const job = await seedDelivery(page, fullCheckJob());
  await page.goto(`${job}/delivery/measure`);
  await expect(page.getByText('0 of 3 measured')).toBeVisible();
  const title = page.locator('.verdict .title');
  await page.keyboard.type('5.10', { delay: 10 });
  await page.keyboard.press('Enter');
  await expect(title).toHaveText('5.10 mm');
  await page.getByRole('button', { name: 'Rings clear, no fault' }).click();
  await expect(page.getByText('No sizes yet: 2 slates are to be measured in full.')).toBeVisible();
  await expect(page.getByText('0 of 3 measured')).toBeVisible();
  await page.getByRole('button', { name: 'Save, sizes later' }).click();
  await expect(page.getByText('1 of 3 measured')).toBeVisible();

  await page.getByRole('button', { name: 'Pallet A, layer 1, slate 1' }).click();
  await expect(title).toHaveText('5.10 mm');
  await expect(page.getByLabel('Length', { exact: true })).toBeFocused();
  await expect(page.getByRole('button', { name: 'Clear', exact: true })).toHaveAttribute(
    'aria-pressed',
    'true'
  );
  for (const [label, value] of [
    ['Length', '500'],
    ['Width', '250'],
    ['Out of square over the length', '2'],
    ['Long edge from straight', '1'],
    ['Face from flat', '3']
  ])
    await page.getByLabel(label, { exact: true }).fill(value);
  await page.getByRole('button', { name: 'Save slate' }).click();
  await expect(page.getByText('Sizes missing')).toHaveCount(0);
  await expect(page.getByText('1 of 3 measured')).toBeVisible();
});

test('a wrong size is brought into view when the slate is saved', async ({ page }) => {
  const job = await seedDelivery(page, fullCheckJob());
  await page.goto(`${job}/delivery/measure`);
  await expect(page.getByText('0 of 3 measured')).toBeVisible();
  await page.keyboard.type('5.10', { delay: 10 });
  await page.keyboard.press('Enter');
  const fold = page.locator('summary').filter({ hasText: 'Size, squareness, edge, bow' });
  await fold.click();
  for (const [label, value] of [
    ['Length', '500'],
    ['Width', '25o'],
    ['Out of square over the length', '2'],
    ['Long edge from straight', '1'],
    ['Face from flat', '3']
  ])
    await page.getByLabel(label, { exact: true }).fill(value);
  await fold.click();
  await page.evaluate(() => scrollTo(0, 0));
  await page.getByRole('button', { name: 'Save slate' }).click();
  const width = page.getByLabel('Width', { exact: true });
  await expect(width).toBeFocused();
  await expect(width).toBeInViewport();
  await expect(page.getByText('Type millimetres from 0 to 2,000.')).toBeInViewport();
  await expect(page.getByText('Not saved: see width.')).toBeVisible();
  await expect(page.getByText('0 of 3 measured')).toBeVisible();
});

test('a stack ten times too thin is asked about, and nothing is kept before', async ({ page }) => {
  const job = await seedDelivery(page, delivery(10)); // its label says 540 mm
  await page.goto(`${job}/delivery/measure`);
  const total = page.getByLabel('Thickness of the stack');
  await total.fill('54');
  await page.getByRole('button', { name: 'Save stack' }).click();
  await expect(total).toHaveAccessibleDescription(
    'Not saved: 54 mm for 100 slates is 0.54 mm a slate; the label says 5.40 mm. Measure again.'
  );
  await expect(page.getByText('100 slates: ')).toHaveCount(0);
  await page.getByRole('button', { name: 'It is 540 mm' }).click();
  await expect(page.getByText('100 slates: 540 mm, 540 mm per 100')).toBeVisible();
  await total.fill('54');
  await page.getByRole('button', { name: 'Save stack' }).click();
  await page.getByRole('button', { name: 'Keep 54 mm' }).click();
  await expect(page.getByText('100 slates: 54 mm, 54 mm per 100')).toBeVisible();
});
