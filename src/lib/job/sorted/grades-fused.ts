import {
  type CheckedSorter,
  type FusedErrors,
  type FusedGrade,
  type FusedPallet,
  type FusedPallets,
  type NoFusedSpread,
  type PalletSample,
  type TappedPallet,
  fusedGrade,
  tapPosterior
} from '$lib/engine/statistics';
import type { ThicknessBins, ThicknessInterval } from '$lib/engine/thickness';
import { type JobView, palletIds, partOf } from '$lib/journal';
import { gradesIdOfKey, pileOfKey } from '../queries.ts';
import { weightedSpread } from './grades-ground.ts';
import { handKey, toldKey } from './grade-keys.ts';
import type { SorterHand } from './grades-hands.ts';

/** What gauge and taps are put together from: pallets, and sorters in the order of their taps. */
export interface ToFuse {
  readonly pallets: readonly TappedPallet[];
  readonly sorters: readonly CheckedSorter[];
}

/** The stock's spread from gauge and taps together, or why taps do not count in millimetres. */
export type Fused =
  | {
      readonly ok: true;
      /** Weighted to the stock; adds up to the slates gauged and the taps that counted. */
      readonly bins: ThicknessBins;
      readonly tapsCounted: number;
      readonly tapsLeftOut: number;
      /** Every pallet's gauged slates, and the same with its taps, in one order. */
      readonly samples: readonly PalletSample[];
      readonly pallets: readonly FusedPallet[];
      /** What a tap of a hand on a pile says of a slate of a pallet: chances by thickness. */
      readonly told: (palletId: string, pile: number, hand: string) => ThicknessBins | undefined;
    }
  | NoFusedSpread;

/** What was gauged and tapped of each pallet, by sorter and grades. */
export function toFuse(
  view: JobView,
  samples: readonly PalletSample[],
  hands: readonly SorterHand[]
): ToFuse {
  return {
    pallets: samples.map(({ palletId, slates, bins }) => ({
      palletId,
      slates,
      bins,
      taps: tapsOn(view, palletId, hands)
    })),
    sorters: hands.map(({ hand, checks }) => ({ hand, checks }))
  };
}

/** The spread of the stock once every pallet's is found, pallets weighted by their slates. */
export function fusedSpread(
  view: JobView,
  { pallets: samples }: ToFuse,
  hands: readonly SorterHand[],
  found: FusedPallets | NoFusedSpread
): Fused {
  if (!found.ok) return found;
  const { pallets, tapsCounted } = found;
  return {
    ok: true,
    bins: weightedSpread(pallets),
    tapsCounted,
    tapsLeftOut: tapsOf(view) - tapsCounted,
    samples,
    pallets,
    told: tellerOf(pallets, hands)
  };
}

/** Slates in each band of thickness by gauge and taps together, with 95 % intervals. */
export function fusedBands(
  fused: Extract<Fused, { ok: true }>,
  errors: FusedErrors,
  bands: readonly ThicknessInterval[]
): FusedGrade[] {
  return bands.map((band) => fusedGrade(fused.samples, fused.pallets, errors, band));
}

/** Slates of a pallet that each hand put on each of its piles. */
function tapsOn(view: JobView, palletId: string, hands: readonly SorterHand[]): number[][] {
  const places = new Map(
    hands.map(({ gradesId, sorter }, index) => [handKey(gradesId, sorter), index])
  );
  const taps = hands.map(({ piles }) => new Array<number>(piles).fill(0));
  for (const [key, { tapped }] of Object.entries(partOf(view, `pallet:${palletId}`).piles))
    for (const [sorter, slates] of Object.entries(tapped)) {
      const own = taps[places.get(handKey(gradesIdOfKey(key) ?? '', sorter)) ?? -1] ?? [];
      const pile = pileOfKey(key);
      if (pile >= 1 && pile <= own.length) own[pile - 1] += slates;
    }
  return taps;
}

/** Tells taps one by one as they are asked for, and remembers what was told. */
function tellerOf(
  pallets: readonly FusedPallet[],
  hands: readonly SorterHand[]
): Extract<Fused, { ok: true }>['told'] {
  const spreads = new Map(pallets.map(({ palletId, spread }) => [palletId, spread]));
  const known = new Map(
    hands.map(({ gradesId, sorter, hand }) => [handKey(gradesId, sorter), hand])
  );
  const told = new Map<string, ThicknessBins | undefined>();
  return (palletId, pile, place) => {
    const key = `${palletId}|${toldKey(pile, place)}`;
    if (!told.has(key)) {
      const [spread, hand] = [spreads.get(palletId), known.get(place)];
      const isKnown = spread && hand?.ok && pile >= 1 && pile <= hand.thresholdsMm.length + 1;
      const worked = isKnown ? tapPosterior(spread, hand, pile) : undefined;
      told.set(key, worked?.ok ? worked.bins : undefined);
    }
    return told.get(key);
  };
}

function tapsOf(view: JobView): number {
  let taps = 0;
  for (const palletId of palletIds(view))
    for (const { tapped } of Object.values(partOf(view, `pallet:${palletId}`).piles))
      for (const sorter in tapped) taps += tapped[sorter];
  return taps;
}
