import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, openFolds, ownLetters, startJob, test } from './helpers.ts';
import { PAPERS, expectHeads, printed, smallestLetters, spaceless } from './paper.ts';

/** Rules of WCAG 2.2, levels A and AA. */
const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** The invented roofs and how many slopes each has. */
const ROOFS = [
  { example: 'gable, two equal slopes', slopes: 2 },
  { example: 'hipped, four slopes', slopes: 4 },
  { example: 'L on plan with a valley and a hip', slopes: 4 },
  { example: 'gable with a rooflight and a chimney', slopes: 2 }
] as const;

async function enterExample(page: Page, example: string): Promise<string> {
  const job = await startJob(page, 'Barn');
  await page.goto(`${job}/roof`);
  await page.getByRole('button', { name: `Start from an example roof: ${example}` }).click();
  await expect(page.getByText(/^\d+ courses: [\d,]+ slates/)).toBeVisible();
  return job;
}

for (const { example, slopes } of ROOFS)
  test(`the invented roof "${example}" is drawn, set out and printed`, async ({ page }) => {
    const job = await enterExample(page, example);
    await expect(
      page.getByRole('img', { name: new RegExp(`from above, ${slopes} slopes`) }).locator('.face')
    ).toHaveCount(slopes);
    await openFolds(page, 'Each slope');
    await expect(page.getByRole('slider')).toBeVisible();
    await expect(
      page.getByRole('list', { name: /Slopes of this roof/ }).locator('svg')
    ).toHaveCount(slopes);
    await page.goto(`${job}/sheet`);
    await expect(page.locator('article')).toHaveCount(slopes);
    const names = await page.locator('article h2').allTextContents();
    for (const paper of PAPERS) {
      const pages = await printed(page, paper);
      // the whole roof on one page, then two pages a slope
      expect(pages).toHaveLength(1 + 2 * slopes);
      expectHeads(pages, 'Barn', 'Setting out');
      expect(pages[0].says).toContain('Wholeroof');
      for (const name of names) expect(pages[0].says).toContain(spaceless(name.slice(0, 18)));
      for (const [index, name] of names.entries()) {
        const [first, second] = pages.slice(1 + 2 * index, 3 + 2 * index);
        expect(first.lines[0]).toContain(name);
        expect(second.lines.slice(0, 2).join(' ')).toContain(name);
        for (const words of ['This line is 100 mm long', 'Undereave slate', 'Full slate', 'left'])
          expect(first.says).toContain(spaceless(words));
        for (const words of ['Before you cut', 'Waste end', 'towards the eave', 'Start:'])
          expect(first.says + second.says).toContain(spaceless(words));
        expectEveryCourse(second.lines);
      }
    }
  });

/** A line for the undereave and one for each course, from the eaves up, none missing and none twice. */
function expectEveryCourse(lines: readonly string[]): void {
  const courses = lines.flatMap((line) => /^(Under|\d+)\s.*\s[AB]\s/.exec(line)?.[1] ?? []);
  expect(courses.length).toBeGreaterThan(10);
  expect(courses).toEqual(courses.map((_, index) => (index === 0 ? 'Under' : String(index))));
}

test('a sheet is large enough to read at arm’s length, and its check line is 100 mm', async ({
  page
}) => {
  const job = await enterExample(page, 'hipped, four slopes');
  await page.goto(`${job}/sheet`);
  await expect(page.locator('article')).toHaveCount(4);
  await page.setViewportSize({ width: 687, height: 1000 }); // A4 within its margins, 182 mm
  await page.emulateMedia({ media: 'print' });
  const lines = page.locator('[data-scale-line]:visible');
  await expect(lines).toHaveCount(4);
  for (const line of await lines.all()) {
    const width = await line.evaluate((element) => element.getBoundingClientRect().width);
    expect((width * 25.4) / 96).toBeCloseTo(100, 2); // 96 CSS pixels are an inch by definition
  }
  const smallest = await smallestLetters(page);
  expect(smallest.pt, smallest.text).toBeGreaterThanOrEqual(11 - 0.1);
});

