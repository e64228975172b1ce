import type { BoundaryMethod } from '$lib/journal';
import { runTask } from '$lib/worker';
import { ENOUGH_TO_HOLD_OUT, type GradesState } from './grades.svelte.ts';

/** Fewest readings that can be left out in parts at all: two a part. */
const LEAST_TO_HOLD_OUT = 10;

/** Rounds of trials, and where their draws begin. */
const ROUNDS = 4;
const SEED = 1;

/** What the ways to cut come to on slates that the boundaries were not cut from. */
export class HeldOut {
  readonly #grades: () => GradesState;
  /** Kickers per 100 joints by way; undefined while they are tried, or where there are too few readings. */
  kickers = $state.raw<Partial<Record<BoundaryMethod, number>>>();

  constructor(grades: () => GradesState) {
    this.#grades = grades;
  }

  get isEnough(): boolean {
    return this.#grades().gauged >= ENOUGH_TO_HOLD_OUT;
  }

  /** What boundaries come to: those of a way that is tried, set by hand or not. */
  of(thresholdsMm: readonly number[]): number | 'trying' | 'none' {
    const { gauged, ways } = this.#grades();
    const tried = ways.find(
      (way) => way.method !== 'byHand' && way.ok && isSame(way.thresholdsMm, thresholdsMm)
    );
    if (!tried || gauged < LEAST_TO_HOLD_OUT) return 'none';
    return this.kickers ? (this.kickers[tried.method] ?? 'none') : 'trying';
  }

  /** Tries the piles shown in the worker. To be run in an effect; gives what stops it. */
  try(): () => void {
    const { ground, piles, samples, gauged } = this.#grades();
    if (gauged < LEAST_TO_HOLD_OUT) return () => undefined;
    this.kickers = undefined;
    const { stockSlates, courses, kickAllowanceMm, softness, reserve } = ground;
    const trying = runTask('tryHeldOut', {
      roof: { stockSlates, courses, kickAllowanceMm, softness, reserve, piles },
      pallets: samples.map(({ slates, bins }) => ({ slates, bins })),
      seed: SEED,
      rounds: ROUNDS
    });
    const show = async (): Promise<void> => {
      const [naturalBreaks, suitTheRoof, equalShares] = await trying.result;
      this.kickers = { naturalBreaks, suitTheRoof, equalShares };
    };
    show().catch(() => (this.kickers = {}));
    return () => trying.cancel();
  }
}

function isSame(one: readonly number[], other: readonly number[]): boolean {
  return one.length === other.length && one.every((mm, at) => mm === other[at]);
}
