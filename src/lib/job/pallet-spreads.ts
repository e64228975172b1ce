import { momentsOfBins, quantilesMm, totalCount } from '$lib/engine/thickness';
import { type JobView, partOf } from '$lib/journal';
import { binsOf } from './queries.ts';
import type { NamedSample } from './sorted/grades-ground.ts';

/** The spread of one pallet, as far as its slates were gauged. */
export interface PalletSpread {
  readonly palletId: string;
  readonly label: string;
  readonly slates: number;
  readonly gauged: number;
  /** Undefined where nothing was gauged. */
  readonly meanMm: number | undefined;
  /** Standard deviation; undefined for fewer than two slates. */
  readonly sdMm: number | undefined;
  /** Between these lies the middle half of the slates; undefined where nothing was gauged. */
  readonly middleHalfMm: readonly [low: number, high: number] | undefined;
  /** How much one slate varies, on average; undefined where none was gauged at several points. */
  readonly taperMm: number | undefined;
}

/**
 * The spread of each pallet: mean, standard deviation, quarters (type 7) and taper, in mm.
 *
 * @param samples what was gauged of each pallet, in the order they are wanted
 */
export function palletSpreads(view: JobView, samples: readonly NamedSample[]): PalletSpread[] {
  return samples.map(({ palletId, label, slates, bins }) => {
    const moments = momentsOfBins(bins);
    const quarters = quantilesMm(bins, [0.25, 0.75]);
    // Tapers are hundredths of a millimetre like thicknesses, so their mean is that of their bins.
    const taper = momentsOfBins(binsOf(partOf(view, `pallet:${palletId}`).taper));
    return {
      palletId,
      label,
      slates,
      gauged: totalCount(bins),
      meanMm: moments.ok ? moments.meanMm : undefined,
      sdMm: moments.ok ? (moments.sdMm ?? undefined) : undefined,
      middleHalfMm: quarters.ok ? [quarters.quantilesMm[0], quarters.quantilesMm[1]] : undefined,
      taperMm: taper.ok ? taper.meanMm : undefined
    };
  });
}
