import { type Plan, loadOut } from '$lib/engine/courses';
import { type RoofLayout, slatesCarried } from '$lib/engine/roof';
import { type JobSettings, type UndereaveDraw, withUndereave } from '$lib/job';

/** What the lifts of a plan rest on. */
export interface LoadGround {
  readonly plan: Plan;
  /** Undereave rows still to lay: they go up before the first course of their slope. */
  readonly undereave: readonly UndereaveDraw[];
  readonly spec: RoofLayout['spec'];
  /** Mean thickness of each pile, pile 1 first; undefined where it is not known. */
  readonly thicknessMm: readonly (number | undefined)[];
  /** Thickness ordered, for piles that nobody measured. */
  readonly nominalMm?: number;
  readonly settings: JobSettings;
}

/**
 * The lifts of a plan and of the undereave slates that come off its piles; undefined where the thickness of
 * a pile that gives some is not known.
 */
export function loadListOf(ground: LoadGround) {
  const { spec, thicknessMm, nominalMm, settings } = ground;
  const plan = withUndereave(ground.plan, ground.undereave);
  const pileThicknessMm = thicknessMm.map((mm) => mm ?? nominalMm);
  if (pileThicknessMm.some((mm, index) => !mm && plan.piles[index].slates > 0)) return undefined;
  return loadOut(
    plan,
    { ...spec, pileThicknessMm: pileThicknessMm.map((mm) => mm ?? 0) },
    { stackHeightMm: settings.stackHeightMm, liftMassKg: settings.liftMassKg }
  );
}

/** Slates that one person carries of each pile whose thickness is known. */
export function carriedOf({
  spec,
  thicknessMm,
  nominalMm,
  settings
}: LoadGround): { readonly pile: number; readonly slates: number }[] {
  return thicknessMm.flatMap((own, index) => {
    const mm = own ?? nominalMm;
    return mm
      ? [{ pile: index + 1, slates: slatesCarried(settings.carryMassKg, mm, spec).slates }]
      : [];
  });
}

/** Slates set aside for the undereave, which no pile gives and nobody weighed. */
export function asideOf(undereave: readonly UndereaveDraw[]): number {
  return undereave.reduce((sum, { fromSetAside }) => sum + fromSetAside, 0);
}
