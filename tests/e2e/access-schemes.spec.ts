import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { JOB_SCREENS } from '../faults/screens.ts';
import { expect, openExample, test } from './helpers.ts';

const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
/** Screens that are read in the sun and with wet hands: text against ground at 7 to 1. */
const IN_THE_SUN = ['/sort', '/lay'];

const OF_A_DELIVERY = ['order', 'sample', 'measure', 'findings', 'sheet', 'compare'].map(
  (part) => `/delivery/${part}`
);
const SCREENS = [...JOB_SCREENS, ...OF_A_DELIVERY];
/** Screens of a job that a slow machine audits within the time of one test. */
const HALF = JOB_SCREENS.length / 2;
const OUTSIDE_A_JOB = ['/', '/quick', '/join', '/settings'];

/** Opens a screen and waits until it has been read. */
async function visit(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await expect(page.getByRole('heading', { level: 1 }).first()).toBeAttached();
  await expect(page.getByText('Opening…')).toHaveCount(0);
  await expect(page.locator('main[aria-busy="true"]')).toHaveCount(0);
}

for (const [part, screens] of [
  ['of a job, from the start to Courses', JOB_SCREENS.slice(0, HALF)],
  ['of a job, from Lay to its files', JOB_SCREENS.slice(HALF)],
  ['of a delivery', OF_A_DELIVERY],
  ['outside a job', OUTSIDE_A_JOB]
] as const)
  test(`in the dark scheme axe finds nothing on the screens ${part}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: 'dark' });
    // So high that the bar at the bottom lies over nothing.
    await page.setViewportSize({ width: 390, height: 6000 });
    const job = await openExample(page);
    for (const screen of screens) {
      const address = part === 'outside a job' ? screen : `${job}${screen}`;
      await visit(page, address);
      const ground = await page.evaluate(
        () => getComputedStyle(document.documentElement).background
      );
      expect(ground, 'the dark paper').toContain('rgb(18, 23, 27)');
      const { violations } = await new AxeBuilder({ page }).withTags(WCAG).analyze();
      expect(violations, screen).toEqual([]);
      if (!IN_THE_SUN.includes(screen)) continue;
      const sun = await new AxeBuilder({ page }).withRules(['color-contrast-enhanced']).analyze();
      expect(sun.violations, `${screen} at 7 to 1`).toEqual([]);
      expect(sun.passes.map(({ id }) => id)).toContain('color-contrast-enhanced');
    }
  });

test('with forced colours what is chosen stands out from what is not', async ({ page }) => {
  await page.emulateMedia({ forcedColors: 'active' });
  const job = await openExample(page);
  let compared = 0;
  for (const screen of ['/sort', '/tags', '/roof', '/delivery/order']) {
    await visit(page, `${job}${screen}`);
    const pairs = await page.evaluate(() => {
      const look = (part: Element): string => {
        const { backgroundColor, color } = getComputedStyle(part);
        return `${backgroundColor} ${color}`;
      };
      const chosen = [
        ...document.querySelectorAll('[aria-pressed="true"], a[aria-current="page"]')
      ];
      return chosen.flatMap((part) => {
        const others = [...(part.parentElement?.children ?? [])].filter(
          (other) =>
            other.tagName === part.tagName &&
            !other.matches('[aria-pressed="true"], [aria-current="page"]')
        );
        return others.map((other) => ({
          name: (part as HTMLElement).innerText,
          chosen: look(part),
          other: look(other)
        }));
      });
    });
    for (const { name, chosen, other } of pairs)
      expect(chosen, `${name} on ${screen}`).not.toBe(other);
    compared += pairs.length;
  }
  expect(compared).toBeGreaterThan(10);
});

test('nothing moves where less motion is asked for, and else for 150 ms at most', async ({
  page
}) => {
  const job = await openExample(page);
  const longest = (): Promise<number> =>
    page.evaluate(() =>
      Math.max(
        ...[...document.querySelectorAll('*')].map((part) => {
          const { transitionDuration, animationName, animationDuration } = getComputedStyle(part);
          const ms = (list: string): number =>
            Math.max(
              ...list.split(',').map((one) => parseFloat(one) * (/ms/.test(one) ? 1 : 1000))
            );
          return Math.max(
            ms(transitionDuration),
            animationName === 'none' ? 0 : ms(animationDuration)
          );
        })
      )
    );
  for (const screen of SCREENS) {
    await page.emulateMedia({ reducedMotion: 'no-preference' });
    await visit(page, `${job}${screen}`);
    expect(await longest(), screen).toBeLessThanOrEqual(150);
    await page.emulateMedia({ reducedMotion: 'reduce' });
    expect(await longest(), `${screen} with less motion`).toBe(0);
  }
  // The test sees what moves.
  await page.evaluate(() => (document.querySelector('main')!.style.transition = 'color 0.4s'));
  await page.emulateMedia({ reducedMotion: 'no-preference' });
  expect(await longest()).toBe(400);
  await page.emulateMedia({ reducedMotion: 'reduce' });
  expect(await longest()).toBe(0);
});

/** A window of 1280 × 800 at 200 %: WCAG 2.2, 1.4.4 and 1.4.10. */
test('at 200 % of a small laptop no screen goes sideways and its first button is there @desktop', async ({
  page
}) => {
  const job = await openExample(page);
  await page.setViewportSize({ width: 640, height: 400 });
  for (const screen of [...SCREENS.map((one) => `${job}${one}`), ...OUTSIDE_A_JOB]) {
    await visit(page, screen);
    const { wide, window } = await page.evaluate(() => ({
      wide: document.documentElement.scrollWidth,
      window: innerWidth
    }));
    expect(wide, screen).toBeLessThanOrEqual(window);
    const first = page.locator('main :is(button, a, summary)').filter({ visible: true }).first();
    // A drawing that comes above it may push it away again.
    const isInSight = (): Promise<boolean> =>
      first.evaluate((part) => {
        part.scrollIntoView({ block: 'center' });
        const { top, bottom } = part.getBoundingClientRect();
        return bottom > 0 && top < innerHeight;
      });
    await expect.poll(isInSight, screen).toBe(true);
  }
});
