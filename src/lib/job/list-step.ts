import { type JobView, current, partOf } from '$lib/journal';
import { type Place, placeKey, sampledPlace } from './sample-place.ts';

/** How far the sample list of the delivery is, and its next place on a pallet. */
export interface ListStep extends Place {
  readonly done: number;
  readonly of: number;
}

/**
 * Where the walk along the delivery's sample list is, at a pallet of which nothing was measured or
 * sorted but for the list: a slate taken from it otherwise keeps the rest of its list out of the
 * verdict. Undefined without a list, once the pallet was begun, or when its places are measured.
 * Looks at the list only while the pallet is untouched.
 */
export function listStep(view: JobView, palletId: string): ListStep | undefined {
  const draw = current(partOf(view, 'job').draws);
  if (!draw || Object.keys(partOf(view, `pallet:${palletId}`).piles).length > 0) return undefined;
  const done = new Set(
    partOf(view, 'sample').slates.map(({ value }) => placeKey(sampledPlace(value)))
  );
  const [next] = draw.positions
    .filter((place) => place.palletId === palletId && !done.has(placeKey(place)))
    .sort((one, other) => one.layer - other.layer || one.place - other.place);
  const measured = draw.positions.filter((place) => done.has(placeKey(place))).length;
  return next && { ...next, done: measured, of: draw.positions.length };
}
