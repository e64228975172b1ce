import { type Hand, type SpotCheck, type UnknownHand, learnHand } from '$lib/engine/statistics';
import { agreementTable, pileOf } from '$lib/engine/grading';
import { type JobView, palletIds, partOf, sorterNames } from '$lib/journal';
import { gradeOfPile } from '../pile-numbers.ts';
import { gradesIdOfKey, numbersOf, pileOfKey } from '../queries.ts';

import { handKey } from './grade-keys.ts';

/** A spot check, and the pallet that its slate was of; empty where that is not known. */
export interface TakenCheck extends SpotCheck {
  readonly palletId: string;
}

/** One sorter under one set of grades: what was tapped, what was checked, what that tells. */
export interface SorterHand {
  /** Nickname; empty for a sorter who gave none. */
  readonly sorter: string;
  /** Empty for taps made before there were grades. */
  readonly gradesId: string;
  /** Falling; undefined where the grades are not known. */
  readonly thresholdsMm: readonly number[] | undefined;
  readonly piles: number;
  /** The numbers of those piles. */
  readonly numbers: readonly number[];
  /** Slates tapped on each pile, pile 1 first, the checked ones among them. */
  readonly taps: readonly number[];
  readonly checks: readonly TakenCheck[];
  readonly hand: Hand | UnknownHand;
  /** Row: tapped pile; column: pile by the gauge. Undefined without checks or thresholds. */
  readonly table: readonly (readonly number[])[] | undefined;
}

/**
 * Every sorter who tapped, under every set of grades tapped under: by grades in the order they were
 * set, those who tapped before there were any first, then by name.
 */
export function handsOf(view: JobView): SorterHand[] {
  const taps = tapsBySorter(view);
  const checks = checksBySorter(view);
  const grades = new Map(partOf(view, 'job').grades.map(({ id, value }) => [id, value]));
  const places = [...new Set([...taps.keys(), ...checks.keys()])].map((key) => ({
    key,
    gradesId: key.slice(0, key.indexOf('|')),
    sorter: key.slice(key.indexOf('|') + 1)
  }));
  places.sort(
    (one, other) => order(one.gradesId, other.gradesId) || order(one.sorter, other.sorter)
  );
  return places.map(({ key, gradesId, sorter }) => {
    const under = grades.get(gradesId);
    const thresholdsMm = under?.thresholdsMm;
    const own = checks.get(key) ?? [];
    const tapped = taps.get(key) ?? [];
    const piles = thresholdsMm
      ? thresholdsMm.length + 1
      : Math.max(3, tapped.length, ...own.map(({ pile }) => pile));
    const inPiles = own.filter(({ pile }) => pile <= piles);
    return {
      sorter,
      gradesId,
      thresholdsMm,
      piles,
      numbers: under ? numbersOf(under) : Array.from({ length: piles }, (_, index) => index + 1),
      taps: Array.from({ length: piles }, (_, index) => tapped[index] ?? 0),
      checks: inPiles,
      hand: learnHand(inPiles, piles),
      table: thresholdsMm && inPiles.length > 0 ? tableOf(inPiles, thresholdsMm) : undefined
    };
  });
}

/** Ids of grades rise with time, and no grades come before any. */
function order(one: string, other: string): number {
  if (one === other) return 0;
  return one < other ? -1 : 1;
}

function tableOf(checks: readonly SpotCheck[], thresholdsMm: readonly number[]): number[][] {
  const pairs = checks.map(({ pile, thicknessMm }) => ({
    tapped: pile,
    gauged: pileOf(thicknessMm, thresholdsMm)
  }));
  return agreementTable(pairs, thresholdsMm.length + 1);
}

/** Taps by sorter and grades: slates on each pile, pile 1 first. */
function tapsBySorter(view: JobView): Map<string, number[]> {
  const taps = new Map<string, number[]>();
  for (const palletId of palletIds(view))
    for (const [key, { tapped }] of Object.entries(partOf(view, `pallet:${palletId}`).piles))
      for (const [sorter, slates] of Object.entries(tapped)) {
        const pile = gradeOfPile(view, gradesIdOfKey(key), pileOfKey(key));
        const place = handKey(gradesIdOfKey(key) ?? '', sorter);
        const counts = taps.get(place) ?? [];
        while (counts.length < pile) counts.push(0);
        if (pile > 0) counts[pile - 1] += slates;
        taps.set(place, counts);
      }
  return taps;
}

/** Spot checks of taps by sorter and grades. */
function checksBySorter(view: JobView): Map<string, TakenCheck[]> {
  const checks = new Map<string, TakenCheck[]>();
  for (const sorter of sorterNames(view))
    for (const [key, times] of Object.entries(partOf(view, `sorter:${sorter}`).checks)) {
      const [gradesId, pile, hundredths, palletId] = key.split('|');
      const place = handKey(gradesId, sorter);
      const own = checks.get(place) ?? [];
      const grade = gradeOfPile(view, gradesId || null, Number(pile));
      if (grade === 0) continue;
      const check = { pile: grade, thicknessMm: Number(hundredths) / 100, palletId };
      for (let time = 0; time < times; time++) own.push(check);
      checks.set(place, own);
    }
  return checks;
}
