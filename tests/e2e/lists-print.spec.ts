import type { Page } from '@playwright/test';
import { largeJob } from '../faults/large-job.ts';
import { twoSlopes } from './courses-job.ts';
import { expect, openEveryFold, openExample, openFolds, test } from './helpers.ts';
import {
  PAPERS,
  type PaperPage,
  asPrinted,
  expectHeads,
  expectWellDivided,
  keepPrinterShut,
  printed,
  spaceless
} from './paper.ts';
import { seedJob } from './seed-job.ts';

test.beforeEach(({ page }) => keepPrinterShut(page));

/** The rows of each page as they are printed: what each cell says. */
async function rowsOnPages(page: Page): Promise<string[][][]> {
  const back = await asPrinted(page);
  await expect(page.locator('.print-page').first()).toBeVisible();
  const rows = await page
    .locator('.print-page')
    .evaluateAll((pages) =>
      pages.map((one) =>
        [...one.querySelectorAll('tbody tr')].map((row) =>
          [...(row as HTMLTableRowElement).cells].map(({ innerText }) => innerText.trim())
        )
      )
    );
  await back();
  return rows;
}

/** Prints on both papers and holds each page to its head and to the rows that stand on it, whole. */
async function expectPrinted(
  page: Page,
  job: string,
  what: string
): Promise<{ rows: string[][][]; pages: PaperPage[] }> {
  await expectWellDivided(page);
  const rows = await rowsOnPages(page);
  let last: PaperPage[] = [];
  for (const paper of PAPERS) {
    const pages = await printed(page, paper);
    expect(pages).toHaveLength(rows.length);
    expectHeads(pages, job, what);
    for (const [index, own] of rows.entries())
      for (const cells of own)
        for (const cell of cells) expect(pages[index].says).toContain(spaceless(cell));
    last = pages;
  }
  return { rows, pages: last };
}

async function ask(page: Page, fold: string, button: string): Promise<void> {
  await openFolds(page, fold);
  await page.getByRole('button', { name: button, exact: true }).click();
}

const JOBS = [
  { name: 'a small roof', job: 'Seeded', acts: () => twoSlopes(260), courses: [12, 12] },
  {
    name: 'six slopes, 24 pallets, 8 piles',
    job: 'Long row',
    acts: () => largeJob({ pallets: 24, slopes: 6, sorted: 20 }),
    courses: [26, 26, 26, 26, 26, 26]
  }
] as const;

for (const { name, job, acts, courses } of JOBS)
  test(`plan, draw list and loading out of ${name} are printed whole on either paper`, async ({
    page
  }) => {
    await page.goto(`/job/${await seedJob(page, acts())}/courses`);
    await expect(page.getByRole('button', { name: 'Use this plan' })).toBeVisible();
    const all = courses.flatMap((most) => Array.from({ length: most }, (_, n) => n + 1));

    await page.getByRole('button', { name: 'Print', exact: true }).click();
    const plan = await expectPrinted(page, job, 'Courses');
    const planned = plan.rows.flat(2).length;
    expect(planned).toBeGreaterThan(all.length);
    // the total follows the last course of its slope, below its table
    for (const [, ...rest] of plan.pages.flatMap(({ lines }) =>
      lines.flatMap((line, at) => (line.startsWith('Total') ? [lines.slice(at)] : []))
    ))
      expect(rest[0] ?? '').not.toMatch(/^\d+ /);

    await ask(page, 'Draw list', 'Print the draw list');
    const draw = await expectPrinted(page, job, 'Draw list');
    const drawn = draw.rows.flat().map(([, course]) => course);
    // Each slope begins with its undereave row, which is no course.
    expect(drawn.filter((course) => course === 'Under')).toHaveLength(courses.length);
    const ofCourses = drawn.filter((course) => course && course !== 'Under');
    expect(ofCourses.map(Number)).toEqual(all);
    for (const [, , , from, slates] of draw.rows.flat()) {
      const given = [...from.matchAll(/: ([\d,]+)/g)].map(([, n]) => Number(n.replace(',', '')));
      expect(given.reduce((sum, n) => sum + n, 0)).toBe(Number(slates.replace(',', '')));
    }

    await ask(page, 'Loading out', 'Print the loading out');
    const load = await expectPrinted(page, job, 'Loading out');
    const stacks = load.rows.flat().filter((cells) => cells.length > 2);
    expect(stacks.map(([, stack]) => Number(stack))).toEqual(stacks.map((_, at) => at + 1));
    const lifts = load.rows.flat().filter((cells) => cells.length === 2);
    const begun = lifts.filter(([lift]) => !lift.includes('goes on'));
    expect(begun.map(([lift]) => lift)).toEqual(begun.map((_, at) => `Lift ${at + 1}`));
  });

