import { largestRemainder, splitIntoPiles } from '$lib/engine/grading';
import {
  type ThicknessBins,
  binsFromPairs,
  mergeBins,
  mergeOfSameReadings,
  totalCount
} from '$lib/engine/thickness';
import type { BodyOf } from '$lib/journal';
import { type PalletTally, binsOf, gradesOf, pileOfKey, pilesOf, tallyPallets } from './queries.ts';
import { current } from '$lib/journal';
import {
  type Counts,
  type JobPart,
  type JobView,
  palletIds,
  partOf,
  sorterNames
} from '$lib/journal';

/** Fewest readings of a pallet that are taken to speak for that pallet alone. Ours. */
const ENOUGH_READINGS = 8;

/** Fewest sorted slates from which the share to be set aside is foretold. Ours. */
const ENOUGH_SORTED = 50;

/** What stands on one pile and what will still come to it. */
export interface PileInStock {
  pile: number;
  /** Slates in all: on the pile now and expected from the pallets. Whole. */
  slates: number;
  /** On the pile now, by tally, or by a hand count and what was tallied since. */
  onPile: number;
  /** Put on the pile by tally, whatever was counted by hand. */
  tallied: number;
  /** Expected from slates not sorted yet. */
  toCome: number;
  /** Thickness of the pile's slates, scaled to `slates`; empty without a gauge reading. */
  bins: ThicknessBins;
}

/** The stock of a job as far as it is known now. */
export interface Stock {
  /** Slates delivered: as declared, or as counted where more were seen. */
  delivered: number;
  /**
   * Slates that are or will be on the piles: delivered less set aside, now and expected, and less what
   * a count by hand found gone.
   */
  usable: number;
  setAside: number;
  /** Slates laid or lost before their pile was counted by hand: the count has them no more. */
  takenBeforeCount: number;
  /** Slates that were put on piles, neither laid nor lost, and that a count by hand did not find. */
  notFound: number;
  /** Whether any slate was gauged; without, thickness is unknown and piles have no bins. */
  isGauged: boolean;
  /** Thickness of all slates delivered, scaled to `delivered`. */
  spread: ThicknessBins;
  piles: PileInStock[];
  /** By pallet, in the order of `tallyPallets`. */
  pallets: PalletInStock[];
}

/** One pallet's part of the stock. */
export interface PalletInStock {
  palletId: string;
  label: string;
  /** Slates of it that are or will be usable: its size less those set aside, now and expected. */
  usable: number;
  /** Slates of it that go to each pile, pile 1 first; all 0 while nothing tells the piles. */
  slatesOfPile: number[];
}

/**
 * The stock by pile and pallet: slates already sorted as they were sorted, the rest foretold from
 * the thickness spread of their own pallet (of all pallets together where fewer than eight slates
 * of it were gauged), and from the taps where nothing was gauged. A count by hand above the tally
 * takes from what is still to come, so that counting a pile makes no stock. Whole numbers; each pallet's
 * piles sum to its usable slates. The same object as long as no pallet, count by hand, setting or grade
 * changes, so that asking again costs nothing. A tapped slate is taken to lie anywhere in its pile's spread.
 */
export function stockOf(view: JobView): Stock {
  const job = partOf(view, 'job');
  const now = restsOn(view);
  const before = known.get(job);
  if (before && isSameList(before.restsOn, now)) return before.stock;
  const stock = workOut(view);
  known.set(job, { restsOn: now, stock });
  return stock;
}

/** By what the job is, the stock worked out last and what it rests on. */
const known = new WeakMap<
  JobPart,
  { readonly restsOn: readonly unknown[]; readonly stock: Stock }
>();

/** Keeps a stock that was worked out elsewhere from the same view, so that it is not worked out anew. */
export function rememberStock(view: JobView, stock: Stock): void {
  known.set(partOf(view, 'job'), { restsOn: restsOn(view), stock });
}

/**
 * What the piles as sorted rest on: the job, its pallets, its sorters and what was counted by hand. A
 * course laid changes none of it.
 */
export function pilesRestOn(view: JobView): unknown[] {
  const sorters = sorterNames(view).map((sorter) => view.get(`sorter:${sorter}`));
  return [partOf(view, 'job'), ...restsOn(view), ...sorters];
}

/** What a stock rests on beside what the job is: its pallets, and the counts by hand. */
function restsOn(view: JobView): unknown[] {
  const { counted, moved } = partOf(view, 'laying');
  return [
    ...moved.map(({ id }) => id),
    ...palletIds(view).map((palletId) => view.get(`pallet:${palletId}`)),
    ...Object.entries(counted).flatMap(([place, register]) => [place, register.at(-1)?.id])
  ];
}

