import { expect, it } from 'vitest';
import { pileColour, pileInk } from './pile-colour.ts';

/** Relative luminance of a colour: WCAG 2.2, definition of relative luminance. */
function luminance(colour: string): number {
  const hex = /^#(..)(..)(..)$/.exec(colour);
  const channels = hex
    ? hex.slice(1).map((part) => parseInt(part, 16))
    : (colour.match(/\d+/g) ?? []).map(Number);
  const [red, green, blue] = channels.map((channel) => {
    const share = channel / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: string, other: string): number {
  const [dark, light] = [luminance(one), luminance(other)].toSorted((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

const PILES = [1, 2, 3, 4, 5, 6, 7, 8];

it.each(PILES)('a number reads on every pile of %i at 7 to 1: WCAG 2.2, 1.4.6', (piles) => {
  for (let pile = 1; pile <= piles; pile++)
    expect(contrast(pileColour(pile, piles), pileInk(pile, piles))).toBeGreaterThanOrEqual(7);
});

it.each(PILES)(
  'piles of %i grow lighter from thick to thin, so that grey tells them apart',
  (piles) => {
    for (let pile = 2; pile <= piles; pile++) {
      const [thicker, thinner] = [pileColour(pile - 1, piles), pileColour(pile, piles)];
      expect(luminance(thinner)).toBeGreaterThan(luminance(thicker));
      expect(contrast(thinner, thicker)).toBeGreaterThan(1.1);
    }
  }
);
