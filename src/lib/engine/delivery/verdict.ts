import type { DeliveryFindings } from './findings.ts';
import { mostUnusableForEnough } from './finding-roof.ts';
import { largestAcceptableSd } from './variables-judgement.ts';

export type Verdict = 'take' | 'query' | 'refuse';

/** Why, in machine form: the words are the screen's. Each figure is named by its unit. */
export interface VerdictReason {
  readonly code: VerdictReasonCode;
  /** How much it weighs: the heaviest reason is the verdict; a note weighs nothing. */
  readonly weight: 'refuse' | 'query' | 'note';
  readonly figures: Readonly<Record<string, number>>;
}

export type VerdictReasonCode =
  | 'outside-order'
  | 'outside-order-unconfirmed'
  | 'outside-order-already'
  | 'tolerance-not-agreed'
  | 'list-unfinished'
  | 'sample-unfinished'
  | 'thickness-by-variables'
  | 'count-short'
  | 'count-over'
  | 'label-missing'
  | 'stack-not-measured'
  | 'stack-off-label'
  | 'roof-short'
  | 'roof-reserve-short'
  | 'roof-reserve-uncertain'
  | 'roof-uncertain'
  | 'sorting-needed'
  | 'listed-apart';

/** A figure that would have to be another for its reason to fall or arise. */
export interface WouldChange {
  readonly code:
    | 'outside-in-sample-at-most'
    | 'outside-with-asked-at-most'
    | 'places-measured'
    | 'thickness-tolerance-percent-at-least'
    | 'thickness-sd-mm-at-most'
    | 'slates-delivered-at-least'
    | 'unusable-in-sample-at-most';
  /** The figure as it stands. */
  readonly now: number;
  /** The figure on which the answer turns. */
  readonly limit: number;
}

export interface DeliveryVerdict {
  readonly verdict: Verdict;
  /** Heaviest first, then in a fixed order. */
  readonly reasons: readonly VerdictReason[];
  readonly wouldChange: readonly WouldChange[];
}

const WEIGHTS = ['refuse', 'query', 'note'] as const;

/**
 * Take, query or refuse, why, and what would change it.
 *
 * Refuse when the plan by attributes refuses on limits that the order states or the buyer confirmed
 * from it. Query when it refuses only with other limits, when no tolerance of thickness is agreed,
 * when the sample is unfinished, when the variables plan refuses, when slates, label or stack do not
 * match the order, or when the roof or its reserve may run short.
 * Else take. A delivery that only needs sorting is taken: that is the nature of slate, and its
 * hours stand in the note. The rule is ours.
 *
 * @returns reasons heaviest first; figures on which the answer turns, computed exactly
 *
 * The verdict does not depend on the order of the readings, since the findings do not.
 */
export function judgeDelivery(findings: DeliveryFindings): DeliveryVerdict {
  const all = [
    ...reasonsFromSample(findings),
    ...reasonsFromOrder(findings),
    ...reasonsFromRoof(findings)
  ];
  return verdictOf(all, turningFigures(findings));
}

/** The verdict that reasons in any order come to: the one of the heaviest. */
export function verdictOf(
  all: readonly VerdictReason[],
  wouldChange: readonly WouldChange[]
): DeliveryVerdict {
  const reasons = WEIGHTS.flatMap((weight) => all.filter((reason) => reason.weight === weight));
  const heaviest = reasons[0]?.weight ?? 'note';
  return { verdict: heaviest === 'note' ? 'take' : heaviest, reasons, wouldChange };
}

function reasonsFromSample({ outsideOrder, listedApart }: DeliveryFindings): VerdictReason[] {
  const { judged, outside, outsideForCertain, attributes, thickness } = outsideOrder;
  const reasons: VerdictReason[] = [];
  const figures = { judged, outside, outsideForCertain, acceptAtMost: attributes.acceptAtMost };
  if (outsideOrder.attributesForCertain.state === 'refused')
    reasons.push({ code: 'outside-order', weight: 'refuse', figures });
  else if (attributes.state === 'refused')
    reasons.push({ code: 'outside-order-unconfirmed', weight: 'query', figures });
  if (attributes.state === 'unfinished')
    reasons.push({
      code: 'sample-unfinished',
      weight: 'query',
      figures: { ...figures, toJudge: attributes.toJudge }
    });
  if (thickness && !thickness.accepted)
    reasons.push({
      code: 'thickness-by-variables',
      weight: 'query',
      figures: {
        meanMm: thickness.mean,
        sdMm: thickness.sd,
        shareOutside: thickness.shareOutside.total,
        allowedShare: thickness.allowedShare
      }
    });
  if (listedApart > 0)
    reasons.push({ code: 'listed-apart', weight: 'note', figures: { slates: listedApart } });
  return reasons;
}

