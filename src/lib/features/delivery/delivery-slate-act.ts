import { toHundredths } from '$lib/engine';
import type { GaugedSlate } from '$lib/gauge';
import type { Place } from '$lib/job';
import type { NewEvent, SampleSlate, SetAsideReason } from '$lib/journal';
import { type TypedFields, readFields } from './delivery-slate-fields.ts';

/** What is gauged and seen of a slate of the list. */
export interface SlateSeen {
  readonly gauged: GaugedSlate | undefined;
  readonly fields: TypedFields;
  readonly ring: 'clear' | 'dull' | undefined;
  /** Undefined: not looked over. */
  readonly defects: readonly SetAsideReason[] | undefined;
  readonly sides: { readonly body: { rocks?: boolean } };
}

/** The act that keeps a slate of a list; undefined where nothing is known that could be kept. */
export function slateAct(
  { palletId, layer, place }: Place,
  drawId: string,
  { gauged, fields, ring, defects, sides }: SlateSeen
): NewEvent | undefined {
  const sample: SampleSlate = {
    ...{ drawId, layer, place },
    ...readFields(fields),
    ...(ring && { ring }),
    ...(defects && { defects: [...defects] })
  };
  if (gauged) {
    const points = gauged.pointsMm.map(toHundredths);
    const body = { palletId, points, gradesId: null, pile: null, sample, ...sides.body };
    return { type: 'slateGauged', body };
  }
  const reason = defects?.[0] ?? (ring === 'dull' ? 'dullRing' : undefined);
  return reason && { type: 'slateSetAside', body: { palletId, reason, use: 'return', sample } };
}
