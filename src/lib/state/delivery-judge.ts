import {
  type ChoiceCost,
  type DeliveryFindings,
  type DeliveryOrder,
  type DeliveryVerdict,
  type FindingsResult,
  type JudgingPlan,
  type RoofNeed,
  type Texture,
  type VariablesPlan,
  acceptance,
  attributesPlan,
  costOfChoices,
  findAll,
  judgeDelivery,
  variablesPlan
} from '$lib/engine/delivery';
import type { HistogramBar } from '$lib/engine/thickness';
import {
  type BodyOf,
  type JobView,
  partOf,
  roofLayoutOf,
  settingsOf,
  specOf,
  tallyPallets
} from '$lib/journal';
import { barsOf, sampleBins } from './delivery-bars.ts';
import { keptShare, predictEvenness } from './delivery-evenness.ts';
import {
  type Draw,
  type OfferedSlate,
  drawInForce,
  labelsOf,
  orderInForce
} from './delivery-sample.ts';
import { type SortingPace, sortingPace } from './delivery-pace.ts';
import { paceSince, sortedMinutesOf } from './pace.ts';

/** Confidence of every interval on the sheet. */
export const LEVEL = 0.95;
/** Share outside that a list without a plan of its own is taken to accept. Ours: a starting value. */
export const STARTING_SHARE = 0.04;
/** A delivery at the acceptable share passes at least this often. Ours: a starting value. */
const STARTING_ACCEPTANCE = 0.95;

const TEXTURES: Record<NonNullable<BodyOf<'deliveryDeclared'>['texture']>, Texture> = {
  verySmooth: 'very smooth',
  smooth: 'smooth',
  normal: 'normal',
  textured: 'textured'
};

/** Why there are no findings yet. */
export type NoFindings =
  Extract<FindingsResult, { ok: false }>['reason'] | 'no-order' | 'no-pallets' | 'no-list';

/** How often a delivery with a share outside is to pass, each from 0 to 1. */
export interface RiskPoint {
  readonly share: number;
  readonly acceptance: number;
}

/** A good delivery that is seldom refused, and a poor one that is seldom accepted. */
export interface RiskPoints {
  readonly good: RiskPoint;
  readonly poor: RiskPoint;
}

/** Everything that is said of a delivery. */
export interface Judged {
  readonly ok: true;
  readonly findings: DeliveryFindings;
  readonly verdict: DeliveryVerdict;
  readonly costs: readonly ChoiceCost[];
  readonly order: DeliveryOrder;
  readonly variablesPlan?: VariablesPlan;
  /** Whether a roof is entered: without one the third finding says nothing. */
  readonly hasRoof: boolean;
  /** Whether the list named a plan of its own. */
  readonly hasOwnPlan: boolean;
  /** The two points that the plan was chosen by; undefined where the list names none. */
  readonly riskPoints?: RiskPoints;
  /** Slates of the sample that were gauged: what mean, spread and foretold kickers rest on. */
  readonly gauged: number;
  /** The pace that hours and cost of sorting rest on; undefined where none is known. */
  readonly pace?: SortingPace;
  /** Labels of the pallets whose stacks were measured; undefined stands for a pallet not noted. */
  readonly stackPallets: readonly (string | undefined)[];
  /** Share of the slates kept back for breakage and repairs. */
  readonly keptShare: number;
  /** Thickness of the sample, bars side by side, thinnest first. */
  readonly bars: readonly HistogramBar[];
}

export type Judgement = Judged | { readonly ok: false; readonly reason: NoFindings };

/**
 * Judges the delivery of a job as it stands: findings, verdict and the cost of each answer.
 *
 * @param offered the slates offered as the sample, in any order
 *
 * Cost: some fifty exact distributions, and a plan of the roof.
 */
export function judgeJob(view: JobView, offered: readonly OfferedSlate[]): Judgement {
  const body = orderInForce(view);
  const order = deliveryOrder(view);
  if (!body || !order) return { ok: false, reason: 'no-order' };
  const delivered = tallyPallets(view).reduce((sum, { slates }) => sum + slates, 0);
  if (delivered === 0) return { ok: false, reason: 'no-pallets' };
  const draw = drawInForce(view);
  if (!draw) return { ok: false, reason: 'no-list' };

  const sample = sampleBins(offered);
  const { plan, variables } = plansOf(draw, delivered);
  const need = roofNeed(view);
  const settings = settingsOf(view);
  const pace = sortingPace(
    settings.sortingPacePerHour,
    paceSince(sortedMinutesOf(view), 0).perHour
  );
  const rate = settings.sortingRatePerHour;
  const acceptable = body.acceptableKickersPer100;
  const evenness = predictEvenness(view, sample, delivered);
  const stacks = partOf(view, 'job')
    .stacks.map(({ value }) => value)
    .filter(({ totalMm }) => totalMm > 0);
  const result = findAll({
    order,
    delivered,
    slates: offered.map(({ measured }) => measured),
    plan,
    ...(variables && { variablesPlan: variables }),
    stacks,
    ...(body.stackOf100Mm && { labelMmPer100: body.stackOf100Mm }),
    ...(body.stackTolerancePercent !== undefined && {
      stackTolerancePercent: body.stackTolerancePercent
    }),
    need: need ?? { slates: 0, reserve: 0 },
    ...(evenness && { evenness }),
    sorting: {
      ...(pace && { slatesPerHour: pace.perHour }),
      ...(rate !== null && { costPerHour: rate }),
      ...(acceptable !== undefined && { acceptableKickersPer100: acceptable })
    },
    level: LEVEL
  });
  if (!result.ok) return result;
  const { findings } = result;
  return {
    ok: true,
    findings,
    verdict: judgeDelivery(findings),
    costs: costOfChoices(findings, choiceTerms(body, delivered)),
    order,
    ...(variables && { variablesPlan: variables }),
    hasRoof: need !== undefined,
    ...riskPointsOf(draw),
    hasOwnPlan: draw.value.acceptAtMost !== undefined || draw.value.aqlPercent !== undefined,
    gauged: sample.counts.reduce((sum, count) => sum + count, 0),
    ...(pace && { pace }),
    stackPallets: palletsOfStacks(view, stacks),
    keptShare: keptShare(settings),
    bars: barsOf(sample)
  };
}

