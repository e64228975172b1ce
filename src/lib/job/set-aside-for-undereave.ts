import { type UndereavePattern, type UndereaveUse, usableForUndereave } from '$lib/engine/roof';
import {
  type JobView,
  type SetAsideReason,
  SET_ASIDE_REASONS,
  palletIds,
  partOf
} from '$lib/journal';

/** The engine's word for each reason. */
const ENGINE_REASON = {
  broken: 'broken',
  dullRing: 'dull-ring',
  twisted: 'twisted',
  tapered: 'tapered',
  wrongSize: 'wrong-size',
  inclusion: 'inclusion',
  colour: 'colour',
  other: 'other'
} as const satisfies Record<SetAsideReason, string>;

/** Slates set aside for one reason, and whether they will do as undereave slates. */
export interface SetAsideForUndereave {
  readonly reason: SetAsideReason;
  readonly slates: number;
  readonly use: UndereaveUse;
}

/** The slates set aside by reason, and which will do for the undereave row. None counted twice. */
export function setAsideForUndereave(
  view: JobView,
  pattern: Pick<UndereavePattern, 'lengthMm' | 'widthMm'>
): SetAsideForUndereave[] {
  const slatesOf = new Map<string, number>();
  for (const palletId of palletIds(view))
    for (const [key, slates] of Object.entries(partOf(view, `pallet:${palletId}`).setAside)) {
      const reason = key.split('|')[0];
      slatesOf.set(reason, (slatesOf.get(reason) ?? 0) + slates);
    }
  return SET_ASIDE_REASONS.flatMap((reason) => {
    const slates = slatesOf.get(reason) ?? 0;
    if (slates === 0) return [];
    const use = usableForUndereave(ENGINE_REASON[reason], undefined, pattern);
    return [{ reason, slates, use }];
  });
}
