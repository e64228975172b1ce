import { requireWhole } from '../errors.ts';
import type { GradeFigures } from './grade-figures.ts';
import { MOST_PILES } from './piles.ts';

/** Any way to set boundaries: thresholds for a number of piles, or word that there are none. */
export type CutIntoPiles = (
  piles: number
) => { readonly ok: true; readonly thresholdsMm: readonly number[] } | { readonly ok: false };

export interface CurvePoint {
  readonly piles: number;
  readonly thresholdsMm: readonly number[];
  readonly figures: GradeFigures;
  /** On the roof, or over all the stock while there is no roof. */
  readonly expectedKickersPer100Joints: number;
}

/**
 * Kickers against the number of piles, for one way to set boundaries: is a further pile worth its
 * floor space?
 *
 * @param figuresAt the figures of the stock and the roof, from `gradeFigures`
 * @param method gives thresholds for a number of piles
 * @param mostPiles the curve runs from 1 pile to this many
 * @returns one point per number of piles; numbers for which the method has no boundaries are left
 * out. A point whose roof lacks courses has its kickers over the courses that can be laid
 *
 * Cost: that of the method and the figures, once per point.
 * @throws EngineError `not-whole`, `out-of-range`
 */
export function kickerCurve(
  figuresAt: (thresholdsMm: readonly number[]) => GradeFigures,
  method: CutIntoPiles,
  mostPiles = MOST_PILES
): CurvePoint[] {
  requireWhole(mostPiles, 1, 'most piles');
  const points: CurvePoint[] = [];
  for (let piles = 1; piles <= mostPiles; piles++) {
    const boundaries = method(piles);
    if (!boundaries.ok) continue;
    const figures = figuresAt(boundaries.thresholdsMm);
    const { expectedKickersPer100Joints } = figures.roof ?? figures;
    points.push({
      piles,
      thresholdsMm: boundaries.thresholdsMm,
      figures,
      expectedKickersPer100Joints
    });
  }
  return points;
}
