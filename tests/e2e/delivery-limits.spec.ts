import { expect, openEveryFold, openFolds, test } from './helpers.ts';
import { delivery, seedDelivery } from './delivery-job.ts';

test('a refusal rests only on limits confirmed from the order, one by one', async ({ page }) => {
  const acts = delivery(80, { thick: 0 }).map((act, index) => {
    const isDull = act.type === 'slateGauged' && index % 8 === 0;
    if (act.type !== 'slateGauged') return act;
    const sample = { ...(act.body.sample as object), ring: isDull ? 'dull' : 'clear' };
    return { ...act, body: { ...act.body, sample } };
  });
  const job = await seedDelivery(page, acts);
  await page.goto(`${job}/delivery/findings`);
  await expect(page.getByRole('heading', { name: 'Verdict: Query' })).toBeVisible();
  await openEveryFold(page);
  await expect(
    page
      .getByText('10 of 80 sampled slates are outside, none of them by a limit of the order')
      .first()
  ).toBeVisible();

  await page.goto(`${job}/delivery/order`);
  const limits = await openFolds(page, 'Limits the order or contract states');
  await page.getByRole('checkbox', { name: 'No dull ring' }).check();
  await expect(limits).toContainText('1 ticked');
  // A fold that holds what is missing opens itself.
  await limits.locator('summary').click();
  await expect(page.getByRole('checkbox', { name: 'No dull ring' })).toHaveCount(0);
  await page.getByRole('button', { name: 'Save the order' }).click();
  const where = page.getByLabel('No dull ring: where it says so');
  await expect(where).toBeFocused();
  await where.fill('terms, clause 4');
  await page.getByRole('button', { name: 'Save the order' }).click();
  await expect(page.getByText('Saved.', { exact: true })).toBeVisible();
  await page.reload();
  await openFolds(page, 'Limits the order or contract states');
  await expect(where).toHaveValue('terms, clause 4');

  await page.goto(`${job}/delivery/findings`);
  await expect(page.getByRole('heading', { name: 'Verdict: Refuse' })).toBeVisible();
  await openEveryFold(page);
  await expect(page.getByText('terms, clause 4 (set by the order)')).toBeVisible();
});

test('once courses are laid the delivery says what that means for the claim', async ({ page }) => {
  const laid = { slopeId: 'south', piles: [{ pile: 1, pieces: 20 }] };
  const job = await seedDelivery(page, [
    ...delivery(80),
    { type: 'courseLaid', body: { ...laid, course: 1 } },
    { type: 'courseLaid', body: { ...laid, course: 2 } }
  ]);
  for (const part of ['', '/findings']) {
    await page.goto(`${job}/delivery${part}`);
    await expect(page.getByText('2 courses are laid: those slates are holed')).toBeVisible();
    await expect(page.getByText('Claim for the slates not laid')).toBeVisible();
    await openFolds(page, 'Slates already laid?');
    await expect(page.getByText('only what could not be seen before')).toBeVisible();
    await expect(page.getByText('Do not hole or fix yet')).toHaveCount(0);
  }
});
