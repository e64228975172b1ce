import { clopperPearson } from '$lib/engine/delivery';
import { type JobView, palletIds, partOf } from '$lib/journal';

/** How many slates of a job's sample rock on a flat board by more than the kick allowance. */
export interface TwistOfJob {
  /** Slates that were tried, or looked over for twist. */
  readonly tried: number;
  readonly rocking: number;
  /** The share of the stock that rocks, 0 to 1, with 95 % confidence; undefined where none was tried. */
  readonly share: { readonly low: number; readonly high: number } | undefined;
  /** Slates set aside as twisted or bowed beside those tried. */
  readonly setAside: number;
}

/**
 * Twist among the slates measured: those tried on a flat board when measured left and right, and those
 * of a delivery's list that were looked over for defects. Slates set aside while sorting are told
 * apart: nobody picked them by chance.
 */
export function twistOf(view: JobView): TwistOfJob {
  let [tried, rocking, setAside] = [0, 0, 0];
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
    tried++;
    if (isTwisted) rocking++;
  }
  const share = tried > 0 ? clopperPearson(rocking, tried, 0.95) : undefined;
  return { tried, rocking, share, setAside };
}
