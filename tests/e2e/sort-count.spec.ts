import type { Page } from '@playwright/test';
import { expect, test } from './helpers.ts';
import { type SeedAct, eventsOf, seedJob, smallJob } from './seed-job.ts';
import { expectAccessible } from './sort-bench.ts';

/** Opens the count of a job of three pallets with 400 slates each. */
async function openCount(page: Page, more: readonly SeedAct[] = []): Promise<string> {
  const jobId = await seedJob(page, [...smallJob([6, 5]), ...more]);
  await page.goto(`/job/${jobId}/sort`);
  await page.getByRole('button', { name: 'Count piles' }).click();
  await expect(page.getByRole('heading', { name: 'Count piles' })).toBeVisible();
  return jobId;
}

const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });
const save = (page: Page) => page.getByRole('button', { name: 'Save the count' }).click();
const countsOf = async (page: Page, jobId: string): Promise<SeedAct['body'][]> =>
  (await eventsOf(page, jobId))
    .filter(({ type }) => type === 'pileCounted')
    .map(({ body }) => body);

/** Slates that were measured on to no pile: what is known of the piles' thickness. */
const measured = (): SeedAct[] =>
  Array.from({ length: 60 }, (_, at) => ({
    type: 'slateGauged',
    body: { palletId: 'pallet-A', points: [430 + 5 * at], gradesId: null, pile: null }
  }));

test('one tap from Sort, whole piles are counted; the pallets hold so many fewer', async ({
  page
}) => {
  const jobId = await openCount(page);
  await expectAccessible(page);
  await save(page);
  await expect(page.getByRole('alert')).toHaveText('Type at least one number.');
  await field(page, '1 Thick, slates').fill('310');
  await field(page, '3 Thin, slates').fill('0');
  await save(page);
  await expect(page.getByRole('status').filter({ hasText: '2 piles counted.' })).toBeVisible();
  expect((await countsOf(page, jobId)).map(({ pile, slates }) => [pile, slates])).toEqual([
    [1, 310],
    [3, 0]
  ]);
  await expect(page.getByText('Entered so far: 310')).toBeVisible();
  await page.getByRole('button', { name: 'Back' }).click();
  await expect(page.getByText('890 slates left on the pallets')).toBeVisible();
  // The table by pallet adds up to what stands on the piles.
  const table = page.getByRole('table', { name: 'Slates by pallet' });
  await expect(table.getByRole('row', { name: /^Counted on the piles/ })).toContainText('+310');
  await expect(table.getByRole('row', { name: /^All/ })).toHaveText(/All\s*310\s*0\s*0\s*0\s*890/);
  await page.goto(`/job/${jobId}`);
  await expect(page.getByRole('link', { name: /Sorted 310 of 1,200/ })).toBeVisible();
});

test('a count is taken back whole', async ({ page }) => {
  await openCount(page);
  await field(page, '2 Medium, slates').fill('45');
  await save(page);
  await expect(page.getByText('Entered so far: 45')).toBeVisible();
  await page.getByRole('button', { name: /^Undo th(is count|ese slates)$/ }).click();
  await expect(page.getByText('Entered so far: 0')).toHaveCount(3);
});

test('what cannot be is refused beside its field, and nothing is stored', async ({ page }) => {
  const jobId = await openCount(page, measured());
  const before = (await eventsOf(page, jobId)).length;
  const refused = async (typed: Record<string, string>, says: RegExp): Promise<void> => {
    for (const [name, text] of Object.entries(typed)) await field(page, name).fill(text);
    await save(page);
    await expect(page.getByRole('alert')).toHaveText(says);
    const wrong = page.locator('[aria-invalid="true"]');
    await expect(wrong).toHaveCount(1);
    await expect(wrong).toBeFocused();
    await expect(wrong).toHaveAccessibleDescription(says);
  };
  await refused({ '1 Thick, slates': '12.5' }, /Type a whole number/);
  await refused({ '1 Thick, slates': '1300' }, /At most 1,200 can stand here/);
  await refused(
    { '1 Thick, slates': '700', '2 Medium, slates': '600' },
    /With the other piles that is 1,300, and only 1,200 came/
  );
  await field(page, '1 Thick, slates').fill('');
  await field(page, '2 Medium, slates').fill('');
  await page.getByRole('button', { name: 'Height' }).click();
  await refused({ '1 Thick, mm': '640' }, /Count one stack first/);
  await refused({ '1 Thick, mm': '0' }, /A stack of 0 holds no slate/);
  await refused({ '1 Thick, mm': '420 + high' }, /Type the height, for example 640/);
  await page.getByRole('textbox', { name: 'Slates in it' }).fill('40');
  await page.getByRole('textbox', { name: 'Its height' }).fill('0');
  await page.getByRole('button', { name: 'Keep this stack' }).click();
  await expect(page.getByRole('textbox', { name: 'Its height' })).toHaveAccessibleDescription(
    /A stack of 0 holds no slate/
  );
  expect((await eventsOf(page, jobId)).length).toBe(before);
});

