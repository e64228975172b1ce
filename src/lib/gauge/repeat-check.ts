import { EngineError, fromHundredths, requireFinite, toHundredths } from '$lib/engine';

/** The "hold still" check: a point counts once two readings of it in a row agree. */
export interface RepeatState {
  /** Most by which the two may differ, in hundredths of a millimetre. */
  readonly limitHundredths: number;
  /** The reading waiting for its repeat, in hundredths of a millimetre, or null. */
  readonly waiting: number | null;
}

/**
 * What a reading did.
 * - `again`: the first reading of a point: gauge it again;
 * - `agreed`: the repeat agrees; the point is the mean of the two;
 * - `moved`: it does not; the later reading now waits for its repeat.
 */
export type RepeatEffect =
  | { readonly kind: 'again'; readonly firstMm: number }
  | { readonly kind: 'agreed'; readonly valueMm: number; readonly differenceMm: number }
  | {
      readonly kind: 'moved';
      readonly firstMm: number;
      readonly secondMm: number;
      readonly differenceMm: number;
    };

/** A step of the check. */
export interface RepeatStep {
  readonly state: RepeatState;
  readonly effect: RepeatEffect;
}

/** Difference allowed unless set otherwise, mm. A starting value, no source. */
export const USUAL_REPEAT_LIMIT_MM = 0.2;

/**
 * Begins a repeat check.
 *
 * @param limitMm most by which two readings of one point may differ, 0 or more; both ends agree
 * @throws EngineError `not-finite`, `out-of-range`
 */
export function startRepeatCheck(limitMm: number = USUAL_REPEAT_LIMIT_MM): RepeatState {
  requireFinite(limitMm, 'limit');
  if (limitMm < 0) throw new EngineError('out-of-range', `limit is ${limitMm} mm; give 0 or more`);
  return { limitHundredths: toHundredths(limitMm), waiting: null };
}

/**
 * Takes one accepted reading into the repeat check. The comparison is made in whole hundredths, so
 * that 6.40 and 6.60 agree within 0.2 mm; the mean rounds a half hundredth up.
 *
 * @example 6.40, then 6.50 within 0.2 → { kind: 'agreed', valueMm: 6.45, differenceMm: 0.1 }
 */
export function repeatReading(state: RepeatState, valueMm: number): RepeatStep {
  const second = toHundredths(valueMm);
  const first = state.waiting;
  if (first === null)
    return {
      state: { ...state, waiting: second },
      effect: { kind: 'again', firstMm: fromHundredths(second) }
    };
  const difference = Math.abs(second - first);
  const differenceMm = fromHundredths(difference);
  if (difference <= state.limitHundredths) {
    const valueMm = fromHundredths(Math.round((first + second) / 2));
    return {
      state: { ...state, waiting: null },
      effect: { kind: 'agreed', valueMm, differenceMm }
    };
  }
  return {
    state: { ...state, waiting: second },
    effect: {
      kind: 'moved',
      firstMm: fromHundredths(first),
      secondMm: fromHundredths(second),
      differenceMm
    }
  };
}
