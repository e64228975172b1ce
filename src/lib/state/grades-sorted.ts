import { type ThicknessBins, mergeBins } from '$lib/engine/thickness';
import {
  type JobView,
  binsOf,
  gradesIdOfKey,
  palletIds,
  partOf,
  pileOfKey,
  sum
} from '$lib/journal';

/** Slates of one pallet that stand on piles under one set of grades. */
export interface SortedOfPallet {
  readonly palletId: string;
  /** Those whose thickness is known: gauged, or told by a hand that counts in millimetres. */
  readonly bins: ThicknessBins;
  /** Slates in all, those of unknown thickness among them. */
  readonly slates: number;
}

/** Slates sorted under one set of grades. */
export interface SortedUnder {
  /** Empty for piles made before there were grades. */
  readonly gradesId: string;
  readonly pallets: readonly SortedOfPallet[];
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
  const byGrades = new Map<string, SortedOfPallet[]>();
  for (const palletId of palletIds(view)) {
    const ofPallet = new Map<
      string,
      { parts: ThicknessBins[]; weights: number[]; slates: number }
    >();
    for (const [key, part] of Object.entries(partOf(view, `pallet:${palletId}`).piles)) {
      const pile = pileOfKey(key);
      if (pile === 0) continue;
      const gradesId = gradesIdOfKey(key) ?? '';
      const own = ofPallet.get(gradesId) ?? { parts: [], weights: [], slates: 0 };
      own.parts.push(binsOf(part.gauged));
      own.weights.push(1);
      own.slates += sum(part.gauged) + sum(part.tapped);
      for (const [sorter, slates] of Object.entries(part.tapped)) {
        const bins = told(palletId, gradesId, sorter, pile);
        if (!bins) continue;
        own.parts.push(bins);
        own.weights.push(slates);
      }
      ofPallet.set(gradesId, own);
    }
    for (const [gradesId, { parts, weights, slates }] of ofPallet)
      byGrades.set(gradesId, [
        ...(byGrades.get(gradesId) ?? []),
        { palletId, bins: mergeBins(parts, weights), slates }
      ]);
  }
  return [...byGrades]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([gradesId, pallets]) => ({
      gradesId,
      pallets,
      slates: pallets.reduce((total, pallet) => total + pallet.slates, 0)
    }));
}

/**
 * The sample that a set of grades came from and the slates sorted under it since, both as gauged.
 * A slate gauged on to no pile belongs to the sample, whenever it was gauged.
 */
export function sampleAndSince(
  view: JobView,
  gradesId: string
): { sample: ThicknessBins; since: ThicknessBins } {
  const sample: ThicknessBins[] = [];
  const since: ThicknessBins[] = [];
  for (const palletId of palletIds(view)) {
    const { sampled, piles } = partOf(view, `pallet:${palletId}`);
    sample.push(binsOf(sampled));
    for (const [key, { gauged }] of Object.entries(piles)) {
      const isSince = gradesIdOfKey(key) === gradesId && pileOfKey(key) > 0;
      (isSince ? since : sample).push(binsOf(gauged));
    }
  }
  return { sample: mergeBins(sample), since: mergeBins(since) };
}