test('the walking list is printed pallet by pallet, with room to write, on either paper', async ({
  page
}) => {
  const job = await openExample(page);
  await page.goto(`${job}/delivery/sample`);
  await expect(page.getByRole('heading', { name: 'Walking list' })).toBeVisible();
  const places = await page.locator('ol li').count();
  expect(places).toBe(100);
  await page.getByRole('button', { name: 'Print the list' }).click();
  const name = 'Worked example';
  const { rows, pages } = await expectPrinted(page, name, 'Walking list');
  expect(rows.flat()).toHaveLength(places);
  expect(rows.flat().filter((cells) => cells[4].startsWith('full check'))).toHaveLength(25);
  expect(pages[0].says).toContain(spaceless('layers to open.'));
  for (const { says } of pages) expect(says).toContain('ThicknessNotes');

  const back = await asPrinted(page);
  const room = await page.locator('.print-page tbody tr').evaluateAll((all) =>
    all.map((row) => ({
      highMm: (row.getBoundingClientRect().height * 25.4) / 96,
      wideMm: ((row as HTMLTableRowElement).cells[3].offsetWidth * 25.4) / 96
    }))
  );
  for (const { highMm, wideMm } of room) {
    expect(highMm).toBeGreaterThanOrEqual(8.4);
    expect(wideMm).toBeGreaterThanOrEqual(35);
  }
  await back();
});

test('the list says first which slates, from which pallet and layer; its terms are folded', async ({
  page
}) => {
  const job = await openExample(page);
  await page.goto(`${job}/delivery/sample`);
  const place = page.locator('main ol li').first();
  await expect(place).toContainText(/Layer \d+, slate \d+/);
  await expect(page.locator('main .answer')).toContainText(
    /^100 slates from pallets .*, 100 measured\./
  );
  await expect(place).toBeInViewport({ ratio: 1 });
  const terms = page.getByText(/Drawn by chance with seed/);
  await expect(terms).toBeHidden();
  await page.getByText('How was it drawn, and what does it decide?').click();
  await expect(terms).toBeVisible();
});

test('a list draws one by one, or opens fewer layers and says that its risks may be worse', async ({
  page
}) => {
  const acts = [
    { type: 'jobOpened', body: { name: 'Seeded' } },
    ...['A', 'B', 'C'].map((label) => ({
      type: 'palletAdded',
      body: { palletId: `pallet-${label}`, label, slates: 600, layers: 15, perLayer: 40 }
    }))
  ];
  await page.goto(`/job/${await seedJob(page, acts)}/delivery/sample`);
  const layers = async (): Promise<number> => {
    const told = await page.getByText(/\d+ layers to open\./).textContent();
    return Number(/(\d+) layers to open/.exec(told ?? '')?.[1]);
  };
  const oneByOne = page.getByText(/These risks hold for slates drawn one by one/);
  await expect(page.getByText(/Seller’s risk/)).toBeVisible();
  await expect(oneByOne).toHaveCount(0);
  await page.getByRole('button', { name: 'Draw the list' }).click();
  await expect(page.getByRole('heading', { name: 'Walking list' })).toBeVisible();
  await openEveryFold(page);
  await expect(page.getByText(/Chance picked every slate by itself\./)).toBeVisible();
  await expect(oneByOne).toHaveCount(0);
  const anywhere = await layers();
  await page.getByRole('button', { name: 'Draw another list' }).click();
  await page.getByLabel('Where from').selectOption('Fewer layers to open');
  await expect(page.getByText(/may be worse where faults lie in layers/).first()).toBeVisible();
  await expect(oneByOne).toBeVisible();
  await page.getByRole('button', { name: 'Draw the list' }).click();
  await expect(page.getByRole('heading', { name: 'Walking list' })).toBeVisible();
  await openEveryFold(page);
  await expect(page.getByText(/Chance picked layers of each pallet/)).toBeVisible();
  await expect(oneByOne).toBeVisible();
  // 125 slates, about 42 a pallet: 7 layers and a few more each, against 14 of 15
  expect(await layers()).toBeLessThan(0.8 * anywhere);
});

test('a tally sheet has boxes for 300 strokes a pile, a page for each pallet', async ({ page }) => {
  const job = await seedJob(page, twoSlopes(400));
  await page.goto(`/job/${job}/tags`);
  await page.getByRole('button', { name: 'Tally sheet' }).click();
  await page.getByRole('button', { name: 'Print this sheet' }).click();
  await expectWellDivided(page);
  for (const paper of PAPERS) {
    const pages = await printed(page, paper);
    expect(pages).toHaveLength(3);
    expectHeads(pages, 'Seeded', 'Tally sheet');
    for (const [index, label] of ['A', 'B', 'C'].entries())
      for (const words of [`Pallet ${label}`, '1 Thick', '2 Medium', '3 Thin', 'Set aside', '300'])
        expect(pages[index].says).toContain(spaceless(words));
  }
  const back = await asPrinted(page);
  for (const boxes of await page.getByRole('img', { name: /Thick: boxes for 300/ }).all()) {
    const gates = await boxes
      .locator('rect')
      .evaluateAll((all) => all.map((gate) => gate.getBoundingClientRect()));
    expect(gates).toHaveLength(60); // of five
    for (const { width, height } of gates) {
      expect((width * 25.4) / 96).toBeGreaterThan(8); // five strokes of a pencil
      expect((height * 25.4) / 96).toBeGreaterThan(8);
    }
  }
  await back();
});
