import { type Random, randomBelow } from '../random.ts';
import { type ThicknessBins, binsFromPairs, mergeBins } from '../thickness/index.ts';
import { checkerOf, widerHand } from './checks-anew.ts';
import {
  type CheckedSorter,
  type TappedPallet,
  binsOfChecks,
  fusePallets
} from './fuse-pallets.ts';
import type { NoFusedSpread } from './fuse-taps.ts';
import { type PackedPallet, type PalletModel, onGrid, palletModel } from './packed-pallet.ts';

/** How far the fused estimate strayed in trials, for any boundaries to be asked of. Plain data. */
export interface FusedErrors {
  readonly ok: true;
  /** Thickness of the bins that the trials were worked on, hundredths of a millimetre, rising. */
  readonly hundredths: Int32Array;
  readonly trials: number;
  /** Trial by trial, share of the slates at least as thick as each bin: as told, and in truth. */
  readonly toldShares: Float32Array;
  readonly trueShares: Float32Array;
  /** Mean thickness as told less the true one, mm. */
  readonly meanErrorsMm: Float64Array;
}

/** Why nothing tells how far the estimate may be off. */
export interface NoFusedErrors {
  readonly ok: false;
  readonly reason:
    | NoFusedSpread['reason']
    /** No tap counts, so gauged slates alone tell. */
    | 'no-taps'
    /** One pallet is known of several: nothing tells how pallets differ. */
    | 'one-pallet-of-many'
    /** The spot checks are so few that the like of them would often not give a hand. */
    | 'hand-too-rough';
}

/** Trials under way. */
export interface FusedTrials {
  readonly step: (times: number) => void;
  readonly result: () => FusedErrors | NoFusedErrors;
}

/** Bins that the trials are worked on, about; a pile's boundary is moved to the nearest one's edge. */
const BINS = 100;

/**
 * Tries the fused estimate on deliveries drawn like this one, to see how far it strays.
 *
 * @param pallets every pallet with its gauged slates and taps; not modified
 * @param sorters hands and spot checks, in the order of the pallets' taps; not modified
 * @param random where the draws come from
 * @returns trials: `step` makes some more, `result` tells their errors so far or why there are none
 *
 * Definition: parametric bootstrap of the error of prediction. In each trial every pallet is packed
 * anew with slates of its fused spread, and as many of them as here are gauged and tapped. The hands
 * are as learnt, each spread widened for how few checks it was learnt from (by checks over degrees of
 * freedom, and by Student's t over the normal; ours, as measured in simulation). The spot checks, at
 * the thicknesses they had, fall on piles anew; the hands are learnt anew and all is fused anew
 * ({@link fusePallets}). What is then told is compared with the slates that were packed, so that
 * slates already gauged add nothing to the error.
 * A pallet of which nothing is known has the spread of one of the others, drawn at random, its
 * departure from their mean widened by √((n + 1)/(n − 1)) for n known pallets, for the spread of so
 * few understates how pallets differ. Where the checks of ten draws give no hand the trial is void.
 * Accuracy: thickness is rounded to a hundredth of the range. What lies far beyond a hand's outermost
 * threshold is told by the shape of the stock, which few readings there tell badly. Cost: slates,
 * and one `fusePallets` on about 100 bins, a trial.
 *
 * @throws EngineError as {@link fusePallets}
 * @example
 * const trials = createFusedTrials(pallets, sorters, createRandom(1));
 * trials.step(400);
 * const errors = trials.result(); // where `errors.ok`, ask it for any grade:
 * fusedGrade(pallets, fused.pallets, errors, { fromMm: 6, toMm: Infinity });
 */
