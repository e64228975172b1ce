import { USUAL_DENSITY_KG_PER_M3, slatesCarried, stackOf } from '$lib/engine/roof';
import { orderInForce, settingsOf, specOf } from '$lib/job';
import type { JobView } from '$lib/journal';

/** What a stack of the delivery weighs, and how many of its slates one person lifts in a go. */
export interface StackWeight {
  readonly slates: number;
  readonly massKg: number;
  readonly carried: number;
}

/**
 * The weight of a stack of slates of the size ordered, or else of that on the roof, at the nominal
 * thickness.
 *
 * @param slates whole, 1 or more
 * @returns undefined where size or thickness is not known
 */
export function stackWeight(view: JobView, slates: number): StackWeight | undefined {
  const order = orderInForce(view);
  const spec = specOf(view);
  const lengthMm = order?.lengthMm ?? spec?.lengthMm;
  const widthMm = order?.widthMm ?? spec?.widthMm;
  const thicknessMm = order?.nominalThicknessMm;
  if (!lengthMm || !widthMm || !thicknessMm) return undefined;
  const densityKgPerM3 = spec?.densityKgPerM3 || USUAL_DENSITY_KG_PER_M3;
  const slate = { lengthMm, widthMm, densityKgPerM3 };
  const { massKg } = stackOf(slates, thicknessMm, slate);
  const { slates: carried } = slatesCarried(settingsOf(view).carryMassKg, thicknessMm, slate);
  return { slates, massKg, carried };
}
