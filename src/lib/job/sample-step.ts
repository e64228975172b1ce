import type { PalletCount } from './pallet-count.ts';

/**
 * Readings from which grades are worth setting, of each pallet or of the whole job. Ours: about what
 * shows a spread's shape.
 */
export const ENOUGH_OF_PALLET = 20;
export const ENOUGH_FOR_GRADES = 60;

/** Fewest of each pallet, however many pallets or readings there are: pallets differ. Ours. */
export const FEW_OF_PALLET = 5;

/**
 * How many slates of each pallet are to be measured before grades: the same of each, so that together
 * they are enough, and only a few once the job has enough in all.
 *
 * @param measured slates measured so far, of all pallets
 * @example 3 pallets → 20 of each; 6 → 10; 60 → 5
 */
export function wantedOfEach(pallets: number, measured: number): number {
  if (measured >= ENOUGH_FOR_GRADES) return FEW_OF_PALLET;
  const share = Math.ceil(ENOUGH_FOR_GRADES / pallets);
  return Math.min(ENOUGH_OF_PALLET, Math.max(FEW_OF_PALLET, share));
}

/**
 * The same of one pallet: no more than lies on it.
 *
 * @param slates slates that came on it; 0 when nobody knows
 * @param sorted slates that left it
 */
export function wantedOfPallet(ofEach: number, slates: number, sorted: number): number {
  return slates > 0 ? Math.min(ofEach, Math.max(0, slates - sorted)) : ofEach;
}

type Counted = Pick<PalletCount, 'palletId' | 'label' | 'slates' | 'sorted' | 'measured'>;

/** How far the sample before grades is, at the pallet that slates come from. */
export interface SampleStep {
  readonly label: string;
  readonly done: number;
  /** Slates of this pallet that are to be measured. */
  readonly of: number;
  /** The pallet to take next, once this one has enough; undefined before, or where all have. */
  readonly next?: { readonly palletId: string; readonly label: string };
  /** Whether the whole job has enough: grades come next. */
  readonly isEnough: boolean;
}

/**
 * Where the sorter is in the sample before grades.
 *
 * @param pallets in their order; not modified
 * @param currentId the pallet that slates come from
 */
export function sampleStep(
  pallets: readonly Counted[],
  currentId: string | undefined
): SampleStep | undefined {
  const here = pallets.find(({ palletId }) => palletId === currentId);
  if (!here) return undefined;
  const { label, measured: done } = here;
  const all = pallets.reduce((sum, { measured }) => sum + measured, 0);
  const ofEach = wantedOfEach(pallets.length, all);
  const of = wantedOfPallet(ofEach, here.slates, here.sorted);
  const isOpen = ({ slates, sorted, measured }: Counted): boolean =>
    measured < wantedOfPallet(ofEach, slates, sorted);
  const open = pallets.find(isOpen);
  const isEnough = open === undefined;
  const next = isEnough || isOpen(here) ? undefined : open;
  return {
    ...{ label, done, of, isEnough },
    ...(next && { next: { palletId: next.palletId, label: next.label } })
  };
}
