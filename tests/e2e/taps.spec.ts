import type { Locator, Page } from '@playwright/test';
import { readings, twoSlopes } from './courses-job.ts';
import { expect, test } from './helpers.ts';
import { eventsOf, seedJob, smallJob } from './seed-job.ts';

/**
 * Taps that the tasks of a working day take at most, each from the screen that it is done on; a
 * field that is typed into counts as one. In brackets what they took when the app was first tried.
 */
const MOST_TAPS = {
  'new job with 3 pallets': 13, // (14)
  'one reading': 4, // (4)
  'set aside': 2, // (2)
  undo: 1, // (1)
  'change pallet': 1, // (2)
  'set 3 grades': 2, // (2)
  'two-slope roof': 15, // (34)
  'hipped roof with a valley, a rooflight and a chimney': 30,
  plan: 2, // (2)
  'lay a course': 1, // (1)
  rogue: 4 // (4)
};
type Task = keyof typeof MOST_TAPS;

/** Does a task and counts its taps. */
async function count(
  task: Task,
  work: (tap: (target: Locator, text?: string) => Promise<void>) => Promise<void>
): Promise<void> {
  let taps = 0;
  await work(async (target, text) => {
    taps++;
    await target.click();
    if (text !== undefined) await target.fill(text);
  });
  test.info().annotations.push({ type: task, description: `${taps} taps` });
  expect(taps, task).toBeLessThanOrEqual(MOST_TAPS[task]);
}

const button = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, exact: typeof name === 'string' });
const label = (page: Page, name: string | RegExp) => page.getByLabel(name, { exact: true });
const screen = (page: Page, name: string) =>
  page.getByRole('navigation').getByRole('link', { name, exact: true }).first();
const verdict = (page: Page) => page.locator('.verdict');

test('what the labourer does takes few taps', async ({ page }) => {
  await page.goto('/');
  await count('new job with 3 pallets', async (tap) => {
    await tap(label(page, 'Name of the job'), 'Barn');
    await tap(button(page, 'Start'));
    await tap(screen(page, 'Sort'));
    for (const name of ['A', 'B', 'C']) {
      if (name === 'B') await tap(button(page, 'Pallets'));
      await tap(label(page, 'Name on the pallet'), name);
      await tap(label(page, 'Slates on it'), '480');
      await tap(button(page, 'Add pallet'));
      await expect(page.getByRole('button', { name: `${name} 480 left` }).first()).toBeVisible();
    }
  });
  await button(page, 'Back').click();
  await button(page, 'Gauge').click();
  await button(page, 'Yes, millimetres').click();
  await button(page, 'Seen').click();
  await count('one reading', async (tap) => {
    for (const key of ['6', 'Decimal point', '4', 'Take the number']) await tap(button(page, key));
    await expect(verdict(page)).toContainText(/6\.40 mm.*saved/);
  });
  await count('undo', async (tap) => {
    await tap(button(page, /^Undo/));
    await expect(verdict(page)).toContainText(/Undone.*saved/);
  });
  await count('set aside', async (tap) => {
    await tap(button(page, 'Set aside'));
    await tap(button(page, 'Broken'));
    await expect(verdict(page)).toContainText(/Set aside.*saved/);
  });
  await count('change pallet', async (tap) => {
    await tap(page.getByRole('button', { name: /^B 480 left/ }));
    await expect(page.locator('.chip').first()).toHaveText(/^B/);
  });
});

test('what the slater does takes few taps', async ({ page }) => {
  const jobId = await seedJob(page, [...smallJob([]), ...readings(60)]);
  const types = async () => (await eventsOf(page, jobId)).map(({ type }) => type);
  await page.goto(`/job/${jobId}`);
  await count('set 3 grades', async (tap) => {
    await tap(screen(page, 'Grades'));
    await tap(button(page, 'Use these grades'));
    await expect.poll(types).toContain('gradesSet');
  });
  await count('two-slope roof', async (tap) => {
    await tap(screen(page, 'Roof'));
    await tap(label(page, 'Length'), '500');
    await tap(label(page, 'Width'), '250');
    await tap(label(page, 'Headlap'), '100');
    await tap(button(page, 'Save the slate'));
    const slopes = async () => (await types()).filter((type) => type === 'slopeSet').length;
    for (const [before, slope] of ['Slope 1', 'Slope 2'].entries()) {
      await tap(button(page, 'Add a slope'));
      await tap(label(page, 'Rafter length, eave to ridge'), '2400');
      await tap(label(page, 'Width along the eave'), '5000');
      await tap(label(page, 'Pitch'), '35');
      await tap(button(page, `Save ${slope}`));
      await expect.poll(slopes).toBe(before + 1);
    }
  });
  await count('plan', async (tap) => {
    await tap(screen(page, 'Courses'));
    await tap(button(page, 'Use this plan'));
    await expect.poll(types).toContain('planAdopted');
  });
});

