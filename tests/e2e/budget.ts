import { type Page, expect } from '@playwright/test';
import { ownLetters } from './helpers.ts';

/** What a screen may show at first on a phone: words in main, and its height in screens. */
export const BUDGET = { words: 120, screens: 1.6 } as const;

export interface ScreenSize {
  words: number;
  screens: number;
  text: string;
}

/** Words that main shows with its folds as they are, and how many screens high it is. */
export async function sizeOfScreen(page: Page): Promise<ScreenSize> {
  await ownLetters(page);
  const { text, heightPx, screenPx } = await page.locator('main').evaluate((main) => ({
    text: (main as HTMLElement).innerText,
    heightPx: main.getBoundingClientRect().height,
    screenPx: window.innerHeight
  }));
  const words = text.split(/\s+/).filter((word) => /[\p{L}\p{N}]/u.test(word)).length;
  return { words, screens: heightPx / screenPx, text };
}

/** A form stands below the answer of its screen, and a box that is typed into takes a finger's height. */
export const FORM_SCREENS = 2;

/** Holds the screen that is open to the budget; what it shows stands in the message. */
export async function expectWithinBudget(
  page: Page,
  name: string,
  screens: number = BUDGET.screens
): Promise<void> {
  const size = await sizeOfScreen(page);
  expect(size.words, `words on ${name}:\n${size.text}`).toBeLessThanOrEqual(BUDGET.words);
  expect(size.screens, `screens on ${name}:\n${size.text}`).toBeLessThanOrEqual(screens);
}
