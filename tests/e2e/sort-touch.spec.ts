import type { CDPSession, Page } from '@playwright/test';
import { expect, ownLetters, test } from './helpers.ts';
import { eventsOf, seedJob, smallJob } from './seed-job.ts';

const SIZES = [
  { width: 390, height: 844 },
  { width: 320, height: 568 },
  { width: 844, height: 390 }
];

interface Touch {
  x: number;
  y: number;
  id: number;
  radiusX?: number;
  radiusY?: number;
}

const touch = (session: CDPSession, type: 'touchStart' | 'touchEnd', touchPoints: Touch[]) =>
  session.send('Input.dispatchTouchEvent', { type, touchPoints });

async function openBench(page: Page): Promise<string> {
  const jobId = await seedJob(page, smallJob([6, 5]));
  await page.goto(`/job/${jobId}/sort`);
  await expect(page.locator('.piles button')).toHaveCount(3);
  await ownLetters(page);
  return jobId;
}

async function middleOf(page: Page, pile: number): Promise<{ x: number; y: number }> {
  const box = await page
    .locator('.piles button')
    .nth(pile - 1)
    .boundingBox();
  if (!box) throw new Error('no button');
  return { x: Math.round(box.x + box.width / 2), y: Math.round(box.y + box.height / 2) };
}

/** What is wider than the place it stands in. */
const cutWords = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('button, a, p, th, td')]
      .filter((one) => one.checkVisibility() && one.scrollWidth > one.clientWidth + 1)
      .filter((one) => !['inline', 'none'].includes(getComputedStyle(one).display))
      .map((one) => (one as HTMLElement).innerText)
  );

const taps = async (page: Page, jobId: string): Promise<unknown[]> =>
  (await eventsOf(page, jobId))
    .filter(({ type }) => type === 'slateTapped')
    .map(({ body }) => body.pile);

for (const size of SIZES) {
  test.describe(`at ${size.width}x${size.height}`, () => {
    test.use({ viewport: size, hasTouch: true, isMobile: true });

    test('the pile buttons are 20 mm high, apart, and nothing overflows', async ({ page }) => {
      await openBench(page);
      const boxes = await Promise.all(
        (await page.locator('.piles button').all()).map((button) => button.boundingBox())
      );
      for (const box of boxes) expect(box?.height).toBeGreaterThanOrEqual(126);
      for (const [index, box] of boxes.entries()) {
        const next = boxes[index + 1];
        if (!box || !next) continue;
        const gap = Math.max(next.y - (box.y + box.height), next.x - (box.x + box.width));
        expect(gap).toBeGreaterThanOrEqual(8);
      }
      const overflow = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth
      );
      expect(overflow).toBe(0);
      await page.getByRole('button', { name: 'Gauge', exact: true }).click();
      for (const key of await page.locator('.keypad button').all()) {
        const box = await key.boundingBox();
        expect(Math.min(box?.height ?? 0, box?.width ?? 0)).toBeGreaterThanOrEqual(48);
      }
    });
  });
}

test.describe('on the first screen of a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('the row below the piles keeps off the bar of steps', async ({ page }) => {
    await openBench(page);
    const acts = await page.getByRole('button', { name: 'Set aside' }).boundingBox();
    const bar = await page.getByRole('navigation', { name: 'Steps of the job' }).boundingBox();
    expect((bar?.y ?? 0) - (acts?.y ?? 0) - (acts?.height ?? 0)).toBeGreaterThanOrEqual(12);
  });

  test('the field of a typing gauge can be tapped, and every count has its unit', async ({
    page
  }) => {
    await openBench(page);
    for (const button of await page.locator('.piles button').all())
      await expect(button).toContainText(/0 slates.*from pallet A/);
    await page.locator('.piles button').first().click();
    await expect(page.locator('.piles button').first()).toContainText(/1 slate.*from pallet A/);
    await page.getByRole('button', { name: 'Gauge', exact: true }).click();
    const field = await page.getByRole('textbox', { name: 'Reading' }).boundingBox();
    expect(field?.height ?? 0).toBeGreaterThanOrEqual(48);
  });

  for (const locale of ['en', 'es', 'fr', 'pl', 'ro'])
    test(`no column of the table by pallet is cut, nor a word of the bench (${locale})`, async ({
      page
    }) => {
      await openBench(page);
      await page.evaluate((kept) => {
        localStorage.setItem('evencourse.preferences', JSON.stringify({ locale: kept }));
      }, locale);
      await page.reload();
      const table = page.locator('.tally .scroll-x');
      await expect(table).toBeVisible();
      await expect(page.locator('html')).toHaveAttribute('lang', locale);
      await ownLetters(page);
      const cutOff = () => table.evaluate((place) => place.scrollWidth - place.clientWidth);
      expect(await cutOff()).toBe(0);
      await page.setViewportSize({ width: 820, height: 1180 });
      expect(await cutOff()).toBe(0);
      await page.setViewportSize({ width: 390, height: 844 });
      expect(await cutWords(page)).toEqual([]);
      await page.setViewportSize({ width: 320, height: 568 });
      expect(await cutWords(page)).toEqual([]);
      await page.setViewportSize({ width: 390, height: 844 });
      await page.locator('.acts button').nth(1).click();
      await expect(page.locator('.reason')).toHaveCount(8);
      expect(await cutWords(page)).toEqual([]);
      expect(
        await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
      ).toBeLessThanOrEqual(0);
    });
});

test.describe('fingers and palms', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('a pile is pressed on release, by one finger only', async ({ page }) => {
    const jobId = await openBench(page);
    const session = await page.context().newCDPSession(page);
    const one = { ...(await middleOf(page, 1)), id: 1 };
    const two = { ...(await middleOf(page, 2)), id: 2 };
    await touch(session, 'touchStart', [one]);
    expect(await taps(page, jobId)).toEqual([]);
    await touch(session, 'touchEnd', []);
    await expect.poll(() => taps(page, jobId)).toEqual([1]);

    await touch(session, 'touchStart', [one]);
    await touch(session, 'touchStart', [one, two]);
    await touch(session, 'touchEnd', [two]);
    await touch(session, 'touchEnd', []);
    await touch(session, 'touchStart', [{ ...two, radiusX: 120, radiusY: 120 }]);
    await touch(session, 'touchEnd', []);
    await touch(session, 'touchStart', [{ ...two, id: 3 }]);
    await touch(session, 'touchEnd', []);
    await expect.poll(() => taps(page, jobId)).toEqual([1, 2]);
  });
});
