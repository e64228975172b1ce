import { expect, openEveryFold, startJob, test } from './helpers.ts';
import { drawOwnList, enterPallets, gaugeSlates } from './claim-job.ts';

test('the plan chosen is the plan drawn and the plan judged, with its own risks, on every screen', async ({
  page
}) => {
  const job = await startJob(page, 'Five pallets');
  await page.goto(`${job}/delivery/order`);
  for (const [label, value] of [
    ['Length', '500'],
    ['Width', '250'],
    ['Nominal thickness', '6'],
    ['Slates ordered', '5,000']
  ])
    await page.getByLabel(label, { exact: true }).fill(value);
  await page.getByRole('button', { name: 'Save the order' }).click();
  await expect(page.getByText('Saved.', { exact: true })).toBeVisible();
  await enterPallets(page);

  await page.goto(`${job}/delivery/sample`);
  await drawOwnList(page, ['4', '95', '20', '10'], '40');
  // scipy 1.17: hypergeom(5000, 200, 40) above 4 is 0.0205, hypergeom(5000, 1000, 40) to 4 0.0751
  const plan = [
    'Of 40 slates, 4 may be outside.',
    'Seller’s risk: a delivery with 4.0 % outside is refused 2.1 % of the time.',
    'Buyer’s risk: a delivery with 20.0 % outside is still accepted 7.5 % of the time.'
  ];
  const expectPlan = async (): Promise<void> => {
    for (const words of plan)
      await expect(page.getByText(words, { exact: false }).first()).toBeVisible();
  };
  await expect(page.getByText('Draw 40 slates.')).toBeVisible();
  await expectPlan();
  await page.getByLabel('Draw more than the plan asks').fill('36');
  await expect(page.getByText(/no number keeps both risks: .* 12\.6 % of the time/)).toBeVisible();
  await page.getByLabel('Draw more than the plan asks').fill('40');
  await page.getByRole('button', { name: 'Draw the list' }).click();
  await expect(page.getByRole('heading', { name: 'Walking list' })).toBeVisible();
  await openEveryFold(page);
  await expect(page.getByText('Drawn by chance with seed')).toBeVisible();
  await expectPlan();
  // A quarter of them, picked by chance, two on each pallet of eight.
  await expect(page.locator('main li').getByText('full check', { exact: true })).toHaveCount(10);

  await page.getByRole('link', { name: 'Measure them' }).click();
  await expect(page.getByText('0 of 40 measured')).toBeVisible();
  await gaugeSlates(
    page,
    Array.from({ length: 40 }, (_, index) => (5.5 + index * 0.02).toFixed(2))
  );
  await expect(page.getByText('All places of the list are measured.')).toBeVisible();

  await page.goto(`${job}/delivery/findings`);
  await expect(page.getByText('0 of 40 outside; the plan allows 4.')).toBeVisible();
  await openEveryFold(page);
  await expectPlan();
  await page.goto(`${job}/delivery/sheet?paper=own`);
  await expect(page.getByRole('heading', { name: 'Delivery sheet' })).toBeVisible();
  await expectPlan();
  for (const words of plan)
    await expect(page.getByLabel('Message to the supplier')).toHaveValue(new RegExp(words));
});
