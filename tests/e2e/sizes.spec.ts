import type { Page } from '@playwright/test';
import { SLATE, usePlan } from './courses-job.ts';
import { expect, openFolds, test } from './helpers.ts';
import { type SeedAct, eventsOf, seedJob } from './seed-job.ts';
import { slopeOf, stockOfSize as stock } from './sizes-job.ts';
import { gauge, verdict } from './sort-bench.ts';

const OPENED: SeedAct = { type: 'jobOpened', body: { name: 'Seeded' } };
const ROOF = slopeOf('South', 4200);

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

const CHAPEL: readonly SeedAct[] = [
  OPENED,
  SLATE,
  ROOF,
  SIZES,
  ...stock('first', 'Long', 400, 600),
  ...stock('mid', 'Middle', 700, 500),
  ...stock('short', 'Short', 900, 420)
];

/** Takes the courses that are proposed for each length, and tells them. */
async function useCourses(
  page: Page,
  jobId: string
): Promise<{ sizeId: string; courses: number }[]> {
  await page.goto(`/job/${jobId}/sizes`);
  await page.getByRole('button', { name: 'Use these courses' }).click();
  await expect(page.getByText('Chosen. They stay')).toBeVisible();
  const chosen = (await eventsOf(page, jobId)).find(({ type }) => type === 'setCoursesChosen');
  return chosen?.body.courses as { sizeId: string; courses: number }[];
}

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
  const counts = (await useCourses(page, jobId)).map(({ courses }) => courses);
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
  await expect(page.getByText('Random widths, drawn at their mean: no perp marks.')).toBeVisible();
  await expect(page.getByText(/a shorter slate begins: its step is/)).toBeVisible();
});

test('shorter slates begun early are told, and where one length ends the next is offered', async ({
  page
}) => {
  const jobId = await seedJob(page, CHAPEL);
  const job = `/job/${jobId}`;
  const [long, ...rest] = await useCourses(page, jobId);
  const bar = page.getByRole('group', { name: 'Slates in hand' });
  for (const name of ['400 mm', '500 mm']) {
    await page.goto(`${job}/courses`);
    await bar.getByRole('button', { name }).click();
    await usePlan(page, job);
  }
  await page.goto(`${job}/lay`);
  const early = page.getByText(/^South: .* of 500 mm below/);
  for (let course = 1; course < long.courses; course++) {
    await page.getByRole('button', { name: 'Course laid' }).click();
    await expect(
      page.getByRole('heading', { name: `South: course ${course + 1} of ${long.courses}` })
    ).toBeVisible();
  }
  await expect(early).toHaveCount(0);
  await bar.getByRole('button', { name: '400 mm' }).click();
  await expect(early).toHaveText(
    'South: 1 course of 500 mm below is not laid. Lay it first, or let 500 mm end earlier.'
  );
  await page.getByRole('button', { name: 'Take 500 mm in hand' }).click();
  await expect(early).toHaveCount(0);
  await page.getByRole('button', { name: 'Course laid' }).click();
  await expect(
    page.getByText(`This length is laid. Next: 400 mm, South, course ${long.courses + 1}.`)
  ).toBeVisible();
  await page.getByRole('button', { name: 'Take 400 mm in hand' }).click();
  await expect(
    page.getByRole('heading', { name: new RegExp(`^South: course ${long.courses + 1} of `) })
  ).toBeVisible();
  await expect(early).toHaveCount(0);

  // Courses proposed again keep those that lie.
  await page.goto(`${job}/sizes`);
  await page.getByRole('button', { name: 'Propose again' }).click();
  await page.getByRole('button', { name: 'Use these courses' }).click();
  await expect(page.getByText('Chosen. They stay')).toBeVisible();
  await expect(page.getByText(/: laid of 500 mm/)).toHaveCount(0);
  const again = (await eventsOf(page, jobId)).filter(({ type }) => type === 'setCoursesChosen');
  const [kept] = again.at(-1)?.body.courses as { courses: number }[];
  expect(kept.courses).toBeGreaterThanOrEqual(long.courses);
  expect(rest.length).toBe(2);
});

