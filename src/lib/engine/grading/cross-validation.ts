import { EngineError } from '../errors.ts';
import { type Random, shuffled } from '../random.ts';
import { type ThicknessBins, binsFromPairs, mergeBins, totalCount } from '../thickness/index.ts';
import { type GradeFigures, type GradingGround, gradeFigures } from './grade-figures.ts';
import {
  kickProbabilityWithin,
  pileVarianceMm2,
  readingPairs,
  withUnknownAsOthers
} from './kick-probability.ts';
import { splitIntoPiles } from './piles.ts';
import { stepSdMm } from './soft-kick.ts';
import type { CourseNeed } from './whole-courses.ts';

/** Parts that readings are dealt into: boundaries are cut from all but one and tried on that one. */
const PARTS = 5;

/** Gauged slates of one pallet. */
export interface GaugedPallet {
  /** Slates that it stands for, all told. */
  readonly slates: number;
  /** Slates gauged, whole counts; not modified. */
  readonly bins: ThicknessBins;
}

/** Cuts a spread into piles: thresholds in mm, strictly falling; undefined where it cannot. */
export type CutSpread = (bins: ThicknessBins) => readonly number[] | undefined;

/**
 * What boundaries come to on slates that they were not cut from. Boundaries fitted to a sample flatter
 * themselves on it: they part the very slates that would have kicked. One round of trials on slates held
 * out tells without that.
 *
 * @param ground stock, roof and kick allowance, as for the figures; not modified
 * @param pallets gauged or not, in any order; not modified
 * @param cuts ways to cut a spread
 * @param random deals the readings; the same draws give the same result
 * @returns expected kickers per 100 joints for each way, on the roof, or on the stock in one row while
 * there is no roof; undefined for a way that could not cut
 *
 * Definition: each pallet's readings are dealt at random into five parts; thresholds are cut from four
 * of them, pallets weighted by their slates, and each pile's chance to kick is that of the pairs of its
 * sampled slates of which one at least is of the fifth; the mean of the five. The boundaries judged
 * rest on four fifths of the readings and are, if anything, a little worse than those cut from all
 * (cross-validation, Stone 1974, from memory). A few slates beyond anything in the sample are told by
 * no trial, so from a small sample it is still too low. Take the mean of several rounds to still the
 * dealing. Cost: five times that of each way and its figures.
 *
 * @throws EngineError `not-whole` for fractional counts, and those of `gradeFigures`
 * @example
 * crossValidationRound(ground, pallets, [(bins) => cutsOf(naturalBreaks(bins, 3))], createRandom(1)); // [0.9]
 */
export function crossValidationRound(
  ground: Omit<GradingGround, 'bins' | 'chanceAbove'>,
  pallets: readonly GaugedPallet[],
  cuts: readonly CutSpread[],
  random: Random
): (number | undefined)[] {
  const dealt = pallets.map(({ bins }) => deal(bins, random));
  const spreadWithout = (held?: number): ThicknessBins =>
    weighted(
      dealt.map((parts) => mergeBins(parts.filter((_, part) => part !== held))),
      pallets
    );
  const all = spreadWithout();
  const figuresAt = gradeFigures({ ...ground, bins: all });
  const sums: (number | undefined)[] = cuts.map(() => 0);
  for (let held = 0; held < PARTS; held++) {
    const rest = spreadWithout(held);
    for (const [way, cut] of cuts.entries()) {
      const thresholdsMm = cut(rest);
      const sum = sums[way];
      if (!thresholdsMm || sum === undefined) {
        sums[way] = undefined;
        continue;
      }
      const { kickAllowanceMm, softness } = ground;
      const pilesOfAll = splitIntoPiles(all, thresholdsMm);
      /** Steps on a pile scatter as they do on the whole of it, whichever pairs are looked at. */
      const scatter = pilesOfAll.map(
        (pile) =>
          softness && { varianceMm2: stepSdMm(softness, pileVarianceMm2(pile)) ** 2, pileShare: 0 }
      );
      const evenness = (piles: readonly ThicknessBins[]): PilePairs[] =>
        piles.map((pile, at) => ({
          pairs: readingPairs(pile),
          chance: kickProbabilityWithin(pile, kickAllowanceMm, scatter[at]),
          slates: totalCount(pile)
        }));
      const [withRest, withAll] = [splitIntoPiles(rest, thresholdsMm), pilesOfAll].map(evenness);
      const chances = withUnknownAsOthers(
        withAll.map((pile, at) => chanceOfHeldOut(pile, withRest[at])),
        withAll.map(({ slates }) => slates),
        withAll.map(({ pairs }) => pairs > 0)
      );
      sums[way] = sum + per100Joints(figuresAt(thresholdsMm), ground.courses, chances) / PARTS;
    }
  }
  return sums;
}

/** A pile by its pairs of readings. */
interface PilePairs {
  readonly pairs: number;
  /** Chance that a pair kicks. */
  readonly chance: number;
  readonly slates: number;
}

/** Chance to kick of a pile's pairs that are not pairs of the rest. */
function chanceOfHeldOut(all: PilePairs, rest: PilePairs): number {
  const pairs = all.pairs - rest.pairs;
  if (pairs <= 0) return all.chance;
  const kicking = all.chance * all.pairs - rest.chance * rest.pairs;
  return Math.min(1, Math.max(0, kicking / pairs));
}

/** Expected kickers per 100 joints where every pile kicks with a chance of its own. */
function per100Joints(
  { piles, roof }: GradeFigures,
  courses: readonly CourseNeed[],
  chances: readonly number[]
): number {
  if (!roof) return 100 * piles.reduce((sum, { share }, at) => sum + share * chances[at], 0);
  let laid = 0;
  let kickers = 0;
  for (const [at, pile] of piles.entries())
    for (const end = laid + pile.courses; laid < end; laid++)
      kickers += chances[at] * courses[laid].joints;
  return roof.joints > 0 ? (100 * kickers) / roof.joints : 0;
}

/** A pallet's readings, dealt at random into parts as equal as can be. */
function deal(bins: ThicknessBins, random: Random): ThicknessBins[] {
  const slates: number[] = [];
  for (const [bin, hundredths] of bins.hundredths.entries()) {
    if (!Number.isInteger(bins.counts[bin]))
      throw new EngineError('not-whole', `${bins.counts[bin]} slates of ${hundredths / 100} mm`);
    for (let slate = 0; slate < bins.counts[bin]; slate++) slates.push(hundredths);
  }
  const order = shuffled(slates, random);
  const first = Math.floor(random() * PARTS);
  return Array.from({ length: PARTS }, (_, part) =>
    binsFromPairs(
      order
        .filter((_slate, place) => (place + first) % PARTS === part)
        .map((hundredths) => [hundredths, 1] as const)
    )
  );
}

/** Spreads of pallets put together, each by its slates; adds up to the readings. */
function weighted(own: readonly ThicknessBins[], pallets: readonly GaugedPallet[]): ThicknessBins {
  const read = own.map(totalCount);
  const all = read.reduce((sum, count) => sum + count, 0);
  const slates = pallets.reduce((sum, pallet, at) => sum + (read[at] > 0 ? pallet.slates : 0), 0);
  return mergeBins(
    own,
    pallets.map((pallet, at) => (read[at] > 0 ? (pallet.slates * all) / (read[at] * slates) : 1))
  );
}
