import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, openFolds, startJob, test } from './helpers.ts';
import { eventsOf } from './seed-job.ts';
import { openSortBench } from './sort-bench.ts';

const verdict = (page: Page) => page.locator('.verdict');

async function openBench(page: Page, thresholdsMm: readonly number[], way: 'hand' | 'gauge') {
  const jobId = await openSortBench(page, { way }, thresholdsMm);
  const seen = page.getByRole('button', { name: 'Seen' });
  if (way === 'gauge') await seen.click();
  return jobId;
}

async function gauge(page: Page, text: string) {
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

/** By axe, on a screen so tall that the bar at its foot covers nothing. */
async function expectAccessible(page: Page) {
  const size = page.viewportSize() ?? { width: 390, height: 844 };
  await page.setViewportSize({ width: size.width, height: 3000 });
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .analyze();
  await page.setViewportSize(size);
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`)).toEqual([]);
}

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
  await page.getByRole('button', { name: 'Undo 2 Medium, A' }).click();
  await expect(verdict(page)).toContainText('Undone');
  await expect(verdict(page)).toContainText('2 Medium, A');
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

test('what is no thickness gets one sentence, stays, and is not stored', async ({ page }) => {
  const jobId = await openBench(page, [6, 5], 'gauge');
  const before = (await eventsOf(page, jobId)).length;
  const wrong: [string, string][] = [
    ['0', 'The gauge shows zero'],
    ['-3', 'below zero'],
    ['60', 'Is a decimal mark missing?'],
    ['abc', 'is not a number'],
    ['6,4,2', 'more than one decimal mark'],
    ['1e9', 'is not a number'],
    ['0.25', 'Is it in inches?'],
    ['64', 'Is a decimal mark missing?'],
    ['60.5', 'too thick']
  ];
  for (const [text, sentence] of wrong) {
    await gauge(page, text);
    await expect(verdict(page)).toContainText(sentence);
    await expect(page.locator('.entry .value')).toHaveText(text);
  }
  await page.getByRole('button', { name: 'Clear' }).click();
  await expect(verdict(page)).not.toContainText('too thick');
  await page.getByRole('button', { name: 'Take the number' }).click();
  await expect(verdict(page)).toContainText('No number yet');
  expect((await eventsOf(page, jobId)).length).toBe(before);
  await gauge(page, '64');
  await page.keyboard.press('Backspace');
  await expect(page.locator('.entry .value')).toHaveText('6');
  await page.keyboard.type('.4');
  await page.keyboard.press('Enter');
  await expect(verdict(page)).toContainText('6.40 mm');
  await gauge(page, '64');
  await page.getByRole('button', { name: 'Take 6.40 mm' }).click();
  await expect(verdict(page)).toContainText('Thick');
  await expect.poll(async () => (await eventsOf(page, jobId)).length).toBe(before + 2);
});

test('the unit is asked for once, in a question that its answers fit, and never over the pallets', async ({
  page
}) => {
  const jobId = await openBench(page, [6, 5], 'gauge');
  const question = page.getByRole('group', { name: 'Are the readings in millimetres?' });
  const pallet = page.getByRole('button', { name: 'A 400 left' });
  await page.evaluate(() => sessionStorage.clear());
  await page.reload();
  await expect(question.getByRole('button')).toHaveText(['Yes, millimetres', 'No, inches']);
  await expect(pallet).toBeVisible();
  await expectAccessible(page);
  await question.getByRole('button', { name: 'Yes, millimetres' }).click();
  await expect(question).toBeHidden();

  // Slips, as of a decimal mark left out, put no unit in doubt.
  for (const text of ['60', '1.2', '25', '60', '1.2', '6.4', '60']) await gauge(page, text);
  await expect(verdict(page)).toContainText('Is a decimal mark missing?');
  await expect(question).toBeHidden();

  // The unit key of the gauge was pressed; then it was pressed again.
  for (const text of ['0.25', '0.26', '0.27']) await gauge(page, text);
  await expect(question.getByRole('button')).toHaveText(['Yes, millimetres', 'No, inches']);
  await page.getByRole('button', { name: 'Pallets' }).click();
  await page.getByRole('button', { name: 'B 400 left' }).click();
  await expect(question).toBeVisible();
  await gauge(page, '6.5');
  await expect(verdict(page)).toContainText('6.50 mm');
  await expect(question).toBeHidden();

  for (const text of ['0.25', '0.26', '0.27']) await gauge(page, text);
  await question.getByRole('button', { name: 'No, inches' }).click();
  await expect(question).toBeHidden();
  await gauge(page, '0.25');
  await expect(verdict(page)).toContainText('6.35 mm');
  await expect(verdict(page)).toContainText('saved');
  const gauged = (await eventsOf(page, jobId)).filter(({ type }) => type === 'slateGauged');
  expect(gauged.map(({ body }) => body.points)).toEqual([[2500], [640], [650], [635]]);
});

test('where to measure is recalled until it was seen, beside the pallets, then never again', async ({
  page
}) => {
  await openSortBench(page, { way: 'gauge' });
  const reminder = page.getByRole('group', { name: 'Measure in the tail third' });
  await page.reload();
  await expect(reminder).toBeVisible();
  await expect(page.getByRole('button', { name: 'A 400 left' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Pallets' })).toBeVisible();
  await reminder.getByRole('button', { name: 'Seen' }).click();
  await expect(verdict(page)).toContainText('Gauge a slate');
  await page.reload();
  await expect(verdict(page)).toContainText('Gauge a slate');
  await expect(reminder).toHaveCount(0);
  for (let slate = 0; slate < 42; slate++) await gauge(page, `5.${10 + slate}`);
  await expect(verdict(page)).toContainText('5.51 mm');
  await expect(reminder).toHaveCount(0);
});

test('the keypad takes a number and Back reopens it', async ({ page }) => {
  const jobId = await openBench(page, [6, 5], 'gauge');
  for (const key of ['6', 'Decimal point', '4', '2'])
    await page.getByRole('button', { name: key, exact: true }).click();
  await expect(verdict(page)).toContainText('6.42 mm');
  await page.getByRole('button', { name: 'Back', exact: true }).click();
  await expect(page.locator('.entry .value')).toHaveText('6.4');
  await page.getByRole('button', { name: 'Take the number' }).click();
  await expect(verdict(page)).toContainText('6.40 mm');
  await expect
    .poll(async () => (await eventsOf(page, jobId)).slice(-3).map(({ type }) => type))
    .toEqual(['slateGauged', 'entryVoided', 'slateGauged']);
});

test('pallets stand open side by side and change in two taps', async ({ page }) => {
  const jobId = await openBench(page, [6, 5], 'hand');
  const piles = page.getByRole('group', { name: 'On the piles' }).getByRole('button');
  await page.getByRole('button', { name: 'Pallets' }).click();
  await expectAccessible(page);
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

test('two points a slate and a held-still gauge make one slate', async ({ page }) => {
  const jobId = await openBench(page, [6, 5], 'gauge');
  await page.getByRole('button', { name: 'Options' }).click();
  await expectAccessible(page);
  await page.getByLabel('Points gauged on each slate').selectOption('2');
  await page.getByLabel('Hold still: gauge every point twice').check();
  await page.getByRole('button', { name: 'Back', exact: true }).click();
  for (const text of ['6.2', '6.3', '6.6']) await gauge(page, text);
  await expect(verdict(page)).toContainText('Hold still');
  await gauge(page, '7.2');
  await expect(verdict(page)).toContainText('The two readings differ');
  await gauge(page, '7.3');
  await expect(verdict(page)).toContainText('taper 1.00 mm');
  await expect
    .poll(async () => (await eventsOf(page, jobId)).at(-1)?.body.points)
    .toEqual([625, 725]);
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
    const row = await page.locator('.chips').boundingBox();
    const boxes = await chips.evaluateAll((all) => all.map((chip) => chip.getBoundingClientRect()));
    expect(boxes[0].left).toBeGreaterThanOrEqual(row?.x ?? Infinity);
    expect(boxes[0].right).toBeLessThanOrEqual((row?.x ?? 0) + (row?.width ?? 0));
    for (const { width } of boxes) expect(width).toBeCloseTo(boxes[0].width, 0);
    await page.getByRole('button', { name: 'Pallets' }).click();
  }
});

test('Undo names the slate it takes back', async ({ page }) => {
  const jobId = await openBench(page, [6, 5], 'gauge');
  await gauge(page, '6.3');
  await page.getByRole('button', { name: 'Undo 6.3 mm, A' }).click();
  await expect(verdict(page)).toContainText(/Undone\s*6\.3 mm, A/);
  await expect(verdict(page)).toContainText('saved');
  await expect(page.getByRole('button', { name: /^Undo/ })).toBeDisabled();
  expect((await eventsOf(page, jobId)).at(-1)?.type).toBe('entryVoided');
});

test('whether readings are in mm is asked once a job, not after an undo or a reopening', async ({
  page,
  context
}) => {
  const jobId = await openSortBench(page, { way: 'gauge', hasSeenTail: true }, [6, 5]);
  await page.evaluate(() => sessionStorage.clear());
  await page.reload();
  await expect(page.getByText('Are the readings in millimetres?')).toBeVisible();
  await gauge(page, '6.3');
  await expect(verdict(page)).toContainText('6.30 mm');
  await page.getByRole('button', { name: /^Undo 6\.3/ }).click();
  await expect(verdict(page)).toContainText('Undone');
  await expect(page.getByText('Are the readings')).toHaveCount(0);
  await gauge(page, '6.4');
  await expect(verdict(page)).toContainText(/6\.40 mm.*saved/);
  // Another window is another session.
  const later = await context.newPage();
  await later.goto(`/job/${jobId}/sort`);
  await expect(verdict(later)).toContainText('Gauge a slate');
  await expect(later.getByText('Are the readings')).toHaveCount(0);
  await later.close();
});

test('whether readings are in mm is asked too where slates were just sorted by hand', async ({
  page
}) => {
  await openSortBench(page, { way: 'hand', hasSeenTail: true }, [6, 5]);
  await page.evaluate(() => sessionStorage.clear());
  await page.reload();
  await page.locator('.piles button').first().click();
  await expect(verdict(page)).toContainText('Thick');
  await page.getByRole('button', { name: 'Gauge', exact: true }).click();
  await expect(page.getByText('Are the readings in millimetres?')).toBeVisible();
});

test('a yes to millimetres is kept with the job', async ({ page, context }) => {
  const jobId = await openSortBench(page, { way: 'gauge', hasSeenTail: true }, [6, 5]);
  await page.evaluate(() => sessionStorage.clear());
  await page.reload();
  await page.getByRole('button', { name: 'Yes, millimetres' }).click();
  await expect
    .poll(async () => (await eventsOf(page, jobId)).at(-1)?.body)
    .toMatchObject({ readingUnit: 'mm' });
  const later = await context.newPage();
  await later.goto(`/job/${jobId}/sort`);
  await expect(verdict(later)).toContainText('Gauge a slate');
  await later.close();
});

test('62 is 6.2 once the readings of the job say so, and is asked about before', async ({
  page
}) => {
  const jobId = await openBench(page, [6, 5], 'gauge');
  await gauge(page, '62');
  await page.getByRole('button', { name: 'Take 6.20 mm' }).click();
  for (const text of ['5.1', '5.9', '6.4', '7.2']) {
    await gauge(page, text);
    await expect(verdict(page)).toContainText(`${text}0 mm`);
  }
  for (const key of ['6', '5', 'Take the number'])
    await page.getByRole('button', { name: key, exact: true }).click();
  await expect(verdict(page)).toContainText(/6\.50 mm.*saved/);
  await gauge(page, '62');
  await expect(verdict(page)).toContainText(/6\.20 mm.*saved/);
  const points = (await eventsOf(page, jobId)).flatMap(({ body }) => body.points ?? []);
  expect(points).toEqual([620, 510, 590, 640, 720, 650, 620]);
  await gauge(page, '25');
  await expect(page.getByRole('button', { name: 'Take 2.50 mm' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Take 25.00 mm' })).toBeVisible();
  await gauge(page, '0.6');
  await expect(verdict(page)).toContainText('0.60 mm is too thin');
  await expect(page.getByRole('button', { name: /15\.24/ })).toHaveCount(0);
});

test('a slate too thick says what to do: measure again, set aside or keep, one tap each', async ({
  page
}) => {
  const jobId = await openBench(page, [6, 5], 'gauge');
  for (let slate = 0; slate < 30; slate++) await gauge(page, `5.${20 + slate}`);
  await expect(verdict(page)).toContainText(/5\.49 mm.*saved/);
  const sign = page.getByRole('group', { name: 'Too thick, check it' });
  const types = async () => (await eventsOf(page, jobId)).map(({ type }) => type);

  await gauge(page, '12.5');
  await sign.getByRole('button', { name: 'Measure again' }).click();
  await expect(verdict(page)).toContainText('Undone');
  await expect(sign).toHaveCount(0);
  await expect.poll(async () => (await types()).slice(-2)).toEqual(['slateGauged', 'entryVoided']);

  await gauge(page, '12.6');
  await sign.getByRole('button', { name: 'Set aside' }).click();
  await expect(verdict(page)).toContainText(/Set aside.*saved/);
  await expect
    .poll(async () => (await types()).slice(-3))
    .toEqual(['slateGauged', 'entryVoided', 'slateSetAside']);
  expect((await eventsOf(page, jobId)).at(-1)?.body).toMatchObject({
    points: [1260],
    use: 'return'
  });

  await gauge(page, '12.7');
  await expect(verdict(page)).toContainText(/12\.70 mm.*saved/);
  await expectAccessible(page);
  await sign.getByRole('button', { name: 'Keep' }).click();
  await expect(sign).toHaveCount(0);
  await expect(verdict(page)).toContainText('12.70 mm');
  expect((await types()).at(-1)).toBe('slateGauged');
});

test('the points of a slate survive leaving the page', async ({ page }) => {
  const jobId = await openBench(page, [6, 5], 'gauge');
  await page.getByRole('button', { name: 'Options' }).click();
  await page.getByLabel('Points gauged on each slate').selectOption('3');
  await page.getByRole('button', { name: 'Back', exact: true }).click();
  await gauge(page, '6.2');
  await gauge(page, '6.4');
  await expect(verdict(page)).toContainText('Point 2 of 3');
  await page.getByRole('link', { name: 'Job', exact: true }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Seeded' })).toBeVisible();
  await page.goto(`/job/${jobId}/sort`);
  await expect(verdict(page)).toContainText('Point 2 of 3');
  await gauge(page, '6.6');
  await expect
    .poll(async () => (await eventsOf(page, jobId)).at(-1)?.body.points)
    .toEqual([620, 640, 660]);
  await page.reload();
  await expect(verdict(page)).toContainText('Gauge a slate');
});
