import { type KickSoftness, stepSdMm } from '../grading/index.ts';
import { type Random, randomNormal } from '../random.ts';
import type { LaidRows } from './laid-rows.ts';

/** SD of the step at a joint about the difference of its slates, hundredths, by their two sources. */
export type Scatter = readonly Float64Array[];

/** The scatter between slates of decks, each known in full. Linear in the slates. */
export function scatterOfDecks(decks: readonly Int32Array[], softness: KickSoftness): Scatter {
  const variances = decks.map(varianceMm2);
  return variances.map((one) =>
    Float64Array.from(variances, (other) => 100 * stepSdMm(softness, (one + other) / 2))
  );
}

function varianceMm2(deck: Int32Array): number {
  if (deck.length < 2) return 0;
  const mean = deck.reduce((sum, slate) => sum + slate, 0) / deck.length;
  const deviations = deck.reduce((sum, slate) => sum + (slate - mean) ** 2, 0);
  return deviations / (deck.length - 1) / 10_000;
}

/**
 * Lays one roof with slates dealt at random, without replacement, and reports each kicker.
 *
 * @param decks slates of each source in hundredths of a millimetre; put in another order, none lost
 * @param allowance kick allowance in hundredths; a step of exactly the allowance does not kick
 * @param kick called with the index of the course for every kicker
 * @param scatter of the steps; none if left out
 *
 * Cost: linear in the pieces. Each deal swaps the chosen slate to the front of what is left, so the
 * next roof starts from the same slates.
 */
export function dealRoof(
  rows: LaidRows,
  decks: readonly Int32Array[],
  allowance: number,
  random: Random,
  kick: (course: number) => void,
  scatter?: Scatter
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
    if (hasLeft[piece]) {
      const error = scatter ? scatter[source[piece - 1]][source[piece]] * randomNormal(random) : 0;
      if (Math.abs(thickness - left + error) > allowance) kick(course[piece]);
    }
    left = thickness;
  }
}
