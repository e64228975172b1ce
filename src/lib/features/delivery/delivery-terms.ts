import type { ChoiceTerms, DeliveryOrder, Texture } from '$lib/engine/delivery';
import type { BodyOf, JobView } from '$lib/journal';
import { specOf } from '$lib/job';
import { orderInForce } from '$lib/job';

const TEXTURES: Record<NonNullable<BodyOf<'deliveryDeclared'>['texture']>, Texture> = {
  verySmooth: 'very smooth',
  smooth: 'smooth',
  normal: 'normal',
  textured: 'textured'
};

/** How smooth the face is declared to be, as the engine names it. */
export function textureOf(texture: BodyOf<'deliveryDeclared'>['texture']): Texture {
  return TEXTURES[texture ?? 'normal'];
}

/** The order as the engine takes it; undefined while size, thickness or count is missing. */
export function deliveryOrder(view: JobView): DeliveryOrder | undefined {
  const body = orderInForce(view);
  const spec = specOf(view);
  const lengthMm = body?.lengthMm ?? spec?.lengthMm;
  const widthMm = body?.widthMm ?? spec?.widthMm;
  const { nominalThicknessMm, slatesOrdered, tolerancePercent, texture } = body ?? {};
  const { toleranceWhere, agreed = [] } = body ?? {};
  if (!lengthMm || !widthMm || !nominalThicknessMm || !slatesOrdered) return undefined;
  return {
    lengthMm,
    widthMm,
    nominalThicknessMm,
    ...(tolerancePercent !== undefined && { thicknessTolerancePercent: tolerancePercent }),
    ...(toleranceWhere && { thicknessToleranceWhere: toleranceWhere }),
    agreed: Object.fromEntries(agreed.map(({ limit, ...terms }) => [limit, terms])),
    texture: textureOf(texture),
    slatesOrdered
  };
}

/** Price, credit and delays of an order, as far as it names them: what each answer would cost. */
export function choiceTerms(body: BodyOf<'deliveryDeclared'>, delivered: number): ChoiceTerms {
  const { pricePerThousand, creditPerThousand, queryDays, replacementDays } = body;
  const { delayCostPerDay, returnCost } = body;
  return {
    ...(pricePerThousand !== undefined && { pricePerThousand }),
    ...(creditPerThousand !== undefined && {
      creditWhenQueried: (creditPerThousand * delivered) / 1000
    }),
    ...(queryDays !== undefined && { queryDelayDays: queryDays }),
    ...(replacementDays !== undefined && { replacementDelayDays: replacementDays }),
    ...(delayCostPerDay !== undefined && { delayCostPerDay }),
    ...(returnCost !== undefined && { returnCost })
  };
}
