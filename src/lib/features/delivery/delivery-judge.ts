import {
  type ChoiceCost,
  type DeliveryFindings,
  type DeliveryOrder,
  type DeliveryVerdict,
  type FindingsResult,
  type JudgingPlan,
  type PlanWithRisks,
  type ProductLimits,
  type RoofNeed,
  type SampleSoFar,
  type VariablesPlan,
  costOfChoices,
  findAll,
  findSoFar,
  judgeDelivery,
  judgeSoFar,
  productLimits,
  thicknessInsideOrder,
  withRisks
} from '$lib/engine/delivery';
import {
  type HistogramBar,
  type ThicknessMoments,
  binsFromPairs,
  momentsOfBins
} from '$lib/engine/thickness';
import { type JobView, partOf } from '$lib/journal';
import { type TaperOfJob, roofLayoutOf, settingsOf, taperOf, tallyPallets } from '$lib/job';
import { type TwistOfJob, twistOf } from '$lib/job/sorted';
import { barsOf, sampleBins } from './delivery-bars.ts';
import {
  type ListCoverage,
  type SampleDraw,
  keptShare,
  listCoverage,
  slatesHeldTo
} from '$lib/job';
import { predictEvenness } from './delivery-evenness.ts';
import { plansOf } from './delivery-judging-plan.ts';
import { type SortingPace, sortingPace } from './delivery-pace.ts';
import { type OfferedSlate, drawInForce, labelsOf, orderInForce } from '$lib/job';
import { choiceTerms, deliveryOrder } from './delivery-terms.ts';
import { jobPace } from '$lib/job';

/** Confidence of every interval on the sheet. */
export const LEVEL = 0.95;

/** Why there are no findings yet. */
export type NoFindings =
  | Extract<FindingsResult, { ok: false }>['reason']
  | 'no-order'
  | 'no-pallets'
  | 'no-list'
  | 'plan-accepts-all';

/** Everything that is said of a delivery. */
export interface Judged {
  readonly ok: true;
  readonly findings: DeliveryFindings;
  readonly verdict: DeliveryVerdict;
  readonly costs: readonly ChoiceCost[];
  readonly order: DeliveryOrder;
  /** The limits that single slates were held to, with what each rests on. */
  readonly limits: ProductLimits;
  readonly variablesPlan?: VariablesPlan;
  /** Whether a roof is entered: without one the third finding says nothing. */
  readonly hasRoof: boolean;
  /** Whether the list named a plan of its own. */
  readonly hasOwnPlan: boolean;
  /** Slates inside the order that were gauged: what their spread and foretold kickers rest on. */
  readonly gauged: number;
  /** The pace that hours and cost of sorting rest on; undefined where none is known. */
  readonly pace?: SortingPace;
  /** Labels of the pallets whose stacks were measured; undefined stands for several pallets. */
  readonly stackPallets: readonly (string | undefined)[];
  /** Share of the slates kept back for breakage and repairs. */
  readonly keptShare: number;
  /** Taper that the joints allow for, and twist, which no sorting cures. */
  readonly taper: TaperOfJob;
  readonly twist: TwistOfJob;
  readonly kickAllowanceMm: number;
  /** Thickness of the sample, bars side by side, thinnest first. */
  readonly bars: readonly HistogramBar[];
}

/** What may be said while the list is unfinished: nothing of the whole delivery. */
export interface SoFar extends Pick<
  Judged,
  'verdict' | 'order' | 'limits' | 'stackPallets' | 'hasRoof'
> {
  readonly coverage: ListCoverage;
  readonly found: SampleSoFar;
  /** Thickness of the slates gauged so far; undefined where none was. */
  readonly thickness?: ThicknessMoments;
}

export type Judgement =
  | Judged
  | { readonly ok: false; readonly reason: 'list-unfinished'; readonly soFar: SoFar }
  | { readonly ok: false; readonly reason: NoFindings };

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
  const coverage = listCoverage(view, offered);
  const speaking = coverage?.draw ?? draw;
  const { plan, variables } = plansOf(
    speaking,
    delivered,
    slatesHeldTo(speaking, offered),
    partOf(view, 'job').draws
  );
  if (acceptsAll(plan)) return { ok: false, reason: 'plan-accepts-all' };
  const need = roofNeed(view);
  const settings = settingsOf(view);
  const pace = sortingPace(settings.sortingPacePerHour, jobPace(view).perHour);
  const rate = settings.sortingRatePerHour;
  const acceptable = body.acceptableKickersPer100;
  const limited = productLimits(order);
  if (!limited.ok) return limited;
  const measured = offered.map((slate) => slate.measured);
  const within = thicknessInsideOrder(measured, limited.limits);
  const insideBins = binsFromPairs(
    within.thicknessesMm.map((mm): [number, number] => [Math.round(mm * 100), 1])
  );
  const evenness = predictEvenness(
    view,
    insideBins,
    Math.round((delivered * within.inside) / Math.max(1, within.judged))
  );
  const stacks = partOf(view, 'job')
    .stacks.map(({ value }) => value)
    .filter(({ totalMm }) => totalMm > 0);
  const result = findAll({
    order,
    delivered,
    slates: measured,
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
  const stackPallets = palletsOfStacks(view, stacks);
  if (coverage && coverage.state !== 'finished') {
    const found = findSoFar(findings, coverage.places - coverage.measured);
    const moments = momentsOfBins(sample);
    const soFar: SoFar = {
      coverage,
      found,
      verdict: judgeSoFar(found, coverage),
      order,
      limits: limited.limits,
      stackPallets,
      hasRoof: need !== undefined,
      ...(moments.ok && { thickness: moments })
    };
    return { ok: false, reason: 'list-unfinished', soFar };
  }
  return {
    ok: true,
    findings,
    verdict: judgeDelivery(findings),
    costs: costOfChoices(findings, choiceTerms(body, delivered)),
    order,
    limits: limited.limits,
    ...(variables && { variablesPlan: variables }),
    hasRoof: need !== undefined,
    hasOwnPlan:
      speaking.value.acceptAtMost !== undefined || speaking.value.aqlPercent !== undefined,
    gauged: within.thicknessesMm.length,
    ...(pace && { pace }),
    stackPallets,
    keptShare: keptShare(settings),
    taper: taperOf(view),
    twist: twistOf(view),
    kickAllowanceMm: settings.kickAllowanceMm,
    bars: barsOf(sample)
  };
}

/** Whether a plan lets every slate of its sample be outside. */
function acceptsAll({ acceptAtMost, sampleSize }: JudgingPlan): boolean {
  return acceptAtMost >= sampleSize;
}

/**
 * The plan that a list will be judged by when it is finished, with its risks for this delivery: the
 * one that the findings then print. Undefined for a plan that would accept anything.
 */
export function planOfList(
  view: JobView,
  draw: SampleDraw,
  offered: readonly OfferedSlate[]
): PlanWithRisks | undefined {
  const delivered = tallyPallets(view).reduce((sum, { slates }) => sum + slates, 0);
  const { draws } = partOf(view, 'job');
  const { plan } = plansOf(draw, delivered, slatesHeldTo(draw, offered), draws);
  return acceptsAll(plan) ? undefined : withRisks(plan, delivered);
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
