import { SLATE, slope, usePlan } from './courses-job.ts';
import { expect, openFolds, test } from './helpers.ts';
import { type SeedAct, eventsOf, seedJob } from './seed-job.ts';

const OPENED: SeedAct = { type: 'jobOpened', body: { name: 'Seeded' } };
const ROOF = slope('South');
(ROOF.body as { rafterLengthMm: number }).rafterLengthMm = 4200;

const SIZES: SeedAct = {
  type: 'slateSizesSet',
  body: {
    sizes: [
      { sizeId: 'first', lengthMm: 500, widthMm: 250 },
      { sizeId: 'mid', lengthMm: 400, widthMm: 200 },
      { sizeId: 'short', lengthMm: 330, widthFromMm: 150, widthToMm: 250 }
    ]
  }
};

/** A pallet of a size, gauged by a sample, with two grades. */
function stock(sizeId: string, label: string, slates: number, from: number): SeedAct[] {
  const palletId = `pallet-${label}`;
  return [
    { type: 'palletAdded', body: { palletId, label, slates, sizeId } },
    ...Array.from({ length: 24 }, (_slate, n) => ({
      type: 'slateGauged',
      body: { palletId, points: [from + ((n * 37) % 180)], gradesId: null, pile: null }
    })),
    { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [from / 100 + 0.9], sizeId } }
  ];
}

const CHAPEL: readonly SeedAct[] = [
  OPENED,
  SLATE,
  ROOF,
  SIZES,
  ...stock('first', 'Long', 400, 600),
  ...stock('mid', 'Middle', 700, 500),
  ...stock('short', 'Short', 900, 420)
];

test('several lengths are entered from the slate, a wrong one is told, and the courses stand there', async ({
  page
}) => {
  const jobId = await seedJob(page, [OPENED, SLATE, ROOF]);
  await page.goto(`/job/${jobId}/roof`);
  await page.getByRole('button', { name: 'Change the slate' }).click();
  await page.getByText('Nailing, joints, overhangs, density').click();
  await page.getByRole('link', { name: 'Several lengths or random widths' }).click();
  await expect(page.getByRole('heading', { name: 'Sizes of slate' })).toBeVisible();
  const fields = (number: number) => page.getByRole('group', { name: `Length ${number}` });
  await expect(fields(1).getByRole('textbox', { name: 'Length' })).toHaveValue('500');
  await page.getByRole('button', { name: 'Add a length' }).click();
  await fields(2).getByRole('textbox', { name: 'Length' }).fill('600');
  await fields(2).getByRole('textbox', { name: 'Width' }).fill('200');
  await page.getByRole('button', { name: 'Save the sizes' }).click();
  await expect(page.getByText('the longest goes lowest')).toBeVisible();
  await fields(2).getByRole('textbox', { name: 'Length' }).fill('400');
  await page.getByRole('button', { name: 'Add a length' }).click();
  await fields(3).getByRole('textbox', { name: 'Length' }).fill('330');
  await fields(3).getByLabel('Random widths').check();
  await fields(3).getByLabel('Narrowest').fill('150');
  await fields(3).getByLabel('Widest').fill('250');
  await page.getByRole('button', { name: 'Save the sizes' }).click();
  await expect(
    page.getByText(/^From the eave: \d+ courses of 500 mm, then \d+ courses of 400 mm, then/)
  ).toBeVisible();
  await expect(page.getByRole('group', { name: 'Slates in hand' }).getByRole('button')).toHaveText([
    '500 mm',
    '400 mm',
    '330 mm'
  ]);
  const random = await openFolds(page, 'Laying random widths');
  await expect(random.getByText(/joints in 100 still need a cut or a swap/)).toBeVisible();
});

test('a mixed pallet: the length is chosen by tap or by key before the pile, and remembered', async ({
  page
}) => {
  const jobId = await seedJob(page, [OPENED, SLATE, ROOF, SIZES]);
  await page.goto(`/job/${jobId}/sort`);
  await page.getByLabel('Name on the pallet').fill('Barn');
  await page.getByLabel('Several lengths mixed').check();
  await page.getByRole('button', { name: 'Add pallet' }).click();
  const bar = page.getByRole('group', { name: 'Slates in hand' });
  const pile = () => page.getByRole('group', { name: 'On the piles' }).getByRole('button').first();
  await pile().click();
  await bar.getByRole('button', { name: '400 mm' }).click();
  await expect(bar.getByRole('button', { name: '400 mm' })).toHaveAttribute('aria-pressed', 'true');
  await pile().click();
  await expect(page.getByText('Saved').first()).toBeVisible();
  await page.keyboard.press('PageDown');
  await expect(bar.getByRole('button', { name: '330 mm' })).toHaveAttribute('aria-pressed', 'true');
  await pile().click();
  await expect
    .poll(
      async () => (await eventsOf(page, jobId)).filter(({ type }) => type === 'slateTapped').length
    )
    .toBe(3);
  const taps = (await eventsOf(page, jobId)).filter(({ type }) => type === 'slateTapped');
  expect(taps.map(({ body }) => String(body.palletId).split('.')[1])).toEqual([
    'first',
    'mid',
    'short'
  ]);
  await page.reload();
  await expect(bar.getByRole('button', { name: '330 mm' })).toHaveAttribute('aria-pressed', 'true');
});

