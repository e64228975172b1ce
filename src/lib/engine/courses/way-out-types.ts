import type { KickSoftness } from '../grading/index.ts';
import type { ThicknessBins } from '../thickness/index.ts';
import type { PileCount, Plan } from './plan-types.ts';

/** What is known about the piles beyond their counts; each item opens further ways out. */
export interface StockKnowledge {
  readonly kickAllowanceMm: number;
  /** How far steps scatter about the difference of two slates; not at all if left out. */
  readonly softness?: KickSoftness;
  /** Spread of what stands on each pile, pile 1 first, the one its chances came from; any scale. */
  readonly pileBins: readonly ThicknessBins[];
  /** Thresholds the piles were sorted at, mm. */
  readonly thresholdsMm: readonly number[];
  /** Spread of the common stock of slate-and-a-halves. */
  readonly commonBins?: ThicknessBins;
  /** Thresholds for other numbers of piles worth trying, mm. */
  readonly otherThresholdsMm?: readonly (readonly number[])[];
}

/** Keep fewer slates back. */
export interface NarrowReserve {
  readonly way: 'narrow-reserve';
  readonly plan: Plan;
  /** What each reserve gives up; piles that give up nothing are left out. */
  readonly release: readonly PileCount[];
  readonly releaseCommonSlateAndAHalves: number;
}

/** Move one threshold and look again at the pile that gives slates up. */
export interface MoveThreshold {
  readonly way: 'move-threshold';
  readonly plan: Plan;
  /** 1 for the threshold between piles 1 and 2. */
  readonly threshold: number;
  readonly fromMm: number;
  readonly toMm: number;
  /** The pile whose slates must be looked at again, and how many stand there, of every size. */
  readonly pile: number;
  readonly lookAgain: number;
  /** How many of them are expected to change pile. */
  readonly move: number;
}

/** Sort the whole stock again into another number of piles. */
export interface OtherPiles {
  readonly way: 'other-piles';
  readonly plan: Plan;
  readonly thresholdsMm: readonly number[];
  /** Slates to sort again, of every size. */
  readonly lookAgain: number;
}

/** Buy more, of the pile that mends the roof with fewest slates, then with fewest kickers. */
export interface OrderSlates {
  readonly way: 'order-slates';
  readonly plan: Plan;
  /**
   * What to buy for each pile, so that what it lacks is there once the reserve of the new slates is kept
   * back too; with the mean thickness of the pile where it is known.
   */
  readonly order: readonly (PileCount & { readonly aboutMm?: number })[];
  readonly orderCommonSlateAndAHalves: number;
}

/** Lay as many courses as the stock allows, from the eaves up. */
export interface LayPart {
  readonly way: 'lay-part';
  readonly plan: Plan;
  readonly courses: number;
  readonly ofCourses: number;
}

/** Let slopes change pile at different heights: laid courses bind their own slope only. */
export interface LetSlopesDiffer {
  readonly way: 'let-slopes-differ';
  readonly plan: Plan;
}

/** Let thickness rise or fall out of order once, beside what is laid already. */
export interface LetThicknessRise {
  readonly way: 'let-thickness-rise';
  readonly plan: Plan;
}

/** A way out of a shortage, priced by the whole plan that it makes possible. */
export type WayOut =
  | NarrowReserve
  | MoveThreshold
  | OtherPiles
  | OrderSlates
  | LetSlopesDiffer
  | LetThicknessRise
  | LayPart;
