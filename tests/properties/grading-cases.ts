import fc from 'fast-check';
import { type ThicknessBins, binsFromPairs } from '$lib/engine/thickness';

export const SEED = 20_260_702;

export const pair = fc.tuple(fc.integer({ min: 300, max: 1000 }), fc.integer({ min: 1, max: 30 }));
export const spread = (minLength: number, maxLength: number) =>
  fc
    .uniqueArray(pair, { minLength, maxLength, selector: ([hundredths]) => hundredths })
    .map(binsFromPairs);
export const allowance = fc.integer({ min: 0, max: 300 }).map((hundredths) => hundredths / 100);
export const thresholds = fc
  .uniqueArray(fc.integer({ min: 280, max: 1020 }), { maxLength: 7 })
  .map((lines) => lines.sort((one, other) => other - one).map((line) => line / 100));

/** All ways to choose `count` of the numbers 1 to `most`, rising. */
export function choices(most: number, count: number, from = 1): number[][] {
  if (count === 0) return [[]];
  const found: number[][] = [];
  for (let first = from; first <= most; first++)
    for (const rest of choices(most, count - 1, first + 1)) found.push([first, ...rest]);
  return found;
}

/** Sum of squares about the mean, slate by slate. */
export function sumOfSquares(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
}

/** Every slate of a spread, thinnest first, mm. */
export function slatesOf(bins: ThicknessBins): number[] {
  return [...bins.hundredths].flatMap((hundredths, bin) =>
    new Array<number>(bins.counts[bin]).fill(hundredths / 100)
  );
}
