import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import {
  SLATE,
  usePlan,
  readings,
  slope,
  totalsOfRoof,
  totalsOfTables,
  undereaveOfRoof,
  twoSlopes
} from './courses-job.ts';
import { expect, openFolds, startJob, test } from './helpers.ts';
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
    await expect(page.getByRole('button', { name: 'Use this plan' })).toHaveCount(0);
    await page.getByRole('link', { name: 'Enter the roof' }).click();
    await expect(page).toHaveURL(/\/roof$/);
  });
});

test('the plan adds up to the roof, is used and stays over a reload', async ({ page }) => {
  const job = await seeded(page, twoSlopes(260));
  const demand = await totalsOfRoof(page, job);
  await usePlan(page, job);
  expect(await totalsOfTables(page)).toEqual(demand);
  await openFolds(page, 'How even?');
  await expect(page.getByText(/This is proved/)).toBeVisible();
  await page.reload();
  await expect(page.getByText('In use, up to date.')).toBeVisible();
  expect(await totalsOfTables(page)).toEqual(demand);
  expect(await axeFinds(page)).toEqual([]);
});

test('a course is chosen on the drawing by key and by the buttons @desktop', async ({ page }) => {
  const job = await seeded(page, twoSlopes(260));
  await usePlan(page, job);
  const south = page.getByRole('slider', { name: /Courses of South/ });
  await south.focus();
  await south.press('End');
  await expect(page.getByRole('heading', { name: /South: course 12 of 12/ })).toBeVisible();
  await page.getByRole('button', { name: /Below/ }).click();
  await expect(page.getByRole('heading', { name: /South: course 11 of 12/ })).toBeVisible();
});

test('a stock short by some slates says how many, and a smaller reserve is enough', async ({
  page
}) => {
  const job = await seeded(page, twoSlopes(169));
  const { slates } = await totalsOfRoof(page, job);
  const under = await undereaveOfRoof(page);
  // 507 slates stand there; breakage and spares keep 4.5 % of each pile back, rounded up
  expect(slates + under).toBeLessThanOrEqual(507);
  await page.goto(`${job}/courses`);
  await expect(page.getByRole('heading', { name: 'The stock is short' })).toBeVisible();
  const missing = page.getByText(/^The roof needs \d+ slates? more/);
  const text = await missing.innerText();
  const kept = 507 - slates - under + Number(text.match(/\d+/)?.[0]);
  // the reserve of three piles of 507 slates, each rounded up
  expect(kept).toBeGreaterThanOrEqual(23);
  expect(kept).toBeLessThanOrEqual(25);
  await expect(page.getByText(/^Order \d+ slates? for/)).toBeVisible();
  await page
    .getByRole('button', { name: /^Set the reserve to/ })
    .first()
    .click();
  await expect(page.getByRole('button', { name: 'Use this plan' })).toBeVisible();
  expect((await totalsOfTables(page)).slates).toBe(slates);
});

test('a stock far too small offers to lay the lower courses', async ({ page }) => {
  const job = await seeded(page, twoSlopes(60));
  await page.goto(`${job}/courses`);
  await expect(page.getByRole('heading', { name: 'The stock is short' })).toBeVisible();
  await expect(page.getByText(/^Lay the lowest \d+ of 24 courses now/)).toBeVisible();
  expect(await axeFinds(page)).toEqual([]);
});

test('slates lost make the plan older than the stock, with a new plan to use', async ({ page }) => {
  const acts = twoSlopes(260);
  const job = await seeded(page, acts);
  await usePlan(page, job);
  await page.goto(`${job}/lay`);
  await page.getByRole('button', { name: 'Several' }).click();
  await page.getByRole('button', { name: '2 Medium' }).last().click();
  await page.getByLabel('How many broke?').fill('200');
  await page.getByRole('button', { name: 'Record' }).click();
  await expect(page.getByText(/^Saved: 200 slates of 2 Medium lost/)).toBeVisible();

  await page.goto(`${job}/courses`);
  await expect(
    page.getByText(/^Stock or settings changed: \d+ courses differ in the new plan/)
  ).toBeVisible();
  await expect(page.getByText(/^2 Medium will run short/)).toBeVisible();
  await openFolds(page, 'What changes in the new plan?');
  const changes = page.getByRole('table', { name: 'What changes' });
  await expect(changes).toBeVisible();
  await expect(changes.getByRole('rowheader').first()).toHaveText(/^(South|North), course \d+$/);
  await expect(changes).toContainText(/× \d+ \+ 1 slate-and-a-half/);
  await expect(changes).not.toContainText(/[−-]0\.00/);
  await page.getByRole('button', { name: 'Use the new plan' }).click();
  await expect(page.getByText('In use, up to date.')).toBeVisible();
  await expect(page.getByText(/will run short/)).toHaveCount(0);
});

