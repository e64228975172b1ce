import type { Page } from '@playwright/test';
import { cardOf, isTooWide, twoSlopesSorted, way } from './courses-job.ts';
import { expect, openExample, openFolds, test } from './helpers.ts';
import { eventsOf, seedJob } from './seed-job.ts';

const change = (page: Page, slope: string, lower: string) =>
  page.getByRole('slider', { name: new RegExp(`^${slope}: where ${lower} ends`) });

/** Opens an own plan of two slopes whose first change was moved down by one course. */
async function ownMovedDown(page: Page) {
  const jobId = await seedJob(page, twoSlopesSorted(220));
  await page.goto(`/job/${jobId}/courses`);
  await way(page, 'My own').check({ force: true });
  const thick = change(page, 'South', '1 Thick');
  const was = Number(await thick.getAttribute('aria-valuenow'));
  await thick.focus();
  await thick.press('ArrowDown');
  return { jobId, thick, was };
}

test('the worked example stands under all three plans, each drawn and with its one line', async ({
  page
}) => {
  const job = await openExample(page);
  await page.goto(`${job}/courses`);
  for (const name of ['By the rule', 'Most even', 'My own']) {
    await way(page, name).check({ force: true });
    const card = cardOf(page, name);
    await expect(card).toContainText(/\d+ joints show/);
    await expect(page.getByText(/runs out:? \d+ in \d+|All piles last/).first()).toBeVisible();
    await expect(card.locator('svg path.band').first()).toBeAttached();
    await expect(page.getByText(/^Thick 1–\d+ · Medium \d+–\d+ · Thin \d+–36$/)).toBeVisible();
  }
});

test('an own plan is made with the keys and a course, says what it breaks, is undone, and is used', async ({
  page
}) => {
  const { jobId, thick, was } = await ownMovedDown(page);
  await expect(thick).toHaveAttribute('aria-valuenow', String(was - 1));
  // the other slope changes at the same height and follows
  await expect(change(page, 'North', '1 Thick')).toHaveAttribute('aria-valuenow', String(was - 1));
  await expect(page.getByText(new RegExp(`^Thick 1–${was - 1} ·`))).toBeVisible();
  await page.getByRole('button', { name: 'Undo the last step' }).click();
  await expect(thick).toHaveAttribute('aria-valuenow', String(was));

  const south = page.getByRole('slider', { name: /Courses of South/ });
  await south.focus();
  await south.press('Home');
  const card = page.getByRole('group', { name: 'Lay it from' });
  await card.getByRole('button', { name: '3 Thin' }).click();
  await expect(
    page.getByText('South, course 2 is thicker than the one below it. You may lay it so.')
  ).toBeVisible();
  await page.setViewportSize({ width: 320, height: 640 });
  expect(await isTooWide(page)).toBe(false);
  await page.getByRole('button', { name: 'Use this plan' }).click();
  await expect(page.getByText(/^In use/)).toBeVisible();
  const adopted = (await eventsOf(page, jobId)).filter(({ type }) => type === 'planAdopted');
  expect(adopted.map(({ body }) => body.way)).toEqual(['own']);
  await page.reload();
  await expect(way(page, 'My own')).toBeChecked();
  await expect(page.getByText(/^South, course 2 is thicker than the one below/)).toBeVisible();

  // In use, it can be moved further, and back.
  await thick.focus();
  const used = Number(await thick.getAttribute('aria-valuenow'));
  await thick.press('ArrowDown');
  await expect(thick).toHaveAttribute('aria-valuenow', String(used - 1));
  await expect(page.getByText(/^In use/)).toBeHidden();
  await page.getByRole('button', { name: 'Undo the last step' }).click();
  await expect(thick).toHaveAttribute('aria-valuenow', String(used));
  await expect(page.getByText(/^In use/)).toBeVisible();
  await thick.press('ArrowDown');
  await page.getByRole('button', { name: 'Use this plan' }).click();
  await expect(page.getByText(/^In use/)).toBeVisible();
  await expect(thick).toHaveAttribute('aria-valuenow', String(used - 1));
});

test('an own plan that is not in use yet is there after another screen and after a reload', async ({
  page
}) => {
  const { jobId, thick, was } = await ownMovedDown(page);
  const said = page.getByText(new RegExp(`^Thick 1–${was - 1} ·`));
  await expect(said).toBeVisible();
  const goTo = (name: string) => page.getByRole('link', { name, exact: true }).first().click();
  await goTo('Roof');
  await expect(page.getByRole('heading', { name: 'Roof', level: 1 })).toBeVisible();
  await goTo('Courses');
  await way(page, 'My own').check({ force: true });
  await expect(said).toBeVisible();
  await page.reload();
  await way(page, 'My own').check({ force: true });
  await expect(said).toBeVisible();
  // What it was before is one step back.
  await page.getByRole('button', { name: 'Undo the last step' }).click();
  await expect(thick).toHaveAttribute('aria-valuenow', String(was));
  expect((await eventsOf(page, jobId)).filter(({ type }) => type === 'planAdopted')).toEqual([]);
});

