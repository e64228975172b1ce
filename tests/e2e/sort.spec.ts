import { expect, openFolds, ownLetters, startJob, test } from './helpers.ts';
import { eventsOf } from './seed-job.ts';
import { expectAccessible, gauge, openBench, verdict } from './sort-bench.ts';

test('a new job asks for its first pallet, then sorts by tap with undo', async ({ page }) => {
  await startJob(page, 'Sorting');
  await page.goto(`${page.url()}/sort`);
  await expect(page.getByText('No pallet yet')).toBeVisible();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Add pallet' }).click();
  await expect(page.getByText('Give the pallet a name')).toBeVisible();
  await page.getByLabel('Name on the pallet').fill('A');
  await page.getByLabel('Slates on it').fill('480');
  await page.getByRole('button', { name: 'Add pallet' }).click();
  const piles = page.getByRole('group', { name: 'On the piles' }).getByRole('button');
  await expect(piles).toHaveCount(3);
  for (const pile of await piles.all()) {
    const box = await pile.boundingBox();
    expect(box?.height).toBeGreaterThanOrEqual(126);
  }
  await piles.nth(1).click();
  await expect(verdict(page)).toContainText('Medium');
  await expect(verdict(page)).toContainText('saved');
  await expect(page.getByRole('button', { name: 'A 479 left' })).toBeVisible();
  await page.getByRole('button', { name: 'Undo 2 Medium, pallet A' }).click();
  await expect(verdict(page)).toContainText('Undone');
  await expect(verdict(page)).toContainText('2 Medium, pallet A');
  await expect(page.getByRole('button', { name: 'A 480 left' })).toBeVisible();
  await page.reload();
  await expect(page.getByRole('button', { name: 'A 480 left' })).toBeVisible();
});

test('a reading is told its pile, with borderline and rogue marked', async ({ page }) => {
  const jobId = await openBench(page, [6, 5], 'gauge');
  await gauge(page, '6,43');
  await expect(verdict(page)).toContainText('Thick');
  await expect(verdict(page)).toContainText('6.43 mm');
  await gauge(page, '5.99');
  await expect(verdict(page)).toContainText('Medium');
  await expect(verdict(page)).toContainText('Borderline very near 6.00 mm: either pile is right');
  await gauge(page, '6');
  await expect(verdict(page)).toContainText('Thick');
  for (let slate = 0; slate < 30; slate++) await gauge(page, `5.${20 + slate}`);
  await expect(verdict(page)).toContainText(/5\.49 mm.*saved/);
  await gauge(page, '12.5');
  await expect(verdict(page)).toContainText('Too thick, check it');
  await expect(verdict(page)).toContainText('saved');
  await expectAccessible(page);
  await page.locator('.acts').getByRole('button', { name: 'Set aside' }).click();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Inclusion' }).click();
  await expect(verdict(page)).toContainText('Set aside');
  await expect(verdict(page)).toContainText('saved');
  const events = await eventsOf(page, jobId);
  const [undo, aside] = events.slice(-2);
  expect(undo.type).toBe('entryVoided');
  expect(aside.body).toMatchObject({ reason: 'inclusion', points: [1250] });
});

test('without grades a reading is saved as measured, on no pile', async ({ page }) => {
  const jobId = await openBench(page, [], 'gauge');
  await gauge(page, '6.4');
  await expect(verdict(page)).toContainText('Measured: 6.40 mm');
  await expect(verdict(page)).toContainText('Put it back on its pallet');
  await expect(verdict(page)).toContainText('saved');
  expect((await eventsOf(page, jobId)).at(-1)?.body).toMatchObject({
    palletId: 'pallet-A',
    points: [640],
    pile: null,
    gradesId: null
  });
});

