import { isQuotaExceeded } from './reconnect.ts';
import type { ProbeResult, StoreSurroundings } from './store.ts';

/**
 * Writes a value nobody wrote before, reads it back, takes it away and says whether that went well.
 * Each probe has a row of its own, so that two at once, as of two tabs, do not meet.
 */
export async function probeWith(
  { now, randomHex }: StoreSurroundings,
  row: {
    write: (name: string, value: string) => PromiseLike<unknown>;
    read: (name: string) => PromiseLike<unknown>;
    remove: (name: string) => PromiseLike<unknown>;
  }
): Promise<ProbeResult> {
  const began = now();
  try {
    const value = randomHex();
    const name = `probe:${value}`;
    await row.write(name, value);
    const answer = await row.read(name);
    await row.remove(name);
    if (answer !== value)
      return { ok: false, reason: 'wrong-answer', detail: 'read another value than was written' };
    return { ok: true, tookMs: Math.max(0, now() - began) };
  } catch (error) {
    const reason = isQuotaExceeded(error) ? 'full' : 'unavailable';
    return { ok: false, reason, detail: error instanceof Error ? error.name : 'unknown' };
  }
}
