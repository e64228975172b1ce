import { readings, twoSlopesSorted, usePlan } from './courses-job.ts';
import { expect, test } from './helpers.ts';
import { eventsOf, seedJob, smallJob } from './seed-job.ts';

test('Lay opens on the slope last worked on, and a course of another is asked about once', async ({
  page
}) => {
  const jobId = await seedJob(page, twoSlopesSorted(260));
  await usePlan(page, `/job/${jobId}`);
  await page.goto(`/job/${jobId}/lay`);
  const laid = page.getByRole('button', { name: 'Course laid' });
  await page.getByRole('button', { name: /^South/ }).click();
  await laid.click();
  await expect(page.getByText('1 of 24 courses laid')).toBeVisible();

  await page.reload();
  await expect(page.getByRole('heading', { name: 'South: course 2 of 12' })).toBeVisible();
  await page.getByRole('button', { name: /^North/ }).click();
  await laid.click();
  await expect(
    page.getByText('The last course was laid on South. Is this one on North?')
  ).toBeVisible();
  expect((await eventsOf(page, jobId)).filter(({ type }) => type === 'courseLaid')).toHaveLength(1);
  await page.getByRole('button', { name: 'Yes, on North' }).click();
  await expect(page.getByText('2 of 24 courses laid')).toBeVisible();
  await expect(laid).toBeEnabled();
  await laid.click();
  await expect(page.getByText('3 of 24 courses laid')).toBeVisible();
  const slopes = (await eventsOf(page, jobId)).filter(({ type }) => type === 'courseLaid');
  expect(slopes.map(({ body }) => body.slopeId)).toEqual(['south', 'north', 'north']);
});

test('a course says its batten, its bond, its nails and what comes after it', async ({ page }) => {
  const jobId = await seedJob(page, twoSlopesSorted(260));
  await usePlan(page, `/job/${jobId}`);
  await page.goto(`/job/${jobId}/lay`);
  const course = page.locator('.facts');
  // 2,400 mm in twelve courses of 500 mm slates at a headlap of 100: head of the first at 450 less
  await expect(course).toContainText(
    /Batten \d[\d,]* mm up · .*slate-and-a-half.* · \d\d mm nails/
  );
  await expect(course).toContainText(/Then course 2: [123] /);
  const batten = async (): Promise<number> =>
    Number((await course.innerText()).match(/Batten ([\d,]+) mm/)?.[1].replace(',', ''));
  const first = await batten();
  const bond = (await course.innerText()).match(/· (.*slate-and-a-half[^·]*) ·/)?.[1];
  await page.getByRole('button', { name: 'Course laid' }).click();
  await expect(page.locator('.next')).toContainText('course 2 of 12');
  await expect(course).toContainText(/Then course 3/);
  const gauge = (await batten()) - first;
  expect(gauge).toBeGreaterThan(150);
  expect(gauge).toBeLessThanOrEqual(200); // at most (500 − 100) / 2
  expect((await course.innerText()).match(/· (.*slate-and-a-half[^·]*) ·/)?.[1]).not.toBe(bond);
});

test('a plan keeps to its piles when the grades change, and says course by course what they mean now', async ({
  page
}) => {
  const jobId = await seedJob(page, twoSlopesSorted(260));
  await usePlan(page, `/job/${jobId}`);
  await page.goto(`/job/${jobId}/grades`);
  const inUse = page.getByText('These grades are in use.');
  await expect(inUse).toBeVisible();
  await page.getByRole('slider', { name: 'Boundary between 1 Thick and 2 Medium' }).focus();
  await page.keyboard.press('ArrowRight');
  await page.getByRole('button', { name: 'Use these grades' }).click();
  await expect(inUse).toBeVisible();
  await page.goto(`/job/${jobId}/lay`);
  await expect(page.getByText('The grades were changed after this plan was made:')).toBeVisible();
  const thick = page.getByRole('listitem').filter({ hasText: ', 1 Thick:' }).first();
  await expect(thick).toContainText('6.2 mm and over → 6.25 mm and over');
  const plans = (await eventsOf(page, jobId)).filter(({ type }) => type === 'planAdopted');
  expect(plans).toHaveLength(1);
});

test('a pile that would rest on one reading says so', async ({ page }) => {
  const odd = { palletId: 'pallet-A', points: [1200], gradesId: null, pile: null };
  const acts = [...smallJob([]), ...readings(), { type: 'slateGauged', body: odd }];
  const jobId = await seedJob(page, acts);
  await page.goto(`/job/${jobId}/grades`);
  await expect(page.getByText(/^1 Thick rests on one reading: too few to sort by\./)).toBeVisible();
});
