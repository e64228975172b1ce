import { createRandom, randomNormal } from '$lib/engine';
import { pileOf } from '$lib/engine/grading';
import { type ThicknessBins, binsFromPairs } from '$lib/engine/thickness';

/** For tests: how a delivery is made, sampled by gauge, tapped and checked. */
export interface TappedDesign {
  readonly pallets: number;
  readonly slates: number;
  /** Slates gauged on each pallet; where it is a list, on one pallet after the other. */
  readonly gauged: number | readonly number[];
  /** Slates tapped on each pallet likewise; the rest of it unless given. */
  readonly tapped?: number | readonly number[];
  /** One tapped slate in so many is gauged as well. */
  readonly every: number;
  /** How much thicker than it is each sorter feels a slate, mm; they take slates by chance. */
  readonly biasMm: readonly number[];
  /** How much that grows from the first slate tapped to the last, mm. */
  readonly driftMm: number;
  /** Share of taps that fall on any pile at all. */
  readonly slips: number;
  /** SD of the pallets' means, and of the slates about them, mm. */
  readonly palletSdMm: number;
  readonly slateSdMm: number;
}

/** Boundaries of thick, medium and thin, mm, of a stock about 5.8 mm. */
export const CUTS_MM = [6.3, 5.1];
const MEAN_MM = 5.8;
/** SD of the hand's error, mm. */
const HAND_SD_MM = 0.4;

/** One sorter who feels every slate 0.3 mm too thick and is checked once in twenty. */
export const ONE_IN_TWENTY: TappedDesign = {
  pallets: 6,
  slates: 300,
  gauged: 10,
  every: 20,
  biasMm: [0.3],
  driftMm: 0,
  slips: 0,
  palletSdMm: 0.4,
  slateSdMm: 0.8
};

/** A pallet as packed, in hundredths of a millimetre, and as it was worked through. */
export interface TriedPallet {
  readonly palletId: string;
  readonly slates: number;
  readonly packed: readonly number[];
  /** The random sample by gauge. */
  readonly bins: ThicknessBins;
  /** By sorter, then by pile: slates tapped, and those of them that were gauged too. */
  readonly taps: readonly (readonly number[])[];
  readonly checks: readonly (readonly ThicknessBins[])[];
}

/** A delivery made anew for every seed. */
export function tappedDelivery(design: TappedDesign, seed: number): TriedPallet[] {
  const random = createRandom(seed);
  const { pallets, slates, biasMm } = design;
  const onPallet = (given: number | readonly number[], place: number): number =>
    typeof given === 'number' ? given : given[place];
  const toTap = Array.from({ length: pallets }, (_, place) =>
    onPallet(design.tapped ?? slates - onPallet(design.gauged, place), place)
  );
  const all = toTap.reduce((sum, count) => sum + count, 0);
  let tapped = 0;
  return Array.from({ length: pallets }, (_, place) => {
    const gauged = onPallet(design.gauged, place);
    const meanMm = MEAN_MM + design.palletSdMm * randomNormal(random);
    const packed = Array.from({ length: slates }, () =>
      Math.max(150, Math.round(100 * (meanMm + design.slateSdMm * randomNormal(random))))
    );
    const taps = biasMm.map(() => CUTS_MM.concat(0).map(() => 0));
    const checks = biasMm.map(() => CUTS_MM.concat(0).map((): number[] => []));
    for (const hundredths of packed.slice(gauged, gauged + toTap[place])) {
      const sorter = Math.floor(random() * biasMm.length);
      const biased = biasMm[sorter] + (design.driftMm * tapped) / all;
      const feltMm = hundredths / 100 + biased + HAND_SD_MM * randomNormal(random);
      const slipped = random() < design.slips;
      const pile = slipped ? Math.floor(random() * 3) : pileOf(feltMm, CUTS_MM) - 1;
      taps[sorter][pile]++;
      if (tapped % design.every === Math.floor(design.every / 2))
        checks[sorter][pile].push(hundredths);
      tapped++;
    }
    return {
      palletId: `p${place}`,
      slates,
      packed,
      bins: binsOf(packed.slice(0, gauged)),
      taps,
      checks: checks.map((piles) => piles.map(binsOf))
    };
  });
}

/** Slates one by one as bins. */
export function binsOf(hundredths: readonly number[]): ThicknessBins {
  return binsFromPairs(hundredths.map((value) => [value, 1] as const));
}
