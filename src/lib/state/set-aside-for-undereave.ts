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
  /** How many of them the sorter marked for the undereave row. */
  readonly marked: number;
  readonly use: UndereaveUse;
}

/** The slates set aside by reason, and which will do for the undereave row. None counted twice. */
export function setAsideForUndereave(
  view: JobView,
  pattern: Pick<UndereavePattern, 'lengthMm' | 'widthMm'>
): SetAsideForUndereave[] {
  const slatesOf = new Map<string, number>();
  const markedOf = new Map<string, number>();
  for (const palletId of palletIds(view))
    for (const [key, slates] of Object.entries(partOf(view, `pallet:${palletId}`).setAside)) {
      const [reason, use] = key.split('|');
      slatesOf.set(reason, (slatesOf.get(reason) ?? 0) + slates);
      if (use === 'undereave') markedOf.set(reason, (markedOf.get(reason) ?? 0) + slates);
    }
  return SET_ASIDE_REASONS.flatMap((reason) => {
    const slates = slatesOf.get(reason) ?? 0;
    if (slates === 0) return [];
    const use = usableForUndereave(ENGINE_REASON[reason], undefined, pattern);
    return [{ reason, slates, marked: markedOf.get(reason) ?? 0, use }];
  });
}

/**
 * How many of the undereave slates that a roof takes can come from slates set aside, at most: those
 * marked for the undereave row, less any that will not do. They have the width of a slate, so none
 * stands for a slate-and-a-half.
 *
 * @param wanted undereave slates of the roof
 */
export function undereaveServedAtMost(
  setAside: readonly SetAsideForUndereave[],
  wanted: number
): number {
  const marked = setAside
    .filter(({ use }) => use.use !== 'no')
    .reduce((sum, line) => sum + line.marked, 0);
  return Math.min(marked, wanted);
}
