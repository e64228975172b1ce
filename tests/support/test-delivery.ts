import { type JobView, type StoredEvent, foldAll, readEvent } from '$lib/journal';
import { fixedExample } from './fixed-example.ts';
import { type Judged, judgeJob } from '../../src/lib/features/delivery/delivery-judge.ts';
import { type OfferedSlate, offeredSlates } from '../../src/lib/job/delivery-sample.ts';

type Change = (event: StoredEvent) => StoredEvent | undefined;
const asItIs: Change = (event) => event;

function viewOf(change: Change): JobView {
  const events = fixedExample()
    .map(change)
    .filter((event) => event !== undefined);
  return foldAll(events.map(readEvent));
}

/** For tests: the slates that judge the worked example, as if its events had been others. */
export function judgingExample(change: Change = asItIs): OfferedSlate[] {
  return offeredSlates(viewOf(change)).filter(({ standing }) => standing === 'judges');
}

/**
 * For tests: the delivery of the worked example judged, as if its events had been others.
 *
 * @param change what each event becomes; undefined leaves it out
 */
export function judgedExample(change: Change = asItIs): Judged {
  const view = viewOf(change);
  const judgement = judgeJob(view, offeredSlates(view));
  if (!judgement.ok) throw new Error(judgement.reason);
  return judgement;
}