/** Whether two lists hold the same things. */
export function isSameList(one: readonly unknown[], other: readonly unknown[]): boolean {
  return one.length === other.length && one.every((item, at) => item === other[at]);
}

function workOut(view: JobView): Stock {
  const tallies = tallyPallets(view);
  const piles = pilesOf(view);
  const spread = mergeBins(tallies.map(spreadOfPallet(tallies)));
  const isGauged = spread.counts.length > 0;
  const thresholdsMm = gradesOf(view)?.thresholdsMm;
  const windows = thresholdsMm && isGauged ? splitIntoPiles(spread, thresholdsMm) : [];
  const lossShare = shareSetAside(tallies);
  const pallets = tallies.map((tally) => {
    const rest = Math.round((sizeOf(tally) - tally.sorted) * (1 - lossShare));
    const shares = pileShares(tally, tallies, thresholdsMm, windows, piles);
    const toCome = shares ? largestRemainder(shares, rest) : new Array<number>(piles).fill(0);
    return { ...tally, rest, toCome };
  });
  const gauged = gaugedOnPiles(view, piles);
  const result = Array.from({ length: piles }, (_, index): PileInStock => {
    const tallied = pallets.reduce((sum, pallet) => sum + pallet.onPile[index], 0);
    const onPile = standing(view, index + 1, tallied);
    const foretold = pallets.reduce((sum, pallet) => sum + pallet.toCome[index], 0);
    const toCome = Math.max(0, foretold - unlogged(view, index + 1));
    const slates = onPile + toCome;
    return {
      pile: index + 1,
      slates,
      onPile,
      tallied,
      toCome,
      bins: pileBins(gauged[index], windows[index], slates)
    };
  });
  return {
    delivered: tallies.reduce((sum, tally) => sum + sizeOf(tally), 0),
    usable: result.reduce((sum, pile) => sum + pile.slates, 0),
    setAside: tallies.reduce((sum, tally) => sum + tally.setAside, 0),
    ...goneByCount(view, result),
    isGauged,
    spread,
    piles: result,
    pallets: spreadCorrections(pallets, result)
  };
}

/** Slates of a pallet: as declared, or as many as were seen of it. */
function sizeOf(tally: PalletTally): number {
  return Math.max(tally.slates, tally.sorted, totalCount(tally.putBackBins));
}

/** A pallet's spread scaled to its size; a pallet without readings is like all others together. */
function spreadOfPallet(tallies: readonly PalletTally[]): (tally: PalletTally) => ThicknessBins {
  const read = tallies.filter(({ gauged }) => gauged > 0);
  const pooled = mergeBins(
    read.map(({ gaugedBins }) => gaugedBins),
    read.map((tally) => sizeOf(tally) / tally.gauged)
  );
  return (tally) => scaled(tally.gauged > 0 ? tally.gaugedBins : pooled, sizeOf(tally));
}

function scaled(bins: ThicknessBins, slates: number): ThicknessBins {
  const total = totalCount(bins);
  return total > 0 ? mergeBins([bins], [slates / total]) : bins;
}

function shareSetAside(tallies: readonly PalletTally[]): number {
  const sorted = tallies.reduce((sum, tally) => sum + tally.sorted, 0);
  const setAside = tallies.reduce((sum, tally) => sum + tally.setAside, 0);
  return sorted >= ENOUGH_SORTED ? setAside / sorted : 0;
}

/** Weights by which a pallet's unsorted slates are expected on the piles; undefined: unknown. */
function pileShares(
  tally: PalletTally,
  tallies: readonly PalletTally[],
  thresholdsMm: readonly number[] | undefined,
  windows: readonly ThicknessBins[],
  piles: number
): number[] | undefined {
  if (thresholdsMm && tally.gauged >= ENOUGH_READINGS)
    return splitIntoPiles(tally.gaugedBins, thresholdsMm).map(totalCount);
  if (windows.length > 0) return windows.map(totalCount);
  const taps = Array.from({ length: piles }, (_, index) =>
    tallies.reduce((sum, { onPile }) => sum + onPile[index], 0)
  );
  return taps.some((n) => n > 0) ? taps : undefined;
}

/** Gauge readings of the slates on each pile, pile 1 first. */
function gaugedOnPiles(view: JobView, piles: number): ThicknessBins[] {
  const counts: Counts[][] = Array.from({ length: piles }, () => []);
  for (const { palletId } of tallyPallets(view))
    for (const [key, part] of Object.entries(partOf(view, `pallet:${palletId}`).piles)) {
      const pile = pileOfKey(key);
      if (pile > 0) counts[Math.min(pile, piles) - 1].push(part.gauged);
    }
  return counts.map((list) => mergeBins(list.map(binsOf)));
}

