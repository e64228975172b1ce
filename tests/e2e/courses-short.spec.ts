import type { Page } from '@playwright/test';
import { SLATE, cardOf, readings, slope, twoSlopesSorted, way } from './courses-job.ts';
import { expect, openExample, test } from './helpers.ts';
import { IN_FORCE, eventsOf, seedJob, smallJob } from './seed-job.ts';

/** The button of the plan shown; those of the ways out stand below it. */
const use = (page: Page) => page.getByRole('button', { name: 'Use this plan' }).first();

test('with a short stock an own plan begins with the lowest courses, takes on more, and is used', async ({
  page
}) => {
  const jobId = await seedJob(page, twoSlopesSorted(120));
  await page.goto(`/job/${jobId}/courses`);
  await expect(page.getByRole('heading', { name: 'The stock is short' })).toBeVisible();
  await way(page, 'My own').check({ force: true });
  await expect(cardOf(page, 'My own')).toContainText(
    /(Courses 1 to \d+ only|Only \d+ of 24 courses): \d+ joints? shows?/
  );
  const laid = page.getByRole('slider', { name: /Courses of South/ });
  await laid.focus();
  await laid.press('End');
  await expect(page.getByRole('heading', { name: /South: course 12 of 12/ })).toBeVisible();
  await expect(page.getByText('This course is not in the plan.')).toBeVisible();
  const covered = async () => {
    const said = await cardOf(page, 'My own').innerText();
    return said.match(/Only (\d+) of 24/)?.[1];
  };
  await page.getByRole('group', { name: 'Lay it from' }).getByRole('button').last().click();
  await expect(page.getByText('This course is not in the plan.')).toHaveCount(0);
  await expect.poll(covered).toMatch(/^\d+$/);
  await page.getByRole('button', { name: 'Undo the last step' }).click();
  await expect(page.getByText('This course is not in the plan.')).toBeVisible();

  const thick = page.getByRole('slider', { name: /where 1 Thick ends/ }).first();
  const was = Number(await thick.getAttribute('aria-valuenow'));
  await thick.focus();
  await thick.press('ArrowDown');
  await expect(thick).toHaveAttribute('aria-valuenow', String(was - 1));
  await page.getByRole('button', { name: 'Undo the last step' }).click();
  await use(page).click();
  await expect(page.getByText(/^The plan in use leaves out \d+ courses/)).toBeVisible();
  const adopted = (await eventsOf(page, jobId)).filter(({ type }) => type === 'planAdopted');
  expect(adopted.map(({ body }) => body.way)).toEqual(['own']);
  expect((adopted[0].body.courses as unknown[]).length).toBeLessThan(24);
  await page.reload();
  await expect(way(page, 'My own')).toBeChecked();
});

test('where only the reserve is short, an own plan begins with the whole roof', async ({
  page
}) => {
  const jobId = await seedJob(page, twoSlopesSorted(169));
  await page.goto(`/job/${jobId}/courses`);
  await expect(page.getByRole('heading', { name: 'The stock is short' })).toBeVisible();
  await way(page, 'My own').check({ force: true });
  await expect(cardOf(page, 'My own')).toContainText(/\d+ joints show/);
  await expect(cardOf(page, 'My own')).not.toContainText(/only/i);
  await use(page).click();
  await expect(page.getByText(/^In use/)).toBeVisible();
});

test('where no course has slates enough, it is said why there is no own plan and what comes first', async ({
  page
}) => {
  const [opened, ...rest] = smallJob([6.2, 5.2]);
  const few = rest.map(({ type, body }) => ({
    type,
    body: type === 'palletAdded' ? { ...body, slates: 4 } : body
  }));
  const jobId = await seedJob(page, [
    ...[opened, ...few, ...readings(2)],
    ...[SLATE, slope('South'), slope('North')]
  ]);
  await page.goto(`/job/${jobId}/courses`);
  await expect(
    page.getByText(
      'You cannot set your own plan yet, since no height of the roof has slates enough.'
    )
  ).toBeVisible();
  await expect(way(page, 'My own')).toHaveCount(0);
});

test('each card says its chance of running out, the chosen one too', async ({ page }) => {
  const job = await openExample(page);
  await page.goto(`${job}/courses`);
  for (const chosen of ['By the rule', 'Most even']) {
    await way(page, chosen).check({ force: true });
    for (const name of ['By the rule', 'Most even'])
      await expect(cardOf(page, name)).toContainText(/runs out: \d+ in \d+|All piles last/);
  }
});

test('a plan of the lowest courses says so beside one of the whole roof', async ({
  page,
  browser
}) => {
  const lowest = await seedJob(page, twoSlopesSorted(60));
  await page.goto(`/job/${lowest}/courses`);
  await page
    .getByRole('listitem')
    .filter({ hasText: /^Lay the lowest/ })
    .getByRole('button', { name: 'Use this plan' })
    .click();
  await expect(page.getByText(/^The plan in use leaves out \d+ courses/)).toBeVisible();
  const adopted = (await eventsOf(page, lowest)).find(({ type }) => type === 'planAdopted');
  if (!adopted) throw new Error('the plan is in use');

  const context = await browser.newContext({ serviceWorkers: 'block' });
  const later = await context.newPage();
  const body = { ...adopted.body, gradesId: IN_FORCE };
  const whole = await seedJob(later, [...twoSlopesSorted(220), { type: 'planAdopted', body }]);
  await later.goto(`/job/${whole}/courses`);
  await expect(cardOf(later, 'Most even')).toContainText(
    /(Courses 1 to \d+ only|Only \d+ of 24 courses): \d+ joints? shows?/
  );
  await expect(cardOf(later, 'By the rule')).toContainText(/\d+ joints show/);
  await expect(cardOf(later, 'By the rule')).not.toContainText(/only/i);
  await context.close();
});

test('an own plan with fewer joints than the most even one says what it breaks', async ({
  page
}) => {
  const jobId = await seedJob(page, twoSlopesSorted(220));
  await page.goto(`/job/${jobId}/courses`);
  await way(page, 'My own').check({ force: true });
  await expect(page.getByRole('button', { name: 'Undo the last step' })).toHaveCount(0);
  const fewer = page.getByText(/^Fewer joints show than on Most even/);
  await expect(fewer).toHaveCount(0);
  const joints = async (name: string) =>
    Number(/(\d+) joints? show/.exec(await cardOf(page, name).innerText())?.[1]);
  const even = await joints('Most even');
  // The pile of which the fewest joints show is laid as far as it goes, wherever that lies.
  const south = page.getByRole('slider', { name: /Courses of South/ });
  await south.focus();
  await south.press('Home');
  for (let course = 1; (await joints('My own')) >= even; course++) {
    expect(course).toBeLessThan(12);
    const card = page.getByRole('group', { name: 'Lay it from' });
    await card.getByRole('button', { name: '3 Thin' }).click();
    await page.getByRole('button', { name: /Above/ }).click();
  }
  await expect(fewer).toHaveText(
    'Fewer joints show than on Most even, because it lays thin below thick.'
  );
});