test('lengths that cannot go on one roof get a sentence each, and nothing typed is lost', async ({
  page
}) => {
  const jobId = await seedJob(page, [OPENED, SLATE, ROOF]);
  await page.goto(`/job/${jobId}/sizes`);
  const fields = (number: number) => page.getByRole('group', { name: `Length ${number}` });
  const fill = async (number: number, label: string, value: string) =>
    fields(number).getByRole('textbox', { name: label }).fill(value);
  await page.getByRole('button', { name: 'Add a length' }).click();
  // Headlap 100 mm. What is wrong, and what to do.
  const wrong: [length: string, width: string, sentence: string][] = [
    ['600', '200', '600 mm stands above 500 mm: the longest goes lowest.'],
    ['500', '200', '500 mm stands there twice. Give each length one line.'],
    ['190', '150', '190 mm is below twice the headlap. The shortest that can be laid is 200 mm.'],
    ['280', '200', 'The headlap is more than a third of 280 mm.'],
    ['400', '410', '410 mm wide is more than 400 mm long. Look whether the two are turned round.'],
    ['340', '200', 'From 500 mm to 340 mm is too big a step: two battens would touch.'],
    ['400', '', 'A length or a width is missing. Type every one.'],
    ['abc', '200', 'A length or a width is missing. Type every one.']
  ];
  for (const [length, width, sentence] of wrong) {
    await fill(2, 'Length', length);
    await fill(2, 'Width', width);
    await page.getByRole('button', { name: 'Save the sizes' }).click();
    await expect(page.getByText(sentence)).toBeVisible();
    await expect(fields(2).getByRole('textbox', { name: 'Length' })).toHaveValue(length);
  }
  await fill(2, 'Length', '400');
  await fields(2).getByLabel('Random widths').check();
  await fill(2, 'Narrowest', '300');
  await fill(2, 'Widest', '200');
  await expect(page.getByText('From 300 mm to 200 mm is turned round.')).toBeVisible();
  // Twelve lengths: eight are the most that are taken.
  for (let number = 3; number <= 8; number++)
    await page.getByRole('button', { name: 'Add a length' }).click();
  await expect(page.getByRole('button', { name: 'Add a length' })).toHaveCount(0);
  await expect(page.getByText('8 lengths are the most. Lay the two nearest as one.')).toBeVisible();
  expect((await eventsOf(page, jobId)).some(({ type }) => type === 'slateSizesSet')).toBe(false);
});

test('a stock for half a course is left out, and the rest is planned', async ({ page }) => {
  const jobId = await seedJob(page, [
    ...CHAPEL.slice(0, 4),
    ...stock('first', 'Long', 700, 600),
    ...stock('mid', 'Middle', 1200, 500),
    // A course takes about 26 slates, 200 mm wide at the mean.
    ...stock('short', 'Short', 12, 420)
  ]);
  await page.goto(`/job/${jobId}/sizes`);
  await expect(page.getByText('No course of 330 mm.')).toBeVisible();
  await expect(
    page.getByText(/^From the eave: \d+ courses of 500 mm, then \d+ courses of 400 mm\.$/)
  ).toBeVisible();
  await page.goto(`/job/${jobId}/courses`);
  await expect(page.getByRole('button', { name: 'Use this plan' })).toBeVisible();
});

test('a stock for one course gives a set of one course, and its drop is marked', async ({
  page
}) => {
  const jobId = await seedJob(page, [
    ...CHAPEL.slice(0, 4),
    ...stock('first', 'Long', 700, 600),
    ...stock('mid', 'Middle', 36, 500),
    ...stock('short', 'Short', 1500, 420)
  ]);
  await page.goto(`/job/${jobId}/sizes`);
  await expect(
    page.getByText(
      /^From the eave: \d+ courses of 500 mm, then 1 course of 400 mm, then \d+ courses/
    )
  ).toBeVisible();
  await page.goto(`/job/${jobId}/sheet`);
  const bar = page.getByRole('group', { name: 'Slates in hand' });
  for (const name of ['400 mm', '330 mm']) {
    await bar.getByRole('button', { name }).click();
    await expect(page.getByText(`Slate ${name}`, { exact: false }).first()).toBeVisible();
    await expect(page.getByText(/a shorter slate begins: its step is/)).toBeVisible();
  }
});

