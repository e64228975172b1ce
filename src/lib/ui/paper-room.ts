/** Room on a printed page of A4 or Letter alike, within margins of 12 and 14 mm, below its head. */
export const PAPER_ROOM = {
  heightMm: 236,
  widthMm: 181,
  /** A line of words of 11 pt. */
  lineMm: 4.7
} as const;

/** How wide letters of 11 pt are, mm, bold ones too: rather too wide than too narrow. */
const LETTER_MM = { digit: 2.05, small: 2.1, capital: 2.8, other: 1.1 } as const;

/** Lines that words of 11 pt take in a place, told rather too many than too few. */
export function paperLines(words: string, widthMm: number): number {
  let lengthMm = 0;
  for (const letter of words)
    if (/\d/.test(letter)) lengthMm += LETTER_MM.digit;
    else if (/\p{Lu}/u.test(letter)) lengthMm += LETTER_MM.capital;
    else if (/\p{L}/u.test(letter)) lengthMm += LETTER_MM.small;
    else lengthMm += LETTER_MM.other;
  return Math.max(1, Math.ceil(lengthMm / widthMm));
}
