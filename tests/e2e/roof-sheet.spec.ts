import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, openFolds, ownLetters, startJob, test } from './helpers.ts';

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
      page.getByRole('img', { name: new RegExp(`laid flat, ${slopes} slopes`) }).locator('.face')
    ).toHaveCount(slopes);
    await openFolds(page, 'Each slope');
    await expect(page.getByRole('slider')).toBeVisible();
    await expect(
      page.getByRole('list', { name: /Slopes of this roof/ }).locator('svg')
    ).toHaveCount(slopes);
    await page.goto(`${job}/sheet`);
    await expect(page.locator('article')).toHaveCount(slopes);
    await page.emulateMedia({ media: 'print' });
    for (const article of await page.locator('article').all()) {
      await expect(
        article.getByRole('heading', { name: 'Gauge rod and batten lines' })
      ).toBeVisible();
      const line = article.locator('[data-scale-line]');
      const width = await line.evaluate((element) => element.getBoundingClientRect().width);
      expect((width * 25.4) / 96).toBeCloseTo(100, 2); // 96 CSS pixels are an inch by definition
    }
    const printed = await page.pdf({ format: 'A4', printBackground: true });
    expect(printed.subarray(0, 5).toString()).toBe('%PDF-');
    const text = printed.toString('latin1');
    const [, pageWidth, pageHeight] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/
      .exec(text)!
      .map(Number);
    expect(Math.abs(pageWidth - 595.3)).toBeLessThan(1); // A4 in points
    expect(Math.abs(pageHeight - 841.9)).toBeLessThan(1.1);
    const pages = text.match(/\/Type \/Page\b/g)!.length;
    expect(pages).toBeGreaterThanOrEqual(2 * slopes);
    // two pages a slope, and one for the undereave of the whole roof
    expect(pages).toBeLessThanOrEqual(2 * slopes + 1);
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
  await expect(slope.getByRole('heading', { name: 'Drawing, 1 : 75 on paper' })).toBeVisible();
  const outline = slope.locator('.paper-only .outline');
  const widthMm = await outline.evaluate(
    (element) => ((element as SVGGraphicsElement).getBoundingClientRect().width * 25.4) / 96
  );
  expect(widthMm).toBeCloseTo(8000 / 75, 0);
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
