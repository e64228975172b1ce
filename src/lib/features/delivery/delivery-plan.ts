import {
  ATTRIBUTES_AQLS,
  type JudgingPlan,
  type OperatingPoint,
  type PlacesFrom,
  type PlanWithRisks,
  VARIABLES_AQLS,
  attributesPlan,
  drawFullChecks,
  drawSamplingList,
  findAttributesPlan,
  planCurve,
  planForSize,
  variablesPlan,
  withRisks
} from '$lib/engine/delivery';
import { createRandom } from '$lib/engine';
import type { BodyOf } from '$lib/journal';
import type { PalletTally } from '$lib/job';
import { leastAcceptance } from './delivery-judging-plan.ts';

export { ATTRIBUTES_AQLS, VARIABLES_AQLS };

/** A plan as it is being chosen. Shares and chances in per cent, as typed and read. */
export interface PlanChoice {
  readonly kind: 'attributes' | 'variables' | 'own';
  readonly level: 'I' | 'II' | 'III';
  readonly aqlPercent: number;
  readonly severity: 'normal' | 'tightened';
  readonly good: { readonly share: number; readonly acceptance: number };
  readonly poor: { readonly share: number; readonly acceptance: number };
  /** Slates to draw if more than the plan asks; undefined: as the plan asks. */
  readonly drawAtLeast?: number;
  /** Slates that get the full check; undefined: as `usualFullChecks` says. */
  readonly fullChecks?: number;
  /** One by one, so that the risks of the plan hold, or in groups that share a layer. */
  readonly from: PlacesFrom;
}

export type PlanRefusal =
  | 'lot-too-small'
  | 'cell-in-doubt'
  | 'lot-beyond-table'
  | 'points-wrong'
  | 'sample-too-large'
  | 'sample-exceeds-lot'
  | 'fewer-than-plan'
  | 'full-exceeds-sample';

/** A plan that can be drawn: its size, number and risks are those of what will be drawn. */
export interface ReadyPlan extends PlanWithRisks {
  readonly ok: true;
  /** Slates the plan asks for; more may be drawn. */
  readonly planSize: number;
  readonly everySlate: boolean;
  readonly curve: readonly OperatingPoint[];
  /** An own plan at a size for which no number keeps both risks: the poor delivery passes more. */
  readonly isBuyersRiskBroken: boolean;
}

export type SamplePlanResult =
  | ReadyPlan
  | {
      readonly ok: false;
      readonly reason: PlanRefusal;
      /** Slates asked for and slates there are, where the reason is about counts. */
      readonly asked?: number;
    };

/** Of how many listed slates one gets the full check, and the fewest that do. Ours. */
const FULL_CHECK_OF = 4;
const FEWEST_FULL_CHECKS = 10;

/** Slates of a list that get the full check where nobody says how many. */
export function usualFullChecks(sampleSize: number): number {
  return Math.min(sampleSize, Math.max(FEWEST_FULL_CHECKS, Math.ceil(sampleSize / FULL_CHECK_OF)));
}

/** Works a choice out for a delivery of so many slates. */
export function workOutPlan(choice: PlanChoice, lot: number): SamplePlanResult {
  const found = findPlan(choice, lot);
  if (!found.ok) return found;
  const planSize = found.plan.sampleSize;
  if (planSize > lot) return { ok: false, reason: 'sample-exceeds-lot', asked: planSize };
  const { drawAtLeast } = choice;
  if (drawAtLeast !== undefined && drawAtLeast > lot)
    return { ok: false, reason: 'sample-exceeds-lot', asked: drawAtLeast };
  if (drawAtLeast !== undefined && drawAtLeast < planSize)
    return { ok: false, reason: 'fewer-than-plan', asked: planSize };
  const { fullChecks = 0 } = choice;
  const sampleSize = drawAtLeast ?? planSize;
  if (fullChecks > sampleSize)
    return { ok: false, reason: 'full-exceeds-sample', asked: sampleSize };
  const plan = withRisks(planForSize(found.plan, sampleSize), lot);
  return {
    ok: true,
    ...plan,
    planSize,
    everySlate: found.everySlate,
    curve: planCurve(plan, lot),
    isBuyersRiskBroken: choice.kind === 'own' && plan.buyersRisk > choice.poor.acceptance,
    ...(choice.from === 'few-layers' && { isInFewLayers: true })
  };
}

interface FoundPlan {
  readonly ok: true;
  readonly plan: JudgingPlan;
  readonly everySlate: boolean;
}