test('a hipped roof with a valley, a rooflight and a chimney takes few taps', async ({ page }) => {
  const jobId = await seedJob(page, smallJob([]));
  await page.goto(`/job/${jobId}`);
  await count('hipped roof with a valley, a rooflight and a chimney', async (tap) => {
    await tap(screen(page, 'Roof'));
    await tap(label(page, 'Length'), '500');
    await tap(label(page, 'Width'), '250');
    await tap(label(page, 'Headlap'), '100');
    await tap(button(page, 'Save the slate'));
    const shapes = page.getByRole('form', { name: 'Start from a shape' });
    await tap(shapes.getByRole('button', { name: 'L with a valley' }));
    await tap(shapes.getByLabel(/^Length/), '12000');
    await tap(shapes.getByLabel(/^Depth/), '7000');
    await tap(shapes.getByLabel('Pitch'), '35');
    await tap(shapes.getByRole('button', { name: 'Draw this roof' }));
    const openings = [
      { slope: 'Front slope', opening: 'rooflight', at: ['1500', '800', '1500', '1200'] },
      { slope: 'Back slope', opening: 'chimney', at: ['6000', '900', '3000', '700'] }
    ];
    for (const [before, { slope, opening, at }] of openings.entries()) {
      if (before === 0) await tap(page.getByText('Each slope', { exact: true }));
      const chosen = page
        .getByRole('list', { name: /Slopes of this roof/ })
        .getByRole('button', { name: slope });
      if ((await chosen.getAttribute('aria-pressed')) !== 'true') await tap(chosen);
      await tap(button(page, `Change ${slope}`));
      await tap(button(page, `Add a ${opening}`));
      const fields = page.getByRole('group', { name: new RegExp(`^${opening} 1`, 'i') });
      for (const [index, name] of [
        'From the left end of the eave',
        'Width',
        'From the eave up the rafter',
        'Length up the rafter'
      ].entries())
        await tap(fields.getByLabel(name, { exact: true }), at[index]);
      await tap(button(page, `Save ${slope}`));
      const saved = async () =>
        (await eventsOf(page, jobId))
          .filter(({ type }) => type === 'slopeSet')
          .filter(({ body }) => (body.openings as unknown[]).length > 0).length;
      await expect.poll(saved).toBe(before + 1);
    }
  });
  await page.getByText('Hips, valleys and ridges', { exact: true }).click();
  for (const kind of ['Hip', 'Valley'])
    await expect(page.getByText(new RegExp(`^${kind}, .* with .*; courses meet$`))).toHaveCount(1);
});

test('what is done while laying takes few taps', async ({ page }) => {
  const jobId = await seedJob(page, twoSlopes(260));
  const types = async () => (await eventsOf(page, jobId)).map(({ type }) => type);
  await page.goto(`/job/${jobId}/courses`);
  await button(page, 'Use this plan').click();
  await expect.poll(types).toContain('planAdopted');
  await page.goto(`/job/${jobId}/lay`);
  await count('lay a course', async (tap) => {
    await tap(button(page, 'Course laid'));
    await expect.poll(types).toContain('courseLaid');
  });
  await count('rogue', async (tap) => {
    await tap(button(page, 'Rogue slate'));
    await tap(page.getByLabel('Its thickness'), '20');
    await tap(button(page, 'Check it'));
    await tap(button(page, 'Take it off this pile, as lost'));
    await expect.poll(types).toContain('slatesLost');
  });
});
