import type { Random } from '../random.ts';
import { type ThicknessBins, totalCount } from '../thickness/index.ts';
import type { FusedPallet, TappedPallet } from './fuse-pallets.ts';
import { type Hand, type UnknownHand, logPileChances } from './hand.ts';
import { withCounts } from './tilted-spread.ts';

/** A pallet that can be packed and sorted anew as often as wished. */
export interface PalletModel {
  readonly palletId: string;
  readonly slates: number;
  readonly isKnown: boolean;
  /** Chances of a slate to lie in each bin; all 0 where nothing is known of the pallet. */
  readonly spread: Float64Array;
  /** Packs the pallet with slates drawn anew, gauges and taps as many of them as here. */
  readonly pack: (random: Random) => PackedPallet;
}

/** A pallet packed anew. */
export interface PackedPallet {
  readonly gauged: ThicknessBins;
  readonly taps: readonly (readonly number[])[];
  /** All slates of the pallet by bin. */
  readonly slates: Float64Array;
}

/** Slates drawn one by one; of more only as many, and their scatter is scaled. */
const MOST_DRAWN = 1000;

/**
 * Makes a pallet ready to be packed anew from its fused spread.
 *
 * @param grid bins to work on, of any counts; not modified
 * @param fused the pallet's spread, its thicknesses among those of the grid
 * @param pallet what was gauged and tapped of the pallet
 * @param hands the sorters' hands, in the order of the pallet's taps
 */
export function palletModel(
  grid: ThicknessBins,
  fused: FusedPallet,
  pallet: TappedPallet,
  hands: readonly (Hand | UnknownHand)[]
): PalletModel {
  const { palletId, slates } = pallet;
  const spread = onGrid(grid, fused.spread);
  const isKnown = fused.spread.counts.length > 0;
  const any = drawerOf(spread);
  const gauged = totalCount(pallet.bins);
  const sorters = hands.map((hand, sorter) => {
    const all = pallet.taps[sorter].reduce((total, count) => total + count, 0);
    if (!hand.ok || all === 0) return undefined;
    const logs = Array.from(grid.hundredths, (value) => logPileChances(hand, value / 100));
    const joint = logs[0].map((_, pile) =>
      spread.map((share, bin) => share * Math.exp(logs[bin][pile]))
    );
    return { all, piles: drawerOf(Float64Array.from(joint, sum)), within: joint.map(drawerOf) };
  });

  const pack = (random: Random): PackedPallet => {
    const counts = new Float64Array(grid.hundredths.length);
    any(gauged, random, counts, true);
    const readings = withCounts(grid, counts);
    let seen = gauged;
    const taps = sorters.map((sorter, index) => {
      if (!sorter) return pallet.taps[index];
      const piles = new Float64Array(sorter.within.length);
      sorter.piles(sorter.all, random, piles, true);
      for (const [pile, within] of sorter.within.entries()) within(piles[pile], random, counts);
      seen += sorter.all;
      return [...piles];
    });
    any(Math.max(0, slates - seen), random, counts);
    return { gauged: readings, taps, slates: counts };
  };
  return { palletId, slates, isKnown, spread, pack };
}

/** A spread's counts on the bins of a grid that holds all its thicknesses. */
export function onGrid({ hundredths }: ThicknessBins, spread: ThicknessBins): Float64Array {
  const counts = new Float64Array(hundredths.length);
  let at = 0;
  for (const [bin, value] of spread.hundredths.entries()) {
    while (hundredths[at] < value) at++;
    counts[at] += spread.counts[bin];
  }
  return counts;
}

type Drawer = (draws: number, random: Random, into: Float64Array, oneByOne?: boolean) => void;

/**
 * Adds so many draws to the counts of bins, each bin drawn in proportion to its weight. Beyond
 * 1,000 draws, unless they are wanted one by one, the counts are not whole: those expected and the
 * scatter of 1,000 draws, scaled to the scatter of so many.
 */
function drawerOf(weights: Float64Array): Drawer {
  const running = new Float64Array(weights.length);
  let total = 0;
  for (let bin = 0; bin < weights.length; bin++) running[bin] = total += weights[bin];
  return (draws, random, into, oneByOne = false) => {
    if (total === 0) return;
    const drawn = oneByOne ? draws : Math.min(draws, MOST_DRAWN);
    if (drawn === 0) return;
    const scale = Math.sqrt(draws / drawn);
    for (let draw = 0; draw < drawn; draw++) into[placeIn(running, random() * total)] += scale;
    const expected = (draws - scale * drawn) / total;
    if (expected !== 0)
      for (let bin = 0; bin < weights.length; bin++) into[bin] += expected * weights[bin];
  };
}

/** First place whose running total lies above a value. */
function placeIn(running: Float64Array, value: number): number {
  let [low, high] = [0, running.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (running[middle] > value) high = middle;
    else low = middle + 1;
  }
  return low;
}

function sum(values: Float64Array): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}
