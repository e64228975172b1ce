import { type StoredEvent, foldAll, readEvent } from '$lib/journal';
import { fixedExample } from './fixed-example.ts';
import { type Judged, judgeJob } from '../../src/lib/features/delivery/delivery-judge.ts';
import { offeredSlates } from '../../src/lib/job/delivery-sample.ts';

/**
 * For tests: the delivery of the worked example judged, as if its events had been others.
 *
 * @param change what each event becomes; undefined leaves it out
 */
export function judgedExample(
  change: (event: StoredEvent) => StoredEvent | undefined = (event) => event
): Judged {
  const events = fixedExample()
    .map(change)
    .filter((event) => event !== undefined);
  const view = foldAll(events.map(readEvent));
  const judgement = judgeJob(view, offeredSlates(view));
  if (!judgement.ok) throw new Error(judgement.reason);
  return judgement;
}
