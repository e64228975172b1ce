import { largestRemainder, splitIntoPiles } from '$lib/engine/grading';
import {
  type ThicknessBins,
  binsFromPairs,
  mergeBins,
  mergeOfSameReadings,
  totalCount
} from '$lib/engine/thickness';
import { countOfPile, notFoundOf, standing, unlogged } from './counted-piles.ts';
import { pilesOfEntry } from './course-parts.ts';
import { binsAfterMoves, inOrderOfMean, scaledBins, windowOf, withoutMoves } from './pile-bins.ts';
import { pileMeanings } from './pile-numbers.ts';
import {
  type PalletTally,
  binsOf,
  gradesOf,
  isSameList,
  pileNumbersOf,
  pileOfKey,
  tallyPallets
} from './queries.ts';
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
  /** Its place among the piles: 1 for the thickest. */
  pile: number;
  /** The number that stands on it, which it keeps whatever its place becomes. */
  number: number;
  /** The grade in force that is sorted on to it, 1 for the thickest; undefined: it stands beside them. */
  grade?: number;
  /** Slates in all: on the pile now and expected from the pallets. Whole. */
  slates: number;
  /** On the pile now, by tally, or by a hand count and what was tallied since. */
  onPile: number;
  /** Put on the pile by tally, whatever was counted by hand. */
  tallied: number;
  /** Expected from slates not sorted yet. */
  toCome: number;
  /** Of those on the pile, slates that a count by hand found beyond the tally. */
  unlogged: number;
  /** How far a count by height may be off, as a standard deviation in slates; 0 without one. */
  countSd: number;
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
  /** The piles of the grades in force and those that stand beside them, in the order of their mean. */
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
  /** Slates of it that go to each pile, the thickest first; all 0 while nothing tells the piles. */
  slatesOfPile: number[];
}

/**
 * The stock by pile and pallet: slates already sorted as they were sorted, the rest foretold from
 * the thickness spread of their own pallet (of all pallets together where fewer than eight slates
 * of it were gauged), and from the taps where nothing was gauged. A count by hand above the tally
 * takes from what is still to come, so that counting a pile makes no stock. Whole numbers; each pallet's
 * piles sum to its usable slates. The same object as long as no pallet, count by hand, setting or grade
 * changes, so that asking again costs nothing. A tapped slate is taken to lie anywhere in its pile's spread.
 *
 * A pile is what was put on its number, under whatever grades. One that the grades in force do not sort
 * on to stays stock of its own, with nothing to come, at the place that its mean thickness gives it.
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

/** The numbers of all the piles that there are, in the order of their mean. */
export function numbersInStock(view: JobView): number[] {
  return stockOf(view).piles.map(({ number }) => number);
}

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
    laidBeside(view).join(' '),
    ...palletIds(view).map((palletId) => view.get(`pallet:${palletId}`)),
    ...Object.entries(counted).flatMap(([place, register]) => [
      place,
      ...register.map(({ id }) => id)
    ])
  ];
}

