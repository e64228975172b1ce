import AxeBuilder from '@axe-core/playwright';
import { expect, test } from './helpers.ts';
import { seedJob, smallJob } from './seed-job.ts';

/** CSS pixels in a millimetre: 96 an inch by definition (CSS Values and Units, absolute lengths). */
const PX_PER_MM = 96 / 25.4;

test('the card prints to scale: slots as wide as the limits, the check line 100 mm', async ({
  page
}) => {
  const jobId = await seedJob(page, smallJob([6.4, 5.25]));
  await page.goto(`/job/${jobId}/tags`);
  await expect(page.getByText('6.40 mm and thicker')).toBeVisible();
  await page.getByRole('button', { name: 'Go/no-go card' }).click();
  const card = page.getByRole('img', { name: 'Go/no-go card' });
  await page.emulateMedia({ media: 'print' }); // on screen a phone shows the card reduced
  const linePx = await card.locator('.check').evaluate((line) => {
    const path = line as SVGPathElement;
    return path.getBBox().width * (path.getScreenCTM()?.a ?? 0);
  });
  expect(linePx / PX_PER_MM).toBeCloseTo(100, 1);
  const outline = (await card.locator('path').first().getAttribute('d')) ?? '';
  const edges = [...outline.matchAll(/H([\d.]+) V26 H([\d.]+) V0/g)];
  expect(edges.map(([, left, right]) => Number((Number(right) - Number(left)).toFixed(6)))).toEqual(
    [6.4, 5.25]
  );
  await expect(page.getByText('Does not enter 6.40: 1 Thick')).toBeVisible();
});

test('tags, tally sheet and card are accessible', async ({ page }) => {
  const jobId = await seedJob(page, smallJob([6, 5]));
  await page.goto(`/job/${jobId}/tags`);
  for (const sheet of ['Pile tags', 'Pallet tags', 'Tally sheet', 'Go/no-go card']) {
    await page.getByRole('button', { name: sheet }).click();
    const { violations } = await new AxeBuilder({ page })
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
      .analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`)).toEqual([]);
  }
});

test('the tally sheet leads to where it is typed in', async ({ page }) => {
  const jobId = await seedJob(page, smallJob([6, 5]));
  await page.goto(`/job/${jobId}/tags`);
  await page.getByRole('link', { name: 'Type the tally sheet in' }).click();
  await expect(page.getByRole('heading', { name: 'Count piles' })).toBeVisible();
  await expect(page.getByLabel('Pallet C, Set aside, slates')).toBeVisible();
});

/** Margin that the tags are printed with, and that a usual printer can reach, mm. */
const MARGIN_MM = 10;
const PAPERS = [
  { format: 'A4', widthMm: 210, heightMm: 297 },
  { format: 'Letter', widthMm: 215.9, heightMm: 279.4 }
] as const;

/** Pages of a PDF, counted by their objects. */
const pagesOf = (pdf: Buffer): number =>
  (pdf.toString('latin1').match(/\/Type\s*\/Page(?![a-zA-Z])/g) ?? []).length;

for (const { format, widthMm, heightMm } of PAPERS)
  test(`tags print whole on ${format}: two piles or six pallets to a page, as the screen says`, async ({
    page
  }) => {
    const pallet = (palletId: string, label: string) => ({
      type: 'palletAdded',
      body: { palletId, label, slates: 400 }
    });
    const jobId = await seedJob(page, [
      ...smallJob([6, 5], ['A', 'B', 'C', 'D', 'E', 'F']),
      pallet('north', 'North 12'),
      pallet('long', 'Pallet of the second lorry, north bay')
    ]);
    await page.goto(`/job/${jobId}/tags`);
    for (const [sheet, words, pages, toAPage] of [
      ['Pile tags', '2 tags to a page: 3 tags take 2 pages.', 2, 2],
      ['Pallet tags', '6 tags to a page: 8 tags take 2 pages.', 2, 6]
    ] as const) {
      await page.getByRole('button', { name: sheet }).click();
      await expect(page.getByText(words)).toBeVisible();
      const pdf = await page.pdf({ format, preferCSSPageSize: true });
      expect(pagesOf(pdf), sheet).toBe(pages);

      // As wide as the page within its margins, every tag holds what it says, and a page its tags.
      const screen = page.viewportSize() ?? { width: 1280, height: 800 };
      const width = Math.floor((widthMm - 2 * MARGIN_MM) * PX_PER_MM);
      await page.emulateMedia({ media: 'print' });
      await page.setViewportSize({ width, height: 1000 });
      for (const tag of await page.locator('article').all()) {
        const { beyond, right } = await tag.evaluate((element) => ({
          beyond: Math.max(
            element.scrollWidth - element.clientWidth,
            element.scrollHeight - element.clientHeight
          ),
          right: element.getBoundingClientRect().right
        }));
        expect(beyond).toBe(0);
        expect(right).toBeLessThanOrEqual(width);
      }
      for (const place of await page.locator('.sheet').all()) {
        const height = (await place.boundingBox())?.height ?? Infinity;
        expect(height).toBeLessThanOrEqual((heightMm - 2 * MARGIN_MM) * PX_PER_MM);
        expect(await place.locator('article').count()).toBeLessThanOrEqual(toAPage);
      }
      await page.emulateMedia({ media: null });
      await page.setViewportSize(screen);
    }
  });

test('the printed page keeps a margin that printers can reach', async ({ page }) => {
  const jobId = await seedJob(page, smallJob([6, 5]));
  await page.goto(`/job/${jobId}/tags`);
  await expect(page.getByText('6.00 mm and thicker')).toBeVisible();
  const margins = await page.evaluate(() =>
    [...document.styleSheets]
      .flatMap(({ cssRules }) => [...cssRules])
      .filter((rule) => rule instanceof CSSPageRule)
      .filter(({ selectorText }) => selectorText === 'tags')
      .map(({ style }) => style.getPropertyValue('margin'))
  );
  expect(margins).toEqual([`${MARGIN_MM}mm`]);
  await page.emulateMedia({ media: 'print' });
  const named = await page.evaluate(() =>
    getComputedStyle(document.documentElement).getPropertyValue('page')
  );
  expect(named).toBe('tags');
});
