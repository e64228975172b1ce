import type { Locator, Page } from '@playwright/test';
import { twoSlopes, usePlan } from './courses-job.ts';
import { expect, openFolds, test } from './helpers.ts';
import { IN_FORCE, type SeedAct, eventsOf, seedJob } from './seed-job.ts';

/** Slates gauged on to the piles 1 to 3, so many on each, under the grades of 6.2 and 5.2 mm. */
function sortedOn(each: number): SeedAct[] {
  return [680, 570, 460].flatMap((hundredths, index) =>
    Array.from({ length: each }, (_, n) => ({
      type: 'slateGauged',
      body: {
        palletId: 'pallet-A',
        points: [hundredths + (n % 8) * 5],
        gradesId: IN_FORCE,
        pile: index + 1
      }
    }))
  );
}

/** Moves the boundary between the two thickest piles down by so many tenths. */
async function lowerFirst(page: Page, tenths: number): Promise<void> {
  const upper = page.getByRole('slider').first();
  await upper.focus();
  for (let press = 0; press < 2 * tenths; press++) await page.keyboard.press('ArrowLeft');
}

const after = (page: Page): Locator =>
  page.getByRole('list', { name: 'What becomes of the piles' }).getByRole('listitem');

test('new grades keep a pile or open one under a new number, said before the tap', async ({
  page
}) => {
  const jobId = await seedJob(page, [...twoSlopes(260), ...sortedOn(40)]);
  await usePlan(page, `/job/${jobId}`);
  await page.goto(`/job/${jobId}/grades`);
  await expect(page.getByText('These grades are in use.')).toBeVisible();
  await expect(after(page)).toHaveCount(0);

  // Two tenths: every pile stays what it was.
  await lowerFirst(page, 2);
  await expect(after(page).first()).toHaveText(
    '1 Thick, 2 Medium, 3 Thin: same number, its boundaries move 0.2 mm at most.'
  );
  // Four: the two piles at that boundary are other piles from now on.
  await lowerFirst(page, 2);
  await expect(after(page)).toHaveText([
    'Pile 3: same number, its boundaries move 0.2 mm at most.',
    'New: Pile 4, Pile 5.',
    'Pile 1 stays as it is: its 40 slates are laid in their turn.',
    'Pile 2 stays as it is: its 40 slates are laid in their turn.'
  ]);
  await page.getByRole('button', { name: 'Use these grades' }).click();
  await expect(page.getByText('These grades are in use.')).toBeVisible();

  // The old piles stand there with their slates, and sorting goes on to the new numbers.
  const standing = await openFolds(page, 'The piles as they stand');
  for (const pile of ['Pile 1', 'Pile 2'])
    await expect(standing.getByRole('row', { name: new RegExp(`^${pile} 40`) })).toBeVisible();
  await page.goto(`/job/${jobId}/sort`);
  const piles = page.getByRole('group', { name: 'On the piles' }).getByRole('button');
  await expect(piles.nth(0)).toContainText('4');
  await piles.nth(0).click();
  await expect(page.getByText('Pile 4', { exact: true }).first()).toBeVisible();
  await expect
    .poll(async () => (await eventsOf(page, jobId)).at(-1))
    .toMatchObject({ type: 'slateTapped', body: { pile: 4 } });
});

test('a plan made under other grades is shown old to new, and goes only by a tap', async ({
  page
}) => {
  const jobId = await seedJob(page, [...twoSlopes(260), ...sortedOn(40)]);
  await usePlan(page, `/job/${jobId}`);
  await page.goto(`/job/${jobId}/grades`);
  await lowerFirst(page, 4);
  await page.getByRole('button', { name: 'Use these grades' }).click();
  await expect(page.getByText('These grades are in use.')).toBeVisible();

  await page.goto(`/job/${jobId}/courses`);
  const renewed = await openFolds(page, 'Old plan → new plan');
  // Thick slates lie on pile 1 and come to pile 4 from now on.
  const row = renewed.getByRole('row').filter({ hasText: 'Pile 4 (5.8 mm and over)' }).first();
  await expect(row).toContainText(/(South|North), courses? \d+/);
  await expect(row.getByRole('cell').first()).toContainText('Pile 1 (6.2 mm and over)');
  const plans = async (): Promise<number> =>
    (await eventsOf(page, jobId)).filter(({ type }) => type === 'planAdopted').length;
  expect(await plans()).toBe(1);
  await page.getByRole('button', { name: 'Show the new plan' }).click();
  await page.getByRole('button', { name: 'Use the new plan' }).click();
  await expect(page.getByText('In use, up to date.')).toBeVisible();
  expect(await plans()).toBe(2);
  await expect(page.getByText('Old plan → new plan')).toHaveCount(0);
});

test('a pile beside the grades is put on another, sorted again or used up, and undone', async ({
  page
}) => {
  const jobId = await seedJob(page, [...twoSlopes(260), ...sortedOn(40)]);
  await page.goto(`/job/${jobId}/grades`);
  await lowerFirst(page, 4);
  await page.getByRole('button', { name: 'Use these grades' }).click();
  await expect(page.getByText('These grades are in use.')).toBeVisible();
  const standing = await openFolds(page, 'The piles as they stand');
  const one = standing.locator('.pile', { hasText: 'Pile 1: 40 slates lie there' });
  const rowOf = (pile: string) => standing.getByRole('row', { name: new RegExp(`^${pile} `) });

  await one.getByRole('button', { name: 'Put it on another pile' }).click();
  await standing
    .getByRole('group', { name: 'On which pile?' })
    .getByRole('button', { name: 'Pile 4' })
    .click();
  await expect(standing.getByText('All of Pile 1 goes on Pile 4.')).toBeVisible();
  await standing.getByRole('button', { name: 'Pile 1 lies on Pile 4 now' }).click();
  await expect(one).toHaveCount(0);
  await expect(rowOf('Pile 4').getByRole('cell').first()).toHaveText('40');
  await standing.getByRole('button', { name: 'Undo' }).click();
  await expect(one).toBeVisible();

  await one.getByRole('button', { name: 'It was sorted again' }).click();
  await one.getByLabel('Pile 4').fill('30');
  await one.getByLabel('Pile 5').fill('20');
  await one.getByRole('button', { name: 'Save the count' }).click();
  await expect(one.getByRole('alert')).toContainText('Only 40 slates lie on it.');
  await one.getByLabel('Pile 5').fill('ten');
  await one.getByRole('button', { name: 'Save the count' }).click();
  await expect(one.getByRole('alert')).toContainText('Write whole numbers');
  await one.getByLabel('Pile 5').fill('10');
  await one.getByRole('button', { name: 'Save the count' }).click();
  await expect(one).toHaveCount(0);
  await expect(rowOf('Pile 4').getByRole('cell').first()).toHaveText('30');
  await expect(rowOf('Pile 5').getByRole('cell').first()).toHaveText('10');
  await standing.getByRole('button', { name: 'Undo' }).click();
  await expect(one).toBeVisible();

  await one.getByRole('button', { name: 'Nothing is left of it' }).click();
  await expect(one).toHaveCount(0);
  await standing.getByRole('button', { name: 'Undo' }).click();
  await expect(one).toBeVisible();
});
