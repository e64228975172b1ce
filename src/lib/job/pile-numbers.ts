import {
  type ThicknessInterval,
  countBetween,
  gradeIntervals,
  mergeBins,
  totalCount
} from '$lib/engine/thickness';
import { type BodyOf, type JobView, palletIds, partOf } from '$lib/journal';
import { pilesOfEntry } from './course-parts.ts';
import { binsOf, gradesIdOfKey, gradesOf, numbersOf, pileOfKey, settingsOf } from './queries.ts';

/**
 * A pile keeps its number as long as neither boundary lies further than this from where it lay when
 * the first slates were put on it, mm. Ours: a tenth of a millimetre is what two readings of one slate
 * differ by, and the boundaries of a sample move by about as much as it grows.
 */
export const KEPT_WITHIN_MM = 0.2;

/** A pile as it stands: what its number means. */
export interface PileMeaning {
  readonly number: number;
  /** What the first slates were put on it for; undefined where that is not known in millimetres. */
  readonly opened?: ThicknessInterval;
  /** The first that is known of it, where some of the grades it was sorted by were taken back. */
  readonly knownFirst?: ThicknessInterval;
  /** All that slates were put on it for; undefined likewise. */
  readonly range?: ThicknessInterval;
}

/** What new grades make of the piles. */
export interface PilesOfGrades {
  /** The number of each grade's pile, the thickest first. */
  readonly numbers: readonly number[];
  /** Piles with slates on them that go on, and whether a boundary moves. */
  readonly kept: readonly { readonly number: number; readonly isMoved: boolean }[];
  /** New numbers. */
  readonly opened: readonly number[];
  /** Piles with slates on them that get no more: they stand as stock of their own. */
  readonly beside: readonly number[];
}

/**
 * The grade of a pile under the grades that a slate was sorted by: 1 for the thickest, 0 for a pile
 * that those grades do not have. Where they are not known, or there were none, the pile's number.
 */
export function gradeOfPile(view: JobView, gradesId: string | null, number: number): number {
  const grades = partOf(view, 'job').grades.find(({ id }) => id === gradesId);
  return grades ? numbersOf(grades.value).indexOf(number) + 1 : number;
}

/**
 * What the number of each pile means on which slates were put, by number. Slates keep the grades that
 * they were sorted under, so this follows from the set of events alone; where two devices opened one
 * number for different slates, its range covers both.
 */
export function pileMeanings(view: JobView): PileMeaning[] {
  const { grades } = partOf(view, 'job');
  const bandsOf = new Map(
    grades.map(({ id, value }) => {
      const bands = gradeIntervals(value.thresholdsMm);
      return [id, new Map(numbersOf(value).map((number, index) => [number, bands[index]]))];
    })
  );
  const sortedUnder = new Map<number, Set<string>>();
  for (const [gradesId, number] of piledUnder(view)) {
    const ids = sortedUnder.get(number) ?? new Set<string>();
    sortedUnder.set(number, ids.add(gradesId));
  }
  const merges = partOf(view, 'laying').moved.filter(({ value }) => value.why === 'merged');
  for (const { value } of merges)
    if (!sortedUnder.has(value.toPile)) sortedUnder.set(value.toPile, new Set());
  const meanings = [...sortedUnder].map(([number, ids]): PileMeaning => {
    // Grades that were taken back say nothing any more of what was sorted by them.
    const areKnown = [...ids].every((id) => id === '' || bandsOf.has(id));
    const bands = [...ids].sort().flatMap((id) => bandsOf.get(id)?.get(number) ?? []);
    if (bands.length === 0) return { number };
    return areKnown
      ? { number, opened: bands[0], range: bands.reduce(together) }
      : { number, knownFirst: bands[0] };
  });
  const byNumber = new Map(meanings.map((meaning) => [meaning.number, meaning]));
  for (const { value } of merges) {
    const [from, to] = [byNumber.get(value.fromPile), byNumber.get(value.toPile)];
    if (!to || !from) continue;
    const range = to.range && from.range ? together(to.range, from.range) : undefined;
    byNumber.set(to.number, { ...to, range });
  }
  return [...byNumber.values()].sort((one, other) => one.number - other.number);
}

