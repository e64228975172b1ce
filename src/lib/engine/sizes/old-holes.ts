import { EngineError, requireFinite } from '../errors.ts';

/** Old and new hole nearer than this leave too little slate between them, mm. Common practice. */
export const NEAR_HOLES_MM = 15;
/** An old hole this near its place serves again, mm: the play of a nail. Common practice. */
const SAME_HOLE_MM = 3;
/** An old hole must lie this far under the slate above to count as covered, mm. Common practice. */
const UNDER_COVER_MM = 10;

/** Where an old hole comes to lie under a new gauge. */
export type OldHolePlace =
  | 'seen'
  | 'covered'
  | 'serves-again'
  /** So near the new hole that the slate may break between them. */
  | 'doubled';

/** Where the old holes lie, as the slate was and turned end for end. */
export interface OldHoles {
  readonly asItWas: readonly OldHolePlace[];
  readonly turned: readonly OldHolePlace[];
  /** The way with fewer holes seen, then fewer doubled; as it was, of equals. */
  readonly better: 'as-it-was' | 'turned' | 'neither';
}

/**
 * Where the old nail holes of a reclaimed slate fall when it is laid to another gauge.
 *
 * The lowest margin of a slate is seen; above it the slates of the next course cover it. A hole
 * nearer the tail than the margin and 10 mm of cover counts as seen. Turned end for end, a hole at d
 * from the tail lies at length − d.
 *
 * @param lengthMm of the slate, mm
 * @param oldHolesMm from the old tail, mm, each within the slate; may be empty
 * @param marginMm margin under the new gauge, mm
 * @param newHoleMm where the new hole goes, from the tail, mm
 * @returns the place of each hole both ways, in the order given, and the better way; `neither` where
 * holes are seen either way
 * @throws EngineError `not-finite`, `out-of-range` for a hole outside the slate
 * Source: geometry of double lap; distances of cover and of holes are common practice, no source.
 * @example
 * // 500 mm slate holed at 304 for a gauge of 200, now at 190: covered; turned, at 196, it is seen
 */
export function oldHolesUnder(
  lengthMm: number,
  oldHolesMm: readonly number[],
  marginMm: number,
  newHoleMm: number
): OldHoles {
  for (const value of [lengthMm, marginMm, newHoleMm]) requireFinite(value, 'length');
  for (const hole of oldHolesMm) {
    requireFinite(hole, 'hole');
    if (hole < 0 || hole > lengthMm)
      throw new EngineError(
        'out-of-range',
        `a hole at ${hole} mm is not on a slate of ${lengthMm} mm`
      );
  }
  const placeOf = (fromTailMm: number): OldHolePlace => {
    const apart = Math.abs(fromTailMm - newHoleMm);
    if (apart <= SAME_HOLE_MM) return 'serves-again';
    if (fromTailMm < marginMm + UNDER_COVER_MM) return 'seen';
    return apart < NEAR_HOLES_MM ? 'doubled' : 'covered';
  };
  const asItWas = oldHolesMm.map(placeOf);
  const turned = oldHolesMm.map((hole) => placeOf(lengthMm - hole));
  const count = (places: readonly OldHolePlace[], place: OldHolePlace) =>
    places.filter((other) => other === place).length;
  const [seen, seenTurned] = [count(asItWas, 'seen'), count(turned, 'seen')];
  if (seen > 0 && seenTurned > 0) return { asItWas, turned, better: 'neither' };
  const isTurnedBetter =
    seenTurned < seen ||
    (seenTurned === seen && count(turned, 'doubled') < count(asItWas, 'doubled'));
  return { asItWas, turned, better: isTurnedBetter ? 'turned' : 'as-it-was' };
}
