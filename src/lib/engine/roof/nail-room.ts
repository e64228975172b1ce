import { type Opening, type Slope, insetAtTopMm, leftAtMm, rightAtMm } from './slope-shape.ts';

/** Slate left round a nail hole, hole to edge, mm. Source: common practice, no source. */
export const NAIL_EDGE_MM = 25;

/** Lengths closer than this are one length. */
const SAME_MM = 1e-6;

/** What cuts a slate along its course: its own sides, or an opening beside it. */
interface Sides {
  readonly leftMm: number;
  readonly rightMm: number;
}

/**
 * Whether a piece has room for its nail: somewhere on its hole line lies a hole with 25 mm of slate
 * round it, to its own sides, to the hip or valley that cuts it and to the openings that notch it.
 *
 * Above an opening that begins inside the piece no hole counts, and beside it only one with 25 mm of
 * slate on that side all the way down: the slate above hangs on the strip beside the opening. An
 * opening that takes the tail alone leaves the hole above it.
 *
 * @param sides where the piece would end if neither hip, valley nor notch cut it, slope coordinates
 * @param openings those the piece may meet, as slated
 * @param lines up the rafter from the eave, mm: the piece's tail and its hole line
 * @returns exact for straight edges and square openings. Linear in the openings
 * Source: common practice, no source.
 */
export function hasNailRoom(
  sides: Sides,
  slope: Slope,
  openings: readonly Opening[],
  lines: { readonly tailMm: number; readonly holeMm: number }
): boolean {
  const { tailMm, holeMm } = lines;
  const toRake = (side: 'left' | 'right') =>
    NAIL_EDGE_MM * Math.hypot(1, insetAtTopMm(slope, slope[side]) / slope.rafterLengthMm);
  const firstMm = Math.max(sides.leftMm + NAIL_EDGE_MM, leftAtMm(slope, holeMm) + toRake('left'));
  const lastMm = Math.min(sides.rightMm - NAIL_EDGE_MM, rightAtMm(slope, holeMm) - toRake('right'));
  const barred = openings
    .map((opening) => barredBy(opening, tailMm, holeMm))
    .filter((extent) => extent !== undefined)
    .sort((one, other) => one.leftMm - other.leftMm);
  let nextMm = firstMm;
  for (const { leftMm, rightMm } of barred)
    if (leftMm < nextMm - SAME_MM) nextMm = Math.max(nextMm, rightMm);
    else break;
  return nextMm <= lastMm + SAME_MM;
}

/** The stretch of the hole line that an opening leaves no room on. */
function barredBy(opening: Opening, tailMm: number, holeMm: number): Sides | undefined {
  const fromMm = opening.fromEaveMm;
  const endsMm = fromMm + opening.heightMm;
  if (endsMm <= tailMm) return undefined;
  const toMm = fromMm > tailMm ? Math.max(endsMm, holeMm) : endsMm;
  const awayMm = Math.max(0, fromMm - holeMm, holeMm - toMm);
  if (awayMm >= NAIL_EDGE_MM) return undefined;
  const besideMm = Math.sqrt(NAIL_EDGE_MM ** 2 - awayMm ** 2);
  return {
    leftMm: opening.fromLeftMm - besideMm,
    rightMm: opening.fromLeftMm + opening.widthMm + besideMm
  };
}
