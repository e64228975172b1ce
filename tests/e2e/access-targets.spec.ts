import type { Page } from '@playwright/test';
import { expect, openExample, ownLetters, test } from './helpers.ts';

/** A gloved finger needs this much, CSS px: 44 is the enhanced target size of WCAG 2.2 (2.5.5). */
const LEAST_PX = 44;
/** Buttons pressed for every slate or course: 20 mm, CSS px. */
const COUNT_BUTTON_PX = 126;

const SCREENS = [
  ...['', '/sort', '/grades', '/roof', '/sheet', '/courses', '/lay', '/tags', '/files'],
  ...['/delivery', '/delivery/order', '/delivery/sample', '/delivery/measure'],
  ...['/delivery/compare', '/delivery/findings', '/delivery/sheet']
];

interface Target {
  name: string;
  width: number;
  height: number;
}

/** Everything that can be tapped and is smaller than the least, with its size. */
async function smallTargets(page: Page): Promise<Target[]> {
  await ownLetters(page);
  return page.evaluate((least) => {
    const tapped =
      'a[href], button, input, select, textarea, summary, [role=button], [role=slider]';
    return [...document.querySelectorAll(tapped)].flatMap((element) => {
      // A box to tick is tapped by its label as well.
      const isTicked = element.matches('input[type=checkbox], input[type=radio]');
      const box = ((isTicked && element.closest('label')) || element).getBoundingClientRect();
      const isOut = box.width === 0 || box.right <= 0; // as the link past the steps, until focused
      if (isOut || !element.checkVisibility({ visibilityProperty: true })) return [];
      if (box.width >= least && box.height >= least) return [];
      const { innerText } = element as HTMLElement;
      const name = innerText?.trim() || element.getAttribute('aria-label') || element.outerHTML;
      return [{ name, width: Math.round(box.width), height: Math.round(box.height) }];
    });
  }, LEAST_PX);
}

async function expectLargeTargets(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await expect(page.getByRole('heading', { level: 1 }).first()).toBeAttached();
  await expect(page.getByText('Opening…')).toHaveCount(0);
  expect(await smallTargets(page), address).toEqual([]);
}

test('the job list and the settings: whatever is tapped is large enough', async ({ page }) => {
  await openExample(page);
  for (const address of ['/', '/settings']) await expectLargeTargets(page, address);
});

test('every screen of a job: whatever is tapped is large enough', async ({ page }) => {
  const job = await openExample(page);
  for (const screen of SCREENS) await expectLargeTargets(page, `${job}${screen}`);
});

test('the audit sees a target that is too small', async ({ page }) => {
  await openExample(page);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await page.evaluate(() => {
    const link = document.createElement('a');
    link.href = '#small';
    link.textContent = 'Too small';
    document.querySelector('main')?.append(link);
  });
  expect((await smallTargets(page)).map(({ name }) => name)).toContain('Too small');
});

test('buttons that count stand 20 mm high, all of them above the bar of steps', async ({
  page
}) => {
  const job = await openExample(page);
  const bar = page.getByRole('navigation', { name: 'Steps of the job' });
  for (const [screen, buttons] of [
    ['/sort', page.locator('.piles button')],
    ['/lay', page.locator('.controls button')]
  ] as const) {
    await page.goto(`${job}${screen}`);
    await expect(buttons.first()).toBeVisible();
    await ownLetters(page);
    const top = (await bar.boundingBox())?.y ?? 0;
    for (const button of await buttons.all()) {
      const box = await button.boundingBox();
      expect(box?.height ?? 0).toBeGreaterThanOrEqual(COUNT_BUTTON_PX);
      expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(top);
    }
  }
});