function findPlan(
  choice: PlanChoice,
  lot: number
): FoundPlan | Extract<SamplePlanResult, { ok: false }> {
  const acceptableShare = choice.aqlPercent / 100;
  if (choice.kind === 'own') return ownPlan(choice, lot);
  if (choice.kind === 'attributes') {
    const aql = choice.aqlPercent as (typeof ATTRIBUTES_AQLS)[number];
    const table = attributesPlan(lot, choice.level, aql, choice.severity);
    if (!table.ok) return table;
    const { sampleSize, acceptAtMost, everySlate, basis } = table.plan;
    return { ok: true, plan: { sampleSize, acceptAtMost, basis, acceptableShare }, everySlate };
  }
  const table = variablesPlan(lot, choice.aqlPercent as (typeof VARIABLES_AQLS)[number]);
  if (!table.ok) return table;
  const { sampleSize, everySlate, basis } = table.plan;
  const acceptAtMost = leastAcceptance(sampleSize, acceptableShare);
  return {
    ok: true,
    plan: { sampleSize, acceptAtMost, byThickness: table.plan, basis: [basis], acceptableShare },
    everySlate
  };
}

function ownPlan(
  { good, poor }: PlanChoice,
  lot: number
): FoundPlan | Extract<SamplePlanResult, { ok: false }> {
  const isChance = (n: number): boolean => n > 0 && n < 1;
  const isSloping = good.share < poor.share && good.acceptance > poor.acceptance;
  if (![good.share, good.acceptance, poor.share, poor.acceptance].every(isChance) || !isSloping)
    return { ok: false, reason: 'points-wrong' };
  const found = findAttributesPlan(good, poor);
  if (!found.ok) return found;
  return {
    ok: true,
    plan: {
      ...found.plan,
      acceptableShare: good.share,
      promised: good.acceptance,
      poorShare: poor.share,
      basis: [{ standing: 'computed', source: 'binomial distribution, from two risk points' }]
    },
    everySlate: found.plan.sampleSize === lot
  };
}

/** A pallet whose places cannot be drawn, and why. */
export interface UnpackedPallet {
  readonly label: string;
  readonly reason: 'layers-missing' | 'holds-less';
}

/** The pallets as packed, or those that say too little of how they are packed. */
export function packedPallets(pallets: readonly PalletTally[]) {
  const wrong = pallets
    .filter(({ slates }) => slates > 0)
    .flatMap(({ label, slates, layers, perLayer }): UnpackedPallet[] => {
      if (!layers || !perLayer) return [{ label, reason: 'layers-missing' }];
      return layers * perLayer < slates ? [{ label, reason: 'holds-less' }] : [];
    });
  const packed = pallets
    .filter(({ slates, layers, perLayer }) => slates > 0 && layers && perLayer)
    .map(({ palletId, slates, layers = 0, perLayer = 0 }) => ({
      id: palletId,
      layers,
      perLayer,
      count: slates
    }));
  return { packed, wrong };
}

/** The act that draws a list: where each slate of the sample stands, by a seeded draw. */
export function drawAct(
  choice: PlanChoice,
  plan: ReadyPlan,
  pallets: readonly PalletTally[],
  seed: number
): { type: 'sampleDrawn'; body: BodyOf<'sampleDrawn'> } | undefined {
  const random = createRandom(seed);
  const { packed } = packedPallets(pallets);
  const drawn = drawSamplingList(packed, plan.sampleSize, random, choice.from);
  if (!drawn.ok) return undefined;
  const full = drawFullChecks(
    drawn.places,
    choice.fullChecks ?? usualFullChecks(plan.sampleSize),
    random
  );
  const isOwn = choice.kind === 'own';
  return {
    type: 'sampleDrawn',
    body: {
      seed,
      plan: choice.kind,
      ...(choice.kind === 'attributes' && { level: choice.level, severity: choice.severity }),
      ...(!isOwn && { aqlPercent: choice.aqlPercent }),
      ...(isOwn && { good: { ...choice.good }, poor: { ...choice.poor } }),
      planSize: plan.sampleSize,
      acceptAtMost: plan.acceptAtMost,
      ...(choice.from === 'few-layers' && { fewLayers: true }),
      positions: drawn.places.map(({ palletId, layer, place }, index) => ({
        palletId,
        layer,
        place,
        ...(full[index] && { full: true })
      }))
    }
  };
}