/** The order as the engine takes it; undefined while size, thickness or count is missing. */
export function deliveryOrder(view: JobView): DeliveryOrder | undefined {
  const body = orderInForce(view);
  const spec = specOf(view);
  const lengthMm = body?.lengthMm ?? spec?.lengthMm;
  const widthMm = body?.widthMm ?? spec?.widthMm;
  const { nominalThicknessMm, slatesOrdered, tolerancePercent, texture } = body ?? {};
  if (!lengthMm || !widthMm || !nominalThicknessMm || !slatesOrdered) return undefined;
  return {
    lengthMm,
    widthMm,
    nominalThicknessMm,
    ...(tolerancePercent !== undefined && { thicknessTolerancePercent: tolerancePercent }),
    texture: TEXTURES[texture ?? 'normal'],
    slatesOrdered
  };
}

function choiceTerms(body: BodyOf<'deliveryDeclared'>, delivered: number) {
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

function palletsOfStacks(
  view: JobView,
  stacks: readonly { readonly palletId: string | null }[]
): (string | undefined)[] {
  const labels = labelsOf(view);
  return [...new Set(stacks.map(({ palletId }) => palletId && labels.get(palletId)))].map(
    (label) => label || undefined
  );
}

function riskPointsOf({ value }: Draw): { riskPoints?: RiskPoints } {
  const { acceptAtMost, good, poor } = value;
  return acceptAtMost !== undefined && good && poor ? { riskPoints: { good, poor } } : {};
}

/** The plan that a list was drawn by, as far as it named one. */
export function plansOf(
  { value }: Draw,
  delivered: number
): { plan: JudgingPlan; variables?: VariablesPlan } {
  const sampleSize = value.planSize ?? value.positions.length;
  const acceptableShare =
    value.good?.share ?? (value.aqlPercent ? value.aqlPercent / 100 : STARTING_SHARE);
  const acceptAtMost = value.acceptAtMost ?? leastAcceptance(sampleSize, acceptableShare);
  const plain = { sampleSize, acceptAtMost, acceptableShare };
  if (value.plan === 'attributes') {
    const aql = value.aqlPercent as Parameters<typeof attributesPlan>[2];
    const table = attributesPlan(delivered, value.level ?? 'II', aql, value.severity ?? 'normal');
    if (table.ok) return { plan: { ...plain, basis: table.plan.basis } };
  }
  if (value.plan === 'variables') {
    const aql = value.aqlPercent as Parameters<typeof variablesPlan>[1];
    const table = variablesPlan(delivered, aql);
    if (table.ok)
      return {
        plan: { ...plain, basis: [{ standing: 'computed', source: 'binomial distribution' }] },
        variables: table.plan
      };
  }
  const isOwn = value.acceptAtMost !== undefined;
  return {
    plan: {
      ...plain,
      basis: [
        isOwn
          ? { standing: 'computed', source: 'binomial distribution, from two risk points' }
          : { standing: 'common practice', source: '' }
      ]
    }
  };
}

/** The least acceptance number with which a delivery at `share` passes at least 95 times in 100. */
export function leastAcceptance(sampleSize: number, share: number): number {
  let acceptAtMost = 0;
  while (acceptance({ sampleSize, acceptAtMost }, share) < STARTING_ACCEPTANCE) acceptAtMost++;
  return acceptAtMost;
}

/**
 * Slates the roof takes, and the reserve that the planner would keep of the least stock that makes
 * it. Undefined without a roof.
 */
function roofNeed(view: JobView): RoofNeed | undefined {
  const roof = roofLayoutOf(view);
  if (!roof.ok || roof.demand.length === 0) return undefined;
  const slates = roof.demand.flatMap(({ runs }) => runs).reduce((sum, run) => sum + run.slates, 0);
  const kept = keptShare(settingsOf(view));
  return { slates, reserve: Math.ceil(Number((slates / (1 - kept)).toFixed(6))) - slates };
}
