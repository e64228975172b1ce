/** Taps during which a question stays before it lapses: the slate is by then deep in its pile. */
const PATIENCE = 6;

/** When to ask for a spot check. */
export interface CheckTimer {
  /** Taps since the last question, or since the timer began. */
  readonly taps: number;
  /** What varies the time of the next question, from [0, 1). */
  readonly draw: number;
  /** Taps since the question came up; null while none is up. */
  readonly askedFor: number | null;
}

/** A timer for the next question, whose time is varied by a draw from [0, 1). */
export function nextCheckTimer(draw: number): CheckTimer {
  return { taps: 0, draw, askedFor: null };
}

/**
 * The timer after one more tap: a question comes up after `interval` taps, varied by a quarter, so
 * that it surprises; unanswered, it lapses.
 *
 * @param interval taps between two questions as things stand now, 1 or more; it may change between
 * two taps, and Infinity asks for nothing
 * @param draw from [0, 1), for the question after this one
 */
export function afterTap(timer: CheckTimer, interval: number, draw: number): CheckTimer {
  if (timer.askedFor !== null) {
    const isLapsed = timer.askedFor + 1 >= PATIENCE;
    return isLapsed ? nextCheckTimer(draw) : { ...timer, askedFor: timer.askedFor + 1 };
  }
  const taps = timer.taps + 1;
  const isDue = taps >= Math.round(interval * (0.75 + 0.5 * timer.draw));
  return { ...timer, taps, askedFor: isDue ? 0 : null };
}
