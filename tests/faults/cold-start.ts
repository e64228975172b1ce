import type { Page, Response } from '@playwright/test';

export interface ColdStart {
  /** From asking for the page to the first words painted, ms. */
  readonly wordsMs: number;
  /** From asking for the page to the button of the worked example answering, ms. */
  readonly buttonMs: number;
  /** Requests made before the button stood, and what came over the line for them. */
  readonly requests: number;
  readonly bytes: number;
}

const BUTTON = 'Open the worked example';

declare global {
  interface Window {
    /** When the button of the worked example stood, ms since the page was asked for. */
    buttonAt: number;
  }
}

/** Makes the processor of a page so many times slower. */
export async function slowProcessor(page: Page, times: number): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: times });
}

/** Opens the job list with an empty cache and tells what a person waits for. */
export async function coldStart(page: Page): Promise<ColdStart> {
  const responses: Response[] = [];
  page.on('response', (response) => responses.push(response));
  await page.addInitScript((name) => {
    const observer = new MutationObserver(() => {
      const buttons = [...document.querySelectorAll('button')];
      if (!buttons.some(({ textContent }) => textContent.includes(name))) return;
      observer.disconnect();
      window.buttonAt = performance.now();
    });
    observer.observe(document, { childList: true, subtree: true });
  }, BUTTON);
  await page.goto('/', { waitUntil: 'commit' });
  await page.getByRole('button', { name: BUTTON }).waitFor();
  const [buttonMs, origin] = await page.evaluate(() => [window.buttonAt, performance.timeOrigin]);
  // What the page asks for once the button stands keeps nobody waiting for it.
  const before = responses.filter(
    (response) => response.request().timing().startTime < origin + buttonMs
  );
  const sizes = await Promise.all(
    before.map(async (response) => {
      const { responseHeadersSize, responseBodySize } = await response.request().sizes();
      return responseHeadersSize + responseBodySize;
    })
  );
  const wordsMs = await page.evaluate(
    () => performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? NaN
  );
  return {
    wordsMs,
    buttonMs,
    requests: before.length,
    bytes: sizes.reduce((sum, size) => sum + size, 0)
  };
}