test('what can be done with a course that is tapped comes into view', async ({ page }) => {
  const jobId = await seedJob(page, twoSlopesSorted(220));
  await page.goto(`/job/${jobId}/courses`);
  await way(page, 'My own').check({ force: true });
  const drawing = page.locator('figure').filter({ hasText: 'South' }).locator('svg').first();
  await drawing.scrollIntoViewIfNeeded();
  await drawing.click({ position: { x: 80, y: 30 } });
  await expect(page.getByRole('group', { name: 'Lay it from' })).toBeInViewport({ ratio: 1 });
});

test('an own plan that takes more slates than stand there is not used, and says why', async ({
  page
}) => {
  const jobId = await seedJob(page, twoSlopesSorted(173));
  await page.goto(`/job/${jobId}/courses`);
  await way(page, 'My own').check({ force: true });
  const thick = change(page, 'South', '1 Thick');
  await thick.focus();
  for (let step = 0; step < 8; step++) await thick.press('ArrowUp');
  await expect(page.getByText(/^1 Thick has \d+, this takes \d+\.$/)).toBeVisible();
  await page.getByRole('button', { name: 'Use this plan' }).click();
  await expect(
    page.getByText(/^Not used: it takes \d+ slates of 1 Thick, and \d+ are there/)
  ).toBeVisible();
  expect((await eventsOf(page, jobId)).filter(({ type }) => type === 'planAdopted')).toEqual([]);
});

/** Slower than a worn phone: the processor at a quarter of its pace. */
const SLOWED = 4;

test('a change is dragged on the drawing, and its figures follow', async ({ page }) => {
  const job = await openExample(page);
  await page.goto(`${job}/courses`);
  await way(page, 'My own').check({ force: true });
  const thick = change(page, 'Back slope', '1 Thick');
  await thick.scrollIntoViewIfNeeded();
  const was = Number(await thick.getAttribute('aria-valuenow'));
  const box = await thick.locator('.pill').boundingBox();
  if (!box) throw new Error('the grip is drawn');
  const toY = box.y - 20;
  // The courses drawn, from the eaves up, whose middles lie below the place that is dragged to.
  const middles = await page
    .locator('figure')
    .filter({ hasText: 'Back slope' })
    .locator('path.band')
    .evaluateAll((bands) =>
      bands.map((band) => {
        const { top, height } = band.getBoundingClientRect();
        return Math.round(top + height / 2);
      })
    );
  const meant = [...new Set(middles)].filter((middle) => middle > toY).length;
  expect(meant).toBeGreaterThan(was);
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2, toY, { steps: 6 });
  await page.mouse.up();
  const now = async (): Promise<number> => Number(await thick.getAttribute('aria-valuenow'));
  const first = page.getByText(/^(Back slope: )?Thick 1–\d+ ·/);
  await expect.poll(async () => Math.abs((await now()) - meant)).toBeLessThanOrEqual(1);
  await expect
    .poll(async () => Number(/1–(\d+)/.exec(await first.innerText())?.[1]) - (await now()))
    .toBe(0);
});

test('a course that was laid in three goes, twice from one pile, is drawn and listed', async ({
  page
}) => {
  const piles = [
    { pile: 2, pieces: 5 },
    { pile: 1, pieces: 4 },
    { pile: 2, pieces: 11 }
  ];
  const jobId = await seedJob(page, [
    ...twoSlopesSorted(260),
    { type: 'courseLaid', body: { slopeId: 'south', course: 1, piles } }
  ]);
  await page.goto(`/job/${jobId}/courses`);
  const south = page.locator('figure').filter({ hasText: 'South' });
  // 12 courses, the lowest of them in three stretches
  await expect(south.locator('path.band[stroke]')).toHaveCount(14);
  await expect(way(page, 'Most even')).toBeAttached();
  await openFolds(page, 'Every course');
  const lowest = page.getByRole('region', { name: /South/ }).locator('tbody tr').first();
  await expect(lowest).toContainText(/2 Medium[^]*1 Thick[^]*2 Medium/);
  await page.getByRole('slider', { name: /Courses of South/ }).focus();
  await page.keyboard.press('Home');
  await expect(page.getByRole('heading', { name: /South.*1/ }).first()).toBeVisible();
});
