import type { WedgeEnding, WedgeOutcome } from './wedge-state.ts';

/** How a keyboard gauge ends its readings, or why a few trial readings do not tell. */
export type WedgeLesson =
  | { readonly ok: true; readonly ending: WedgeEnding }
  | {
      readonly ok: false;
      readonly reason: 'too-few' | 'endings-differ' | 'no-decimals' | 'decimals-differ';
    };

/** Trial readings needed to learn a gauge. */
export const READINGS_TO_LEARN = 3;

/**
 * Learns from trial readings how the gauge ends them. In the trial the ending is set to `key`, and
 * the sorter taps to take a reading that stands without an end (outcome `accept`).
 *
 * A gauge that sends no terminator is accepted only if its readings have one fixed number of
 * decimals, at least one: it alone tells a whole reading from the first half of a torn one.
 * Refused readings teach nothing and are left out.
 *
 * @param outcomes the trial readings, in any order; not modified
 * @example three readings ended by 'accept', each with 2 decimals → { kind: 'pause', decimals: 2 }
 */
export function learnWedgeEnding(outcomes: readonly WedgeOutcome[]): WedgeLesson {
  const decimals = new Set<number>();
  let byKey = 0;
  let byHand = 0;
  for (const { reading, endedBy } of outcomes) {
    if (!reading.ok) continue;
    decimals.add(reading.decimals);
    if (endedBy === 'enter' || endedBy === 'tab') byKey++;
    if (endedBy === 'accept') byHand++;
  }
  if (byKey + byHand < READINGS_TO_LEARN) return { ok: false, reason: 'too-few' };
  if (byKey > 0 && byHand > 0) return { ok: false, reason: 'endings-differ' };
  if (byKey > 0) return { ok: true, ending: { kind: 'key' } };
  if (decimals.has(0)) return { ok: false, reason: 'no-decimals' };
  if (decimals.size > 1) return { ok: false, reason: 'decimals-differ' };
  const [only] = decimals;
  return { ok: true, ending: { kind: 'pause', decimals: only } };
}