test('before grades the pallet and its table count what was measured; of slates left nothing is said where no one knows', async ({
  page
}) => {
  const jobId = await openBench(page, [], 'gauge');
  const row = (label: string) => page.getByRole('row', { name: new RegExp(`^${label}`) });
  for (const text of ['6.4', '5.2', '4.9']) await gauge(page, text);
  await expect(verdict(page)).toContainText('Measured: 4.90 mm');
  await expect(page.getByRole('button', { name: 'A 400 left, 3 measured' })).toBeVisible();
  await expect(row('Pallet')).toHaveText(/Pallet\s*Measured\s*Aside\s*Left/);
  await expect(row('All')).toHaveText(/All\s*3\s*0\s*1,200/);
  await expect(page.getByText('1,200 slates left on the pallets')).toBeVisible();
  await page.getByRole('button', { name: 'Pallets' }).click();
  await page.getByLabel('Name on the pallet').fill('D');
  await page.getByLabel('Slates on it').fill('0');
  await page.getByRole('button', { name: 'Add pallet' }).click();
  await expect(page.getByRole('checkbox', { name: 'Open: D' })).toBeChecked();
  // The pallet in use stays the one that slates come from.
  await expect(page.getByRole('checkbox', { name: 'Open: A' })).toBeChecked();
  await expect(page.locator('.chip').first()).toHaveText(/A\s*400 left, 3 measured/);
  await page.locator('.choose', { hasText: /^D/ }).click();
  await gauge(page, '5.5');
  await expect(page.getByRole('button', { name: 'D count unknown, 1 measured' })).toBeVisible();
  await expect(row('All')).toHaveText(/All\s*4\s*0\s*–/);
  await expect(page.getByText('left on the pallets')).toHaveCount(0);
  await page.getByRole('button', { name: 'The day' }).click();
  await expect(page.getByText('4 slates measured or sorted today')).toBeVisible();
  await expect(page.getByText('left on the pallets')).toHaveCount(0);
  await page.goto(`/job/${jobId}`);
  await openFolds(page, 'Every count');
  await expect(page.getByText('4 pallets, slates not counted on 1 of them')).toBeVisible();
});

test('pallets stand open side by side and change in two taps', async ({ page }) => {
  const jobId = await openBench(page, [6, 5], 'hand');
  const piles = page.getByRole('group', { name: 'On the piles' }).getByRole('button');
  await page.getByRole('button', { name: 'Pallets' }).click();
  await expectAccessible(page);
  // On a board "b" and "B" are one pallet.
  await page.getByLabel('Name on the pallet').fill('b');
  await page.getByLabel('Slates on it').fill('10');
  await page.getByRole('button', { name: 'Add pallet' }).click();
  await expect(page.getByText('There is a pallet B already.')).toBeVisible();
  await page.getByRole('checkbox', { name: 'Open: C' }).check();
  await page.getByRole('button', { name: 'B 400 left' }).click();
  await piles.first().click();
  await page.getByRole('button', { name: 'C 400 left' }).click();
  await piles.last().click();
  await expect(page.getByRole('button', { name: 'C 399 left' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'B 399 left' })).toBeVisible();
  const taps = (await eventsOf(page, jobId)).slice(-2).map(({ body }) => body.palletId);
  expect(taps).toEqual(['pallet-B', 'pallet-C']);
});

test('the last ten entries can be taken back one by one', async ({ page }) => {
  await openBench(page, [6, 5], 'gauge');
  for (const text of ['6.1', '5.2', '4.3']) {
    await gauge(page, text);
    await expect(verdict(page)).toContainText(`${text}0 mm`);
  }
  await page.getByRole('button', { name: 'Entries' }).click();
  await page.getByRole('button', { name: 'Undo: 5.20 mm, 2 Medium' }).click();
  await expect(page.getByRole('button', { name: 'Undo: 5.20 mm' })).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Undo: 6.10 mm, 1 Thick' })).toBeVisible();
  await expectAccessible(page);
});

test('the day is summed up for the job, and eight piles fit', async ({ page }) => {
  await openBench(page, [9, 8, 7, 6.5, 6, 5.5, 5], 'hand');
  const piles = page.getByRole('group', { name: 'On the piles' }).getByRole('button');
  await expect(piles).toHaveCount(8);
  await piles.last().click();
  await expect(verdict(page)).toContainText('Pile 8');
  await page.getByRole('button', { name: 'The day' }).click();
  await expect(page.getByText('1 slate measured or sorted today')).toBeVisible();
  await expect(page.getByText('never of a person')).toBeVisible();
  await expectAccessible(page);
});

