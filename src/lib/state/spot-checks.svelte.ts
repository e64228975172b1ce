import { type JobView, partOf } from '$lib/journal';
import { type CheckTimer, afterTap, nextCheckTimer } from './check-timer.ts';
import type { JobState } from './job.svelte.ts';

/** Taps between two questions before the hand was looked at, and once it never errs. */
const AT_FIRST = 5;
const WHEN_SURE = 20;

/** A slate that was put on a pile by hand, and can still be gauged to check the hand. */
export interface TappedSlate {
  readonly pile: number;
  readonly palletId: string;
  readonly gradesId: string;
}

/**
 * Spot checks: now and then the slate just tapped is to be gauged, which teaches what the hand calls
 * thick and thin. Oftener while the hand is little known; never in the way of the next tap.
 */
export class SpotChecks {
  readonly #job: () => JobState;
  readonly #sorter: () => string;
  readonly #random: () => number;
  #interval = AT_FIRST;
  #isHandKnown = false;
  #timer = $state.raw<CheckTimer>({ tapsUntil: AT_FIRST, askedFor: null });
  #last = $state.raw<TappedSlate>();

  /** The slate to gauge now, or undefined while no question is up. */
  readonly asked: TappedSlate | undefined = $derived(
    this.#timer.askedFor === null ? undefined : this.#last
  );

  constructor(job: () => JobState, sorter: () => string, random: () => number) {
    this.#job = job;
    this.#sorter = sorter;
    this.#random = random;
  }

  /** A slate was tapped; true when a question comes up with it. */
  tapped(slate: TappedSlate): boolean {
    // Not before the first tap: what it takes to learn would slow the screen's start.
    if (!this.#isHandKnown) void this.learn();
    this.#last = slate;
    this.#timer = afterTap(this.#timer, this.#interval, this.#random());
    return this.#timer.askedFor === 0;
  }

  /** The slate was checked, or the question put off: the next one comes later. */
  putOff(): void {
    this.#last = undefined;
    this.#timer = nextCheckTimer(this.#interval, this.#random());
  }

  /** The last tap was taken back: there is nothing to check. */
  forgetLast(): void {
    this.#last = undefined;
  }

  /** Looks at the hand anew, away from the work: how well it is known sets the pace of questions. */
  async learn(): Promise<void> {
    const { view, grades, piles } = this.#job();
    if (!grades) return;
    this.#isHandKnown = true;
    const checks = checksOf(view, this.#sorter(), grades.gradesId);
    const estimates = await import('$lib/engine/estimates').catch(() => undefined);
    if (!estimates) return; // not on the device yet: the questions keep their first pace
    const { learnHand, tapsBetweenChecks } = estimates;
    const hand = learnHand(
      checks.filter(({ pile }) => pile <= piles),
      piles
    );
    const hasNeverErred = !hand.ok && hand.reason === 'separated';
    this.#interval = hasNeverErred ? WHEN_SURE : tapsBetweenChecks(hand);
  }
}

/** The spot checks of one sorter's taps under one set of grades. */
function checksOf(
  view: JobView,
  sorter: string,
  gradesId: string
): { pile: number; thicknessMm: number }[] {
  const { checks } = partOf(view, `sorter:${sorter}`);
  return Object.keys(checks).flatMap((key) => {
    const [of, grades, pile, hundredths] = key.split('|');
    if (of !== 'tap' || grades !== gradesId) return [];
    const check = { pile: Number(pile), thicknessMm: Number(hundredths) / 100 };
    return new Array<typeof check>(checks[key]).fill(check);
  });
}