test('three lengths from their readings to Lay: each planned from its own stock, the drop marked', async ({
  page
}) => {
  const jobId = await seedJob(page, CHAPEL);
  const job = `/job/${jobId}`;
  await page.goto(`${job}/sizes`);
  await page.getByRole('button', { name: 'Use these courses' }).click();
  await expect(page.getByText('Chosen. They stay')).toBeVisible();
  const chosen = (await eventsOf(page, jobId)).find(({ type }) => type === 'setCoursesChosen');
  const counts = (chosen?.body.courses as { courses: number }[]).map(({ courses }) => courses);
  expect(counts.every((courses) => courses > 0)).toBe(true);

  const bar = page.getByRole('group', { name: 'Slates in hand' });
  let before = 0;
  for (const [index, name] of ['500 mm', '400 mm', '330 mm'].entries()) {
    await page.goto(`${job}/courses`);
    await bar.getByRole('button', { name }).click();
    await usePlan(page, job);
    await page.goto(`${job}/lay`);
    await expect(
      page.getByRole('heading', { name: new RegExp(`^South: course ${before + 1} of `) })
    ).toBeVisible();
    const drop = page.getByText('Shorter slates begin');
    await expect(drop).toHaveCount(index === 0 ? 0 : 1);
    await page.getByRole('button', { name: 'Course laid' }).click();
    await expect(
      page.getByRole('heading', { name: new RegExp(`^South: course ${before + 2} of `) })
    ).toBeVisible();
    before += counts[index];
  }
  const laid = (await eventsOf(page, jobId)).filter(({ type }) => type === 'courseLaid');
  expect(laid.map(({ body }) => body.course)).toEqual([
    1,
    1 + counts[0],
    1 + counts[0] + counts[1]
  ]);

  await page.goto(`${job}/sheet`);
  await expect(page.getByText('Random widths: no perp marks.')).toBeVisible();
  await expect(page.getByText(/a shorter slate begins: its step is/)).toBeVisible();
});

test('slates by weight and reclaimed ones are told with their range', async ({ page }) => {
  const jobId = await seedJob(page, CHAPEL);
  await page.goto(`/job/${jobId}/sizes`);
  const weight = await openFolds(page, 'Count by weight');
  await weight.getByLabel('Weight of slates').fill('2.1');
  await weight.getByLabel('Thickness').fill('6');
  await expect(weight.getByText('About 1,000 slates, between')).toBeVisible();
  await weight.getByLabel('Pallet').fill('Weighed');
  await weight.getByRole('button', { name: 'Enter as a pallet' }).click();
  await expect(weight.getByText('Weighed is entered with 1,000 slates.')).toBeVisible();
  const lot = await openFolds(page, 'Reclaimed slates');
  await lot.getByLabel('Slates tried').fill('60');
  await lot.getByLabel('Sound ones').fill('38');
  await lot.getByLabel('Slates in the lot').fill('600');
  await expect(lot.getByText(/^About 380 are sound, between 3\d\d and 4\d\d/)).toBeVisible();
  await lot.getByLabel('Old holes, from the tail').fill('30, 480');
  await expect(lot.getByText('Holes are seen either way')).toBeVisible();
  await lot.getByLabel('Sound ones').fill('70');
  await expect(lot.getByText('More sound ones than were tried')).toBeVisible();
});

test('J80 a job of one size sees nothing of sizes, and writes nothing of them', async ({
  page
}) => {
  const jobId = await seedJob(page, [OPENED, SLATE, ROOF]);
  await page.goto(`/job/${jobId}/sort`);
  await page.getByLabel('Name on the pallet').fill('A');
  await page.getByLabel('Slates on it').fill('100');
  await expect(page.getByLabel('Several lengths mixed')).toHaveCount(0);
  await page.getByRole('button', { name: 'Add pallet' }).click();
  await page.getByRole('group', { name: 'On the piles' }).getByRole('button').first().click();
  await expect(page.getByText('Saved').first()).toBeVisible();
  for (const screen of ['', '/sort', '/grades', '/roof', '/sheet', '/courses', '/lay']) {
    await page.goto(`/job/${jobId}${screen}`);
    await page.locator('main h1').waitFor({ state: 'attached' });
    await expect(page.getByRole('group', { name: 'Slates in hand' })).toHaveCount(0);
  }
  expect(JSON.stringify(await eventsOf(page, jobId))).not.toContain('sizeId');
});