function together(one: ThicknessInterval, other: ThicknessInterval): ThicknessInterval {
  return { fromMm: Math.min(one.fromMm, other.fromMm), toMm: Math.max(one.toMm, other.toMm) };
}

/**
 * The grades' id, empty for none, and the number of every pile that slates were put on: sorted, counted,
 * moved there or laid from it. What was laid is of the grades that were in force then.
 */
function piledUnder(view: JobView): [gradesId: string, number: number][] {
  const sorted = palletIds(view).flatMap((palletId) =>
    Object.keys(partOf(view, `pallet:${palletId}`).piles).map((key): [string, number] => [
      gradesIdOfKey(key) ?? '',
      pileOfKey(key)
    ])
  );
  const { counted, moved, laid, partLaid } = partOf(view, 'laying');
  const { grades } = partOf(view, 'job');
  const gradesAt = (id: string): string => grades.findLast((one) => one.id < id)?.id ?? '';
  return [
    ...sorted,
    ...Object.values(counted)
      .flat()
      .filter(({ value }) => value.slates > 0)
      .map(({ value }): [string, number] => [value.gradesId ?? '', value.pile]),
    ...moved
      .filter(({ value }) => value.why !== 'merged')
      .map(({ value }): [string, number] => [value.gradesId ?? '', value.toPile]),
    ...[...Object.values(laid), ...Object.values(partLaid)]
      .flat()
      .flatMap(({ id, value }) =>
        pilesOfEntry(value).map((pile): [string, number] => [gradesAt(id), pile])
      )
  ].filter(([, number]) => number > 0);
}

/**
 * What grades of given boundaries make of the piles. A grade keeps a pile whose boundaries lie within
 * {@link KEPT_WITHIN_MM} of where they lay when it was opened, the nearest first; it opens a new number
 * otherwise, one higher than any in use. A pile that was put on another, or sorted again, is no more. Piles made by feel alone become those of the first grades of
 * as many piles, for nobody said what they mean in millimetres. Before a slate lies on any pile, grades
 * simply have piles 1, 2, 3 …
 *
 * @param thresholdsMm falling; not modified
 * @example piles 1 to 3 at 7.2 and 5.9, slates on each; then 7.3 and 6.6 → 1 kept, 4 and 5 opened, 2
 * and 3 stand beside
 */
export function pilesUnder(view: JobView, thresholdsMm: readonly number[]): PilesOfGrades {
  const bands = gradeIntervals(thresholdsMm);
  const meanings = pileMeanings(view);
  if (meanings.length === 0) {
    const numbers = bands.map((_, index) => index + 1);
    return { numbers, kept: [], opened: numbers, beside: [] };
  }
  const numbers = keptNumbers(view, bands, meanings);
  const kept = numbers.filter((number) => number !== undefined);
  let next = Math.max(highestInUse(view, meanings), ...kept);
  const opened: number[] = [];
  const all = numbers.map((number) => {
    if (number !== undefined) return number;
    next++;
    opened.push(next);
    return next;
  });
  const inForce = gradesInForce(view);
  return {
    numbers: all,
    opened,
    kept: meanings.flatMap(({ number }) => {
      const at = all.indexOf(number);
      if (at < 0) return [];
      const before = inForce.get(number);
      return [{ number, isMoved: before !== undefined && shiftMm(before, bands[at]) > 0 }];
    }),
    beside: meanings.map(({ number }) => number).filter((number) => !all.includes(number))
  };
}

/**
 * The body of an event that sets grades. It names its piles only where they are not simply 1, 2, 3, so
 * that grades set before anything is sorted read as they always did.
 */
