import { type Page, expect } from '@playwright/test';
import { startJob } from '../e2e/helpers.ts';

/** Starts a job with one pallet and shows its Sort screen. */
export async function startSorting(page: Page, name = 'Long barn'): Promise<string> {
  const address = `${await startJob(page, name)}/sort`;
  await page.goto(address);
  await page.getByLabel('Name on the pallet').fill('A');
  await page.getByLabel('Slates on it').fill('20000');
  await page.getByRole('button', { name: 'Add pallet' }).click();
  await expect(page.locator('.verdict')).toBeVisible();
  return address;
}

/** Types a reading as a gauge does, and returns at once. */
export async function typeReading(page: Page, hundredths: number): Promise<void> {
  await page.keyboard.type((hundredths / 100).toFixed(2));
  await page.keyboard.press('Enter');
}

/** Types a reading and waits until the screen says that it is saved. */
export async function gaugeSlate(page: Page, hundredths: number): Promise<void> {
  await typeReading(page, hundredths);
  await page
    .locator('.verdict', { hasText: `${(hundredths / 100).toFixed(2)} mm` })
    .locator('.status', { hasText: /^saved$/ })
    .waitFor();
}

/** What the screen did while slates were tapped. */
export interface TappingFigures {
  readonly milliseconds: number;
  /** From one frame to the next, ms. */
  readonly frameGaps: readonly number[];
}

/**
 * Taps the piles in turn inside the page, each as soon as the screen says that the last is saved.
 *
 * @param already slates tapped before, so that the turn goes on where it stopped: the same pile
 * twice within 150 ms is a bounce of one tap, and the screen rightly counts it once
 */
export function tapSlates(page: Page, slates: number, already = 0): Promise<TappingFigures> {
  return page.evaluate(
    async ([wanted, before]) => {
      const frameGaps: number[] = [];
      let isDone = false;
      let lastFrame = performance.now();
      const frame = (now: number): void => {
        frameGaps.push(now - lastFrame);
        lastFrame = now;
        if (!isDone) requestAnimationFrame(frame);
      };
      requestAnimationFrame((now) => {
        lastFrame = now;
        requestAnimationFrame(frame);
      });
      const turn = (): Promise<void> => new Promise((done) => setTimeout(done, 0));
      const status = (): string =>
        document.querySelector('.verdict .status')?.textContent?.trim() ?? '';
      const began = performance.now();
      for (let slate = 0; slate < wanted; slate++) {
        const buttons = document.querySelectorAll<HTMLButtonElement>('.piles button');
        buttons[(before + slate) % buttons.length].click();
        await turn();
        for (let turns = 0; status() !== 'saved'; turns++) {
          if (turns > 5000) throw new Error(`slate ${slate} was not saved: ${status()}`);
          await turn();
        }
      }
      isDone = true;
      return { milliseconds: performance.now() - began, frameGaps };
    },
    [slates, already]
  );
}

/** Slates that the screen counts on all piles of the pallet in use. */
export async function slatesOnScreen(page: Page): Promise<number> {
  const counts = await page.locator('.piles button .count').allTextContents();
  return counts.reduce((sum, count) => sum + Number(count.replace(/\D/g, '')), 0);
}
