import { type JobView, partOf } from '$lib/journal';
import { pileOf } from '$lib/engine/grading';

/** Taps between two spot checks: about so many once the hand is known, and before. Ours. */
const USUAL_INTERVAL = 20;
const UNSURE_INTERVAL = 8;
/** Checks before a hand counts as known, and the share of them that must agree. Ours. */
const ENOUGH_CHECKS = 6;
const SURE_SHARE = 0.8;
/** Taps during which a question stays before it lapses. */
const PATIENCE = 6;

/**
 * Whether a sorter's hand is known: enough spot checks under the grades in force, and at least four
 * in five of them agree with the gauge.
 */
export function isHandKnown(
  view: JobView,
  sorter: string,
  grades: { gradesId: string; thresholdsMm: readonly number[] }
): boolean {
  const { checks } = partOf(view, `sorter:${sorter}`);
  let total = 0;
  let agreeing = 0;
  for (const key of Object.keys(checks)) {
    const [of, gradesId, pile, hundredths] = key.split('|');
    if (of !== 'tap' || gradesId !== grades.gradesId) continue;
    total += checks[key];
    if (pileOf(Number(hundredths) / 100, grades.thresholdsMm) === Number(pile))
      agreeing += checks[key];
  }
  return total >= ENOUGH_CHECKS && agreeing >= SURE_SHARE * total;
}

/** When to ask for a spot check. A new one after every change; never modified. */
export interface CheckTimer {
  readonly tapsUntil: number;
  /** Taps since the question came up; null while none is up. */
  readonly askedFor: number | null;
}

/** After how many taps the next question comes: varied by a quarter, so that it surprises. */
export function nextCheckTimer(isSure: boolean, random: () => number): CheckTimer {
  const interval = isSure ? USUAL_INTERVAL : UNSURE_INTERVAL;
  return { tapsUntil: Math.round(interval * (0.75 + 0.5 * random())), askedFor: null };
}

/** The timer after one more tap: a question comes up when its time is reached, and lapses unanswered. */
export function afterTap(timer: CheckTimer, isSure: boolean, random: () => number): CheckTimer {
  if (timer.askedFor !== null)
    return timer.askedFor + 1 >= PATIENCE
      ? nextCheckTimer(isSure, random)
      : { ...timer, askedFor: timer.askedFor + 1 };
  const tapsUntil = timer.tapsUntil - 1;
  return { tapsUntil, askedFor: tapsUntil <= 0 ? 0 : null };
}
