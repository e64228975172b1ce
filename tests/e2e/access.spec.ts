import AxeBuilder from '@axe-core/playwright';
import { expect, openExample, test } from './helpers.ts';

const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

test('job list, overview, order, sizes, files and settings: axe finds nothing', async ({
  page
}) => {
  const job = await openExample(page);
  // So high that the bar of steps covers nothing: what is under it is scrolled clear by hand.
  await page.setViewportSize({ width: 390, height: 3000 });
  for (const address of ['/', job, `${job}/order`, `${job}/sizes`, `${job}/files`, '/settings']) {
    await page.goto(address);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    const { violations } = await new AxeBuilder({ page }).withTags(WCAG).analyze();
    expect(violations, address).toEqual([]);
  }
});

test('Sort keeps a contrast of 7 to 1 throughout', async ({ page }) => {
  const job = await openExample(page);
  await page.goto(`${job}/sort`);
  await page
    .getByRole('button', { name: /Medium/ })
    .first()
    .click();
  await expect(page.getByText(/slate piled/)).toBeVisible();
  const { violations, passes } = await new AxeBuilder({ page })
    .withRules(['color-contrast-enhanced'])
    .analyze();
  expect(violations).toEqual([]);
  expect(passes.map(({ id }) => id)).toContain('color-contrast-enhanced');
});

test('the keyboard alone opens the example and piles a slate @desktop', async ({ page }) => {
  await page.goto('/');
  const reach = async (name: RegExp) => {
    for (let presses = 0; presses < 60; presses++) {
      await page.keyboard.press('Tab');
      const words = await page.evaluate(() => {
        const focused = document.activeElement as HTMLElement | null;
        return focused?.matches('a, button') ? focused.innerText : '';
      });
      if (name.test(words)) return;
    }
    throw new Error(`no key press reaches ${name}`);
  };
  await reach(/Open the worked example/);
  await page.keyboard.press('Enter');
  await page.waitForURL(/\/job\/[0-9a-f-]+$/);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await reach(/Sort the slates/);
  await page.keyboard.press('Enter');
  await page.waitForURL(/\/sort$/);
  await expect(page.getByRole('button', { name: /Thin/ }).first()).toBeVisible();
  await reach(/Thin/);
  await page.keyboard.press('Enter');
  await expect(page.getByText(/Saved: slate piled/)).toBeVisible();
});
