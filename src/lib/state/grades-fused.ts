import {
  type FusedSpread,
  type NoFusedSpread,
  type PalletSample,
  type SorterTaps,
  tapPosterior
} from '$lib/engine/estimates';
import { type ThicknessBins, binsFromPairs, mergeBins } from '$lib/engine/thickness';
import {
  type JobView,
  gradesIdOfKey,
  palletIds,
  partOf,
  pileOfKey,
  tallyPallets
} from '$lib/journal';
import { weightedSpread } from './grades-ground.ts';
import { handKey, toldKey } from './grade-keys.ts';
import type { SorterHand } from './grades-hands.ts';

/** The stock's spread from gauge and taps together, or why taps do not count in millimetres. */
export type Fused =
  | {
      readonly ok: true;
      /** Weighted to the stock; adds up to the slates gauged and the taps that counted. */
      readonly bins: ThicknessBins;
      readonly tapsCounted: number;
      readonly tapsLeftOut: number;
      /** Gauged and tapped slates of each pallet by thickness. */
      readonly ofPallet: ReadonlyMap<string, ThicknessBins>;
      /** What a tap says, by `pile|hand`: chances by thickness. */
      readonly told: ReadonlyMap<string, ThicknessBins>;
    }
  | NoFusedSpread;

/**
 * What the search for the spread starts from: gauged slates, those of spot checks among them, and
 * each hand's other taps.
 */
export function toFuse(
  view: JobView,
  hands: readonly SorterHand[]
): { gauged: ThicknessBins; sorters: SorterTaps[] } {
  const checked = hands.flatMap(({ checks }) =>
    checks.map(({ thicknessMm }): [number, number] => [Math.round(thicknessMm * 100), 1])
  );
  return {
    gauged: mergeBins([
      ...tallyPallets(view).map(({ gaugedBins }) => gaugedBins),
      binsFromPairs(checked)
    ]),
    sorters: hands.map(({ taps, checks, hand }) => ({
      hand,
      taps: taps.map((slates, index) =>
        Math.max(0, slates - checks.filter(({ pile }) => pile === index + 1).length)
      )
    }))
  };
}

/**
 * The spread of the stock once the fused spread is found: every pallet's gauged slates and its taps,
 * each tap spread over the thicknesses that its sorter's hand may have felt, pallets weighted by
 * their slates.
 */
export function fusedSpread(
  view: JobView,
  samples: readonly PalletSample[],
  hands: readonly SorterHand[],
  found: FusedSpread | NoFusedSpread
): Fused {
  if (!found.ok) return found;
  const known = new Map(
    hands.map(({ gradesId, sorter, hand }) => [handKey(gradesId, sorter), hand])
  );
  const told = new Map<string, ThicknessBins>();
  const ofPallet = new Map<string, ThicknessBins>();
  let tapsCounted = 0;
  for (const { palletId, bins } of samples) {
    const parts: ThicknessBins[] = [bins];
    const weights = [1];
    for (const [key, { tapped }] of Object.entries(partOf(view, `pallet:${palletId}`).piles))
      for (const [sorter, slates] of Object.entries(tapped)) {
        const place = handKey(gradesIdOfKey(key) ?? '', sorter);
        const hand = known.get(place);
        const pile = pileOfKey(key);
        if (!hand?.ok || pile < 1 || pile > hand.thresholdsMm.length + 1) continue;
        const name = toldKey(pile, place);
        let posterior = told.get(name);
        if (!posterior) {
          const worked = tapPosterior(found.bins, hand, pile);
          if (!worked.ok) continue;
          posterior = worked.bins;
          told.set(name, posterior);
        }
        parts.push(posterior);
        weights.push(slates);
        tapsCounted += slates;
      }
    ofPallet.set(palletId, mergeBins(parts, weights));
  }
  const fused = samples.map((sample) => ({
    ...sample,
    bins: ofPallet.get(sample.palletId) ?? sample.bins
  }));
  return {
    ok: true,
    bins: weightedSpread(fused),
    tapsCounted,
    tapsLeftOut: tapsOf(view) - tapsCounted,
    ofPallet,
    told
  };
}

function tapsOf(view: JobView): number {
  let taps = 0;
  for (const palletId of palletIds(view))
    for (const { tapped } of Object.values(partOf(view, `pallet:${palletId}`).piles))
      for (const sorter in tapped) taps += tapped[sorter];
  return taps;
}
