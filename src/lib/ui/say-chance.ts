import type { NumberWords } from '$lib/text';

/** A chance in per cent, as finely as it matters: 35 %, 4.2 %, < 0.1 %. */
export function sayChance(share: number, numbers: NumberWords): string {
  if (share > 0 && share < 0.001) return `< ${numbers.percent(0.001, 1)}`;
  return numbers.percent(share, share < 0.1 ? 1 : 0);
}