test('draw list, loading out, what if: each adds up or says why not', async ({ page }) => {
  const job = await seeded(page, twoSlopes(260));
  const demand = await totalsOfRoof(page, job);
  await usePlan(page, job);

  const list = await openFolds(page, 'Draw list');
  const rows = list.getByRole('table', { name: /from the eaves up/ }).locator('tbody tr');
  await expect(rows.first()).toBeVisible();
  let drawn = 0;
  let under = 0;
  for (const row of await rows.all()) {
    const isUnder = (await row.locator('th').innerText()) === 'Under';
    const cells = (await row.locator('td').allInnerTexts())
      .slice(1, 5)
      .map((cell) => Number(cell.replace(/[^0-9]/g, '') || '0'));
    expect(cells[0] + cells[1] + cells[2]).toBe(cells[3]);
    if (cells[3] >= 3) expect(cells.slice(0, 3).every((slates) => slates > 0)).toBe(true);
    if (isUnder) under += cells[3];
    else drawn += cells[3];
  }
  expect(drawn).toBe(demand.slates);
  // The undereave row of each slope stands below its first course, as many as the sentence says.
  const said = await list.getByText(/undereave slates lie under course 1\.$/).allInnerTexts();
  expect(said.map((line) => line.split(':')[0]).sort()).toEqual(['North', 'South']);
  const lie = said.map((line) => Number(/: (\d+) undereave/.exec(line)?.[1]));
  expect(under).toBe(lie[0] + lie[1]);
  expect(under).toBeGreaterThan(20);

  const loading = await openFolds(page, 'Loading out');
  const firstStacks = loading.locator('tbody').first().locator('tr:not(.lift)');
  await expect(firstStacks.first()).toContainText(/(North|South), undereave, under course 1/);
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

  await openFolds(page, 'What if …?');
  await page.getByRole('button', { name: 'Work it out' }).click();
  await expect(page.getByRole('row', { name: /^As set now/ })).toBeVisible();
  await expect(page.getByRole('row', { name: /^Reserve 0/ })).toBeVisible();
});

test('the computer test runs, stops when asked, and agrees with the exact figure', async ({
  page
}) => {
  const job = await seeded(page, twoSlopes(260));
  await usePlan(page, job);
  await openFolds(page, 'Computer test');
  await page.getByRole('button', { name: /^Lay it/ }).click();
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByText('Stopped. Nothing was changed.')).toBeVisible();

  await page.getByRole('button', { name: /^Lay it/ }).click();
  const planned = page.getByRole('row', { name: /^As planned/ });
  await expect(planned).toBeVisible();
  await expect(
    page.getByRole('row', { name: /^Sorted by eye, off by 0.50 mm assumed/ })
  ).toBeVisible();
  const [mean, give] = (await planned.locator('td').first().innerText()).split('±').map(Number);
  const exact = Number(
    (await planned.getByText(/exactly/).innerText()).match(/[\d.]+(?=\.$)/)?.[0]
  );
  // the interval shown is 1.96 standard errors; five of them hold all but always
  expect(Math.abs(mean - exact)).toBeLessThanOrEqual((5 / 1.96) * give + 0.01);
  expect(await axeFinds(page)).toEqual([]);
});

