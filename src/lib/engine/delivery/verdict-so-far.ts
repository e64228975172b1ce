import type { SampleSoFar } from './sample-so-far.ts';
import {
  type DeliveryVerdict,
  type VerdictReason,
  type WouldChange,
  reasonsFromOrder,
  turningCounts,
  verdictOf
} from './verdict.ts';

/** How far a list is measured. */
export interface ListMeasured {
  readonly places: number;
  readonly measured: number;
}

/**
 * The verdict while a list is unfinished: refuse where the plan is already decided against the
 * delivery on limits that the order states or the buyer confirmed from it, else query.
 *
 * @returns what would change it: finishing the list, unless the plan is decided; then a smaller
 *   number outside. No tolerance, spread or roof is named: those rest on the whole sample.
 */
export function judgeSoFar(soFar: SampleSoFar, list: ListMeasured): DeliveryVerdict {
  const { judged, outside, outsideForCertain, plan, attributes } = soFar;
  const isRefused = soFar.attributesForCertain.state === 'refused';
  const open = list.places - list.measured;
  const figures = {
    judged,
    outside,
    outsideForCertain,
    acceptAtMost: plan.acceptAtMost,
    listed: plan.sampleSize,
    places: list.places,
    measured: list.measured,
    open
  };
  const reasons: VerdictReason[] = [];
  if (isRefused) reasons.push({ code: 'outside-order-already', weight: 'refuse', figures });
  else if (attributes.state === 'refused')
    reasons.push({ code: 'outside-order-unconfirmed', weight: 'query', figures });
  reasons.push({ code: 'list-unfinished', weight: isRefused ? 'note' : 'query', figures });
  if (soFar.listedApart > 0)
    reasons.push({ code: 'listed-apart', weight: 'note', figures: { slates: soFar.listedApart } });

  const wouldChange: WouldChange[] =
    attributes.state === 'refused' ? turningCounts(soFar, plan.acceptAtMost) : [];
  if (!isRefused && open > 0)
    wouldChange.push({ code: 'places-measured', now: list.measured, limit: list.places });
  if (soFar.count.short > 0)
    wouldChange.push({
      code: 'slates-delivered-at-least',
      now: soFar.count.delivered,
      limit: soFar.count.ordered
    });
  return verdictOf([...reasons, ...reasonsFromOrder(soFar)], wouldChange);
}