test('the drawing is to the scale it names, and rod and perp marks are those worked out by hand', async ({
  page
}) => {
  const job = await enterExample(page, 'gable, two equal slopes');
  await page.goto(`${job}/sheet`);
  const slope = page.locator('article').first();
  const rod = slope.getByRole('table').first();
  // Gauge 5025 / 26 = 193.269; batten 1 at 450 from the eave, batten 0 one gauge below.
  const second = rod.getByRole('row').nth(2);
  await expect(second.getByRole('cell').first()).toHaveText('193 mm');
  await expect(second.getByRole('cell').last()).toHaveText('450 mm');
  await expect(slope.getByRole('row', { name: /^27/ }).first()).toContainText('5,218 mm');
  const perps = slope.getByRole('row', { name: /^2 / }).filter({ hasText: '379 mm' });
  await expect(perps).toContainText('254 mm'); // 250 + 4.167; bond B 375 + 4.167

  await page.emulateMedia({ media: 'print' });
  const first = page.locator('[data-slope]').first();
  const told = await first.getByText(/Drawn 1 : \d+\./).textContent();
  const scale = Number(/Drawn 1 : (\d+)/.exec(told ?? '')?.[1]);
  expect(scale).toBeGreaterThanOrEqual(50);
  const outline = first.locator('.outline');
  const widthMm = await outline.evaluate(
    (element) => ((element as SVGGraphicsElement).getBoundingClientRect().width * 25.4) / 96
  );
  expect(widthMm).toBeCloseTo(8000 / scale, 0);
});

test('the sheet says what is missing before there is a roof', async ({ page }) => {
  const job = await startJob(page, 'Barn');
  await page.goto(`${job}/sheet`);
  await expect(page.getByText('Nothing to set out yet')).toBeVisible();
  await page.getByRole('link', { name: 'Go to Roof' }).click();
  await expect(page.getByRole('heading', { name: 'Roof', level: 1 })).toBeVisible();
});

test('the sheet reads on a phone of 320 px and axe finds nothing', async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 640 });
  const job = await enterExample(page, 'gable with a rooflight and a chimney');
  await page.goto(`${job}/sheet`);
  await expect(page.locator('article')).toHaveCount(2);
  await ownLetters(page);
  const width = await page.evaluate(() => document.documentElement.scrollWidth);
  expect(width).toBeLessThanOrEqual(320);
  // As tall as the page, so that the bar at the bottom covers no link while it is judged.
  await page.setViewportSize({ width: 320, height: 12_000 });
  const { violations } = await new AxeBuilder({ page }).withTags(WCAG).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`)).toEqual([]);
});

test('a slope out of square is told, shared over its courses and printed at left and right', async ({
  page
}) => {
  const job = await enterExample(page, 'gable, two equal slopes');
  await openFolds(page, 'Each slope');
  await page.getByRole('button', { name: 'Change North slope' }).click();
  await page.getByText('Ridge, eave height, out of square').click();
  await page.getByLabel('Rafter at the right edge').fill('9000');
  await page.getByRole('button', { name: 'Save North slope' }).click();
  await expect(page.getByText(/out by more than a course/)).toBeVisible();
  await page.getByLabel('Rafter at the right edge').fill('5526');
  await page.getByLabel('Diagonal, eave left to ridge right').fill('20000');
  await page.getByRole('button', { name: 'Save North slope' }).click();
  await expect(page.getByText(/No slope with these sides has such a diagonal/)).toBeVisible();
  // Pythagoras with the right side: √(7900² + 5526²) = 9641, so that the right verge is square
  await page.getByRole('button', { name: 'Use 9,641 mm' }).click();
  await page.getByRole('button', { name: 'Save North slope' }).click();
  await expect(page.getByText('The right side is 26 mm longer').first()).toBeVisible();
  await page.goto(`${job}/sheet`);
  await expect(page.locator('article')).toHaveCount(2);
  for (const paper of PAPERS) {
    const pages = await printed(page, paper);
    expect(pages).toHaveLength(5);
    expectHeads(pages, 'Barn', 'Setting out');
    const lines = pages[2].lines;
    expect(pages[2].says).toContain(spaceless('The right side is 26 mm longer'));
    // Batten 1 at 450 on both sides; the top one 25 below the ridge: 5475 and 5501.
    expect(lines.find((line) => /^1\s/.test(line))).toMatch(/^1\s+450\s+450\s/);
    expect(lines.some((line) => /\s5,475\s+(\S+\s+)?5,501\s/.test(line))).toBe(true);
    expectEveryCourse(lines);
  }
});
