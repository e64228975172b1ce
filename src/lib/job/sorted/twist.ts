import { clopperPearson } from '$lib/engine/delivery';
import { type JobView, palletIds, partOf } from '$lib/journal';

/** How many slates of a job's sample rock on a flat board by more than the kick allowance. */
export interface TwistOfJob {
  /** Slates that were tried on a board. */
  readonly tried: number;
  readonly rocking: number;
  /** The share of the stock that rocks, 0 to 1, with 95 % confidence; undefined where none was tried. */
  readonly share: { readonly low: number; readonly high: number } | undefined;
  /** Slates of a delivery's list that were looked over and not tried, and those that looked twisted. */
  readonly lookedOver: number;
  readonly looksTwisted: number;
  /** Slates set aside as twisted or bowed beside those of a list. */
  readonly setAside: number;
}

/**
 * Twist among the slates measured. The share is of those tried on a flat board alone; slates of a
 * delivery's list that were looked over are told apart, since the eye sees no step in millimetres, and
 * so are slates set aside while sorting, which nobody picked by chance.
 */
export function twistOf(view: JobView): TwistOfJob {
  let [tried, rocking, lookedOver, looksTwisted, setAside] = [0, 0, 0, 0, 0];
  for (const palletId of palletIds(view)) {
    const { onBoard, setAside: aside } = partOf(view, `pallet:${palletId}`);
    rocking += onBoard.rocks ?? 0;
    tried += (onBoard.rocks ?? 0) + (onBoard.flat ?? 0);
    for (const [key, slates] of Object.entries(aside))
      if (key.startsWith('twisted|')) setAside += slates;
  }
  for (const { value } of partOf(view, 'sample').slates) {
    const isTwisted = value.setAside === 'twisted' || value.sample.defects?.includes('twisted');
    if (value.setAside === 'twisted') setAside--;
    // one tried on a board is counted with its pallet
    if (value.rocks !== undefined || (!value.sample.defects && !isTwisted)) continue;
    lookedOver++;
    if (isTwisted) looksTwisted++;
  }
  const share = tried > 0 ? clopperPearson(rocking, tried, 0.95) : undefined;
  return { tried, rocking, share, lookedOver, looksTwisted, setAside };
}
