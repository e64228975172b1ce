import { beforeAll, describe, expect, it } from 'vitest';
import { LOCALES, type Locale, words } from '$lib/text';
import { sayTold, type Told } from '$lib/app/told.ts';
import { verdictWords } from './verdict-words.ts';

/** A slate of 6.18 mm under a threshold of 6.20 mm. */
const BORDERLINE: Told = {
  kind: 'gauged',
  act: { type: 'slateGauged', body: { palletId: 'a', points: [618], gradesId: 'g', pile: 2 } },
  palletLabel: 'A',
  piles: 3,
  thicknessMm: 6.18,
  taperMm: 0,
  points: [618],
  judgement: { pile: 2, borderlineMm: 6.2, rogue: null }
};
/** Words that send the slate back to the gauge: it would then be booked twice. */
const TO_THE_GAUGE =
  /\b(again|once more|gauge|otra vez|lea|mida|encore|mesurez|ponownie|zmierz|odczytaj|iar|măsurați|citiți)\b/iu;

describe.each(Object.keys(LOCALES) as Locale[])('a borderline slate in %s', (locale) => {
  beforeAll(async () => {
    await words.load('sort');
    await words.use(locale);
  });

  it('is told its pile and that either is right, and never sent back to the gauge', () => {
    const on = { told: BORDERLINE, prompt: undefined, refusal: undefined };
    const { pile, marks } = verdictWords(
      { ...on, saveStatus: 'saved', way: 'gauge' },
      words.text,
      words.numbers
    );
    expect(pile).toBe(2);
    expect(marks.map(({ kind }) => kind)).toEqual(['borderline']);
    expect(marks[0].why).toContain(words.numbers.mm(6.2, 2));
    const said = `${marks[0].title} ${marks[0].why} ${sayTold(BORDERLINE, words.text, words.numbers)}`;
    expect(said).not.toMatch(TO_THE_GAUGE);
  });
});
