import { expectWithinBudget } from './budget.ts';
import { usePlan, twoSlopesSorted } from './courses-job.ts';
import { delivery, seedDelivery } from './delivery-job.ts';
import { expect, ownLetters, startJob, test } from './helpers.ts';
import { seedJob } from './seed-job.ts';

test.use({ viewport: { width: 390, height: 844 } });

/** The screens of a job that is not the worked example, with what each says first. */
type Says = readonly (readonly [path: string, answer: RegExp])[];

async function expectSaid(
  page: Parameters<typeof expectWithinBudget>[0],
  job: string,
  says: Says
): Promise<void> {
  for (const [path, answer] of says) {
    await page.goto(`${job}${path}`);
    await expect(page.getByText(answer).first()).toBeVisible();
    await expectWithinBudget(page, path || '/job');
  }
}

test('an empty job says what to do first, in 120 words and 1.6 phone screens', async ({ page }) => {
  const job = await startJob(page, 'Empty');
  await expectSaid(page, job, [
    ['', /Next: Enter the pallets/],
    ['/delivery', /Nothing is measured yet/],
    ['/delivery/findings', /Enter the order first/],
    ['/delivery/order', /Slates ordered/]
  ]);
});

test('a half-measured delivery says how far it is, in 120 words and 1.6 phone screens', async ({
  page
}) => {
  const job = await seedDelivery(page, delivery(12));
  await expectSaid(page, job, [
    ['', /Next: /],
    ['/delivery', /12 of 80 listed slates are measured; 3 of them are outside the order/],
    ['/delivery/findings', /Finish the list first/]
  ]);
});

test('a job that is being laid says how far it is, in 120 words and 1.6 phone screens', async ({
  page
}) => {
  const job = `/job/${await seedJob(page, twoSlopesSorted(260))}`;
  await usePlan(page, job);
  await page.goto(`${job}/lay`);
  await page.getByRole('button', { name: 'Course laid' }).click();
  await expect(page.getByText('1 of 24 courses laid')).toBeVisible();
  await expectSaid(page, job, [
    ['', /Laid\s*1 of 24|1 of 24/],
    ['/delivery', /slates measured for grades, none for the check/],
    ['/delivery/findings', /Enter the order first/]
  ]);
  await page.goto('/');
  await expect(page.getByText('Next: Lay, 1 of 24 courses laid')).toBeVisible();
  await expectWithinBudget(page, 'Jobs');
});

test('Jobs without a job begins with the worked example, and with one ends with it', async ({
  page
}) => {
  await page.goto('/');
  const example = page.getByRole('button', { name: 'Open the worked example' });
  const name = page.getByLabel('Name of the job');
  await expect(example).toBeVisible();
  await ownLetters(page);
  const top = async (of: typeof name): Promise<number> => (await of.boundingBox())?.y ?? NaN;
  expect(await top(example)).toBeLessThan(await top(name));
  await expectWithinBudget(page, 'Jobs without a job');
  await startJob(page, 'Barn');
  await startJob(page, 'Stable');
  await page.goto('/');
  await expect(page.getByText('Next: Enter the pallets')).toHaveCount(2);
  await expect(page.getByRole('link', { name: /Barn|Stable/ })).toHaveText([/^Stable/, /^Barn/]);
  expect(await top(example)).toBeGreaterThan(await top(name));
  await expectWithinBudget(page, 'Jobs with two jobs');
});
