import { isQuotaExceeded } from './reconnect.ts';
import type { ProbeResult, StoreSurroundings } from './store.ts';

/** Writes a value nobody wrote before, reads it back and says whether that went well. */
export async function probeWith(
  { now, randomHex }: StoreSurroundings,
  write: (value: string) => PromiseLike<unknown>,
  read: () => PromiseLike<unknown>
): Promise<ProbeResult> {
  const began = now();
  try {
    const value = randomHex();
    await write(value);
    const answer = await read();
    if (answer !== value)
      return { ok: false, reason: 'wrong-answer', detail: 'read another value than was written' };
    return { ok: true, tookMs: Math.max(0, now() - began) };
  } catch (error) {
    const reason = isQuotaExceeded(error) ? 'full' : 'unavailable';
    return { ok: false, reason, detail: error instanceof Error ? error.name : 'unknown' };
  }
}
