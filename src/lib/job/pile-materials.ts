import type { NailLength, RoofLayout, Stack } from '$lib/engine/roof';
import {
  NAILS_PER_PIECE,
  massLaidKgPerM2,
  nailLength,
  nailsByPile,
  slatesCarried,
  stackOf
} from '$lib/engine/roof';
import { momentsOfBins } from '$lib/engine/thickness';
import { type JobView, current, partOf } from '$lib/journal';
import { deliveryOf, settingsOf } from './queries.ts';
import { stockOf } from './stock.ts';

/** What one pile's thickness asks for: nails, and what it weighs on the roof and in a stack. */
export interface PileMaterial {
  /** 0 stands for all slates together, while no grades are set. */
  readonly pile: number;
  readonly thicknessMm: number;
  readonly nailLength: NailLength;
  /** Nails for the pile's slates in the adopted plan; undefined before there is one. */
  readonly nails?: number;
  readonly massKgPerM2: number;
  /** What a hoist or the battens take at once, and what one person carries. */
  readonly stack: Stack;
  readonly carried: Stack;
}

/**
 * Nails and mass by pile, from measured thickness: the piles of the grades in force, or all slates
 * together while there are none; the order's nominal thickness where nothing was measured.
 *
 * Mass is at the widest gauge of the roof's slopes, so it differs by slope by what their gauges do.
 *
 * @returns pile 1 first; empty where no thickness is known
 */
export function pileMaterials(view: JobView, roof: RoofLayout): PileMaterial[] {
  const stock = stockOf(view);
  const planned = piecesByPile(view);
  const ofPiles = stock.piles.flatMap(({ pile, number, bins }) => {
    const moments = momentsOfBins(bins);
    return moments.ok ? [materialOf(view, roof, pile, moments.meanMm, planned.get(number))] : [];
  });
  if (ofPiles.length > 0) return ofPiles;
  const all = momentsOfBins(stock.spread);
  const thicknessMm = all.ok ? all.meanMm : deliveryOf(view)?.nominalThicknessMm;
  return thicknessMm ? [materialOf(view, roof, 0, thicknessMm, undefined)] : [];
}

/** Nails for the undereave row, which no pile of a plan counts and the whole roof does. */
export function undereaveNails({ totals }: Pick<RoofLayout, 'totals'>): number {
  return NAILS_PER_PIECE * (totals.undereaveSlates + totals.undereaveSlateAndAHalves);
}

function materialOf(
  view: JobView,
  { spec, slopes }: RoofLayout,
  pile: number,
  thicknessMm: number,
  pieces: number | undefined
): PileMaterial {
  const gaugeMm = Math.max(...slopes.map((laid) => laid.gaugeMm));
  const inStack = Math.max(1, Math.floor(settingsOf(view).stackHeightMm / thicknessMm));
  const nails =
    pieces === undefined
      ? undefined
      : nailsByPile([{ pile, slates: pieces, thicknessMm }])[0].nails;
  return {
    pile,
    thicknessMm,
    nailLength: nailLength(thicknessMm),
    ...(nails !== undefined && { nails }),
    massKgPerM2: massLaidKgPerM2(spec.densityKgPerM3, thicknessMm, spec.lengthMm, gaugeMm),
    stack: stackOf(inStack, thicknessMm, spec),
    carried: slatesCarried(settingsOf(view).carryMassKg, thicknessMm, spec)
  };
}

/** Pieces of each pile in the adopted plan, by its number. */
function piecesByPile(view: JobView): Map<number, number> {
  const pieces = new Map<number, number>();
  const plan = current(partOf(view, 'plans').plans);
  for (const course of plan?.courses ?? [])
    for (const share of course.piles)
      pieces.set(share.pile, (pieces.get(share.pile) ?? 0) + share.pieces);
  return pieces;
}
