/**
 * The piles that a screen tells of: how many there are, or the number that stands on each where those
 * are not simply 1, 2, 3; the thickest first. A pile is then told by its place among them, from 1.
 */
export type Piles = number | readonly number[];

/** How many piles there are. */
export function countPiles(piles: Piles): number {
  return typeof piles === 'number' ? piles : piles.length;
}

/** The number that stands on the pile at a place. */
export function numberOfPile(pile: number, piles: Piles): number {
  return typeof piles === 'number' ? pile : (piles[pile - 1] ?? pile);
}

/** The place of the pile with a number; 0 where it is not among them. */
export function placeOfPile(number: number, piles: Piles): number {
  if (typeof piles !== 'number') return piles.indexOf(number) + 1;
  return number <= piles ? number : 0;
}

/**
 * Whether piles are called thick, medium and thin: there are three, 1 to 3. Where one was opened later,
 * its number alone names each.
 */
export function haveWords(piles: Piles): boolean {
  if (countPiles(piles) !== 3) return false;
  return typeof piles === 'number' || piles.every((number, index) => number === index + 1);
}
