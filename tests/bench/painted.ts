import type { BrowserContext, CDPSession, Page } from '@playwright/test';

/** So many times slower than this machine is the phone of the second figure. */
export const SLOWDOWN = 4;

declare global {
  interface Window {
    paintedMs: number[];
    /** The same until the frame after it is painted, for what is told a frame later. */
    paintedNextMs: number[];
  }
}

/** Opens the worked example and gives its address. */
export async function openWorkedExample(page: Page): Promise<string> {
  await page.goto('/');
  await page.getByRole('button', { name: 'Open the worked example' }).tap();
  await page.waitForURL(/\/job\/[0-9a-f-]+$/);
  return page.url();
}

/** What a phone's browser is told of itself. */
export const PHONE = {
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  locale: 'en-GB'
} as const;

/** Has the page time each event of a type until the frame that follows is painted. */
export async function timePainted(page: Page, type: 'keydown' | 'pointermove'): Promise<void> {
  await page.evaluate((type) => {
    window.paintedMs = [];
    window.paintedNextMs = [];
    /** Resolves once the next frame is painted: a message sent in a frame arrives then. */
    const nextFrame = (): Promise<unknown> =>
      new Promise((resolve) => {
        requestAnimationFrame(() => {
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = resolve;
          port2.postMessage(undefined);
        });
      });
    const begin = async ({ timeStamp }: Event): Promise<void> => {
      await nextFrame();
      window.paintedMs.push(performance.now() - timeStamp);
      await nextFrame();
      window.paintedNextMs.push(performance.now() - timeStamp);
    };
    addEventListener(type, begin, { capture: true });
  }, type);
}

/** Forgets what was timed so far. */
export async function startAnew(page: Page): Promise<void> {
  await page.evaluate(() => {
    window.paintedMs = [];
    window.paintedNextMs = [];
  });
}

/** What was timed since, ms. */
export function painted(page: Page): Promise<number[]> {
  return page.evaluate(() => window.paintedMs);
}

/** What was timed since until the frame after was painted, ms. */
function paintedNext(page: Page): Promise<number[]> {
  return page.evaluate(() => window.paintedNextMs);
}

/**
 * Does the moves plain, then on a processor slowed down, and says how long each took until it was painted
 * and what of the main thread's processor time it took.
 *
 * @param moves how many one call of `move` makes; it gives the time of each, ms
 */
export async function compareSpeeds(
  context: BrowserContext,
  page: Page,
  moves: number,
  name: string,
  move: () => Promise<number[]>
): Promise<void> {
  const session = await context.newCDPSession(page);
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  for (const slowdown of [1, SLOWDOWN]) {
    await session.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
    const before = await spent(session);
    const times = await move();
    const after = await spent(session);
    const each = (of: string): string => ((after[of] - before[of]) / moves).toFixed(1);
    console.log(
      `${name}, ${slowdown === 1 ? 'plain' : `slowed ${slowdown} times`}: until painted ` +
        `${say(times)} ms, the frame after ${say(await paintedNext(page))} ms; main thread ${each('TaskDuration')} ms a move: script ` +
        `${each('ScriptDuration')}, style ${each('RecalcStyleDuration')}, layout ${each('LayoutDuration')}`
    );
  }
}

/** Times of the page's main thread so far, ms. */
async function spent(session: CDPSession): Promise<Record<string, number>> {
  const { metrics } = await session.send('Performance.getMetrics');
  return Object.fromEntries(metrics.map(({ name, value }) => [name, 1000 * value]));
}

function say(times: readonly number[]): string {
  const sorted = [...times].sort((one, other) => one - other);
  const at = (share: number): string => sorted[Math.floor(share * (sorted.length - 1))].toFixed(1);
  return `min ${at(0)}, median ${at(0.5)}, 90 % ${at(0.9)}, max ${at(1)}`;
}