test('three lengths sorted by typed readings, split, planned and laid, all on the phone', async ({
  page
}) => {
  const jobId = await seedJob(page, [OPENED, SLATE, ROOF, SIZES]);
  const job = `/job/${jobId}`;
  await page.evaluate(() => {
    localStorage.setItem('evencourse.preferences', JSON.stringify({ way: 'gauge' }));
    sessionStorage.setItem('evencourse.unit', 'yes');
  });
  const bar = page.getByRole('group', { name: 'Slates in hand' });
  const lengths = [
    { name: '500 mm', slates: '400', fromMm: 6 },
    { name: '400 mm', slates: '700', fromMm: 5 },
    { name: '330 mm', slates: '900', fromMm: 4.2 }
  ];
  const typedHundredths: number[] = [];
  const gauged = async (): Promise<unknown[]> =>
    (await eventsOf(page, jobId))
      .filter(({ type }) => type === 'slateGauged')
      .map(({ body }) => (body.points as number[])[0]);
  for (const { name, slates, fromMm } of lengths) {
    await page.goto(`${job}/sort`);
    await bar.getByRole('button', { name }).click();
    await page.getByLabel('Name on the pallet').fill(`Pallet ${name}`);
    await page.getByLabel('Slates on it').fill(slates);
    await page.getByRole('button', { name: 'Add pallet' }).click();
    await expect(page.getByRole('button', { name: 'Set aside' })).toBeVisible();
    const seen = page.getByRole('button', { name: 'Seen' });
    if (await seen.isVisible()) await seen.click();
    for (let slate = 0; slate < 12; slate++) {
      const typed = (fromMm + 0.14 * ((slate * 5) % 12)).toFixed(2);
      await gauge(page, typed);
      await expect(verdict(page)).toContainText(`${typed} mm`);
      typedHundredths.push(Math.round(100 * Number(typed)));
    }
    await expect.poll(gauged).toEqual(typedHundredths);
    await page.goto(`${job}/grades`);
    await page.getByRole('button', { name: 'Use these grades' }).click();
    await expect(page.getByText('These grades are in use.')).toBeVisible();
  }
  await page.goto(`${job}/sizes`);
  await page.getByRole('button', { name: 'Use these courses' }).click();
  await expect(page.getByText('Chosen. They stay')).toBeVisible();
  for (const { name } of lengths) {
    await page.goto(`${job}/courses`);
    await bar.getByRole('button', { name }).click();
    await usePlan(page, job);
  }
  await page.goto(`${job}/lay`);
  await bar.getByRole('button', { name: '500 mm' }).click();
  await expect(page.getByRole('heading', { name: /^South: course 1 of / })).toBeVisible();
  await page.getByRole('button', { name: 'Course laid' }).click();
  await expect(page.getByRole('heading', { name: /^South: course 2 of / })).toBeVisible();
});

test('slates by weight and reclaimed ones are told with their range', async ({ page }) => {
  const jobId = await seedJob(page, CHAPEL);
  await page.goto(`/job/${jobId}/sizes`);
  const weight = await openFolds(page, 'Count by weight');
  await weight.getByLabel('Weight of slates').fill('2.1');
  await weight.getByLabel('Thickness').fill('6');
  await expect(weight.getByText('About 1,000 slates, between')).toBeVisible();
  await weight.getByLabel('Pallet', { exact: true }).fill('Weighed');
  await weight.getByRole('button', { name: 'Enter as a pallet' }).click();
  await expect(weight.getByText('Weighed is entered with 1,000 slates.')).toBeVisible();
  // Measured on one pallet, nothing tells how pallets differ; the range says a tenth.
  await expect(weight.getByText(/on one pallet; others may be out by a tenth/)).toBeVisible();
  const lot = await openFolds(page, 'Reclaimed slates');
  await lot.getByLabel('Slates tried').fill('60');
  await lot.getByLabel('Sound ones', { exact: true }).fill('38');
  await lot.getByLabel('Slates in the lot').fill('600');
  await expect(lot.getByText(/^About 380 are sound, between 3\d\d and 4\d\d/)).toBeVisible();
  await lot.getByLabel('Sizes of sound ones').fill('502 x 248, 405, 400 x 200');
  await expect(lot.getByText('Write each as length x width')).toBeVisible();
  // Six of ten make 500 × 250, three 400 × 200, one of 320 mm none: of about 380 sound ones.
  const sizes = [...Array<string>(6).fill('501 x 252'), ...Array<string>(3).fill('410 x 215')];
  await lot.getByLabel('Sizes of sound ones').fill([...sizes, '320 x 200'].join(', '));
  await expect(lot.getByText(/^500 mm: about 228, between \d+ and \d+\.$/)).toBeVisible();
  await expect(lot.getByText(/^400 mm: about 114, between/)).toBeVisible();
  await expect(lot.getByText('1 slate measured makes no size of this roof.')).toBeVisible();
  await lot.getByLabel('Name of the lot').fill('Old barn');
  await lot.getByRole('button', { name: 'Enter as stock' }).click();
  await expect(lot.getByText('Old barn is entered, each length')).toBeVisible();
  const entered = (await eventsOf(page, jobId)).filter(({ body }) => body.label === 'Old barn');
  expect(entered.map(({ body }) => [body.sizeId, body.slates])).toEqual([
    ['first', 228],
    ['mid', 114],
    ['short', 0]
  ]);
  await lot.getByLabel('Slates tried').fill('60');
  await lot.getByLabel('Old holes, from the tail').fill('30, 480');
  await expect(lot.getByText('Holes are seen either way')).toBeVisible();
  await lot.getByLabel('Sound ones', { exact: true }).fill('70');
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
