import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, openEveryFold, openExample, ownLetters, test } from './helpers.ts';

const PARTS = {
  'entering and measuring': ['', '/order', '/sample', '/measure'],
  judging: ['/findings', '/sheet', '/compare']
};

async function expectNoOverflow(page: Page): Promise<void> {
  await ownLetters(page);
  const over = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth
  );
  expect(over, `${page.url()} is wider than its window`).toBeLessThanOrEqual(0);
}

/** Looks at the whole page at once, so that nothing is judged while the bar of steps covers it. */
async function expectAccessible(page: Page): Promise<void> {
  const size = page.viewportSize() ?? { width: 390, height: 844 };
  await page.setViewportSize({ width: size.width, height: 12_000 });
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
  await page.setViewportSize(size);
}

for (const [what, parts] of Object.entries(PARTS))
  test(`${what}: every part is accessible and fits a phone of 320 pixels`, async ({ page }) => {
    const job = await openExample(page);
    for (const part of parts) {
      await page.goto(`${job}/delivery${part}`);
      await expect(page.getByRole('heading', { level: 1 }).first()).toBeVisible();
      if (part !== '/order' && part !== '/sample' && part !== '/measure')
        await expect(page.getByText('Working the figures out…')).toHaveCount(0);
      await openEveryFold(page);
      await expectAccessible(page);
      await expectNoOverflow(page);
      await page.setViewportSize({ width: 320, height: 640 });
      await expectNoOverflow(page);
      await page.setViewportSize({ width: 390, height: 844 });
    }
  });