function workOut(view: JobView): Stock {
  const tallies = tallyPallets(view);
  const graded = pileNumbersOf(view);
  const spread = mergeBins(tallies.map(spreadOfPallet(tallies)));
  const isGauged = spread.counts.length > 0;
  const thresholdsMm = gradesOf(view)?.thresholdsMm;
  const windows = thresholdsMm && isGauged ? splitIntoPiles(spread, thresholdsMm) : [];
  const numbersBeside = besideGrades(view, tallies, graded);
  const found = graded.map((number) => unlogged(view, number));
  const foundBeside = sumOf(numbersBeside.map((number) => unlogged(view, number)));
  const unsorted = sumOf(tallies.map((tally) => sizeOf(tally) - tally.sorted));
  const usableShare = shareUsable(tallies, unsorted, sumOf(found) + foundBeside);
  const pallets = tallies.map((tally) => {
    const rest = Math.round((sizeOf(tally) - tally.sorted) * usableShare);
    const shares = pileShares(tally, tallies, thresholdsMm, windows, graded, found);
    const toCome = shares ? largestRemainder(shares, rest) : graded.map(() => 0);
    return { ...tally, rest, toCome };
  });
  const leftToCome = notFoundYet(
    graded.map((_, index) => pallets.reduce((sum, { toCome }) => sum + toCome[index], 0)),
    found,
    foundBeside
  );
  const gauged = gaugedOnPiles(view);
  const meanings = new Map(pileMeanings(view).map((pile) => [pile.number, pile.range]));
  const pileOf = (number: number, grade?: number): Omit<PileInStock, 'pile'> => {
    const tallied = tallies.reduce((sum, { onPile }) => sum + (onPile.get(number) ?? 0), 0);
    const onPile = standing(view, number, tallied);
    const toCome = grade ? leftToCome[grade - 1] : 0;
    const slates = onPile + toCome;
    const range = meanings.get(number);
    const window = grade ? windows[grade - 1] : windowOf(spread, range ?? ANY_THICKNESS);
    const own = withoutMoves(view, number, slates);
    const bins = pileBins(gauged.get(number) ?? NO_SPREAD, window, own);
    return {
      ...{ number, ...(grade && { grade }), slates, onPile, tallied, toCome, bins },
      unlogged: unlogged(view, number),
      countSd: countOfPile(view, number)?.sdSlates ?? 0
    };
  };
  const ofGrades = graded.map((number, index) => pileOf(number, index + 1));
  const laid = laidFrom(view);
  const others = numbersBeside.map((number) => pileOf(number));
  const bins = binsAfterMoves(view, [...ofGrades, ...others]);
  const withBins = (piles: typeof others) =>
    piles.map((pile) => ({ ...pile, bins: bins.get(pile.number) ?? pile.bins }));
  const beside = others.filter(({ number, slates }) => slates > 0 || laid.has(number));
  const result = inOrderOfMean(withBins(ofGrades), withBins(beside)).map(
    (pile, index): PileInStock => ({ pile: index + 1, ...pile })
  );
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

/**
 * What is still to come to each pile, less what counts by hand found there unlogged. Where a pile holds
 * more than was foretold of it, so many fewer slates are left for the others.
 */
function notFoundYet(
  foretold: readonly number[],
  found: readonly number[],
  foundBeside: number
): number[] {
  const rest = foretold.map((slates, index) => Math.max(0, slates - found[index]));
  const most = Math.max(0, sumOf(foretold) - sumOf(found) - foundBeside);
  return sumOf(rest) > most ? largestRemainder(rest, most) : rest;
}

function sumOf(slates: readonly number[]): number {
  return slates.reduce((sum, one) => sum + one, 0);
}

/** A pile made by feel before there were grades may hold any slate. */
const ANY_THICKNESS = { fromMm: 0, toMm: Infinity };

/** Numbers of the piles that slates were put on and that the grades in force do not sort on to. */
function besideGrades(
  view: JobView,
  tallies: readonly PalletTally[],
  graded: readonly number[]
): number[] {
  const { counted, moved } = partOf(view, 'laying');
  const all = new Set([
    ...tallies.flatMap(({ onPile }) => [...onPile.keys()]),
    ...Object.keys(counted).map(pileOfKey),
    ...moved.map(({ value }) => value.toPile),
    ...laidFrom(view)
  ]);
  return [...all].filter((number) => !graded.includes(number)).sort((one, other) => one - other);
}

/** Numbers of the piles that courses and undereave rows were laid from. */
function laidFrom(view: JobView): ReadonlySet<number> {
  const { laid, partLaid } = partOf(view, 'laying');
  const entries = [...Object.values(laid), ...Object.values(partLaid)].flat();
  return new Set(entries.flatMap(({ value }) => pilesOfEntry(value)));
}

/** Of those, the piles that the grades in force do not sort on to. */
function laidBeside(view: JobView): number[] {
  const graded = pileNumbersOf(view);
  return [...laidFrom(view)].filter((number) => !graded.includes(number)).sort();
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
  return (tally) => scaledBins(tally.gauged > 0 ? tally.gaugedBins : pooled, sizeOf(tally));
}

/**
 * The share of the slates not logged that is or will be on the piles: those that a count found there, and
 * of the others as many as were not set aside so far.
 */
function shareUsable(tallies: readonly PalletTally[], unsorted: number, found: number): number {
  const sorted = sumOf(tallies.map((tally) => tally.sorted)) + found;
  const setAside = sumOf(tallies.map((tally) => tally.setAside));
  const lossShare = sorted >= ENOUGH_SORTED ? setAside / sorted : 0;
  const here = Math.min(found, unsorted);
  return unsorted > 0 ? 1 - (lossShare * (unsorted - here)) / unsorted : 0;
}

/** Weights by which a pallet's unsorted slates are expected on the piles of the grades; undefined: unknown. */
function pileShares(
  tally: PalletTally,
  tallies: readonly PalletTally[],
  thresholdsMm: readonly number[] | undefined,
  windows: readonly ThicknessBins[],
  graded: readonly number[],
  found: readonly number[]
): number[] | undefined {
  if (thresholdsMm && tally.gauged >= ENOUGH_READINGS)
    return splitIntoPiles(tally.gaugedBins, thresholdsMm).map(totalCount);
  if (windows.length > 0) return windows.map(totalCount);
  const sorted = graded.map((number, index) =>
    tallies.reduce((sum, { onPile }) => sum + (onPile.get(number) ?? 0), found[index])
  );
  return sorted.some((n) => n > 0) ? sorted : undefined;
}

/** Gauge readings of the slates that were put on each pile, by its number. */
function gaugedOnPiles(view: JobView): Map<number, ThicknessBins> {
  const counts = new Map<number, Counts[]>();
  for (const { palletId } of tallyPallets(view))
    for (const [key, part] of Object.entries(partOf(view, `pallet:${palletId}`).piles)) {
      const number = pileOfKey(key);
      counts.set(number, [...(counts.get(number) ?? []), part.gauged]);
    }
  return new Map([...counts].map(([number, list]) => [number, mergeBins(list.map(binsOf))]));
}

/** Gauged slates as they are; the others as the pile's part of the stock's spread. */
function pileBins(
  gauged: ThicknessBins,
  window: ThicknessBins | undefined,
  slates: number
): ThicknessBins {
  const known = totalCount(gauged);
  if (!window || totalCount(window) === 0) return scaledBins(gauged, slates);
  if (slates <= known) return scaledBins(gauged, slates);
  const rest = (slates - known) / totalCount(window);
  return mergeOfSameReadings([gauged, window], [1, rest]);
}

/** What the counts by hand take off the tallies of the piles, by its reason. */
function goneByCount(
  view: JobView,
  piles: readonly PileInStock[]
): Pick<Stock, 'takenBeforeCount' | 'notFound'> {
  const gone = { takenBeforeCount: 0, notFound: 0 };
  for (const { number, tallied: talliedNow } of piles) {
    const count = countOfPile(view, number);
    if (!count) continue;
    gone.takenBeforeCount += count.taken ?? 0;
    gone.notFound += notFoundOf(view, number, talliedNow);
  }
  return gone;
}

/** Pallets' shares of each pile, made to sum to the pile where it was counted by hand. */
function spreadCorrections(
  pallets: readonly (PalletTally & { rest: number; toCome: number[] })[],
  piles: readonly PileInStock[]
): PalletInStock[] {
  const slatesOfPile = pallets.map(() => new Array<number>(piles.length).fill(0));
  for (const [index, { number, grade, slates }] of piles.entries()) {
    const weights = pallets.map(
      ({ onPile, toCome }) => (onPile.get(number) ?? 0) + (grade ? toCome[grade - 1] : 0)
    );
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
