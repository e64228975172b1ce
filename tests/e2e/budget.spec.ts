import { expectWithinBudget } from './budget.ts';
import { expect, openExample, test } from './helpers.ts';

/** Screens that say their answer first, with what shows that the answer is there. */
const SCREENS: readonly { path: string; answer: RegExp }[] = [
  { path: '/sort', answer: /Tap the pile of each slate/ },
  { path: '/lay', answer: /course 1 of 36/ },
  { path: '/grades', answer: /joints? in 100 will show if sorted right/ },
  { path: '/delivery', answer: /Query: Ask the supplier/ },
  { path: '/delivery/findings', answer: /Verdict: Query/ }
];

for (const { path, answer } of SCREENS)
  test(`${path} says its answer in 120 words and 1.6 phone screens`, async ({ page }) => {
    await page.setViewportSize({ width: 390, height: 844 });
    const job = await openExample(page);
    await page.goto(`${job}${path}`);
    const said = page.getByText(answer).first();
    await expect(said).toBeVisible();
    const box = await said.boundingBox();
    expect((box?.y ?? Infinity) + (box?.height ?? 0)).toBeLessThan(844);
    await expectWithinBudget(page, path);
  });
