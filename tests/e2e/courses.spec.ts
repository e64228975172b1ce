import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import {
  SLATE,
  adoptPlan,
  readings,
  slope,
  totalsOfRoof,
  totalsOfTables,
  twoSlopes
} from './courses-job.ts';
import { expect, startJob, test } from './helpers.ts';
import { IN_FORCE, seedJob, smallJob } from './seed-job.ts';

async function seeded(page: Page, acts: Parameters<typeof seedJob>[1]): Promise<string> {
  return `/job/${await seedJob(page, acts)}`;
}

/** Looks at the whole page at once, so that nothing is judged while the bar of steps covers it. */
async function axeFinds(page: Page): Promise<string[]> {
  const size = page.viewportSize() ?? { width: 390, height: 844 };
  await page.setViewportSize({ width: size.width, height: 6000 });
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'])
    .analyze();
  await page.setViewportSize(size);
  return violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`);
}

test.describe('before a plan', () => {
  test('a new job says all that a plan needs and leads there', async ({ page }) => {
    const job = await startJob(page, 'Nothing yet');
    await page.goto(`${job}/courses`);
    await expect(page.getByRole('link', { name: 'Enter the slate' })).toBeVisible();
    await expect(page.getByRole('link', { name: 'Enter the roof' })).toBeVisible();
    await page.getByRole('link', { name: 'Add pallets' }).click();
    await expect(page).toHaveURL(/\/sort$/);
  });

  test('pallets and a roof without grades lead to Grades', async ({ page }) => {
    const job = await seeded(page, [...smallJob([]), ...readings(), SLATE, slope('South')]);
    await page.goto(`${job}/courses`);
    await page.getByRole('link', { name: 'Set the grades' }).click();
    await expect(page).toHaveURL(/\/grades$/);
  });

  test('grades without a roof lead to Roof', async ({ page }) => {
    const job = await seeded(page, [...smallJob([6, 5]), ...readings(), SLATE]);
    await page.goto(`${job}/courses`);
    await expect(page.getByRole('button', { name: 'Make the plan' })).toHaveCount(0);
    await page.getByRole('link', { name: 'Enter the roof' }).click();
    await expect(page).toHaveURL(/\/roof$/);
  });
});

test('the plan adds up to the roof, is adopted and stays over a reload', async ({ page }) => {
  const job = await seeded(page, twoSlopes(260));
  const demand = await totalsOfRoof(page, job);
  await adoptPlan(page, job);
  expect(await totalsOfTables(page)).toEqual(demand);
  await expect(page.getByText(/no course would change/)).toBeVisible();
  await expect(page.getByText(/this is proved/)).toBeVisible();
  await page.reload();
  expect(await totalsOfTables(page)).toEqual(demand);
  expect(await axeFinds(page)).toEqual([]);
});

test('a course is chosen on the drawing by key and by the buttons @desktop', async ({ page }) => {
  const job = await seeded(page, twoSlopes(260));
  await adoptPlan(page, job);
  const south = page.getByRole('slider', { name: /Courses of South/ });
  await south.focus();
  await south.press('End');
  await expect(page.getByRole('heading', { name: /South: course 12 of 12/ })).toBeVisible();
  await page.getByRole('button', { name: /Below/ }).click();
  await expect(page.getByRole('heading', { name: /South: course 11 of 12/ })).toBeVisible();
});

test('a stock short by some slates says how many, and narrowing the reserve mends it', async ({
  page
}) => {
  const job = await seeded(page, twoSlopes(156));
  const { slates } = await totalsOfRoof(page, job);
  // 468 slates stand there; breakage and spares keep 4.5 % of each pile back, rounded up
  expect(slates).toBeLessThanOrEqual(468);
  await page.goto(`${job}/courses`);
  await page.getByRole('button', { name: 'Make the plan' }).click();
  await expect(page.getByRole('heading', { name: 'The stock is short' })).toBeVisible();
  const missing = page.getByText(/^The roof needs \d+ slates? more/);
  const text = await missing.innerText();
  const kept = 468 - slates + Number(text.match(/\d+/)?.[0]);
  // the reserve of three piles of 468 slates, each rounded up
  expect(kept).toBeGreaterThanOrEqual(22);
  expect(kept).toBeLessThanOrEqual(24);
  await expect(page.getByText(/^Order \d+ slates? for/)).toBeVisible();
  await page
    .getByRole('button', { name: /^Set the reserve to/ })
    .first()
    .click();
  await expect(page.getByRole('heading', { name: 'At a glance' })).toBeVisible();
  expect((await totalsOfTables(page)).slates).toBe(slates);
});

test('a stock far too small offers to lay the lower courses', async ({ page }) => {
  const job = await seeded(page, twoSlopes(60));
  await page.goto(`${job}/courses`);
  await page.getByRole('button', { name: 'Make the plan' }).click();
  await expect(page.getByRole('heading', { name: 'The stock is short' })).toBeVisible();
  await expect(page.getByText(/^Lay the lowest \d+ of 24 courses now/)).toBeVisible();
  expect(await axeFinds(page)).toEqual([]);
});

test('a pile counted anew makes the plan older than the stock, with the difference to adopt', async ({
  page
}) => {
  const acts = twoSlopes(260);
  const job = await seeded(page, acts);
  await adoptPlan(page, job);
  await page.goto(`${job}/lay`);
  await page.getByRole('button', { name: 'Several' }).click();
  await page.getByRole('button', { name: '1 Thick' }).last().click();
  await page.getByLabel('How many broke?').fill('200');
  await page.getByRole('button', { name: 'Record' }).click();
  await expect(page.getByText(/^Saved: 200 slates of 1 Thick lost/)).toBeVisible();

  await page.goto(`${job}/courses`);
  await expect(
    page.getByRole('heading', { name: 'The plan is older than the stock' })
  ).toBeVisible();
  await expect(page.getByText(/^1 Thick no longer carries the plan/)).toBeVisible();
  const changes = page.getByRole('table', { name: 'What changes' });
  await expect(changes).toBeVisible();
  await expect(changes.getByRole('rowheader').first()).toHaveText(/^(South|North), course \d+$/);
  await expect(changes).toContainText(/× \d+ \+ 1 slate-and-a-half/);
  await expect(changes).not.toContainText(/[−-]0\.00/);
  await page.getByRole('button', { name: 'Adopt the new plan' }).click();
  await expect(page.getByText(/no course would change/)).toBeVisible();
  await expect(page.getByText(/no longer carries the plan/)).toHaveCount(0);
});

test('draw list, loading out, what if: each adds up or says why not', async ({ page }) => {
  const job = await seeded(page, twoSlopes(260));
  const demand = await totalsOfRoof(page, job);
  await adoptPlan(page, job);

  await page.getByRole('button', { name: 'Draw list' }).click();
  const rows = page.getByRole('table', { name: /from the eaves up/ }).locator('tbody tr');
  let drawn = 0;
  for (const row of await rows.all()) {
    const cells = (await row.locator('td').allInnerTexts())
      .slice(1, 5)
      .map((cell) => Number(cell.replace(/[^0-9]/g, '') || '0'));
    expect(cells[0] + cells[1] + cells[2]).toBe(cells[3]);
    if (cells[3] >= 3) expect(cells.slice(0, 3).every((slates) => slates > 0)).toBe(true);
    drawn += cells[3];
  }
  expect(drawn).toBe(demand.slates);

  await page.getByRole('button', { name: 'Loading out' }).click();
  await page.getByLabel('Heaviest lift').fill('0');
  await page.getByRole('button', { name: 'Use these limits' }).click();
  await expect(page.getByText('Give a mass from 20 to 5,000 kg.')).toBeVisible();
  await page.getByLabel('Heaviest lift').fill('120');
  await page.getByRole('button', { name: 'Use these limits' }).click();
  const heaviest = async (): Promise<number> => {
    const masses = await page.locator('tr.lift td').allInnerTexts();
    return Math.max(...masses.map((mass) => Number(mass.replace(/[^0-9]/g, ''))));
  };
  await expect.poll(heaviest).toBeLessThanOrEqual(120);
  expect(await heaviest()).toBeGreaterThan(0);
  await expect(page.getByRole('link', { name: /Print tags/ })).toBeVisible();
  expect(await axeFinds(page)).toEqual([]);

  await page.getByRole('button', { name: 'What if' }).click();
  await page.getByRole('button', { name: 'Work it out' }).click();
  await expect(page.getByRole('row', { name: /^As set now/ })).toBeVisible();
  await expect(page.getByRole('row', { name: /^Reserve 0/ })).toBeVisible();
});

test('a trial laying runs, stops when told, and agrees with the exact figure', async ({ page }) => {
  const job = await seeded(page, twoSlopes(260));
  await adoptPlan(page, job);
  await page.getByRole('button', { name: 'Trial laying' }).click();
  await page.getByRole('button', { name: /^Lay it/ }).click();
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByText('Stopped. Nothing was changed.')).toBeVisible();

  await page.getByRole('button', { name: /^Lay it/ }).click();
  const planned = page.getByRole('row', { name: /^As planned/ });
  await expect(planned).toBeVisible();
  await expect(
    page.getByRole('row', { name: /^Graded by hand, error 0.50 mm assumed/ })
  ).toBeVisible();
  const [mean, give] = (await planned.locator('td').first().innerText()).split('±').map(Number);
  const exact = Number(
    (await planned.getByText(/exactly/).innerText()).match(/[\d.]+(?=\.$)/)?.[0]
  );
  // the interval shown is 1.96 standard errors; five of them hold all but always
  expect(Math.abs(mean - exact)).toBeLessThanOrEqual((5 / 1.96) * give + 0.01);
  expect(await axeFinds(page)).toEqual([]);
});

test('the chance of running out is held under a limit by keeping more back', async ({ page }) => {
  const job = await seeded(page, twoSlopes(260));
  await page.goto(`${job}/courses`);
  await page.getByRole('button', { name: 'Make the plan' }).click();
  await expect(page.getByText(/Chance that any pile runs out/)).toBeVisible();
  await page.getByLabel('Hold each chance under').fill('0');
  await page.getByRole('button', { name: 'Plan within this chance' }).click();
  await expect(page.getByText('Give a chance between 0.1 and 50 %.')).toBeVisible();
  await page.getByLabel('Hold each chance under').fill('20');
  await page.getByRole('button', { name: 'Plan within this chance' }).click();
  await expect(
    page
      .getByText(/^Planned so that each pile runs out with a chance of at most 20 %/)
      .or(page.getByText('The stock is short'))
  ).toBeVisible();
});

test('a plan held under a chance is still held after a reload', async ({ page }) => {
  const job = await seeded(page, twoSlopes(260));
  await page.goto(`${job}/courses`);
  await page.getByRole('button', { name: 'Make the plan' }).click();
  await page.getByLabel('Hold each chance under').fill('45');
  await page.getByRole('button', { name: 'Plan within this chance' }).click();
  await expect(
    page.getByText(/^Planned so that each pile runs out with a chance of at most 45 %/)
  ).toBeVisible();
  const told = page
    .getByRole('region', { name: 'Will each pile last?' })
    .locator('tbody td strong');
  for (const chance of await told.allInnerTexts())
    expect(Number(/[\d.]+/.exec(chance)?.[0]), chance).toBeLessThanOrEqual(45);
  await page.getByRole('button', { name: 'Adopt this plan' }).click();
  await expect(page.getByText(/Plan in force/)).toBeVisible();
  await page.reload();
  await expect(page.getByText(/no course would change/)).toBeVisible();
  await expect(
    page.getByText(/^Planned so that each pile runs out with a chance of at most 45 %/)
  ).toBeVisible();
  await page.getByRole('button', { name: 'Plan without it' }).click();
  await expect(
    page.getByText(/^Planned so that each pile runs out with a chance of at most 45 %/)
  ).toHaveCount(0);
});

test('the print view of the plan has no buttons', async ({ page }) => {
  const job = await seeded(page, twoSlopes(260));
  await adoptPlan(page, job);
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByRole('table', { name: 'South, from the eaves up' })).toBeVisible();
  await expect(page.getByRole('button')).toHaveCount(0);
});

/** A plan of a roof that was entered anew since: its one course has other pieces now. */
const OLD_PLAN = {
  type: 'planAdopted',
  body: {
    ...{ gradesId: IN_FORCE, kickAllowanceMm: 1.5, expectedKickers: 0, joints: 0 },
    courses: [{ slopeId: 'south', course: 1, piles: [{ pile: 1, pieces: 3 }] }]
  }
};

test('a roof entered anew says what the plan does not know of it, and offers the new plan', async ({
  page
}) => {
  const job = await seeded(page, [...twoSlopes(260), OLD_PLAN]);
  await page.goto(`${job}/courses`);
  await expect(
    page.getByRole('heading', { name: 'The plan is older than the roof' })
  ).toBeVisible();
  await expect(
    page.getByText(
      /These are 12 courses of (North and 12 courses of South|South and 12 courses of North)\./
    )
  ).toBeVisible();
  await expect(page.getByText(/Slates were sorted, counted/)).toHaveCount(0);
  await page.getByRole('button', { name: 'Adopt the new plan' }).click();
  await expect(page.getByText(/no course would change/)).toBeVisible();
});

test('where the stock is short for the changed roof, no dead button is shown and the reason is', async ({
  page
}) => {
  const job = await seeded(page, [...twoSlopes(60), OLD_PLAN]);
  await page.goto(`${job}/courses`);
  await expect(page.getByText(/^There is no new plan to show or to adopt/)).toBeVisible();
  await expect(page.getByRole('heading', { name: 'The stock is short' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Adopt the new plan' })).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Show the new plan' })).toHaveCount(0);
});
