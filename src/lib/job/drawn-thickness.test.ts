import { describe, expect, it } from 'vitest';
import { drawnThicknessMm } from './drawn-thickness.ts';

describe('drawnThicknessMm', () => {
  it.each([
    [[], []],
    [[6], [6.5, 5.5]],
    [
      [6, 5],
      [6.5, 5.5, 4.5]
    ],
    [
      [8, 7, 5],
      [8.5, 7.5, 6, 4]
    ]
  ])('of thresholds %j is %j', (thresholdsMm, drawn) => {
    expect(drawnThicknessMm(thresholdsMm)).toEqual(drawn);
  });
});