test('a pile is counted by its height once one stack was counted, with its range', async ({
  page
}) => {
  const jobId = await openCount(page, measured());
  await page.getByRole('button', { name: 'Height' }).click();
  await page.getByRole('textbox', { name: 'Slates in it' }).fill('50');
  await page.getByRole('textbox', { name: 'Its height' }).fill('360');
  await page.getByRole('button', { name: 'Keep this stack' }).click();
  await expect(page.getByText('1 Thick: 50 slates, 360 mm high')).toBeVisible();

  // 7.2 mm a slate: 1,440 mm are 200 slates
  await field(page, '1 Thick, mm').fill('720 + 720');
  await expect(page.getByText(/^About 200 slates, 19\d to 20\d$/)).toBeVisible();
  // another pile rests on the mean measured, and is less sure
  await field(page, '2 Medium, mm').fill('600');
  await expect(page.getByText(/^About \d+ slates, \d+ to \d+$/)).toHaveCount(2);
  await expectAccessible(page);
  await save(page);
  await expect(page.getByRole('status').filter({ hasText: '2 piles counted.' })).toBeVisible();
  const [thick] = await countsOf(page, jobId);
  expect(thick).toMatchObject({ pile: 1, slates: 200, heightMm: 1440 });
  expect(thick.sdSlates).toBeGreaterThan(1);
  await expect(page.getByText('Entered so far: 200')).toBeVisible();
});

test('a stack that is kept answers what asked for it, and its form stays where it is', async ({
  page
}) => {
  await openCount(page, measured());
  await page.getByRole('button', { name: 'Height' }).click();
  const asks = page.getByText('Count one stack first, or type the number of slates.');
  await field(page, '1 Thick, mm').fill('640');
  await save(page);
  await expect(asks).toBeVisible();
  const topOf = async () =>
    (await page.getByRole('heading', { name: 'A stack you counted' }).boundingBox())?.y ?? 0;
  const [form, cell] = [await topOf(), (await field(page, '1 Thick, mm').boundingBox())?.y ?? 0];
  expect(form).toBeLessThan(cell);
  await page.getByRole('textbox', { name: 'Slates in it' }).fill('50');
  await page.getByRole('textbox', { name: 'Its height' }).fill('360');
  await page.getByRole('button', { name: 'Keep this stack' }).click();
  await expect(page.getByText('1 Thick: 50 slates, 360 mm high')).toBeVisible();
  await expect(asks).toBeHidden();
  await expect(page.getByText(/^About 8\d slates/)).toBeVisible();
  expect(await topOf()).toBeLessThan((await field(page, '1 Thick, mm').boundingBox())?.y ?? 0);
  await save(page);
  await expect(page.getByRole('button', { name: 'Undo this count' })).toBeVisible();
});

test('a tally sheet is typed in, set aside included; whole or not at all', async ({ page }) => {
  const jobId = await openCount(page);
  const before = (await eventsOf(page, jobId)).length;
  await page.getByRole('button', { name: 'From each pallet' }).click();
  await field(page, 'Pallet A, 1 Thick, slates').fill('120');
  await field(page, 'Pallet A, Set aside, slates').fill('9');
  await field(page, 'Pallet B, 3 Thin, slates').fill('8x');
  await save(page);
  await expect(page.getByRole('alert')).toHaveText('Type a whole number, or leave it empty.');
  await field(page, 'Pallet B, 3 Thin, slates').fill('401');
  await save(page);
  await expect(page.getByRole('alert')).toHaveText(/Pallet B has 400 left: this is more/);
  expect((await eventsOf(page, jobId)).length).toBe(before);

  await field(page, 'Pallet B, 3 Thin, slates').fill('80');
  await save(page);
  await expect(page.getByText('209 slates saved.')).toBeVisible();
  const acts = (await eventsOf(page, jobId)).slice(before);
  const of = (type: string, palletId: string): number =>
    acts.filter((act) => act.type === type && act.body.palletId === palletId).length;
  expect([of('slateTapped', 'pallet-A'), of('slateSetAside', 'pallet-A')]).toEqual([120, 9]);
  expect(of('slateTapped', 'pallet-B')).toBe(80);
  await page.getByRole('button', { name: /^Undo th(is count|ese slates)$/ }).click();
  await expect(page.getByText('209 slates saved.')).toBeHidden();
  await page.getByRole('button', { name: 'Back' }).click();
  await expect(page.getByRole('button', { name: 'A 400 left' })).toBeVisible();
});

test('a sheet of slates that are in the last count changes no pile', async ({ page }) => {
  await openCount(page);
  await field(page, '1 Thick, slates').fill('300');
  await save(page);
  await expect(page.getByText('Entered so far: 300')).toBeVisible();
  await page.getByRole('button', { name: 'From each pallet' }).click();
  await page.getByRole('button', { name: 'Before: they are in that count' }).click();
  await field(page, 'Pallet A, 1 Thick, slates').fill('250');
  // this pile was not counted: its slates are new in any case
  await field(page, 'Pallet A, 2 Medium, slates').fill('40');
  await save(page);
  await page.getByRole('button', { name: 'Whole piles' }).click();
  await expect(page.getByText('Entered so far: 300')).toBeVisible();
  await expect(page.getByText('Entered so far: 40')).toBeVisible();
  // later ones come on top
  await page.getByRole('button', { name: 'From each pallet' }).click();
  await page.getByRole('button', { name: 'Since the piles were counted' }).click();
  await field(page, 'Pallet B, 1 Thick, slates').fill('20');
  await save(page);
  await page.getByRole('button', { name: 'Whole piles' }).click();
  await expect(page.getByText('Entered so far: 320')).toBeVisible();
});
