import type { NumberWords } from '$lib/text';

/**
 * Kickers per 100 joints as said on the screen: one decimal, and two below 1 so that ways which are
 * all good can be told apart.
 *
 * @example sayKickers(0.04, numbers) // '0.04'
 */
export function sayKickers(kickers: number, numbers: NumberWords): string {
  return numbers.decimal(kickers, kickers > 0.005 && kickers < 0.995 ? 2 : 1);
}
