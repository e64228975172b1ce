import { describe, expect, it } from 'vitest';
import { NumberWords } from '../text/numbers.ts';
import { sayKickers } from './say-kickers.ts';

const numbers = new NumberWords('en');

describe('sayKickers', () => {
  it('never says that an estimate is none', () => {
    expect([0, 0.0049, 0.0099].map((kickers) => sayKickers(kickers, numbers))).toEqual([
      '<0.01',
      '<0.01',
      '<0.01'
    ]);
  });

  it('says two decimals below 1 and one from there on', () => {
    expect(
      [0.01, 0.26, 0.994, 0.996, 12.34].map((kickers) => sayKickers(kickers, numbers))
    ).toEqual(['0.01', '0.26', '0.99', '1.0', '12.3']);
  });
});