export function gradesBody(
  view: JobView,
  grades: Pick<BodyOf<'gradesSet'>, 'method' | 'sampleSlates'>,
  thresholdsMm: readonly number[]
): BodyOf<'gradesSet'> {
  const { numbers } = pilesUnder(view, thresholdsMm);
  const arePlain = numbers.every((number, index) => number === index + 1);
  return {
    ...grades,
    thresholdsMm: [...thresholdsMm],
    ...(!arePlain && { piles: [...numbers] })
  };
}

/** Slates that were gauged on to a pile and are not of a band. */
export function misfitsOf(view: JobView, number: number, band: ThicknessInterval): number {
  const isHere = (key: string): boolean => pileOfKey(key) === number;
  const gauged = palletIds(view).flatMap((palletId) =>
    Object.entries(partOf(view, `pallet:${palletId}`).piles).flatMap(([key, part]) =>
      isHere(key) ? [binsOf(part.gauged)] : []
    )
  );
  const bins = mergeBins(gauged);
  return totalCount(bins) - countBetween(bins, band);
}

/** For each band the number of the pile that it keeps; undefined where it opens one. */
function keptNumbers(
  view: JobView,
  bands: readonly ThicknessInterval[],
  meanings: readonly PileMeaning[]
): (number | undefined)[] {
  const inForce = gradesInForce(view);
  const emptied = new Set(
    partOf(view, 'laying').moved.flatMap(({ value }) => (value.why ? [value.fromPile] : []))
  );
  const isFelt = piledUnder(view).every(([gradesId]) => gradesId === '');
  if (isFelt && emptied.size === 0 && inForce.size === 0) {
    const felt = Math.max(settingsOf(view).piles, ...meanings.map(({ number }) => number));
    return bands.map((_, index) => (felt === bands.length ? index + 1 : undefined));
  }
  const known = new Map(
    meanings.flatMap(({ number, opened, knownFirst }) =>
      emptied.has(number) ? [] : [[number, opened ?? knownFirst] as const]
    )
  );
  // A pile of the grades in force that no slate lies on yet means what they say.
  for (const [number, band] of inForce) known.set(number, known.get(number) ?? band);
  const pairs = bands
    .flatMap((band, at) =>
      [...known].map(([number, opened]) => {
        const shift = opened ? shiftMm(opened, band) : Infinity;
        return { at, number, shift, isInForce: inForce.has(number) };
      })
    )
    .filter(({ shift }) => shift <= KEPT_WITHIN_MM)
    .sort(
      (one, other) =>
        Number(other.isInForce) - Number(one.isInForce) ||
        one.shift - other.shift ||
        other.number - one.number
    );
  const numbers = new Array<number | undefined>(bands.length).fill(undefined);
  const taken = new Set<number>();
  for (const { at, number } of pairs) {
    if (numbers[at] !== undefined || taken.has(number)) continue;
    numbers[at] = number;
    taken.add(number);
  }
  return numbers;
}

/** How far the boundary of two bands that differs most has moved, mm, to the hundredth. */
function shiftMm(one: ThicknessInterval, other: ThicknessInterval): number {
  const of = (before: number, after: number): number =>
    before === after ? 0 : Math.round(Math.abs(after - before) * 100) / 100;
  return Math.max(of(one.fromMm, other.fromMm), of(one.toMm, other.toMm));
}

/** The bands of the grades in force, by the number of their pile. */
function gradesInForce(view: JobView): Map<number, ThicknessInterval> {
  const grades = gradesOf(view);
  const bands = grades ? gradeIntervals(grades.thresholdsMm) : [];
  return new Map(bands.map((band, index) => [grades?.numbers[index] ?? index + 1, band]));
}

/** The highest number that stands on a board: of grades that slates were sorted under, or felt. */
function highestInUse(view: JobView, meanings: readonly PileMeaning[]): number {
  const used = new Set(piledUnder(view).map(([gradesId]) => gradesId));
  const named = partOf(view, 'job').grades.flatMap(({ id, value }) =>
    used.has(id) ? numbersOf(value) : []
  );
  const felt = used.has('') ? settingsOf(view).piles : 0;
  return Math.max(felt, ...named, ...meanings.map(({ number }) => number));
}