/** Gauged slates as they are; the others as the pile's part of the stock's spread. */
function pileBins(
  gauged: ThicknessBins,
  window: ThicknessBins | undefined,
  slates: number
): ThicknessBins {
  const known = totalCount(gauged);
  if (!window || totalCount(window) === 0) return scaled(gauged, slates);
  if (slates <= known) return scaled(gauged, slates);
  const rest = (slates - known) / totalCount(window);
  return mergeOfSameReadings([gauged, window], [1, rest]);
}

/** The last count by hand of a pile under the grades in force; undefined before one. */
function countOf(view: JobView, pile: number): BodyOf<'pileCounted'> | undefined {
  return current(partOf(view, 'laying').counted[placeOfCount(view, pile)]);
}

function placeOfCount(view: JobView, pile: number): string {
  return `${gradesOf(view)?.gradesId ?? ''}|${pile}`;
}

/**
 * Slates on a pile: its tally, or its hand count and what was tallied after that; with what was moved
 * to it, less what was moved away, since then. The last pile stands for those beyond it.
 */
function standing(view: JobView, pile: number, tallied: number): number {
  const count = countOf(view, pile);
  const onIt = count ? count.slates + Math.max(0, tallied - (count.tallied ?? tallied)) : tallied;
  return Math.max(0, onIt + movedTo(view, pile).since);
}

/** Slates moved to a pile less those moved away: before it was counted by hand, and since. */
function movedTo(view: JobView, pile: number): { before: number; since: number } {
  const { counted, moved } = partOf(view, 'laying');
  const countedBy = counted[placeOfCount(view, pile)]?.at(-1)?.id ?? '';
  const piles = pilesOf(view);
  const sums = { before: 0, since: 0 };
  for (const { id, value } of moved) {
    const gains = (of: number): number => (Math.min(of, piles) === pile ? value.slates : 0);
    sums[id < countedBy ? 'before' : 'since'] += gains(value.toPile) - gains(value.fromPile);
  }
  return sums;
}

/**
 * Slates that a hand count, with what was laid and lost before it, found on a pile beyond its tally:
 * they came off the pallets without being logged, so as many fewer are still to come.
 */
function unlogged(view: JobView, pile: number): number {
  const count = countOf(view, pile);
  if (count?.tallied === undefined) return 0;
  const known = count.tallied + movedTo(view, pile).before;
  return Math.max(0, count.slates + (count.taken ?? 0) - known);
}

/** What the counts by hand take off the tallies of the piles, by its reason. */
function goneByCount(
  view: JobView,
  piles: readonly PileInStock[]
): Pick<Stock, 'takenBeforeCount' | 'notFound'> {
  const gone = { takenBeforeCount: 0, notFound: 0 };
  for (const { pile, tallied: talliedNow } of piles) {
    const count = countOf(view, pile);
    if (!count) continue;
    const { slates, tallied = talliedNow, taken = 0 } = count;
    gone.takenBeforeCount += taken;
    gone.notFound += Math.max(0, tallied + movedTo(view, pile).before - taken - slates);
  }
  return gone;
}

/** Pallets' shares of each pile, made to sum to the pile where it was counted by hand. */
function spreadCorrections(
  pallets: readonly (PalletTally & { rest: number; toCome: number[] })[],
  piles: readonly PileInStock[]
): PalletInStock[] {
  const slatesOfPile = pallets.map(() => new Array<number>(piles.length).fill(0));
  for (const [index, { slates }] of piles.entries()) {
    const weights = pallets.map(({ onPile, toCome }) => onPile[index] + toCome[index]);
    const shares = weights.some((n) => n > 0)
      ? largestRemainder(weights, slates)
      : weights.map(() => 0);
    for (const [place, share] of shares.entries()) slatesOfPile[place][index] = share;
  }
  return pallets.map(({ palletId, label, rest, toCome }, place) => {
    const onPiles = slatesOfPile[place].reduce((sum, slates) => sum + slates, 0);
    const isForetold = toCome.some((slates) => slates > 0);
    return {
      palletId,
      label,
      usable: isForetold ? onPiles : onPiles + rest,
      slatesOfPile: slatesOfPile[place]
    };
  });
}

/** An empty spread, for screens that have nothing yet. */
export const NO_SPREAD: ThicknessBins = binsFromPairs([]);
