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
import type { Stock } from '../stock.ts';
import {
  binsOf,
  gradesIdOfKey,
  gradesOf,
  pileOfKey,
  settingsOf,
  tallyPallets
} from '../queries.ts';
import { type KnownHands, rememberKnownHands, toldByTap } from './known-hands.ts';
import { ASSUMED_HAND_SD_MM, UNSTUDIED_GAUGE_SD_MM } from '../slate-judgement.ts';

/** The piles with their misgraded slates, and what that rests on. */
export interface PilesAsSorted {
  /** Thickness of each pile, pile 1 first, scaled to its slates; empty without a gauge reading. */
  readonly bins: readonly ThicknessBins[];
  /** Share of the slates on the piles that a hand put there; 0 before any is sorted. */
  readonly byHandShare: number;
  /** Tapped slates of hands that are not known: an error is assumed for them. */
  readonly tapsAssumed: number;
  /** SD of that error, mm. */
  readonly assumedHandSdMm: number;
}

/** Slates on or for a pile, and their spread: of one pallet, or of the whole stock. */
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
  const piles = stock.piles.length;
  const thresholdsMm = gradesOf(view)?.thresholdsMm ?? [];
  if (!stock.isGauged || thresholdsMm.length + 1 !== piles)
    return {
      bins: stock.piles.map(({ bins }) => bins),
      byHandShare: 0,
      tapsAssumed: 0,
      assumedHandSdMm: ASSUMED_HAND_SD_MM
    };
  const windows = splitIntoPiles(stock.spread, thresholdsMm);
  const assumed = { thresholdsMm, sdMm: ASSUMED_HAND_SD_MM };
  // The same for every sorter of a pallet whose hand is assumed.
  const assumedOn = new Map<string, ThicknessBins>();
  const toldIfAssumed = (palletId: string, pile: number): ThicknessBins => {
    const place = `${palletId}|${pile}`;
    let bins = assumedOn.get(place);
    if (!bins) {
      const told = tapPosterior(known.spreadOf(palletId) ?? stock.spread, assumed, pile);
      bins = told.ok ? told.bins : windows[pile - 1];
      assumedOn.set(place, bins);
    }
    return bins;
  };
  const parts: Part[] = [];
  let [gauged, tapped, tapsAssumed] = [0, 0, 0];
  for (const { palletId } of tallyPallets(view)) {
    const gaugedOn: ThicknessBins[][] = Array.from({ length: piles }, () => []);
    for (const [key, part] of Object.entries(partOf(view, `pallet:${palletId}`).piles)) {
      if (pileOfKey(key) === 0) continue;
      const pile = Math.min(pileOfKey(key), piles);
      const bins = binsOf(part.gauged);
      gaugedOn[pile - 1].push(bins);
      gauged += totalCount(bins);
      for (const [sorter, slates] of Object.entries(part.tapped)) {
        const tap = { palletId, gradesId: gradesIdOfKey(key) ?? '', sorter, pile: pileOfKey(key) };
        const told = toldByTap(known, tap, thresholdsMm);
        parts.push({ bins: told ?? toldIfAssumed(palletId, pile), slates, pile, palletId });
        tapped += slates;
        if (!told) tapsAssumed += slates;
      }
    }
    for (const [index, list] of gaugedOn.entries()) {
      const bins = mergeBins(list);
      parts.push({ bins, slates: totalCount(bins), pile: index + 1, palletId });
    }
  }
  const byHandShare = tapped > 0 ? tapped / (tapped + gauged) : 0;
  const sdMm = settingsOf(view).gaugeSdMm ?? UNSTUDIED_GAUGE_SD_MM;
  const hands = [
    ...known.hands,
    ...(tapsAssumed > 0 ? [{ hand: assumed, thresholdsMm, taps: tapsAssumed }] : [])
  ];
  const chance = mixed(byHandShare, hands, thresholdsMm, normalMisgrading(sdMm));
  for (const [index, bins] of misgradedPiles(stock.spread, thresholdsMm, chance).entries())
    parts.push({ bins, slates: stock.piles[index].toCome, pile: index + 1 });
  const bins = stock.piles.map(({ pile, slates, bins: sharp }) =>
    merged(
      parts.filter((part) => part.pile === pile),
      slates,
      sharp
    )
  );
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