test('left-handed layout and another language are kept', async ({ page }) => {
  await openBench(page, [6, 5], 'gauge');
  await page.getByRole('button', { name: 'Options' }).click();
  await page.getByLabel('Left-handed layout').check();
  await page.getByRole('button', { name: 'Back', exact: true }).click();
  const enter = await page.getByRole('button', { name: 'Take the number' }).boundingBox();
  const seven = await page.getByRole('button', { name: '7', exact: true }).boundingBox();
  expect(enter?.x ?? 0).toBeLessThan(seven?.x ?? 0);
  await page.evaluate(() => {
    const kept = JSON.parse(localStorage.getItem('evencourse.preferences') ?? '{}');
    localStorage.setItem('evencourse.preferences', JSON.stringify({ ...kept, locale: 'pl' }));
  });
  await page.reload();
  await expect(page.getByRole('button', { name: 'Odłóż' })).toBeVisible();
  await gauge(page, '6,4');
  await expect(verdict(page)).toContainText('6,40 mm');
  await expect(verdict(page)).toContainText('Gruba');
});

test('a failed save keeps the readings on the screen until they are saved', async ({ page }) => {
  const jobId = await openBench(page, [6, 5], 'gauge');
  await page.evaluate(() => {
    const add = IDBObjectStore.prototype.add;
    Object.assign(window, { restore: () => (IDBObjectStore.prototype.add = add) });
    IDBObjectStore.prototype.add = () => {
      throw new DOMException('no room', 'QuotaExceededError');
    };
  });
  await gauge(page, '6.4');
  await expect(page.getByRole('alert')).toContainText('NOT SAVED');
  await expect(verdict(page)).toContainText('6.40 mm');
  await expect(verdict(page)).toContainText('NOT SAVED');
  await gauge(page, '5.3');
  await expect(page.getByText('2 entries wait to be saved')).toBeVisible();
  await expectAccessible(page);
  await page.evaluate(() => (window as unknown as { restore: () => void }).restore());
  await page.getByRole('button', { name: 'Try again' }).click();
  await expect(page.getByRole('alert')).toHaveCount(0);
  await expect(verdict(page)).toContainText('saved');
  const points = (await eventsOf(page, jobId)).slice(-2).map(({ body }) => body.points);
  expect(points).toEqual([[640], [530]]);
});

test('the pallet in use is whole and first, and all stand equally wide', async ({ page }) => {
  await openBench(page, [6, 5], 'hand');
  const chips = page.getByRole('group', { name: 'From pallet' }).locator('.chip');
  await page.getByRole('button', { name: 'Pallets' }).click();
  for (const label of ['D', 'E, a name as long as it may well be', 'F']) {
    await page.getByLabel('Name on the pallet').fill(label);
    await page.getByLabel('Slates on it').fill('12345');
    await page.getByRole('button', { name: 'Add pallet' }).click();
    await expect(page.getByRole('checkbox', { name: `Open: ${label}` })).toBeChecked();
  }
  for (const label of ['A', 'F', 'E']) {
    await page.locator('.choose', { hasText: new RegExp(`^${label}`) }).click();
    await expect(chips.first()).toHaveText(new RegExp(`^${label}`));
    await expect(chips.first()).toHaveAttribute('aria-pressed', 'true');
    await ownLetters(page);
    const row = await page.locator('.chips').boundingBox();
    const boxes = await chips.evaluateAll((all) => all.map((chip) => chip.getBoundingClientRect()));
    expect(boxes[0].left).toBeGreaterThanOrEqual(row?.x ?? Infinity);
    expect(boxes[0].right).toBeLessThanOrEqual((row?.x ?? 0) + (row?.width ?? 0));
    for (const { width } of boxes) expect(width).toBeCloseTo(boxes[0].width, 0);
    await page.getByRole('button', { name: 'Pallets' }).click();
  }
});

