import type { Page } from '@playwright/test';

/** Milliseconds from each Enter. */
export interface Times {
  shown: number[];
  committed: number[];
}

/** Types readings in the page and times each: pile on the screen, and "saved" on the screen. */
export async function typeReadings(page: Page, trials: number): Promise<Times> {
  return page.evaluate(async (n) => {
    const times = { shown: [] as number[], committed: [] as number[] };
    const press = (key: string): void => {
      const code = /\d/.test(key) ? `Digit${key}` : key === '.' ? 'Period' : key;
      for (const type of ['keydown', 'keyup'])
        document.body.dispatchEvent(
          new KeyboardEvent(type, { key, code, bubbles: true, cancelable: true })
        );
    };
    const verdict = document.querySelector('.verdict') as HTMLElement;
    const until = (isDone: () => boolean): Promise<number> =>
      new Promise((resolve) => {
        if (isDone()) return resolve(performance.now());
        const observer = new MutationObserver(() => {
          if (!isDone()) return;
          observer.disconnect();
          resolve(performance.now());
        });
        observer.observe(verdict, { subtree: true, childList: true, characterData: true });
      });
    for (let trial = 0; trial < n; trial++) {
      const text = (4 + ((trial * 37) % 400) / 100).toFixed(2);
      for (const letter of text) press(letter);
      await new Promise((resume) => setTimeout(resume, 30));
      const start = performance.now();
      press('Enter');
      const shown = await until(() => verdict.textContent?.includes(`${text} mm`) ?? false);
      const committed = await until(
        () => /(^|\s)saved(\s|$)/.test(verdict.textContent ?? '') && verdict.textContent !== null
      );
      times.shown.push(shown - start);
      times.committed.push(committed - start);
      await new Promise((resume) => setTimeout(resume, 120));
    }
    return times;
  }, trials);
}
