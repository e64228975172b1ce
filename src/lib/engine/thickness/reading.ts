import { EngineError } from '../errors.ts';
import { MM_PER_INCH, toHundredths } from '../units.ts';
import { HIGHEST_HUNDREDTHS, LOWEST_HUNDREDTHS } from './bins.ts';

/** Most points at which one slate is gauged. */
export const MOST_POINTS = 4;

/** Thicknesses a refused reading is likely to have meant, mm. Common practice, no source. */
const USUAL_FROM_MM = 3;
const USUAL_TO_MM = 20;

/** What a refused number may have been meant as, and the thickness that would make it. */
export interface ReadingHint {
  /** A unit the number may be in, or the place where its decimal point may be missing. */
  readonly meantAs: 'inches' | 'centimetres' | 'tenths' | 'hundredths';
  readonly lengthMm: number;
}

/** One slate as gauged. */
export interface SlateReading {
  readonly ok: true;
  /** The points as read, rounded to 0.01 mm, in the order given. */
  readonly pointsMm: readonly number[];
  /** Mean of the points, rounded to 0.01 mm. */
  readonly thicknessMm: number;
  /** The same in whole hundredths of a millimetre: the slate's bin. */
  readonly hundredths: number;
  /** Thickest point less thinnest; 0 for one point. */
  readonly taperMm: number;
}

/** A reading to ask about: nothing of it may be stored silently. */
export interface RefusedReading {
  readonly ok: false;
  readonly reason: 'not-a-number' | 'too-thin' | 'too-thick';
  /** Which point was refused, counted from 0: the first one that is wrong. */
  readonly point: number;
  /** What the number may have meant, likeliest first; empty where nothing fits. */
  readonly hints: readonly ReadingHint[];
}

/**
 * Turns the gauged points of one slate into its thickness and taper, or says why to ask again.
 *
 * @param pointsMm one to four points, mm; not modified
 * @returns the mean of the points (halves of a hundredth round up) and max − min; or the first
 * point that is not a number, or lies outside 1.5 to 40 mm (both ends accepted), with what it may
 * have meant
 *
 * Definition: points are rounded to 0.01 mm first, and the mean is taken over whole hundredths, so
 * that binary rounding cannot move a slate.
 *
 * @throws EngineError `wrong-length` for no point or more than four
 * @example
 * readSlate([6.2, 6.6]); // { ok: true, thicknessMm: 6.4, hundredths: 640, taperMm: 0.4, … }
 * readSlate([0.25]); // { ok: false, reason: 'too-thin', hints: [{ meantAs: 'inches', lengthMm: 6.35 }], … }
 */
export function readSlate(pointsMm: readonly number[]): SlateReading | RefusedReading {
  if (pointsMm.length < 1 || pointsMm.length > MOST_POINTS)
    throw new EngineError(
      'wrong-length',
      `${pointsMm.length} points; give one to ${MOST_POINTS} for each slate`
    );
  const points: number[] = [];
  for (const [point, lengthMm] of pointsMm.entries()) {
    if (!Number.isFinite(lengthMm)) return { ok: false, reason: 'not-a-number', point, hints: [] };
    const hundredths = toHundredths(lengthMm);
    if (hundredths < LOWEST_HUNDREDTHS || hundredths > HIGHEST_HUNDREDTHS)
      return {
        ok: false,
        reason: hundredths < LOWEST_HUNDREDTHS ? 'too-thin' : 'too-thick',
        point,
        hints: hintsFor(lengthMm)
      };
    points.push(hundredths);
  }
  const hundredths = Math.round(points.reduce((sum, point) => sum + point, 0) / points.length);
  return {
    ok: true,
    pointsMm: points.map((point) => point / 100),
    thicknessMm: hundredths / 100,
    hundredths,
    taperMm: (Math.max(...points) - Math.min(...points)) / 100
  };
}

/** The readings a refused number may stand for, likeliest first, kept to usual thicknesses. */
function hintsFor(number: number): ReadingHint[] {
  const candidates: ReadingHint[] = [
    { meantAs: 'inches', lengthMm: number * MM_PER_INCH },
    { meantAs: 'centimetres', lengthMm: number * 10 },
    { meantAs: 'tenths', lengthMm: number / 10 },
    { meantAs: 'hundredths', lengthMm: number / 100 }
  ];
  return candidates
    .map(({ meantAs, lengthMm }) => ({ meantAs, lengthMm: toHundredths(lengthMm) / 100 }))
    .filter(({ lengthMm }) => lengthMm >= USUAL_FROM_MM && lengthMm <= USUAL_TO_MM);
}
