import { requireWhole, EngineError } from '$lib/engine';
import { MOST_POINTS, readSlate } from '$lib/engine/thickness';

/** The points of the slate being gauged. */
export interface PointsState {
  /** Points per slate: one to four. */
  readonly wanted: number;
  /** Points gauged so far, mm. */
  readonly pointsMm: readonly number[];
}

/** One slate with all its points. */
export interface GaugedSlate {
  readonly pointsMm: readonly number[];
  /** Mean of the points, rounded to 0.01 mm. */
  readonly thicknessMm: number;
  /** Thickest point less thinnest. */
  readonly taperMm: number;
}

/** The points after one more, and the slate if they are complete. */
export interface PointsStep {
  readonly state: PointsState;
  readonly slate: GaugedSlate | null;
}

/**
 * Begins a slate gauged at `wanted` points.
 *
 * @throws EngineError unless `wanted` is a whole number from 1 to 4
 */
export function startPoints(wanted: number): PointsState {
  requireWhole(wanted, 1, 'points');
  if (wanted > MOST_POINTS)
    throw new EngineError('out-of-range', `points is ${wanted}; give at most ${MOST_POINTS}`);
  return { wanted, pointsMm: [] };
}

/**
 * Adds an accepted reading to the slate. The last point completes it: its thickness is the mean of
 * the points, its taper their range, and the next point begins the next slate.
 *
 * @param valueMm an accepted reading, mm
 * @throws EngineError `out-of-range` for a value outside the accepted range
 * @example points 6.2 then 6.6 of 2 → { thicknessMm: 6.4, taperMm: 0.4 }
 */
export function addPoint(state: PointsState, valueMm: number): PointsStep {
  const pointsMm = [...state.pointsMm, valueMm];
  const slate = readSlate(pointsMm);
  if (!slate.ok)
    throw new EngineError('out-of-range', `point is ${valueMm} mm; give an accepted reading`);
  if (pointsMm.length < state.wanted)
    return { state: { ...state, pointsMm: slate.pointsMm }, slate: null };
  return {
    state: startPoints(state.wanted),
    slate: {
      pointsMm: slate.pointsMm,
      thicknessMm: slate.thicknessMm,
      taperMm: slate.taperMm
    }
  };
}

/** Takes the last point back; a slate without points stays as it is. */
export function dropPoint(state: PointsState): PointsState {
  return { ...state, pointsMm: state.pointsMm.slice(0, -1) };
}
