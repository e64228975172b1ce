import { SLATE, readings } from './courses-job.ts';
import { expect, openFolds, test } from './helpers.ts';
import { IN_FORCE, type SeedAct, eventsOf, seedJob, smallJob } from './seed-job.ts';

/** A slope with a hip on either side; pitch, rafter and angles on plan as they meet at a square corner. */
function end(
  slopeId: string,
  measures: {
    rafterLengthMm: number;
    eaveWidthMm: number;
    pitchDegrees: number;
    planAngleDegrees: number;
    eaveHeightMm?: number;
  }
): SeedAct {
  const { planAngleDegrees, ...rest } = measures;
  const hip = { kind: 'hip', planAngleDegrees };
  return {
    type: 'slopeSet',
    body: { slopeId, name: slopeId, eaveHeightMm: 0, openings: [], left: hip, right: hip, ...rest }
  };
}

test('courses that miss each other at a hip of unequal pitches are told, and why', async ({
  page
}) => {
  // One height of 2000 mm: at 30° a run of 3464 mm and a rafter of 4000, at 45° 2000 and 2828.
  const job = await seedJob(page, [
    { type: 'jobOpened', body: { name: 'Unequal' } },
    SLATE,
    end('Front', {
      rafterLengthMm: 4000,
      eaveWidthMm: 9000,
      pitchDegrees: 30,
      planAngleDegrees: 60
    }),
    end('End', { rafterLengthMm: 2828, eaveWidthMm: 6928, pitchDegrees: 45, planAngleDegrees: 30 })
  ]);
  await page.goto(`/job/${job}/roof`);
  await expect(
    page.getByText(/End and Front: courses miss each other by up to \d+ mm/)
  ).toBeVisible();
  await expect(
    page.getByText(/level at the eaves, but End climbs in \d+ courses and Front in \d+/)
  ).toBeVisible();
  await expect(page.getByRole('button', { name: /^Raise/ })).toHaveCount(0);
  await openFolds(page, 'Hips, valleys and ridges');
  // √(4000² + 2000²), the inset being 3464 ÷ tan 60°
  await expect(
    page.getByText(/^Hip, End with Front: 4,47[12] mm; courses miss/).first()
  ).toBeVisible();
});

test('an eave that lies askew is raised in one tap, and the courses meet', async ({ page }) => {
  const measures = { rafterLengthMm: 4000, pitchDegrees: 40, planAngleDegrees: 45 };
  const job = await seedJob(page, [
    { type: 'jobOpened', body: { name: 'Askew' } },
    SLATE,
    end('Front', { ...measures, eaveWidthMm: 9000 }),
    end('End', { ...measures, eaveWidthMm: 6200, eaveHeightMm: 45 })
  ]);
  await page.goto(`/job/${job}/roof`);
  await expect(page.getByText('courses miss each other by up to 45 mm')).toBeVisible();
  await page.getByRole('button', { name: 'Raise Front by 45 mm' }).click();
  await expect(page.getByText('courses miss each other')).toHaveCount(0);
  await openFolds(page, 'Hips, valleys and ridges');
  await expect(page.getByText(/^Hip, End with Front: .*; courses meet$/).first()).toBeVisible();
});

test('a plan that changes pile on one side of a hip alone says so on Courses', async ({
  page,
  browser,
  baseURL
}) => {
  const measures = { rafterLengthMm: 2400, pitchDegrees: 35, planAngleDegrees: 45 };
  const acts = [
    ...smallJob([6.2, 5.2]),
    ...readings(),
    SLATE,
    end('Front', { ...measures, eaveWidthMm: 6000 }),
    end('End', { ...measures, eaveWidthMm: 3935 })
  ];
  const job = await seedJob(page, acts);
  await page.goto(`/job/${job}/courses`);
  await page.getByRole('button', { name: 'Use this plan' }).click();
  await expect(page.getByText('In use, up to date.')).toBeVisible();
  await expect(page.getByText(/take different piles/)).toHaveCount(0);
  const plan = (await eventsOf(page, job)).find(({ type }) => type === 'planAdopted')!.body;

  // The same plan, its fourth course on the End from the next pile.
  const courses = plan.courses as {
    slopeId: string;
    course: number;
    piles: { pile: number; pieces: number }[];
  }[];
  const spoilt = courses.map((one) =>
    one.slopeId === 'End' && one.course === 4
      ? { ...one, piles: one.piles.map((part) => ({ ...part, pile: (part.pile % 3) + 1 })) }
      : one
  );
  const elsewhere = await browser.newContext({ baseURL });
  const other = await elsewhere.newPage();
  const again = await seedJob(other, [
    ...acts,
    { type: 'planAdopted', body: { ...plan, gradesId: IN_FORCE, courses: spoilt } }
  ]);
  await other.goto(`/job/${again}/courses`);
  await expect(
    other.getByText(/Course 4 of End and 4 of Front take different piles: too few slates/)
  ).toBeVisible();
  await elsewhere.close();
});
