import type { NumberWords } from '$lib/text';

/**
 * Kickers per 100 joints as said on the screen: one decimal, and two below 1 so that ways which are
 * all good can be told apart. An estimate is never none: below 0.01 it is said to be less than that.
 *
 * @example sayKickers(0.04, numbers) // '0.04'
 * @example sayKickers(0, numbers) // '<0.01'
 */
export function sayKickers(kickers: number, numbers: NumberWords): string {
  if (kickers < 0.01) return `<${numbers.decimal(0.01, 2)}`;
  return numbers.decimal(kickers, kickers < 0.995 ? 2 : 1);
}
