/**
 * The hands that sort a job, as far as spot checks tell them. It needs the statistics: import it from
 * what is itself imported with `await import()` only.
 */
import { type Hand, tapPosterior } from '$lib/engine/statistics';
import { type ThicknessBins, mergeBins, totalCount } from '$lib/engine/thickness';
import { type JobView, palletIds, partOf, sorterNames } from '$lib/journal';
import type { Stock } from '../stock.ts';
import { tallyPallets } from '../queries.ts';
import { samplesOf } from './grades-ground.ts';
import { handsOf } from './grades-hands.ts';
import { tapsAndGauge } from './taps-and-gauge.ts';

/** A hand that spot checks tell, under one set of grades. */
export interface KnownHand {
  readonly gradesId: string;
  readonly sorter: string;
  readonly hand: Hand;
  /** Grades whose thresholds the hand was learnt under; undefined where there were none. */
  readonly thresholdsMm: readonly number[] | undefined;
  /** Slates the hand tapped. */
  readonly taps: number;
}

/** What is known of a job's hands and of the pallets they tapped from. */
export interface KnownHands {
  /** Those under the newest grades last. */
  readonly hands: readonly KnownHand[];
  /** Slates of a pallet by thickness before they are tapped; undefined: not known. */
  readonly spreadOf: (palletId: string) => ThicknessBins | undefined;
}

/** The hands of a job and its pallets' spreads, by gauge and taps together. */
export function knownHands(view: JobView, stock: Stock): KnownHands {
  const all = handsOf(view);
  const together = tapsAndGauge(view, samplesOf(tallyPallets(view), stock), all);
  // what the spreads rest on: each is told in so many slates
  const readings = together.ok ? totalCount(together.bins) : 0;
  const spreads = new Map(
    together.ok
      ? together.sample.pallets.map(({ palletId, spread }) => [
          palletId,
          mergeBins([spread], [readings])
        ])
      : []
  );
  return {
    hands: all.flatMap(({ gradesId, sorter, hand, thresholdsMm, taps }) =>
      hand.ok
        ? [{ gradesId, sorter, hand, thresholdsMm, taps: taps.reduce((sum, n) => sum + n, 0) }]
        : []
    ),
    spreadOf: (palletId) => spreads.get(palletId)
  };
}

/**
 * Works the hands out once for as long as nothing that they rest on changes; the stock stands for
 * what was counted by hand.
 */
export function rememberKnownHands(): typeof knownHands {
  let restsOn: readonly unknown[] = [];
  let known: KnownHands | undefined;
  return (view, stock) => {
    const now = [
      partOf(view, 'job'),
      stock,
      ...palletIds(view).map((palletId) => partOf(view, `pallet:${palletId}`)),
      ...sorterNames(view).map((sorter) => partOf(view, `sorter:${sorter}`))
    ];
    const isSame = now.length === restsOn.length && now.every((part, at) => part === restsOn[at]);
    if (!known || !isSame) known = knownHands(view, stock);
    restsOn = now;
    return known;
  };
}

/**
 * What a tap says of a slate of a pallet, chances by thickness, by the error of its sorter's hand;
 * undefined where that is not known. It is told by that and not by the checks of the pile, for a step
 * between two slates needs the ends of a pile, of which few checks see none. A sorter who is
 * known under other grades alone is taken to stray as widely about the boundaries of the tap.
 *
 * @param tap its pile as the grade that was tapped
 * @param thresholdsMm boundaries of that grade, falling
 */
export function toldByTap(
  { hands, spreadOf }: KnownHands,
  tap: { palletId: string; gradesId: string; sorter: string; pile: number },
  thresholdsMm: readonly number[]
): ThicknessBins | undefined {
  const own = hands.filter(({ sorter }) => sorter === tap.sorter);
  const exact = own.find(({ gradesId }) => gradesId === tap.gradesId)?.hand;
  const other = own.at(-1)?.hand;
  const hand = exact ?? (other && elsewhere(other, thresholdsMm));
  const spread = spreadOf(tap.palletId);
  if (!hand || !spread) return undefined;
  const piles = hand.thresholdsMm.length + 1;
  const told = tapPosterior(spread, hand, Math.min(tap.pile, piles));
  return told.ok ? told.bins : undefined;
}

/** A hand about other boundaries than it was learnt under: the same object for the same boundaries. */
function elsewhere(
  { sdMm }: Hand,
  thresholdsMm: readonly number[]
): Pick<Hand, 'thresholdsMm' | 'sdMm'> {
  const known = strayed.get(thresholdsMm) ?? new Map<number, Pick<Hand, 'thresholdsMm' | 'sdMm'>>();
  strayed.set(thresholdsMm, known);
  const hand = known.get(sdMm) ?? { thresholdsMm, sdMm };
  known.set(sdMm, hand);
  return hand;
}

const strayed = new WeakMap<readonly number[], Map<number, Pick<Hand, 'thresholdsMm' | 'sdMm'>>>();
