import { EngineError, requireWhole } from '../errors.ts';
import { type ThicknessBins, binsFromPairs, mergeBins, totalCount } from '../thickness/index.ts';
import { comparePallets } from './between-pallets.ts';
import { type NoFusedSpread, fuseTaps, relativeChances } from './fuse-taps.ts';
import type { Hand, SpotCheck, UnknownHand } from './hand.ts';
import type { PalletSample } from './pallet-sample.ts';
import { type PileOfTaps, tiltedSpread, withCounts } from './tilted-spread.ts';

/** One sorter under one set of grades: the hand, and the spot checks it was learnt from. */
export interface CheckedSorter {
  readonly hand: Hand | UnknownHand;
  /** Slates of the taps that were gauged as well. */
  readonly checks: readonly SpotCheck[];
}

/** One pallet, what was gauged of it, and what was put on piles by hand. */
export interface TappedPallet extends PalletSample {
  /** Slates that each sorter tapped onto each pile, thickest pile first, checked ones among them. */
  readonly taps: readonly (readonly number[])[];
}

/** One pallet's spread from gauge and taps together. */
export interface FusedPallet {
  readonly palletId: string;
  readonly slates: number;
  /** Gauged slates, and each tap spread over what it may have been; empty where nothing is known. */
  readonly bins: ThicknessBins;
  /** Chances of a slate of this pallet before it is told, adding up to 1; empty likewise. */
  readonly spread: ThicknessBins;
}

/** A delivery's spread pallet by pallet from gauge and taps together. */
export interface FusedPallets {
  readonly ok: true;
  /** In the order given. */
  readonly pallets: readonly FusedPallet[];
  readonly tapsCounted: number;
  /** Taps that count for piles but not for millimetres, their sorter's hand being unknown. */
  readonly tapsLeftOut: number;
  /** Readings that the whole stock counts for on each pallet; Infinity where pallets are alike. */
  readonly stockReadings: number;
}

/** Readings that the stock counts for where nothing tells how pallets differ. Ours. */
const WHERE_NOTHING_TELLS = 8;

/**
 * Gauge and taps together, pallet by pallet: what each tap is worth in millimetres depends on the
 * pallet it was drawn from, for a tap on the thick pile of a thin pallet is seldom a very thick slate.
 *
 * @param pallets every pallet with its gauged slates and taps, in any order; not modified
 * @param sorters hands and spot checks, in the order of the pallets' taps; not modified
 * @returns each pallet's spread; or why taps do not count in millimetres
 *
 * Definition: the stock's spread from {@link fuseTaps} (all pallets, spot checks as gauged slates) is
 * moved and stretched to each pallet's readings and taps by greatest likelihood (see
 * {@link tiltedSpread}), and each tap is then told by {@link tapPosterior} with its own pallet's
 * spread. The stock counts on each pallet for as many readings as a random effects model gives it:
 * variance within pallets over variance between them, from the gauged slates (Searle, Variance
 * Components, from memory); 8 where the gauge cannot tell, which is ours. Where pallets do not differ
 * that is without end, every pallet has the stock's spread, and so has a pallet that is alone. A
 * pallet without taps that count keeps its gauged slates as they are. Cost: that of `fuseTaps`, and
 * bins × piles × sorters for some six steps a pallet.
 *
 * @throws EngineError as {@link fuseTaps}; `wrong-length` for taps that do not match the sorters
 * @example
 * // a sharp hand on one pallet of 5 and 7 mm: 1 + 30 slates of 7 mm, 1 + 10 of 5 mm
 * fusePallets([{ palletId: 'a', slates: 50, bins: binsFromPairs([[500, 1], [700, 1]]), taps: [[30, 10]] }],
 *   [{ hand, checks: [] }]); // hand: threshold 6 mm, spread 0.001 mm
 */
