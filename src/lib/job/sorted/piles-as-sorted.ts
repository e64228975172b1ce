/**
 * What really stands on the piles, slates on the wrong pile among it. It needs the statistics, which
 * the first paint does without: import it with `await import()` only.
 */
import { type Hand, tapPosterior } from '$lib/engine/statistics';
import { type ChanceAbove, misgradedPiles, splitIntoPiles } from '$lib/engine/grading';
import { normalMisgrading } from '$lib/engine/grading/misgrading';
import {
  type ThicknessBins,
  mergeBins,
  mergeOfSameReadings,
  totalCount
} from '$lib/engine/thickness';
import { type JobView, partOf } from '$lib/journal';
import { binsAfterMoves, withoutMoves } from '../pile-bins.ts';
import { NO_SPREAD, type Stock } from '../stock.ts';
import {
  binsOf,
  gradesIdOfKey,
  gradesOf,
  pileOfKey,
  settingsOf,
  tallyPallets
} from '../queries.ts';
import { gradeOfPile } from '../pile-numbers.ts';
import { type KnownHands, rememberKnownHands, toldByTap } from './known-hands.ts';
import { ASSUMED_HAND_SD_MM, UNSTUDIED_GAUGE_SD_MM } from '../slate-judgement.ts';

/** The piles with their misgraded slates, and what that rests on. */
export interface PilesAsSorted {
  /** Thickness of each pile, the thickest first, scaled to its slates; empty without a gauge reading. */
  readonly bins: readonly ThicknessBins[];
  /** Share of the slates on the piles that a hand put there; 0 before any is sorted. */
  readonly byHandShare: number;
  /** Tapped slates of hands that are not known: an error is assumed for them. */
  readonly tapsAssumed: number;
  /** SD of that error, mm. */
  readonly assumedHandSdMm: number;
}

/** Slates on or for a pile, by its number, and their spread: of one pallet, or of the whole stock. */
interface Part {
  readonly bins: ThicknessBins;
  readonly slates: number;
  readonly pile: number;
  readonly palletId?: string;
}

/** Tells the piles as sorted for one job after another state of it; see {@link pilesAsSorted}. */
export function createPilesAsSorted(): (view: JobView, stock: Stock) => PilesAsSorted {
  const knownHandsOf = rememberKnownHands();
  let known: KnownHands | undefined;
  let of: Stock | undefined;
  let sorted: PilesAsSorted | undefined;
  return (view, stock) => {
    const hands = knownHandsOf(view, stock);
    if (!sorted || stock !== of || hands !== known) sorted = pilesAsSorted(view, stock, hands);
    [known, of] = [hands, stock];
    return sorted;
  };
}

/**
 * Thickness of what stands on each pile and will come to it, as it was sorted and is being sorted.
 *
 * Gauged slates lie where the gauge put them. A tapped slate may have any thickness that its sorter's
 * hand lets on to that pile: Bayes' rule with its pallet's spread. Slates still to come are taken to
 * be sorted by gauge and by hand in the shares so far, each with its own error. A sorter whose hand is
 * known under other grades alone is taken to stray as widely about the boundaries in force. A hand
 * that no spot checks tell is assumed to stray by `ASSUMED_HAND_SD_MM` about them, and its taps are
 * counted in `tapsAssumed`.
 *
 * @param stock of the same view
 * @param known the hands of the same view
 *
 * Cost: piles × bins for each pallet and sorter.
 */
