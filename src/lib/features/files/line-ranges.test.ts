import { describe, expect, it } from 'vitest';
import { lineRanges } from './line-ranges.ts';

describe('lineRanges', () => {
  it.each([
    [[], []],
    [[7], ['7']],
    [
      [3, 4, 5, 8, 10, 11],
      ['3–5', '8', '10–11']
    ]
  ])('%j as %j', (lines, runs) => {
    expect(lineRanges(lines)).toEqual(runs);
  });
});
