import type { DoubleSampledGrade, GradeEstimate, NoEstimate } from '$lib/engine/statistics';
import type { ThicknessInterval } from '$lib/engine/thickness';

/** What the readings, or readings and taps together, tell of the slates in a band of thickness. */
export type BandEstimate = GradeEstimate | DoubleSampledGrade | NoEstimate;

/** Tells a band once: bars and piles are the same bands again and again while boundaries move. */
export function rememberBands(
  tell: (band: ThicknessInterval) => BandEstimate
): (band: ThicknessInterval) => BandEstimate {
  const told = new Map<string, BandEstimate>();
  return ({ fromMm, toMm }) => {
    const key = `${fromMm}|${toMm}`;
    let known = told.get(key);
    if (!known) {
      known = tell({ fromMm, toMm });
      told.set(key, known);
    }
    return known;
  };
}

/** Between how many slates each estimate lies; undefined where that is not known. */
export function rangesOf(
  estimates: readonly BandEstimate[]
): ({ low: number; high: number } | undefined)[] {
  return estimates.map((told) =>
    'countLow' in told ? { low: told.countLow, high: told.countHigh } : undefined
  );
}