test('slate-and-a-halves counted by pile bind the plan, and too few make it short', async ({
  page
}) => {
  const job = await seeded(page, twoSlopes(260));
  await page.goto(`${job}/courses`);
  await expect(page.getByRole('button', { name: 'Use this plan' })).toBeVisible();
  await openFolds(page, 'Slate-and-a-halves and undereave');
  await expect(page.getByText(/Nobody counted them/)).toBeVisible();
  const field = (pile: string) => page.getByLabel(`Slate-and-a-halves of ${pile}, counted now`);
  await field('1 Thick').fill('some');
  await page.getByRole('button', { name: 'Save the count' }).click();
  await expect(page.getByText('Give whole numbers from 0 to 20,000.')).toBeVisible();
  for (const pile of ['1 Thick', '2 Medium', '3 Thin']) await field(pile).fill('40');
  await page.getByRole('button', { name: 'Save the count' }).click();
  await expect(page.getByText('As counted by pile:')).toBeVisible();
  await page.reload();
  await expect(page.getByText('As counted by pile:')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Use this plan' })).toBeVisible();
  for (const pile of ['1 Thick', '2 Medium', '3 Thin']) await field(pile).fill('1');
  await page.getByRole('button', { name: 'Save the count' }).click();
  await expect(page.getByText(/^The roof needs \d+ slate-and-a-halves more/)).toBeVisible();
});

test('a plan held under a chance is still held after a reload', async ({ page }) => {
  const job = await seeded(page, twoSlopes(260));
  await page.goto(`${job}/courses`);
  await openFolds(page, 'Will each pile last?');
  await expect(page.getByText(/^Likeliest to run out: /)).toBeVisible();
  await page.getByLabel('Keep each chance under').fill('0');
  await page.getByRole('button', { name: 'Plan with this limit' }).click();
  await expect(page.getByText('Give a chance from 0.1 to 50 %.')).toBeVisible();
  await page.getByLabel('Keep each chance under').fill('20');
  await page.getByRole('button', { name: 'Plan with this limit' }).click();
  const held = page.getByText(/^By the rule, no pile is likelier to run out than 20 %/);
  await expect(held).toBeVisible();
  const told = page
    .getByRole('region', { name: 'Will each pile last?' })
    .locator('tbody td strong');
  for (const chance of await told.allInnerTexts())
    expect(Number(/[\d.]+/.exec(chance)?.[0]), chance).toBeLessThanOrEqual(20);
  await page.getByRole('button', { name: 'Use this plan' }).click();
  await expect(page.getByText('In use, up to date.')).toBeVisible();
  await page.reload();
  await expect(page.getByText('In use, up to date.')).toBeVisible();
  await expect(held).toBeVisible();
});

test('the plan is printed slope by slope, each page with its head, without buttons', async ({
  page
}) => {
  const job = await seeded(page, twoSlopes(260));
  const demand = await totalsOfRoof(page, job);
  await usePlan(page, job);
  await page.emulateMedia({ media: 'print' });
  const sheets = page.locator('section.print-page');
  await expect(sheets).toHaveCount(2); // one for each slope
  for (const [index, name] of ['North', 'South'].entries()) {
    const head = sheets.nth(index).locator('header');
    await expect(head).toContainText('Seeded');
    await expect(head).toContainText(name);
    await expect(head).toContainText(`page ${index + 1} of 2`);
    await expect(head).toContainText(/fingerprint [0-9a-f]{8}/);
  }
  await expect(page.getByRole('button')).toHaveCount(0);
  let slates = 0;
  for (const row of await sheets.locator('tbody tr').all())
    slates += Number((await row.locator('td').nth(1).innerText()).replace(/[^0-9]/g, ''));
  expect(slates).toBe(demand.slates);
  const pdf = await page.pdf({ format: 'A4', preferCSSPageSize: true });
  expect(pdf.toString('latin1').match(/\/Type \/Page\b/g)).toHaveLength(2);
  await page.emulateMedia({ media: 'screen' });
  await expect(sheets).toHaveCount(0);
});

/** A plan of a roof that was entered again since: its one course has other pieces now. */
const OLD_PLAN = {
  type: 'planAdopted',
  body: {
    ...{ gradesId: IN_FORCE, kickAllowanceMm: 1.5, expectedKickers: 0, joints: 0 },
    courses: [{ slopeId: 'south', course: 1, piles: [{ pile: 1, pieces: 3 }] }]
  }
};

test('a roof entered again says what the plan does not know of it, and offers the new plan', async ({
  page
}) => {
  const job = await seeded(page, [...twoSlopes(260), OLD_PLAN]);
  await page.goto(`${job}/courses`);
  await expect(
    page.getByText(/^The plan in use leaves out .* the slate or the piles changed/)
  ).toBeVisible();
  await expect(
    page.getByText(
      /These are 12 courses of (North and 12 courses of South|South and 12 courses of North)\./
    )
  ).toBeVisible();
  await expect(page.getByText(/Stock or settings changed/)).toHaveCount(0);
  await page.getByRole('button', { name: 'Use the new plan' }).click();
  await expect(page.getByText('In use, up to date.')).toBeVisible();
});

test('where the stock is short for the changed roof, no dead button is shown and the reason is', async ({
  page
}) => {
  const job = await seeded(page, [...twoSlopes(60), OLD_PLAN]);
  await page.goto(`${job}/courses`);
  await expect(page.getByText(/There is no plan for all: the stock is short/)).toBeVisible();
  await expect(page.getByRole('heading', { name: 'The stock is short' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Use the new plan' })).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Show the new plan' })).toHaveCount(0);
});
