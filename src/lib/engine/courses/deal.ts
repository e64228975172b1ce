import type { Random } from '../random.ts';
import type { LaidRows } from './laid-rows.ts';

/**
 * Lays one roof with slates dealt at random, without replacement, and reports each kicker.
 *
 * @param decks slates of each source in hundredths of a millimetre; put in another order, none lost
 * @param allowance kick allowance in hundredths; a step of exactly the allowance does not kick
 * @param kick called with the index of the course for every kicker
 *
 * Cost: linear in the pieces. Each deal swaps the chosen slate to the front of what is left, so the
 * next roof starts from the same slates.
 */
export function dealRoof(
  rows: LaidRows,
  decks: readonly Int32Array[],
  allowance: number,
  random: Random,
  kick: (course: number) => void
): void {
  const dealt = new Int32Array(decks.length);
  const { source, hasLeft, course } = rows;
  let left = 0;
  for (let piece = 0; piece < source.length; piece++) {
    const deck = decks[source[piece]];
    const front = dealt[source[piece]]++;
    const chosen = front + Math.floor(random() * (deck.length - front));
    const thickness = deck[chosen];
    deck[chosen] = deck[front];
    deck[front] = thickness;
    if (hasLeft[piece] && Math.abs(thickness - left) > allowance) kick(course[piece]);
    left = thickness;
  }
}
