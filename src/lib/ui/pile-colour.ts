/** Colours of the ramp's ends, red-green-blue: the thickest pile is darkest. */
const DARK = [24, 46, 60];
const LIGHT = [206, 222, 230];

/** The colour that repeats a pile's number: a ramp of one hue, dark for thick. */
export function pileColour(pile: number, piles: number): string {
  const share = piles > 1 ? (pile - 1) / (piles - 1) : 0;
  const channels = DARK.map((dark, index) => Math.round(dark + share * (LIGHT[index] - dark)));
  return `rgb(${channels.join(' ')})`;
}

/** Black or white, whichever reads better on the pile's colour. */
export function pileInk(pile: number, piles: number): string {
  return piles > 1 && (pile - 1) / (piles - 1) > 0.45 ? '#101418' : '#ffffff';
}