/** What slates, label and stack say against the order, whatever the sample. */
export function reasonsFromOrder({
  count,
  stack,
  thicknessLimit
}: Pick<DeliveryFindings, 'count' | 'stack' | 'thicknessLimit'>): VerdictReason[] {
  const reasons: VerdictReason[] = [];
  if (!thicknessLimit) reasons.push({ code: 'tolerance-not-agreed', weight: 'query', figures: {} });
  const { ordered, delivered, short, over } = count;
  if (short > 0)
    reasons.push({ code: 'count-short', weight: 'query', figures: { ordered, delivered, short } });
  if (over > 0)
    reasons.push({ code: 'count-over', weight: 'note', figures: { ordered, delivered, over } });
  if (!stack.ok)
    reasons.push({
      code: stack.reason,
      weight: stack.reason === 'label-missing' ? 'query' : 'note',
      figures: {}
    });
  else if (stack.stack.outcome === 'fail')
    reasons.push({
      code: 'stack-off-label',
      weight: 'query',
      figures: {
        measuredMmPer100: stack.stack.measuredMmPer100,
        labelMmPer100: stack.stack.labelMmPer100,
        differencePercent: stack.stack.differencePercent,
        allowedPercent: stack.stack.allowedPercent ?? 0
      }
    });
  return reasons;
}

function reasonsFromRoof({ roof, sorting }: DeliveryFindings): VerdictReason[] {
  const reasons: VerdictReason[] = [];
  const figures = {
    usableLow: roof.usableInterval.low,
    usableHigh: roof.usableInterval.high,
    needed: roof.need.slates,
    reserve: roof.need.reserve
  };
  if (roof.state === 'short') reasons.push({ code: 'roof-short', weight: 'query', figures });
  if (roof.state === 'reserve short')
    reasons.push({ code: 'roof-reserve-short', weight: 'query', figures });
  if (roof.state === 'reserve uncertain')
    reasons.push({ code: 'roof-reserve-uncertain', weight: 'query', figures });
  if (roof.state === 'uncertain')
    reasons.push({ code: 'roof-uncertain', weight: 'query', figures });
  if (sorting.isNeeded === 'yes')
    reasons.push({
      code: 'sorting-needed',
      weight: 'note',
      figures: {
        ...(roof.evenness && {
          unsortedKickersPer100: roof.evenness.unsortedKickersPer100,
          sortedKickersPer100: roof.evenness.sortedKickersPer100,
          piles: roof.evenness.piles
        }),
        ...(sorting.hours && { hoursLow: sorting.hours.low, hoursHigh: sorting.hours.high }),
        ...(sorting.cost && { costLow: sorting.cost.low, costHigh: sorting.cost.high })
      }
    });
  return reasons;
}

/**
 * The counts of the sample that the plan turns on: outside by a limit of the order, which refuses,
 * and with those only asked about, which queries. One count where they are the same.
 */
export function turningCounts(
  { outside, outsideForCertain }: { readonly outside: number; readonly outsideForCertain: number },
  limit: number
): WouldChange[] {
  const certain: WouldChange = { code: 'outside-in-sample-at-most', now: outsideForCertain, limit };
  return outside === outsideForCertain
    ? [certain]
    : [certain, { code: 'outside-with-asked-at-most', now: outside, limit }];
}

function turningFigures(findings: DeliveryFindings): WouldChange[] {
  const { outsideOrder, count, roof, delivered, level } = findings;
  const { attributes } = outsideOrder;
  const isOpen = attributes.state === 'unfinished';
  const figures: WouldChange[] = isOpen
    ? [
        {
          code: 'places-measured',
          now: outsideOrder.judged,
          limit: outsideOrder.judged + attributes.toJudge
        }
      ]
    : turningCounts(outsideOrder, attributes.acceptAtMost);
  const { tolerancePercentThatAccepts, thicknessTolerancePercent, thicknessLimit } = findings;
  if (
    !isOpen &&
    tolerancePercentThatAccepts !== undefined &&
    thicknessTolerancePercent !== undefined
  )
    figures.push({
      code: 'thickness-tolerance-percent-at-least',
      now: thicknessTolerancePercent,
      limit: tolerancePercentThatAccepts
    });
  const { thickness } = outsideOrder;
  if (thickness && thicknessLimit)
    figures.push({
      code: 'thickness-sd-mm-at-most',
      now: thickness.sd,
      limit: largestAcceptableSd(
        thickness.mean,
        thickness.sampleSize,
        { low: thicknessLimit.lowMm, high: thicknessLimit.highMm },
        thickness.allowedShare
      )
    });
  if (count.short > 0)
    figures.push({
      code: 'slates-delivered-at-least',
      now: count.delivered,
      limit: count.ordered
    });
  const mostUnusable = mostUnusableForEnough(delivered, roof.judged, roof.need, level);
  if (mostUnusable !== undefined)
    figures.push({
      code: 'unusable-in-sample-at-most',
      now: roof.unusable,
      limit: mostUnusable
    });
  return figures;
}
