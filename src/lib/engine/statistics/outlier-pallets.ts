import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import {
  type PalletFigures,
  type NoComparison,
  comparePallets,
  gaugedPallets
} from './between-pallets.ts';
import { requireConfidence } from './confidence.ts';
import type { PalletSample } from './pallet-sample.ts';

/** A pallet whose mean stands out, and by how much. */
export interface OutlierPallet {
  readonly palletId: string;
  /** Its mean less the plain mean of the means of the pallets that are not odd, mm. */
  readonly differenceMm: number;
  /** The same in standard errors. */
  readonly standardised: number;
}

/**
 * Pallets whose mean thickness stands out from the others by more than chance explains, and by so much
 * that it matters: at least as much as slates of one pallet usually vary.
 *
 * @param pallets gauged or not, in any order; not modified
 * @param confidence that no pallet is named where all are alike (0.95 unless given)
 * @returns the odd pallets, the furthest in mm first, perhaps none; or why they cannot be compared
 *
 * Rule: a pallet stands out where its mean lies from the plain mean of the others' means, both in mm,
 * by at least the pooled SD within pallets and by more standard errors than the t bound shared out over
 * all pallets (Bonferroni). Of those that stand out the furthest in mm is set apart and the rest are
 * judged again, so that one odd pallet does not make the others look odd; at two pallets it ends, for
 * then either may be the odd one. A pallet that no longer stands out from those left at the end is put
 * back. Slates gauged are taken as few beside the pallet. Ties: the pallet given first; a difference of
 * just one SD is odd. Cost: pallets squared.
 *
 * @throws EngineError `out-of-range` for the confidence
 * @example
 * // three pallets of 4.9, 4.95, 5, 5.05 and 5.1 mm and one of the same plus 0.8 mm
 * outlierPallets(pallets); // { ok: true, odd: [{ palletId: 'D', differenceMm: 0.8, … }] }
 */
export function outlierPallets(
  pallets: readonly PalletSample[],
  confidence = 0.95
): { readonly ok: true; readonly odd: readonly OutlierPallet[] } | NoComparison {
  requireConfidence(confidence);
  const compared = comparePallets(pallets);
  if (!compared.ok) return compared;
  let rest = gaugedPallets(pallets);
  const bound = tQuantile(1 - (1 - confidence) / (2 * rest.length), compared.degreesWithin);
  const standOut = (
    pallet: PalletFigures,
    others: readonly PalletFigures[]
  ): OutlierPallet | undefined => {
    const found = difference(pallet, others, compared.varianceWithin);
    const isFar = Math.abs(found.differenceMm) >= Math.sqrt(compared.varianceWithin);
    return isFar && Math.abs(found.standardised) > bound ? found : undefined;
  };

  let apart: PalletFigures[] = [];
  while (rest.length > 2) {
    const among = rest;
    const [furthest] = among
      .flatMap((pallet) => {
        const found = standOut(pallet, without(among, pallet));
        return found ? [{ pallet, distanceMm: Math.abs(found.differenceMm) }] : [];
      })
      .sort((one, other) => other.distanceMm - one.distanceMm);
    if (!furthest) break;
    apart.push(furthest.pallet);
    rest = without(rest, furthest.pallet);
  }
  for (;;) {
    const usual = rest;
    const back = apart.find((pallet) => !standOut(pallet, usual));
    if (!back) break;
    apart = without(apart, back);
    rest = [...rest, back];
  }
  const odd = apart.map((pallet) => difference(pallet, rest, compared.varianceWithin));
  return {
    ok: true,
    odd: odd.sort((one, other) => Math.abs(other.differenceMm) - Math.abs(one.differenceMm))
  };
}

/** How far a pallet's mean lies from the mean of the others' means. */
function difference(
  { palletId, figures }: PalletFigures,
  others: readonly PalletFigures[],
  varianceWithin: number
): OutlierPallet {
  const ofOthers = others.reduce((sum, other) => sum + 1 / other.figures.count, 0);
  const meanOfOthers = others.reduce((sum, other) => sum + other.figures.mean, 0) / others.length;
  const differenceMm = figures.mean - meanOfOthers;
  const standardErrorMm = Math.sqrt(
    varianceWithin * (1 / figures.count + ofOthers / others.length ** 2)
  );
  return { palletId, differenceMm, standardised: differenceMm / standardErrorMm };
}

function without(pallets: readonly PalletFigures[], one: PalletFigures): PalletFigures[] {
  return pallets.filter((pallet) => pallet !== one);
}
