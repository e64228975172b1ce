import type { PalletSince } from '$lib/engine/statistics';
import { type ThicknessBins, mergeBins } from '$lib/engine/thickness';
import { type JobView, palletIds, partOf } from '$lib/journal';
import { gradeOfPile } from '../pile-numbers.ts';
import { binsOf, gradesIdOfKey, pileOfKey, sum } from '../queries.ts';

/** Slates of one pallet that lie on one pile. */
export interface SortedOnPile {
  readonly palletId: string;
  /** Its grade under the grades it was sorted under, 1 for the thickest. */
  readonly pile: number;
  /** Those whose thickness is known: gauged, or told by a hand that counts in millimetres. */
  readonly bins: ThicknessBins;
  /** Slates in all, those of unknown thickness among them. */
  readonly slates: number;
  /** Those of them that were told by hand. */
  readonly tapped: number;
}

/** Slates sorted under one set of grades. */
export interface SortedUnder {
  /** Empty for piles made before there were grades. */
  readonly gradesId: string;
  /** By pallet in the order they were added, then from the thickest pile. */
  readonly onPiles: readonly SortedOnPile[];
  readonly slates: number;
}

/** What a tap on a pile says of a pallet's slate: chances by thickness, undefined where nothing. */
export type ToldByTap = (
  palletId: string,
  gradesId: string,
  sorter: string,
  pile: number
) => ThicknessBins | undefined;

/** The slates on the piles, by the grades they were sorted under, in the order those were set. */
export function sortedUnder(view: JobView, told: ToldByTap = () => undefined): SortedUnder[] {
  const byGrades = new Map<string, SortedOnPile[]>();
  for (const palletId of palletIds(view))
    for (const [key, part] of Object.entries(partOf(view, `pallet:${palletId}`).piles)) {
      const gradesId = gradesIdOfKey(key) ?? '';
      const pile = gradeOfPile(view, gradesIdOfKey(key), pileOfKey(key));
      if (pile === 0) continue;
      const parts = [binsOf(part.gauged)];
      const weights = [1];
      for (const [sorter, slates] of Object.entries(part.tapped)) {
        const bins = told(palletId, gradesId, sorter, pile);
        if (!bins) continue;
        parts.push(bins);
        weights.push(slates);
      }
      const tapped = sum(part.tapped);
      const slates = sum(part.gauged) + tapped;
      const onPile = { palletId, pile, bins: mergeBins(parts, weights), slates, tapped };
      byGrades.set(gradesId, [...(byGrades.get(gradesId) ?? []), onPile]);
    }
  const places = new Map(palletIds(view).map((palletId, place) => [palletId, place]));
  const placeOf = ({ palletId }: SortedOnPile): number => places.get(palletId) ?? 0;
  return [...byGrades]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([gradesId, onPiles]) => ({
      gradesId,
      onPiles: onPiles.sort((one, other) => placeOf(one) - placeOf(other) || one.pile - other.pile),
      slates: onPiles.reduce((total, { slates }) => total + slates, 0)
    }));
}

/**
 * Of each pallet the sample that a set of grades came from and the slates sorted under it since, both
 * as gauged. A slate gauged on to no pile belongs to the sample, whenever it was gauged.
 */
export function sampleAndSince(view: JobView, gradesId: string): PalletSince[] {
  return palletIds(view).map((palletId) => {
    const { sampled, piles } = partOf(view, `pallet:${palletId}`);
    const sample = [binsOf(sampled)];
    const since: ThicknessBins[] = [];
    for (const [key, { gauged }] of Object.entries(piles)) {
      const isSince = gradesIdOfKey(key) === gradesId && pileOfKey(key) > 0;
      (isSince ? since : sample).push(binsOf(gauged));
    }
    return { sample: mergeBins(sample), since: mergeBins(since) };
  });
}