export function pilesAsSorted(view: JobView, stock: Stock, known: KnownHands): PilesAsSorted {
  const thresholdsMm = gradesOf(view)?.thresholdsMm ?? [];
  if (!stock.isGauged || thresholdsMm.length === 0)
    return {
      bins: stock.piles.map(({ bins }) => bins),
      byHandShare: 0,
      tapsAssumed: 0,
      assumedHandSdMm: ASSUMED_HAND_SD_MM
    };
  const gradeInForce = new Map(stock.piles.map(({ number, grade }) => [number, grade]));
  const thresholdsOf = new Map(
    partOf(view, 'job').grades.map(({ id, value }) => [id, value.thresholdsMm])
  );
  const assumed = { thresholdsMm, sdMm: ASSUMED_HAND_SD_MM };
  // The same for every sorter of a pallet whose hand is assumed.
  const assumedOn = new Map<string, ThicknessBins>();
  const toldIfAssumed = (palletId: string, own: readonly number[], grade: number) => {
    const place = `${palletId}|${grade}|${own.join(' ')}`;
    let bins = assumedOn.get(place);
    if (!bins) {
      const spread = known.spreadOf(palletId) ?? stock.spread;
      const told = tapPosterior(spread, { ...assumed, thresholdsMm: own }, grade);
      bins = told.ok ? told.bins : splitIntoPiles(stock.spread, own)[grade - 1];
      assumedOn.set(place, bins);
    }
    return bins;
  };
  const parts: Part[] = [];
  let [gauged, tapped, tapsAssumed] = [0, 0, 0];
  for (const { palletId } of tallyPallets(view)) {
    const gaugedOn = new Map<number, ThicknessBins[]>();
    for (const [key, part] of Object.entries(partOf(view, `pallet:${palletId}`).piles)) {
      const number = pileOfKey(key);
      if (number === 0) continue;
      const bins = binsOf(part.gauged);
      gaugedOn.set(number, [...(gaugedOn.get(number) ?? []), bins]);
      gauged += totalCount(bins);
      const gradesId = gradesIdOfKey(key);
      const own = thresholdsOf.get(gradesId ?? '');
      // Felt before there were grades: taken to be of the grade that its pile became.
      const grade = own ? gradeOfPile(view, gradesId, number) : (gradeInForce.get(number) ?? 0);
      for (const [sorter, slates] of Object.entries(part.tapped)) {
        const tap = { palletId, gradesId: gradesId ?? '', sorter, pile: grade };
        const told = grade > 0 ? toldByTap(known, tap, own ?? thresholdsMm) : undefined;
        const bins =
          grade > 0 ? (told ?? toldIfAssumed(palletId, own ?? thresholdsMm, grade)) : NO_SPREAD;
        parts.push({ bins, slates, pile: number, palletId });
        tapped += slates;
        if (!told) tapsAssumed += slates;
      }
    }
    for (const [pile, list] of gaugedOn) {
      const bins = mergeBins(list);
      parts.push({ bins, slates: totalCount(bins), pile, palletId });
    }
  }
  const byHandShare = tapped > 0 ? tapped / (tapped + gauged) : 0;
  const sdMm = settingsOf(view).gaugeSdMm ?? UNSTUDIED_GAUGE_SD_MM;
  const hands = [
    ...known.hands,
    ...(tapsAssumed > 0 ? [{ hand: assumed, thresholdsMm, taps: tapsAssumed }] : [])
  ];
  const chance = mixed(byHandShare, hands, thresholdsMm, normalMisgrading(sdMm));
  const toCome = misgradedPiles(stock.spread, thresholdsMm, chance);
  for (const { number, grade, toCome: slates } of stock.piles)
    if (grade) parts.push({ bins: toCome[grade - 1], slates, pile: number });
  const asPut = stock.piles.map(({ number, slates, bins: sharp }) => ({
    number,
    slates,
    bins: merged(
      parts.filter((part) => part.pile === number),
      withoutMoves(view, number, slates),
      sharp
    )
  }));
  const moved = binsAfterMoves(view, asPut);
  const bins = asPut.map(({ number, bins: own }) => moved.get(number) ?? own);
  return { bins, byHandShare, tapsAssumed, assumedHandSdMm: ASSUMED_HAND_SD_MM };
}

/**
 * How slates still to come fall: by gauge, and by the hands so far, each by its taps. A hand
 * learnt under the grades in force errs about its own thresholds, else about the right ones.
 */
function mixed(
  byHandShare: number,
  hands: readonly {
    readonly hand: Pick<Hand, 'thresholdsMm' | 'sdMm'>;
    readonly thresholdsMm: readonly number[] | undefined;
    readonly taps: number;
  }[],
  thresholdsMm: readonly number[],
  byGauge: ChanceAbove
): ChanceAbove {
  const taps = hands.reduce((sum, hand) => sum + hand.taps, 0);
  if (taps === 0 || byHandShare === 0) return byGauge;
  const known = hands.map(({ hand, thresholdsMm: learntMm, taps: own }) => {
    const chance = normalMisgrading(hand.sdMm);
    const isLearntHere =
      learntMm?.length === thresholdsMm.length &&
      learntMm.every((mm, index) => mm === thresholdsMm[index]);
    const feltAt = new Map(
      thresholdsMm.map((mm, index) => [mm, isLearntHere ? hand.thresholdsMm[index] : mm])
    );
    return { share: (byHandShare * own) / taps, chance, feltAt };
  });
  return (thicknessMm, thresholdMm) =>
    known.reduce(
      (sum, { share, chance, feltAt }) =>
        sum + share * chance(thicknessMm, feltAt.get(thresholdMm) ?? thresholdMm),
      (1 - byHandShare) * byGauge(thicknessMm, thresholdMm)
    );
}

/**
 * Spreads each weighing as much as its slates, scaled to so many; the sharp pile without any. Parts of
 * one pallet rest on its readings, and those of the whole stock on all of them.
 */
function merged(parts: readonly Part[], slates: number, sharp: ThicknessBins): ThicknessBins {
  const known = parts.filter(({ bins, slates: own }) => own > 0 && totalCount(bins) > 0);
  const all = known.reduce((sum, part) => sum + part.slates, 0);
  if (all === 0) return sharp;
  const spreadOf = (palletId: string | undefined): ThicknessBins => {
    const own = known.filter((part) => part.palletId === palletId);
    return mergeOfSameReadings(
      own.map(({ bins }) => bins),
      own.map((part) => (part.slates * slates) / (all * totalCount(part.bins)))
    );
  };
  const palletIds = new Set(known.flatMap(({ palletId }) => palletId ?? []));
  const onPile = mergeBins([...palletIds].map(spreadOf));
  return mergeOfSameReadings([onPile, spreadOf(undefined)]);
}
