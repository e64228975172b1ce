import { type JobView, partOf } from '$lib/journal';
import { type CheckTimer, afterTap, nextCheckTimer } from './check-timer.ts';
import type { JobState } from '$lib/app';
import type { Grades } from '$lib/job';

/** Taps between two questions where the hand cannot be looked at. */
const UNLEARNT = 5;

/** A slate that was put on a pile by hand, and can still be gauged to check the hand. */
export interface TappedSlate {
  /** Its place among the piles of the grades. */
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
  /** Taps between two questions; none are asked before the hand was looked at. */
  #interval = Infinity;
  #timer = $state.raw<CheckTimer>(nextCheckTimer(0));
  #last = $state.raw<TappedSlate>();
  /** Who taps under which grades: the hand whose pace this is. */
  #hand = $state.raw('');

  /** The slate to gauge now, or undefined while no question is up. */
  readonly asked: TappedSlate | undefined = $derived.by(() =>
    this.#timer.askedFor === null || this.#hand !== this.#handNow() ? undefined : this.#last
  );

  constructor(job: () => JobState, sorter: () => string, random: () => number) {
    this.#job = job;
    this.#sorter = sorter;
    this.#random = random;
  }

  /** A slate was tapped; true when a question comes up with it. */
  tapped(slate: TappedSlate): boolean {
    // Not before the first tap: what it takes to learn would slow the screen's start.
    if (this.#hand !== this.#handNow()) this.#beginAnew();
    this.#last = slate;
    this.#timer = afterTap(this.#timer, this.#interval, this.#random());
    return this.#timer.askedFor === 0;
  }

  /** The slate was checked, or the question put off: the next one comes later. */
  putOff(): void {
    this.#last = undefined;
    this.#timer = nextCheckTimer(this.#random());
  }

  /** The last tap was taken back: there is nothing to check. */
  forgetLast(): void {
    this.#last = undefined;
  }

  /** Looks at the hand anew, away from the work: how well it is known sets the pace of questions. */
  async learn(): Promise<void> {
    const estimates = await import('$lib/engine/statistics').catch(() => undefined);
    const { view, grades, piles } = this.#job();
    if (!grades) return;
    if (!estimates) {
      // Not on the device yet: a pace that suits a hand of which nothing is known.
      this.#interval = UNLEARNT;
      return;
    }
    const checks = checksOf(view, this.#sorter(), grades);
    const hand = estimates.learnHand(
      checks.filter(({ pile }) => pile > 0),
      piles
    );
    this.#interval = estimates.tapsBetweenChecks(hand);
  }

  /** Another sorter, or other grades: another hand, with a pace of its own. */
  #beginAnew(): void {
    this.#hand = this.#handNow();
    this.#interval = Infinity;
    this.putOff();
    void this.learn();
  }

  #handNow(): string {
    return `${this.#job().grades?.gradesId} ${this.#sorter()}`;
  }
}

/** The spot checks of one sorter's taps under one set of grades. */
function checksOf(
  view: JobView,
  sorter: string,
  { gradesId, numbers }: Grades
): { pile: number; thicknessMm: number }[] {
  const { checks } = partOf(view, `sorter:${sorter}`);
  return Object.keys(checks).flatMap((key) => {
    const [grades, pile, hundredths] = key.split('|');
    if (grades !== gradesId) return [];
    const check = {
      pile: numbers.indexOf(Number(pile)) + 1,
      thicknessMm: Number(hundredths) / 100
    };
    return new Array<typeof check>(checks[key]).fill(check);
  });
}
