import { requireWhole } from '../errors.ts';
import {
  judgeByAttributes,
  type AttributesJudgement,
  type CheckFinding,
  type DefectFinding
} from './finding-outside-order.ts';
import { type PlanWithRisks, planForSize, withRisks } from './judging-plan.ts';
import type { DeliveryFindings } from './findings.ts';

/** What was found among the slates measured so far of a list that is not walked to its end. */
export interface SampleSoFar extends Pick<
  DeliveryFindings,
  'delivered' | 'count' | 'stack' | 'listedApart' | 'thicknessLimit' | 'thicknessTolerancePercent'
> {
  /** The plan for the whole list: its size is what is judged when the list is finished. */
  readonly plan: PlanWithRisks;
  readonly judged: number;
  readonly outside: number;
  /** Of these, outside by a limit that the order states or the buyer confirmed from it. */
  readonly outsideForCertain: number;
  readonly byCheck: readonly Pick<
    CheckFinding,
    'check' | 'measured' | 'failed' | 'failedForCertain' | 'basis'
  >[];
  readonly byDefect: readonly DefectFinding[];
  /** Decided before the end only where what is still open cannot turn it. */
  readonly attributes: AttributesJudgement;
  /** The same, counting only what is outside for certain. */
  readonly attributesForCertain: AttributesJudgement;
}

/**
 * What may be said before a list is finished: counts of what was measured, and what the plan by
 * attributes already decides.
 *
 * A list is walked pallet by pallet and layer by layer, so its beginning is no random sample of the
 * delivery. Whatever speaks of the whole delivery is therefore left out: intervals, usable slates,
 * hours and costs of sorting, evenness, the variables plan, and pallets compared. The plan by
 * attributes is a rule about the whole list: once more are outside than it accepts, or so few that
 * the rest cannot reach it, the rest cannot turn it (curtailed inspection).
 *
 * @param findings what the same slates would say as a finished sample; not modified
 * @param open places of the list still to be measured, whole, 0 or more
 * @throws EngineError `not-whole`, `out-of-range`
 */
export function findSoFar(findings: DeliveryFindings, open: number): SampleSoFar {
  requireWhole(open, 0, 'places still open');
  const { judged, outside, outsideForCertain, byCheck, byDefect } = findings.outsideOrder;
  const plan =
    judged + open > findings.plan.sampleSize
      ? withRisks(planForSize(findings.plan, judged + open), findings.delivered)
      : findings.plan;
  const { delivered, count, stack, listedApart, thicknessLimit } = findings;
  return {
    delivered,
    count,
    stack,
    listedApart,
    ...(thicknessLimit && {
      thicknessLimit,
      thicknessTolerancePercent: findings.thicknessTolerancePercent
    }),
    plan,
    judged,
    outside,
    outsideForCertain,
    byCheck: byCheck.map(({ check, measured, failed, failedForCertain, basis }) => ({
      check,
      measured,
      failed,
      failedForCertain,
      basis
    })),
    byDefect,
    attributes: judgeByAttributes(plan, judged, outside),
    attributesForCertain: judgeByAttributes(plan, judged, outsideForCertain)
  };
}
