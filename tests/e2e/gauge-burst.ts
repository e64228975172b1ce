import { setTimeout as pause } from 'node:timers/promises';
import type { Page } from '@playwright/test';

/** What a browser is told of a key by the system, besides its name. */
function keyboardKey(key: string): { key: string; code: string; text: string; vk: number } {
  if (key === 'Enter') return { key, code: key, text: '\r', vk: 13 };
  if (key === 'Tab') return { key, code: key, text: '', vk: 9 };
  if (key === '.') return { key, code: 'Period', text: key, vk: 190 };
  if (key === ',') return { key, code: 'Comma', text: key, vk: 188 };
  return { key, code: `Digit${key}`, text: key, vk: 48 + Number(key) };
}

/**
 * Presses keys as a gauge does: real key events, so many milliseconds apart by their own time, which
 * is that of the gauge however late a busy machine delivers them. None waits for the page to have
 * taken the one before. They start at `start` by the clock, which may have passed.
 */
export async function burst(
  page: Page,
  keys: readonly string[],
  gapMs: number,
  start = Date.now()
): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const sent: Promise<unknown>[] = [];
  for (const [index, name] of keys.entries()) {
    const at = start + index * gapMs;
    await pause(Math.max(0, at - Date.now()));
    const { key, code, text, vk } = keyboardKey(name);
    const event = { key, code, windowsVirtualKeyCode: vk, timestamp: at / 1000 };
    const down = text === '' ? 'rawKeyDown' : 'keyDown';
    sent.push(
      session.send('Input.dispatchKeyEvent', { ...event, type: down, text }),
      session.send('Input.dispatchKeyEvent', { ...event, type: 'keyUp' })
    );
  }
  await Promise.all(sent);
  await session.detach();
}
