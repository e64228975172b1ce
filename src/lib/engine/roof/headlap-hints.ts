/** A headlap that published guides agree on, and the pitch it is listed for. */
export interface HeadlapHint {
  readonly headlapMm: number;
  /** The listed pitch, at or just below the slope's. */
  readonly atPitchDegrees: number;
}

/** One row: pitch in degrees, least headlap in mm. */
type HintRow = readonly [pitchDegrees: number, headlapMm: number];

/**
 * Least headlap by pitch for moderate exposure, where trade guides agree. Cells on which they do
 * not, and all of severe exposure, are left out on purpose.
 * Source: trade guides.
 */
const STEEP: readonly HintRow[] = [
  [30, 80],
  [35, 70],
  [40, 60],
  [45, 55]
];
const HALF_WIDE: readonly HintRow[] = [[27.5, 85], ...STEEP];
const WIDE: readonly HintRow[] = [[20, 115], [22.5, 105], [25, 95], ...HALF_WIDE];

/**
 * The least headlap that trade guides agree on for a slate, a pitch and moderate exposure: a hint
 * beside "the local code decides", never a rule.
 *
 * @param lengthMm length of the slate, mm
 * @param widthMm width, mm
 * @param pitchDegrees pitch of the slope
 * @returns the value of the steepest listed pitch that is not above the slope's, so that a pitch
 * between two rows gets the greater headlap; nothing where guides disagree or list nothing: other
 * sizes, flatter pitches
 * Source: trade guides for moderate exposure.
 * @example headlapHint(500, 250, 36) // { headlapMm: 70, atPitchDegrees: 35 }
 */
export function headlapHint(
  lengthMm: number,
  widthMm: number,
  pitchDegrees: number
): HeadlapHint | undefined {
  const row = rowsFor(lengthMm, widthMm).findLast(([listed]) => listed <= pitchDegrees);
  return row && { headlapMm: row[1], atPitchDegrees: row[0] };
}

function rowsFor(lengthMm: number, widthMm: number): readonly HintRow[] {
  if (lengthMm === 500 && widthMm === 300) return WIDE;
  if (lengthMm === 500 && widthMm === 250) return HALF_WIDE;
  if (lengthMm <= 400 && widthMm <= 250) return STEEP;
  return [];
}
