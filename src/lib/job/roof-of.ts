import {
  type RoofLayout,
  type RoofRefused,
  type SlateSpec,
  type SlateSpecInput,
  type Slope,
  type SlopeEdge,
  layOutRoof,
  makeSlope,
  slateSpec
} from '$lib/engine/roof';
import type { SlateSpecBody, SlopeBody } from '$lib/journal';
import { slopesOf, specOf } from './queries.ts';
import { type JobPart, type JobView, partOf } from '$lib/journal';

/** What a slate's body says beside the slate itself: how far it reaches past eave and verge. */
type Overhangs = Pick<SlateSpecBody, 'eaveOverhangMm' | 'vergeOverhangMm'>;

/** Overhangs while no slate is entered. Source: a trade manual. */
export const CUSTOMARY_OVERHANGS: Overhangs = Object.freeze({
  eaveOverhangMm: 50,
  vergeOverhangMm: 50
});

/** The job's roof laid out, or why it is not: nothing entered yet, or fields that cannot stand. */
export type RoofOfJob =
  RoofLayout | RoofRefused | { readonly ok: false; readonly reason: 'no-slate' | 'no-slopes' };

/** A slate as the engine takes it; what its body leaves out has the customary value. */
export function slateForEngine(body: SlateSpecBody): SlateSpec {
  const given = Object.entries(body).filter(
    ([field, value]) => value !== undefined && !(field in CUSTOMARY_OVERHANGS)
  );
  return slateSpec(Object.fromEntries(given) as unknown as SlateSpecInput);
}

/**
 * A slope as the engine takes it, with the job's overhangs. A pitch nobody gave becomes NaN, which
 * the engine reports as a problem of that field.
 */
export function slopeForEngine(body: SlopeBody, overhangs: Overhangs): Slope {
  const { slopeId, pitchDegrees, left, right, ...others } = body;
  const measures = Object.entries(others).filter(([, value]) => value !== undefined);
  return makeSlope({
    ...(Object.fromEntries(measures) as typeof others),
    id: slopeId,
    pitchDegrees: pitchDegrees ?? Number.NaN,
    left: edgeForEngine(left),
    right: edgeForEngine(right),
    eaveOverhangMm: overhangs.eaveOverhangMm,
    vergeOverhangMm: overhangs.vergeOverhangMm
  });
}

/** An edge given by its angle on plan, else by its inset at the top, else square to the eave. */
function edgeForEngine({ kind, insetAtTopMm, planAngleDegrees }: SlopeBody['left']): SlopeEdge {
  return planAngleDegrees === undefined
    ? { kind, insetAtTopMm: insetAtTopMm ?? 0 }
    : { kind, planAngleDegrees };
}

/** The job's slate in force, as the engine takes it; undefined before one was entered. */
export function slateSpecOf(view: JobView): SlateSpec | undefined {
  const body = specOf(view);
  return body && slateForEngine(body);
}

/** The job's slopes in force, as the engine takes them, by name. */
export function slopesForEngine(view: JobView): Slope[] {
  const overhangs = specOf(view) ?? CUSTOMARY_OVERHANGS;
  return slopesOf(view).map((slope) => slopeForEngine(slope, overhangs));
}

const laidOut = new WeakMap<JobPart, RoofOfJob>();

/**
 * The job's whole roof laid out: what the Roof screen draws, the Courses screen plans and the
 * marking sheet prints.
 *
 * @returns the engine's layout, frozen, with `demand` for the planner; `no-slate` or `no-slopes`
 * before they are entered; or the engine's list of problems. The same object as long as no slate,
 * slope or setting of the job changes, so that asking again costs nothing
 */
export function roofLayoutOf(view: JobView): RoofOfJob {
  const job = partOf(view, 'job');
  let roof = laidOut.get(job);
  if (!roof) {
    roof = layOut(view);
    laidOut.set(job, roof);
  }
  return roof;
}

/** Keeps a layout that was worked out elsewhere from the same view. */
export function rememberRoof(view: JobView, roof: RoofOfJob): void {
  laidOut.set(partOf(view, 'job'), roof);
}

function layOut(view: JobView): RoofOfJob {
  const spec = slateSpecOf(view);
  if (!spec) return { ok: false, reason: 'no-slate' };
  const slopes = slopesForEngine(view);
  if (slopes.length === 0) return { ok: false, reason: 'no-slopes' };
  return layOutRoof(slopes, spec);
}
