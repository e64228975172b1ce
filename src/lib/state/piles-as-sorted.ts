/**
 * What really stands on the piles, slates on the wrong pile among it. It needs the statistics, which
 * the first paint does without: import it with `await import()` only.
 */
import { type Hand, tapPosterior } from '$lib/engine/estimates';
import { type ChanceAbove, misgradedPiles, splitIntoPiles } from '$lib/engine/grading';
import { normalMisgrading } from '$lib/engine/grading/misgrading';
import { type ThicknessBins, mergeBins, totalCount } from '$lib/engine/thickness';
import {
  type JobView,
  type PalletTally,
  type Stock,
  binsOf,
  gradesIdOfKey,
  gradesOf,
  partOf,
  pileOfKey,
  settingsOf,
  tallyPallets
} from '$lib/journal';
import { handsOf } from './grades-hands.ts';
import { UNSTUDIED_GAUGE_SD_MM } from './slate-judgement.ts';

/** Readings that the whole stock counts for beside a pallet's own, when its taps are told. Ours. */
const STOCK_READINGS = 8;

/** The piles with their misgraded slates, and what that rests on. */
export interface PilesAsSorted {
  /** Thickness of each pile, pile 1 first, scaled to its slates; empty without a gauge reading. */
  readonly bins: readonly ThicknessBins[];
  /** Share of the slates on the piles that a hand put there; 0 before any is sorted. */
  readonly byHandShare: number;
  /** Tapped slates of hands that are not known: they are taken to lie on their right pile. */
  readonly tapsTakenAsRight: number;
}

interface KnownHand {
  readonly gradesId: string;
  readonly sorter: string;
  readonly hand: Hand;
  /** Grades whose thresholds the hand was learnt under; undefined where there were none. */
  readonly thresholdsMm: readonly number[] | undefined;
  readonly taps: number;
}

/**
 * Thickness of what stands on each pile and will come to it, as it was sorted and is being sorted.
 *
 * Gauged slates lie where the gauge put them. A tapped slate may have any thickness that its sorter's
 * hand lets on to that pile: Bayes' rule with its pallet's spread. Slates still to come are taken to
 * be sorted by gauge and by hand in the shares so far, each with its own error. A sorter whose hand is
 * known under other grades alone is taken to stray as widely about the boundaries in force. Taps of
 * a hand that no spot checks tell are taken to be right, and counted in `tapsTakenAsRight`.
 *
 * @param stock of the same view
 *
 * Cost: piles × bins for each pallet and sorter, and a fit of each hand.
 */
export function pilesAsSorted(view: JobView, stock: Stock): PilesAsSorted {
  const piles = stock.piles.length;
  const thresholdsMm = gradesOf(view)?.thresholdsMm ?? [];
  if (!stock.isGauged || thresholdsMm.length + 1 !== piles)
    return { bins: stock.piles.map(({ bins }) => bins), byHandShare: 0, tapsTakenAsRight: 0 };
  const hands = knownHands(view);
  const windows = splitIntoPiles(stock.spread, thresholdsMm);
  const parts: { bins: ThicknessBins; slates: number; pile: number }[] = [];
  let [gauged, tapped, tapsTakenAsRight] = [0, 0, 0];
  for (const tally of tallyPallets(view)) {
    const prior = priorOf(tally, stock.spread);
    for (const [key, part] of Object.entries(partOf(view, `pallet:${tally.palletId}`).piles)) {
      if (pileOfKey(key) === 0) continue;
      const pile = Math.min(pileOfKey(key), piles);
      const bins = binsOf(part.gauged);
      parts.push({ bins, slates: totalCount(bins), pile });
      gauged += totalCount(bins);
      for (const [sorter, slates] of Object.entries(part.tapped)) {
        const known = hands.find(isHandOf(gradesIdOfKey(key) ?? '', sorter));
        const other = hands.findLast((hand) => hand.sorter === sorter);
        const hand = known?.hand ?? (other && { ...other.hand, thresholdsMm });
        const told = hand && posteriorOf(prior, hand, known ? pileOfKey(key) : pile);
        parts.push({ bins: told ?? windows[pile - 1], slates, pile });
        tapped += slates;
        if (!told) tapsTakenAsRight += slates;
      }
    }
  }
  const byHandShare = tapped > 0 ? tapped / (tapped + gauged) : 0;
  const sdMm = settingsOf(view).gaugeSdMm ?? UNSTUDIED_GAUGE_SD_MM;
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
  return { bins, byHandShare, tapsTakenAsRight };
}

/** Hands that spot checks tell, those under the newest grades last. */
function knownHands(view: JobView): KnownHand[] {
  return handsOf(view).flatMap(({ gradesId, sorter, hand, thresholdsMm, taps }) =>
    hand.ok
      ? [{ gradesId, sorter, hand, thresholdsMm, taps: taps.reduce((sum, n) => sum + n, 0) }]
      : []
  );
}

function isHandOf(gradesId: string, sorter: string): (hand: KnownHand) => boolean {
  return (hand) => hand.gradesId === gradesId && hand.sorter === sorter;
}

/** What is expected of a slate of a pallet before it is tapped. */
function priorOf(tally: PalletTally, spread: ThicknessBins): ThicknessBins {
  return mergeBins([tally.gaugedBins, spread], [1, STOCK_READINGS / totalCount(spread)]);
}

function posteriorOf(
  prior: ThicknessBins,
  hand: Pick<Hand, 'thresholdsMm' | 'sdMm'>,
  pile: number
): ThicknessBins | undefined {
  if (pile > hand.thresholdsMm.length + 1) return undefined;
  const told = tapPosterior(prior, hand, pile);
  return told.ok ? told.bins : undefined;
}

/**
 * How slates still to come fall: by gauge, and by the hands that are known, each by its taps. A hand
 * learnt under the grades in force errs about its own thresholds, else about the right ones.
 */
function mixed(
  byHandShare: number,
  hands: readonly KnownHand[],
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

/** Spreads each weighing as much as its slates, scaled to so many; the sharp pile without any. */
function merged(
  parts: readonly { readonly bins: ThicknessBins; readonly slates: number }[],
  slates: number,
  sharp: ThicknessBins
): ThicknessBins {
  const known = parts.filter(({ bins, slates: own }) => own > 0 && totalCount(bins) > 0);
  const all = known.reduce((sum, part) => sum + part.slates, 0);
  if (all === 0) return sharp;
  return mergeBins(
    known.map(({ bins }) => bins),
    known.map((part) => (part.slates * slates) / (all * totalCount(part.bins)))
  );
}
