import { largestRemainder } from '$lib/engine/grading';

/**
 * Foretold slates of piles in whole slates as shown, so that the piles add up to the stock.
 *
 * @example wholeSlates([{ predictedSlates: 1.5 }, { predictedSlates: 1.5 }]) // [2, 1]
 */
export function wholeSlates(piles: readonly { readonly predictedSlates: number }[]): number[] {
  const slates = piles.map(({ predictedSlates }) => predictedSlates);
  const together = Math.round(slates.reduce((sum, own) => sum + own, 0));
  return together > 0 ? largestRemainder(slates, together) : slates.map(() => 0);
}
