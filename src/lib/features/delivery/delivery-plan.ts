import {
  ATTRIBUTES_AQLS,
  type Basis,
  type OperatingPoint,
  VARIABLES_AQLS,
  acceptanceInLot,
  attributesPlan,
  drawSamplingList,
  findAttributesPlan,
  operatingCurve,
  planRisks,
  variablesAcceptance,
  variablesPlan
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
}

export type PlanRefusal =
  | 'lot-too-small'
  | 'cell-in-doubt'
  | 'lot-beyond-table'
  | 'points-wrong'
  | 'sample-too-large'
  | 'sample-exceeds-lot'
  | 'fewer-than-plan';

/** A plan that can be drawn, with what it risks. */
export interface ReadyPlan {
  readonly ok: true;
  /** Slates the plan asks for. */
  readonly planSize: number;
  /** Slates that will be drawn: the plan's, or more. */
  readonly sampleSize: number;
  readonly acceptAtMost: number;
  /** Only of a variables plan: the estimated share outside that is still accepted. */
  readonly allowedShare?: number;
  readonly everySlate: boolean;
  readonly basis: readonly Basis[];
  readonly curve: readonly OperatingPoint[];
  readonly acceptableShare: number;
  /** Chance that a delivery at the acceptable share is refused. */
  readonly sellersRisk: number;
  /** A poor delivery: as set, or one that passes at most one time in ten. */
  readonly poorShare: number;
  readonly buyersRisk: number;
}

export type SamplePlanResult =
  | ReadyPlan
  | {
      readonly ok: false;
      readonly reason: PlanRefusal;
      /** Slates asked for and slates there are, where the reason is about counts. */
      readonly asked?: number;
    };

/** One time in ten: what "a poor delivery is seldom accepted" means here. */
const SELDOM = 0.1;
const CURVE_POINTS = 61;

/** Works a choice out for a delivery of so many slates. */
export function workOutPlan(choice: PlanChoice, lot: number): SamplePlanResult {
  const found = findPlan(choice, lot);
  if (!found.ok) return found;
  if (found.planSize > lot)
    return { ok: false, reason: 'sample-exceeds-lot', asked: found.planSize };
  const { drawAtLeast } = choice;
  if (drawAtLeast !== undefined && drawAtLeast > lot)
    return { ok: false, reason: 'sample-exceeds-lot', asked: drawAtLeast };
  if (drawAtLeast !== undefined && drawAtLeast < found.planSize)
    return { ok: false, reason: 'fewer-than-plan', asked: found.planSize };
  return withRisks({ ...found, sampleSize: drawAtLeast ?? found.planSize }, lot);
}

type FoundPlan = Pick<ReadyPlan, 'ok' | 'planSize' | 'acceptAtMost' | 'basis' | 'everySlate'> &
  Pick<ReadyPlan, 'acceptableShare' | 'allowedShare'> & {
    readonly acceptability?: number;
    readonly poorPoint?: number;
  };

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
    return { ok: true, planSize: sampleSize, acceptAtMost, everySlate, basis, acceptableShare };
  }
  const table = variablesPlan(lot, choice.aqlPercent as (typeof VARIABLES_AQLS)[number]);
  if (!table.ok) return table;
  const { sampleSize, allowedShare, acceptability, everySlate, basis } = table.plan;
  return {
    ok: true,
    planSize: sampleSize,
    acceptAtMost: leastAcceptance(sampleSize, acceptableShare),
    allowedShare,
    acceptability,
    everySlate,
    basis: [basis],
    acceptableShare
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
    planSize: found.plan.sampleSize,
    acceptAtMost: found.plan.acceptAtMost,
    everySlate: found.plan.sampleSize === lot,
    basis: [{ standing: 'computed', source: 'binomial distribution, from two risk points' }],
    acceptableShare: good.share,
    poorPoint: poor.share
  };
}

function withRisks(plan: FoundPlan & { readonly sampleSize: number }, lot: number): ReadyPlan {
  const { acceptability, poorPoint, ...rest } = plan;
  const { planSize, acceptAtMost, acceptableShare } = rest;
  const attributes = { sampleSize: planSize, acceptAtMost };
  const oneLimit =
    acceptability === undefined ? undefined : { sampleSize: planSize, acceptability };
  const acceptedAt = (share: number): number => {
    if (!oneLimit) return acceptanceInLot(attributes, lot, Math.floor(lot * share));
    return share >= 1 ? 0 : variablesAcceptance(oneLimit, share);
  };
  const worst = endOfCurve(Math.max(0.1, 2 * acceptableShare, 1.1 * (poorPoint ?? 0)), acceptedAt);
  const curve = oneLimit
    ? variablesCurve(oneLimit, worst)
    : operatingCurve(attributes, lot, CURVE_POINTS, worst);
  const poorShare = poorPoint ?? curve.find(({ acceptance }) => acceptance <= SELDOM)?.share ?? 1;
  const limiting = Math.max(poorShare, acceptableShare + 1 / lot);
  const risks =
    oneLimit || limiting > 1
      ? { sellersRisk: 1 - acceptedAt(acceptableShare), buyersRisk: acceptedAt(poorShare) }
      : planRisks(attributes, lot, acceptableShare, limiting);
  return { ...rest, curve, poorShare, ...risks };
}

/** A share, from a first one upwards, beyond which the curve has little left to show. */
function endOfCurve(first: number, acceptedAt: (share: number) => number): number {
  let end = Math.min(1, first);
  while (end < 1 && acceptedAt(end) > SELDOM / 2) end = Math.min(1, 1.25 * end);
  return end;
}

function variablesCurve(
  plan: { readonly sampleSize: number; readonly acceptability: number },
  worst: number
): OperatingPoint[] {
  return Array.from({ length: CURVE_POINTS }, (_, index) => {
    const share = (worst * index) / (CURVE_POINTS - 1);
    const isEnd = share === 0 || share === 1;
    return { share, acceptance: isEnd ? 1 - share : variablesAcceptance(plan, share) };
  });
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
  const drawn = drawSamplingList(
    packedPallets(pallets).packed,
    plan.sampleSize,
    createRandom(seed)
  );
  if (!drawn.ok) return undefined;
  const isOwn = choice.kind === 'own';
  return {
    type: 'sampleDrawn',
    body: {
      seed,
      plan: choice.kind,
      ...(choice.kind === 'attributes' && { level: choice.level, severity: choice.severity }),
      ...(!isOwn && { aqlPercent: choice.aqlPercent }),
      ...(isOwn && { good: { ...choice.good }, poor: { ...choice.poor } }),
      planSize: plan.planSize,
      acceptAtMost: plan.acceptAtMost,
      positions: drawn.places.map(({ palletId, layer, place }) => ({ palletId, layer, place }))
    }
  };
}