export function createFusedTrials(
  pallets: readonly TappedPallet[],
  sorters: readonly CheckedSorter[],
  random: Random
): FusedTrials {
  const fused = fusePallets(pallets, sorters);
  if (!fused.ok) return without(fused.reason);
  if (fused.tapsCounted === 0) return without('no-taps');
  const known = fused.pallets.filter(({ spread }) => spread.counts.length > 0);
  if (known.length === 1 && pallets.length > 1) return without('one-pallet-of-many');

  const roundTo = roundingOver(known.map(({ spread }) => spread));
  const rounded = fused.pallets.map(({ spread, ...pallet }) => ({
    ...pallet,
    spread: roundedBins(spread, roundTo)
  }));
  const grid = mergeBins([
    ...rounded.map(({ spread }) => spread),
    ...pallets.map(({ bins }) => roundedBins(bins, roundTo)),
    ...sorters.map(({ checks }) => roundedBins(binsOfChecks(checks), roundTo))
  ]);
  const hands = sorters.map(({ hand }) => (hand.ok ? widerHand(hand) : hand));
  const models = rounded.map((pallet, index) => palletModel(grid, pallet, pallets[index], hands));
  const checkers = sorters.map(({ checks }, index) => checkerOf(hands[index], checks, roundTo));
  const told: Float64Array[] = [];
  const real: Float64Array[] = [];
  const meanErrorsMm: number[] = [];
  let failed = 0;

  const trial = (): void => {
    const learnt = checkers.map((learnAnew) => learnAnew(random));
    const packed = models.map(({ pack }) => pack(random));
    const again =
      learnt.every((sorter) => sorter !== undefined) &&
      fusePallets(
        models.map(({ palletId, slates }, index) => {
          const { gauged, taps } = packed[index];
          return { palletId, slates, bins: gauged, taps };
        }),
        learnt
      );
    if (!again || !again.ok) {
      failed++;
      return;
    }
    const estimate = meanSpread(
      again.pallets.map(({ bins }) => onGrid(grid, bins)),
      models
    );
    const truth = trueSpread(packed, models, random);
    told.push(sharesFrom(estimate));
    real.push(sharesFrom(truth));
    meanErrorsMm.push(meanMmOf(grid, estimate) - meanMmOf(grid, truth));
  };

  return {
    step: (times) => {
      for (let time = 0; time < times; time++) trial();
    },
    result: () =>
      failed > told.length || told.length === 0
        ? { ok: false, reason: 'hand-too-rough' }
        : {
            ok: true,
            hundredths: grid.hundredths,
            trials: told.length,
            toldShares: joined(told),
            trueShares: joined(real),
            meanErrorsMm: Float64Array.from(meanErrorsMm)
          }
  };
}

function without(reason: NoFusedErrors['reason']): FusedTrials {
  return { step: () => undefined, result: () => ({ ok: false, reason }) };
}

/** Whole hundredths of a millimetre to round to, so that the spreads take about 100 bins. */
function roundingOver(spreads: readonly ThicknessBins[]): number {
  const ends = spreads.flatMap(({ hundredths }) => [
    hundredths[0],
    hundredths[hundredths.length - 1]
  ]);
  return Math.max(1, Math.round((Math.max(...ends) - Math.min(...ends)) / BINS));
}

function roundedBins({ hundredths, counts }: ThicknessBins, roundTo: number): ThicknessBins {
  return binsFromPairs(
    Array.from(counts, (count, bin) => [Math.round(hundredths[bin] / roundTo) * roundTo, count])
  );
}

/** The whole stock's chances by bin: known pallets weighed by their slates. */
function meanSpread(
  spreads: readonly Float64Array[],
  models: readonly PalletModel[]
): Float64Array {
  const mean = new Float64Array(spreads[0].length);
  const all = slatesOf(models.filter(({ isKnown }) => isKnown));
  for (const [index, { slates, isKnown }] of models.entries()) {
    if (!isKnown) continue;
    const each = slates / all / sum(spreads[index]);
    for (let bin = 0; bin < mean.length; bin++) mean[bin] += each * spreads[index][bin];
  }
  return mean;
}

/** Chances by bin of the slates that were really packed, those of pallets never seen among them. */
function trueSpread(
  packed: readonly PackedPallet[],
  models: readonly PalletModel[],
  random: Random
): Float64Array {
  const known = models.filter(({ isKnown }) => isKnown);
  const usual = meanSpread(
    models.map(({ spread }) => spread),
    models
  );
  const widening = Math.sqrt((known.length + 1) / (known.length - 1));
  const truth = new Float64Array(usual.length);
  let all = 0;
  for (const [index, { slates, isKnown }] of models.entries()) {
    const own = isKnown ? packed[index].slates : known[randomBelow(random, known.length)].spread;
    for (let bin = 0; bin < truth.length; bin++)
      truth[bin] += isKnown ? own[bin] : slates * (usual[bin] + widening * (own[bin] - usual[bin]));
    all += isKnown ? sum(own) : slates;
  }
  return truth.map((count) => count / all);
}

/** Share of slates in each bin or a thicker one. */
function sharesFrom(spread: Float64Array): Float64Array {
  const shares = new Float64Array(spread.length);
  let share = 0;
  for (let bin = spread.length - 1; bin >= 0; bin--) shares[bin] = share += spread[bin];
  return shares;
}

function meanMmOf({ hundredths }: ThicknessBins, spread: Float64Array): number {
  return spread.reduce((total, share, bin) => total + (share * hundredths[bin]) / 100, 0);
}

function slatesOf(models: readonly PalletModel[]): number {
  return models.reduce((total, { slates }) => total + slates, 0);
}

function sum(values: Float64Array): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}

function joined(rows: readonly Float64Array[]): Float32Array {
  const all = new Float32Array(rows.length * rows[0].length);
  for (const [index, row] of rows.entries()) all.set(row, index * row.length);
  return all;
}
