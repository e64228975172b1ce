import { type Random, createRandom, randomNormal, toHundredths } from '$lib/engine';

/** One pallet of an invented delivery. */
export interface InventedPallet {
  readonly label: string;
  readonly slates: number;
  /** Mean and standard deviation of its slates' thickness. */
  readonly meanMm: number;
  readonly sdMm: number;
}

/**
 * Six pallets that differ, as pallets split by different hands do: about two fifths of the variance
 * lies between them. C2 is the odd one, thicker and more mixed. All figures are invented.
 */
export const PALLETS: readonly InventedPallet[] = [
  { label: 'A1', slates: 340, meanMm: 5.55, sdMm: 0.52 },
  { label: 'A2', slates: 330, meanMm: 5.85, sdMm: 0.55 },
  { label: 'B1', slates: 335, meanMm: 6.05, sdMm: 0.5 },
  { label: 'B2', slates: 330, meanMm: 5.7, sdMm: 0.58 },
  { label: 'C1', slates: 335, meanMm: 6.15, sdMm: 0.54 },
  { label: 'C2', slates: 330, meanMm: 7.1, sdMm: 0.85 }
];

const THINNEST_MM = 4;
const THICKEST_MM = 9;
const SEED = 4207;

/** A slate's thickness in hundredths of a millimetre: normal, drawn again outside 4 to 9 mm. */
export function drawThickness(random: Random, { meanMm, sdMm }: InventedPallet): number {
  for (;;) {
    const thicknessMm = meanMm + sdMm * randomNormal(random);
    if (thicknessMm >= THINNEST_MM && thicknessMm <= THICKEST_MM) return toHundredths(thicknessMm);
  }
}

/** The 2,000 slates of the invented delivery, pallet by pallet, always the same. */
export function inventedDelivery(): { pallet: string; thicknessHundredths: number }[] {
  const random = createRandom(SEED);
  return PALLETS.flatMap((pallet) =>
    Array.from({ length: pallet.slates }, () => ({
      pallet: pallet.label,
      thicknessHundredths: drawThickness(random, pallet)
    }))
  );
}
