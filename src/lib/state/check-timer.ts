/** Taps during which a question stays before it lapses: the slate is by then deep in its pile. */
const PATIENCE = 6;

/** When to ask for a spot check. */
export interface CheckTimer {
  /** Taps until the question comes up. */
  readonly tapsUntil: number;
  /** Taps since the question came up; null while none is up. */
  readonly askedFor: number | null;
}

/**
 * A timer for the next question: after `interval` taps, varied by a quarter, so that it surprises.
 *
 * @param interval taps between two questions, 1 or more
 * @param random a draw from [0, 1)
 */
export function nextCheckTimer(interval: number, random: number): CheckTimer {
  return { tapsUntil: Math.max(1, Math.round(interval * (0.75 + 0.5 * random))), askedFor: null };
}

/** The timer after one more tap: a question comes up when its time is reached; unanswered, it lapses. */
export function afterTap(timer: CheckTimer, interval: number, random: number): CheckTimer {
  if (timer.askedFor !== null) {
    const isLapsed = timer.askedFor + 1 >= PATIENCE;
    return isLapsed ? nextCheckTimer(interval, random) : { ...timer, askedFor: timer.askedFor + 1 };
  }
  const tapsUntil = timer.tapsUntil - 1;
  return { tapsUntil, askedFor: tapsUntil <= 0 ? 0 : null };
}
