import type { SampledSlate } from '$lib/journal';

/** Where one slate of the sample is taken from. */
export interface Place {
  readonly palletId: string;
  readonly layer: number;
  readonly place: number;
}

/** A place as one text. */
export const placeKey = ({ palletId, layer, place }: Place): string =>
  `${palletId}|${layer}|${place}`;

/** Where a slate of the sample was taken from. */
export function sampledPlace({ palletId, sample }: SampledSlate): Place {
  return { palletId, layer: sample.layer ?? 0, place: sample.place ?? 0 };
}