export function fusePallets(
  pallets: readonly TappedPallet[],
  sorters: readonly CheckedSorter[]
): FusedPallets | NoFusedSpread {
  for (const pallet of pallets) requirePallet(pallet, sorters);
  const found = fuseTaps(slatesOfKnownThickness(pallets, sorters), otherTaps(pallets, sorters));
  if (!found.ok) return found;
  const chances = sorters.map(({ hand }) => (hand.ok ? relativeChances(found.bins, hand) : []));
  const known = pallets.filter((pallet) => isKnown(pallet, sorters));
  const stockReadings = known.length < 2 ? Infinity : readingsOfStock(pallets);

  let tapsCounted = 0;
  let tapsLeftOut = 0;
  const fused = pallets.map((pallet): FusedPallet => {
    const { palletId, slates, bins: gauged } = pallet;
    const piles: PileOfTaps[] = [];
    for (const [sorter, taps] of pallet.taps.entries())
      if (sorters[sorter].hand.ok)
        piles.push(...taps.map((count, pile) => ({ taps: count, chances: chances[sorter][pile] })));
      else tapsLeftOut += sum(taps);
    if (!isKnown(pallet, sorters)) return { palletId, slates, bins: NONE, spread: NONE };
    const spread = Number.isFinite(stockReadings)
      ? tiltedSpread(found.bins, { gauged, piles, stockReadings })
      : shares(found.bins);
    tapsCounted += sum(piles.map(({ taps }) => taps));
    return {
      palletId,
      slates,
      bins: withTaps(pallet, found.bins, spread, piles),
      spread: withCounts(found.bins, spread)
    };
  });
  return { ok: true, pallets: fused, tapsCounted, tapsLeftOut, stockReadings };
}

const NONE = binsFromPairs([]);

/** The pallet's gauged slates, and its taps told with its own spread over the stock's bins. */
function withTaps(
  { bins }: PalletSample,
  stock: ThicknessBins,
  spread: Float64Array,
  piles: readonly PileOfTaps[]
): ThicknessBins {
  const told = new Float64Array(spread.length);
  for (const { taps, chances } of piles) {
    if (taps === 0) continue;
    const weights = spread.map((share, bin) => share * chances[bin]);
    const each = taps / sum(weights);
    for (let bin = 0; bin < told.length; bin++) told[bin] += each * weights[bin];
  }
  return mergeBins([bins, withCounts(stock, told)]);
}

function isKnown({ bins, taps }: TappedPallet, sorters: readonly CheckedSorter[]): boolean {
  return (
    bins.counts.length > 0 || taps.some((ofPiles, k) => sorters[k].hand.ok && sum(ofPiles) > 0)
  );
}

function slatesOfKnownThickness(
  pallets: readonly TappedPallet[],
  sorters: readonly CheckedSorter[]
): ThicknessBins {
  const checked = sorters.map(({ checks }) => binsOfChecks(checks));
  return mergeBins([...pallets.map(({ bins }) => bins), ...checked]);
}

/** Spot checks by thickness. */
export function binsOfChecks(checks: readonly SpotCheck[]): ThicknessBins {
  return binsFromPairs(
    checks.map(({ thicknessMm }) => [Math.round(thicknessMm * 100), 1] as const)
  );
}

/** Each sorter's taps over all pallets, less those that were gauged as well. */
function otherTaps(pallets: readonly TappedPallet[], sorters: readonly CheckedSorter[]) {
  return sorters.map(({ hand, checks }, sorter) => ({
    hand,
    taps: Array.from({ length: pallets[0]?.taps[sorter].length ?? 0 }, (_, pile) =>
      Math.max(
        0,
        sum(pallets.map(({ taps }) => taps[sorter][pile])) -
          checks.filter((check) => check.pile === pile + 1).length
      )
    )
  }));
}

/** How many readings the stock counts for on a pallet. */
function readingsOfStock(pallets: readonly PalletSample[]): number {
  const compared = comparePallets(pallets);
  return compared.ok ? compared.varianceWithin / compared.varianceBetween : WHERE_NOTHING_TELLS;
}

function shares(bins: ThicknessBins): Float64Array {
  const total = totalCount(bins);
  return bins.counts.map((count) => count / total);
}

function sum(values: ArrayLike<number>): number {
  let total = 0;
  for (let index = 0; index < values.length; index++) total += values[index];
  return total;
}

function requirePallet(
  { palletId, slates, taps }: TappedPallet,
  sorters: readonly CheckedSorter[]
): void {
  requireWhole(slates, 1, `slates on pallet ${palletId}`);
  if (taps.length !== sorters.length)
    throw new EngineError(
      'wrong-length',
      `pallet ${palletId} has taps of ${taps.length} sorters; there are ${sorters.length}`
    );
  for (const [sorter, { hand }] of sorters.entries())
    if (hand.ok && taps[sorter].length !== hand.thresholdsMm.length + 1)
      throw new EngineError(
        'wrong-length',
        `pallet ${palletId} has taps for ${taps[sorter].length} piles; hand ${sorter} knows ${hand.thresholdsMm.length + 1}`
      );
}
