import { expect, test } from './helpers.ts';
import { eventsOf, seedJob, smallJob } from './seed-job.ts';
import { expectAccessible, gauge, openBench, openSortBench, verdict } from './sort-bench.ts';

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
  await expect.poll(async () => (await types()).slice(-2)).toEqual(['readingHeld', 'entryVoided']);

  await gauge(page, '12.6');
  await sign.getByRole('button', { name: 'Set aside' }).click();
  await expect(verdict(page)).toContainText(/Set aside.*saved/);
  await expect
    .poll(async () => (await types()).slice(-3))
    .toEqual(['readingHeld', 'entryVoided', 'slateSetAside']);
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
  await expect
    .poll(async () => (await types()).slice(-3))
    .toEqual(['readingHeld', 'entryVoided', 'slateGauged']);
  // Back on the bench, it is a slate of its pile like any other.
  await page.locator('.acts').getByRole('button', { name: /Undo/ }).click();
  await expect(verdict(page)).toContainText(/Undone.*12\.7 mm/s);
});

test('J65 a slate too thick counts nowhere until it is answered, and asks again after a reload', async ({
  page
}) => {
  await openBench(page, [6, 5], 'gauge');
  for (let slate = 0; slate < 30; slate++) await gauge(page, `5.${20 + slate}`);
  await expect(verdict(page)).toContainText(/5\.49 mm.*saved/);
  await expect(page.locator('.tally')).toContainText('30');
  await gauge(page, '12.5');
  await expect(verdict(page)).toContainText(/12\.50 mm.*saved/);
  await gauge(page, '5.5');
  await expect(verdict(page)).toContainText(/5\.50 mm.*saved/);
  const waits = page.getByRole('group', {
    name: '1 reading waits for your answer: 12.50 mm, pallet A'
  });
  await expect(waits).toBeVisible();
  await page.reload();
  await expect(waits.getByRole('button')).toHaveText(['Measure again', 'Set aside', 'Keep']);
  await expectAccessible(page);
  await waits.getByRole('button', { name: 'Keep' }).click();
  await expect(verdict(page)).toContainText(/Thick.*12\.50 mm.*saved/s);
  await expect(waits).toHaveCount(0);
});

test('J65 a slate just outside the order counts at once, and nobody is asked of a mate’s reading', async ({
  page
}) => {
  const body = { palletId: 'pallet-A', points: [3200], gradesId: null, pile: null };
  const jobId = await openBench(page, [6, 5], 'gauge', [
    {
      type: 'deliveryDeclared',
      body: {
        supplier: 'Heron',
        ...{ lengthMm: 500, widthMm: 250, slatesOrdered: 1200 },
        ...{ nominalThicknessMm: 6, tolerancePercent: 20 }
      }
    },
    { type: 'readingHeld', body, sorter: 'mate' }
  ]);
  const last = async () => (await eventsOf(page, jobId)).at(-1)?.type;
  const asked = page.getByRole('button', { name: 'Measure again' });
  await gauge(page, '7.1');
  await expect(verdict(page)).toContainText(/7\.10 mm.*saved/);
  await expect(asked).toHaveCount(0);

  const sign = page.getByRole('group', { name: 'Too thick, check it' });
  await gauge(page, '7.5');
  await expect(sign).toBeVisible();
  await expect.poll(last).toBe('slateGauged');
  await gauge(page, '6.9');
  await expect(verdict(page)).toContainText(/6\.90 mm.*saved/);
  await expect(asked).toHaveCount(0);

  await gauge(page, '7.6');
  await sign.getByRole('button', { name: 'Keep' }).click();
  await expect(asked).toHaveCount(0);
  await expect.poll(last).toBe('slateGauged');
  await gauge(page, '7.7');
  await sign.getByRole('button', { name: 'Set aside' }).click();
  await expect.poll(last).toBe('slateSetAside');
  await gauge(page, '7.8');
  await sign.getByRole('button', { name: 'Measure again' }).click();
  await expect.poll(last).toBe('entryVoided');
  // Half as much again as what is read here may be a slip.
  await gauge(page, '7');
  await expect(verdict(page)).toContainText(/7\.00 mm.*saved/);
  await gauge(page, '12.9');
  await expect(sign).toBeVisible();
  await expect.poll(last).toBe('readingHeld');
});

test('before the grades Sort says where the sample is, and which pallet comes next', async ({
  page
}) => {
  const sample = Array.from({ length: 18 }, (_, at) => ({
    type: 'slateGauged',
    body: { palletId: 'pallet-A', points: [580 + at], gradesId: null, pile: null }
  }));
  const jobId = await seedJob(page, [...smallJob([]), ...sample]);
  await page.evaluate((id) => {
    const openPallets = { [id]: ['pallet-A', 'pallet-C'] };
    localStorage.setItem('evencourse.preferences', JSON.stringify({ openPallets }));
  }, jobId);
  await page.goto(`/job/${jobId}/sort`);
  const verdict = page.locator('.verdict');
  await page.getByRole('button', { name: 'Gauge', exact: true }).click();
  await page.getByRole('button', { name: 'Seen' }).click();
  await expect(verdict).toContainText('Pallet A: 18 of 20.');
  await page.keyboard.type('5.90');
  await page.keyboard.press('Enter');
  await expect(verdict).toContainText(/Put it back on its pallet\. Pallet A: 19 of 20\..*saved/s);
  await page.keyboard.type('5.91');
  await page.keyboard.press('Enter');
  await expect(verdict).toContainText('Pallet A: 20 of 20. Take pallet B.');
  // The pallet to take stands beside the one in use, and every other is a tap away as well.
  await expect(page.locator('.chip')).toHaveText([/^A/, /^B/, /^C/]);
  await expect(page.locator('.chip.primary')).toHaveText(/^B/);
  await page.keyboard.type('5.93');
  await page.keyboard.press('Enter');
  await expect(verdict).toContainText('Pallet A: 21 measured. Take pallet B.');
  await page.locator('.chip', { hasText: /^B/ }).click();
  await expect(page.locator('.chip').first()).toHaveText(/^B/);
  await page.keyboard.type('5.92');
  await page.keyboard.press('Enter');
  await expect(verdict).toContainText('Pallet B: 1 of 20.');
});

test('with a sample list drawn, Sort names its next slate and leads there', async ({ page }) => {
  const positions = [
    { palletId: 'pallet-A', layer: 2, place: 7 },
    { palletId: 'pallet-B', layer: 1, place: 3 }
  ];
  const drawn = { type: 'sampleDrawn', body: { seed: 1, plan: 'own', positions } };
  const jobId = await seedJob(page, [...smallJob([], ['A', 'B']), drawn]);
  await page.goto(`/job/${jobId}/sort`);
  const said = 'Sample list 0 of 2. Next: pallet A, layer 2, slate 7';
  await expect(page.getByText(said)).toBeVisible();
  await page.getByRole('link', { name: 'Measure it' }).click();
  await expect(page).toHaveURL(new RegExp(`/job/${jobId}/delivery/measure$`));
  await expect(page.locator('.verdict')).toContainText('Pallet A · layer 2 · slate 7');
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
