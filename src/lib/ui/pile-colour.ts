import { type Piles, countPiles } from '$lib/text';

type Colour = readonly [red: number, green: number, blue: number];

/**
 * Ends of the two parts of the ramp: one hue, dark for thick. The middle is left out, for neither black
 * nor white reads on it.
 */
const THICK: readonly [Colour, Colour] = [
  [20, 40, 54],
  [66, 92, 107]
];
const THIN: readonly [Colour, Colour] = [
  [150, 170, 181],
  [222, 233, 239]
];
/** The share of the way from thickest to thinnest at which the ramp turns from dark to light. */
const TURN = 0.45;

const BLACK = '#101418';
const WHITE = '#ffffff';

/** How far a pile is from the thickest, 0, to the thinnest, 1. */
function shareOf(pile: number, piles: Piles): number {
  const count = countPiles(piles);
  return count > 1 ? (pile - 1) / (count - 1) : 0;
}

/** The colour that repeats a pile's number: a ramp of one hue, dark for thick. */
export function pileColour(pile: number, piles: Piles): string {
  const share = shareOf(pile, piles);
  const isThick = share <= TURN;
  const [from, to] = isThick ? THICK : THIN;
  const part = isThick ? share / TURN : (share - TURN) / (1 - TURN);
  const channels = from.map((channel, index) => Math.round(channel + part * (to[index] - channel)));
  return `rgb(${channels.join(' ')})`;
}

/** Black or white, whichever reads better on the pile's colour: at 7 to 1 for every pile. */
export function pileInk(pile: number, piles: Piles): string {
  return shareOf(pile, piles) > TURN ? BLACK : WHITE;
}
