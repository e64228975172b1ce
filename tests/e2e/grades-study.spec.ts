import { expect, openFolds, startJob, takeIn, test } from './helpers.ts';

test('a gauge study gives the repeatability that sorting then reckons with', async ({ page }) => {
  const job = await startJob(page, 'Gauge study');
  await takeIn(page, job, 'pallet,thickness_mm\nA,5.00\nA,6.00\nB,7.00\nB,7.40\n');
  await page.goto(`${job}/grades`);
  await openFolds(page, 'Pallets, gauge and eye', 'Test the gauge');
  await page.getByLabel('Slates', { exact: true }).selectOption('5');
  await page.getByLabel('People').selectOption('1');
  await page.getByRole('button', { name: 'Begin the study' }).click();

  const rounds = [
    ['5.00', '6.00', '7.00', '5.50', '6.50'],
    ['5.10', '6.00', '7,10', '5.50', '6.60']
  ];
  const entry = page.getByLabel('Reading', { exact: true });
  await entry.fill('60');
  await entry.press('Enter');
  await expect(page.getByText('A slate is between 1.5 and 40 mm thick.')).toBeVisible();
  for (const [round, readings] of rounds.entries())
    for (const [slate, reading] of readings.entries()) {
      await expect(
        page.getByText(`Person 1: slate ${slate + 1}, round ${round + 1}`)
      ).toBeVisible();
      await entry.fill(reading);
      await entry.press('Enter');
    }
  await expect(page.getByText('10 of 10 readings')).toBeVisible();

  // One person: interaction and error are one, so the spread is that of the differences about their
  // mean: squares (0.1 − 0.06)² … over 2 · 4, with the rounds' own difference kept apart.
  const differences = rounds[0].map(
    (first, slate) => Number(rounds[1][slate].replace(',', '.')) - Number(first)
  );
  const repeatability = Math.sqrt(differences.reduce((sum, d) => sum + d * d, 0) / (2 * 5));
  const row = page.getByRole('row', { name: /^Repeatability, SD/ });
  await expect(row.getByRole('cell').first()).toHaveText(`${repeatability.toFixed(3)} mm`);

  await page.getByRole('button', { name: 'Keep this study' }).click();
  await expect(
    page.getByText(`Kept study: repeatability SD ${repeatability.toFixed(3)} mm.`)
  ).toBeVisible();
  await openFolds(page, 'Compare the splits', 'How much do gauge and eye cost?');
  await expect(page.getByText(`Gauge, off by ${repeatability.toFixed(2)} mm`)).toBeVisible();
});
