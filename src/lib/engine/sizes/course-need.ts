import {
  type SlateSpec,
  type Slope,
  leftAtMm,
  openingsAsSlated,
  rightAtMm
} from '../roof/index.ts';
import { type SlateSet, meanWidthMm } from './slate-sets.ts';

/** Guards a quotient that should be whole against its last binary digit. */
const WHOLE = 1e-9;

/**
 * Slated width of a slope line by line, openings out, as a function to be asked often.
 *
 * @param slope sound; not modified
 * @returns mm by the distance from the eave up the rafter, mm; below the eave counts as at it
 * @throws nothing
 * Cost: linear in openings for every line asked.
 * Source: geometry; sides are straight.
 */
export function slatedWidths(slope: Slope): (fromEaveMm: number) => number {
  const widthAt = (mm: number) => rightAtMm(slope, mm) - leftAtMm(slope, mm);
  const eaveMm = widthAt(0);
  const perMm = (widthAt(slope.rafterLengthMm) - eaveMm) / slope.rafterLengthMm;
  const openings = openingsAsSlated(slope);
  return (fromEaveMm) => {
    const lineMm = Math.min(Math.max(fromEaveMm, 0), slope.rafterLengthMm);
    let widthMm = eaveMm + perMm * lineMm;
    for (const opening of openings)
      if (lineMm > opening.fromEaveMm && lineMm < opening.fromEaveMm + opening.heightMm)
        widthMm -= opening.widthMm;
    return Math.max(0, widthMm);
  };
}

/**
 * What a course takes of a set's stock: whole slates of one width, or whole mm of random widths.
 *
 * @param widthMm slated width of the course, mm
 * @param base joints of the roof, mm
 * @returns slates, each with one least joint, rounded up; mm of width, rounded up
 * @throws nothing
 * Source: width by gauge is common practice, no source.
 * @example courseNeed(5000, { …one width of 250 mm }, joint 3) // 20 slates
 */
export function courseNeed(
  widthMm: number,
  set: SlateSet,
  base: Pick<SlateSpec, 'jointMinMm'>
): number {
  if (widthMm <= 0) return 0;
  const jointMm = base.jointMinMm;
  const { widths } = set;
  if (widths.kind === 'one')
    return Math.ceil((widthMm + jointMm) / (widths.widthMm + jointMm) - WHOLE);
  const meanMm = meanWidthMm(widths);
  return Math.ceil((widthMm * meanMm) / (meanMm + jointMm) - WHOLE);
}

/** Square metres of slate in one unit of a set's stock: a slate, or a mm of width. */
export function unitAreaM2(set: SlateSet): number {
  const widthMm = set.widths.kind === 'one' ? set.widths.widthMm : 1;
  return (set.lengthMm * widthMm) / 1e6;
}
