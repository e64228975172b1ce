import {
  type DoubleSample,
  type NoDoubleSample,
  type PalletSample,
  type TappedPallet,
  doubleSample
} from '$lib/engine/statistics';
import { type ThicknessBins, binsFromPairs } from '$lib/engine/thickness';
import { type JobView, palletIds, partOf } from '$lib/journal';
import { gradeOfPile } from '../pile-numbers.ts';
import { gradesIdOfKey, pileOfKey } from '../queries.ts';
import { handKey } from './grade-keys.ts';
import type { SorterHand, TakenCheck } from './grades-hands.ts';

/** A job's gauge and taps together. */
export type TapsAndGauge =
  | {
      readonly ok: true;
      readonly sample: DoubleSample;
      /** The stock's spread; adds up to the slates gauged and the taps checked. */
      readonly bins: ThicknessBins;
      readonly tapsCounted: number;
      /** Taps that count for piles, not for millimetres: their hand was never checked. */
      readonly tapsLeftOut: number;
      /**
       * Chances by thickness of a slate that a hand put on a pile, of one pallet or of all; undefined
       * where no spot check of that hand tells.
       *
       * @param hand as `handKey` names it
       */
      readonly told: (hand: string, pile: number, palletId?: string) => ThicknessBins | undefined;
    }
  | NoDoubleSample;

/**
 * What a job's gauge, taps and spot checks tell together; see `doubleSample`.
 *
 * @param samples what was gauged of each pallet
 * @param hands of the same view
 */
export function tapsAndGauge(
  view: JobView,
  samples: readonly PalletSample[],
  hands: readonly SorterHand[]
): TapsAndGauge {
  const places = new Map(samples.map(({ palletId }, place) => [palletId, place]));
  const handPlaces = new Map(
    hands.map(({ gradesId, sorter }, place) => [handKey(gradesId, sorter), place])
  );
  const sample = doubleSample(
    samples.map(({ palletId, slates, bins }): TappedPallet => ({
      palletId,
      slates,
      bins,
      taps: tapsOn(view, palletId, hands, handPlaces),
      checks: hands.map((hand) => checksOf(hand, (own) => own.palletId === palletId))
    })),
    hands.map((hand) => checksOf(hand, (own) => !places.has(own.palletId)))
  );
  if (!sample.ok) return sample;
  const { bins, tapsCounted } = sample;
  return {
    ok: true,
    sample,
    bins,
    tapsCounted,
    tapsLeftOut: tapsOf(view) - tapsCounted,
    told: (hand, pile, palletId) => {
      const place = palletId === undefined ? undefined : places.get(palletId);
      if (palletId !== undefined && place === undefined) return undefined;
      return sample.told(handPlaces.get(hand) ?? -1, pile, place);
    }
  };
}

/** Slates of a pallet that each hand put on each of its piles. */
function tapsOn(
  view: JobView,
  palletId: string,
  hands: readonly SorterHand[],
  places: ReadonlyMap<string, number>
): number[][] {
  const taps = hands.map(({ piles }) => new Array<number>(piles).fill(0));
  for (const [key, { tapped }] of Object.entries(partOf(view, `pallet:${palletId}`).piles))
    for (const [sorter, slates] of Object.entries(tapped)) {
      const own = taps[places.get(handKey(gradesIdOfKey(key) ?? '', sorter)) ?? -1] ?? [];
      const pile = gradeOfPile(view, gradesIdOfKey(key), pileOfKey(key));
      if (pile >= 1 && pile <= own.length) own[pile - 1] += slates;
    }
  return taps;
}

/** Spot checks of a hand by the pile that was tapped. */
function checksOf(
  { checks, piles }: SorterHand,
  isWanted: (check: TakenCheck) => boolean
): ThicknessBins[] {
  const pairs = Array.from({ length: piles }, (): [number, number][] => []);
  for (const check of checks)
    if (isWanted(check)) pairs[check.pile - 1].push([Math.round(check.thicknessMm * 100), 1]);
  return pairs.map(binsFromPairs);
}

function tapsOf(view: JobView): number {
  let taps = 0;
  for (const palletId of palletIds(view))
    for (const { tapped } of Object.values(partOf(view, `pallet:${palletId}`).piles))
      for (const sorter in tapped) taps += tapped[sorter];
  return taps;
}