test('three open pallets stand whole on a phone; of more, one is cut at the edge', async ({
  page
}) => {
  await openBench(page, [6, 5], 'hand');
  const chips = page.getByRole('group', { name: 'From pallet' }).locator('.chip');
  await page.getByRole('button', { name: 'Pallets' }).click();
  for (const label of ['B', 'C'])
    await page.getByRole('checkbox', { name: `Open: ${label}` }).check();
  await expect(chips).toHaveCount(3);
  await ownLetters(page);
  const inRow = async () => {
    const row = await page.locator('.chips').boundingBox();
    const edge = (row?.x ?? 0) + (row?.width ?? 0);
    const boxes = await chips.evaluateAll((all) => all.map((chip) => chip.getBoundingClientRect()));
    return boxes.map(({ left, width }) => Math.min(1, Math.max(0, (edge - left) / width)));
  };
  expect(await inRow()).toEqual([1, 1, 1]);
  await chips.nth(2).click();
  await expect(chips.first()).toHaveText(/^C/);
  await page.getByLabel('Name on the pallet').fill('D');
  await page.getByLabel('Slates on it').fill('400');
  await page.getByRole('button', { name: 'Add pallet' }).click();
  await expect(chips).toHaveCount(4);
  const [, second, third, fourth] = await inRow();
  expect([second, fourth]).toEqual([1, 0]);
  expect(third).toBeGreaterThan(0.4);
  expect(third).toBeLessThan(0.9);
});

test('a pallet added by mistake is removed and brought back; one with slates stays, and why', async ({
  page
}) => {
  const jobId = await openBench(page, [6, 5], 'hand');
  await page.getByRole('button', { name: /Thick/ }).click();
  await expect(verdict(page)).toContainText(/Thick.*saved/s);
  await page.getByRole('button', { name: 'Pallets' }).click();
  const stays = page.getByText('A pallet with slates, a stack or a sample place entered stays.');
  await expect(stays).toBeVisible();
  await expect(page.getByRole('button', { name: 'Remove this pallet: A' })).toHaveCount(0);
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Remove this pallet: C' }).click();
  await expect(page.getByText('Pallet C removed.')).toBeVisible();
  await expect(page.locator('.choose')).toHaveText([/^A/, /^B/]);
  await page.reload();
  await page.getByRole('button', { name: 'Pallets' }).click();
  await expect(page.locator('.choose')).toHaveText([/^A/, /^B/]);
  await page.getByRole('button', { name: 'Remove this pallet: B' }).click();
  await page.getByRole('button', { name: 'Bring it back' }).click();
  await expect(page.locator('.choose')).toHaveText([/^A/, /^B/]);
  const types = (await eventsOf(page, jobId)).map(({ type }) => type);
  expect(types.filter((type) => type === 'palletAdded')).toHaveLength(3);
  expect(types.slice(-3)).toEqual(['entryVoided', 'entryVoided', 'entryVoided']);
});

test('the answer of a slate is no button to look at', async ({ page }) => {
  await openBench(page, [6, 5], 'gauge');
  await gauge(page, '6.3');
  await expect(verdict(page)).toContainText(/6\.30 mm.*saved/);
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    const look = await verdict(page).evaluate((answer) => {
      const { borderTopWidth, borderRadius, boxShadow, cursor } = getComputedStyle(answer);
      return { borderTopWidth, borderRadius, boxShadow, isPointer: cursor === 'pointer' };
    });
    expect(look, colorScheme).toEqual({
      ...{ borderTopWidth: '0px', borderRadius: '0px' },
      ...{ boxShadow: 'none', isPointer: false }
    });
  }
});

test('Undo names the slate it takes back', async ({ page }) => {
  const jobId = await openBench(page, [6, 5], 'gauge');
  await gauge(page, '6.3');
  await page.getByRole('button', { name: 'Undo 6.3 mm, pallet A' }).click();
  await expect(verdict(page)).toContainText(/Undone\s*6\.3 mm, pallet A/);
  await expect(verdict(page)).toContainText('saved');
  await expect(page.getByRole('button', { name: /^Undo/ })).toBeDisabled();
  expect((await eventsOf(page, jobId)).at(-1)?.type).toBe('entryVoided');
});
