import { twoSlopesSorted, usePlan } from './courses-job.ts';
import { expect, test } from './helpers.ts';
import { eventsOf, seedJob } from './seed-job.ts';

test('J60 half a course at the end of the day: one tap, one number, and it goes on from there', async ({
  page
}) => {
  const jobId = await seedJob(page, twoSlopesSorted(260));
  const job = `/job/${jobId}`;
  await usePlan(page, job);
  await page.goto(`${job}/lay`);
  const record = page.getByRole('button', { name: 'Record' });
  const laidSoFar = page.getByLabel('Laid so far');
  await page.getByRole('button', { name: 'Part laid' }).click();
  await expect(page.getByText(/course 1: how many of its 20 slates lie/)).toBeVisible();

  for (const bad of ['', '0', '20', '30', 'half']) {
    await laidSoFar.fill(bad);
    await record.click();
    await expect(page.getByText(/^Give a whole number from 1 to 19\. With all 20/)).toBeVisible();
    await expect(laidSoFar).toHaveValue(bad);
  }
  expect((await eventsOf(page, jobId)).some(({ type }) => type === 'coursePartLaid')).toBe(false);

  await laidSoFar.fill('7');
  await page.getByLabel('Note for whoever goes on').fill('Mind the loose batten');
  await record.click();
  await expect(page.getByText('7 of 20 laid, from the left')).toBeVisible();
  await expect(page.getByText('Note: Mind the loose batten')).toBeVisible();
  await expect(page.getByText('0 of 24 courses laid')).toBeVisible();
  await expect(page.locator('.pieces')).toHaveText('12 slates + 1 slate-and-a-half');

  // Next morning.
  await page.reload();
  await expect(page.getByText('7 of 20 laid, from the left')).toBeVisible();
  await page.getByRole('button', { name: 'Part laid' }).click();
  await expect(page.getByText('Counted from the left, as it was begun.')).toBeVisible();
  await laidSoFar.fill('12');
  await record.click();
  await expect(page.getByText('12 of 20 laid, from the left')).toBeVisible();
  await page.getByRole('button', { name: /^Undo: .*12 slates laid/ }).click();
  await expect(page.getByText('7 of 20 laid, from the left')).toBeVisible();

  await page.getByRole('button', { name: 'Course laid' }).click();
  await expect(page.getByText('1 of 24 courses laid')).toBeVisible();
  const laid = (await eventsOf(page, jobId)).find(({ type }) => type === 'courseLaid');
  expect(laid?.body).toMatchObject({ course: 1, piles: [{ pieces: 20 }] });
});

test('from the right, and the piles of a course begun from another pile', async ({ page }) => {
  const jobId = await seedJob(page, [
    ...twoSlopesSorted(260),
    {
      type: 'coursePartLaid',
      body: { slopeId: 'north', course: 1, from: 'right', piles: [{ pile: 2, pieces: 4 }] }
    }
  ]);
  await usePlan(page, `/job/${jobId}`);
  await page.goto(`/job/${jobId}/lay`);
  await expect(page.getByText('4 of 20 laid, from the right')).toBeVisible();
  await page.getByRole('button', { name: 'Course laid' }).click();
  await expect(page.getByText('1 of 24 courses laid')).toBeVisible();
  const laid = (await eventsOf(page, jobId)).find(({ type }) => type === 'courseLaid');
  const piles = (laid?.body.piles ?? []) as { pile: number; pieces: number }[];
  expect(piles.reduce((sum, { pieces }) => sum + pieces, 0)).toBe(20);
  expect(piles.at(-1)).toEqual(
    piles.length === 1 ? { pile: 2, pieces: 20 } : { pile: 2, pieces: 4 }
  );
});

test('Courses marks a course that was begun: drawing, first look, table and card', async ({
  page
}) => {
  const jobId = await seedJob(page, [
    ...twoSlopesSorted(260),
    {
      type: 'coursePartLaid',
      body: {
        ...{ slopeId: 'north', course: 1, from: 'left', piles: [{ pile: 1, pieces: 7 }] },
        note: 'Mind the loose batten'
      }
    }
  ]);
  await page.goto(`/job/${jobId}/courses`);
  await expect(page.getByText('North, course 1: 7 of 20 laid, from the left.')).toBeVisible();
  const lies = page.locator('path.begun');
  await expect(lies).toHaveCount(1);
  const widths = await lies.evaluate((path) => {
    const whole = path.parentElement?.querySelector('path.band') as SVGPathElement;
    return [(path as SVGPathElement).getBBox().width, whole.getBBox().width];
  });
  expect(widths[0] / widths[1]).toBeGreaterThan(0.25);
  expect(widths[0] / widths[1]).toBeLessThan(0.45);
  await page
    .getByRole('group', { name: 'Every course' })
    .or(page.getByText('Every course'))
    .first()
    .click();
  await expect(page.getByText('7 of 20 laid', { exact: true }).first()).toBeVisible();
  const slider = page.getByRole('slider', { name: /Courses of North/ });
  await slider.focus();
  await page.keyboard.press('Home');
  await expect(slider).toHaveAttribute('aria-valuetext', /7 of 20 laid, from the left/);
  await expect(page.getByText('Mind the loose batten')).toBeVisible();
});
