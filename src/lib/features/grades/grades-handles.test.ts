import { describe, expect, it } from 'vitest';
import { moveThreshold, reachOf } from './grades-handles.ts';

const ends = { lowMm: 4, highMm: 9 };

describe('a boundary handle', () => {
  it('moves where it is asked to, to the hundredth', () => {
    expect(moveThreshold([7, 6], 0, 7.456, ends)).toEqual([7.46, 6]);
    expect(moveThreshold([7, 6], 1, 6.05, ends)).toEqual([7, 6.05]);
  });

  it('stops 0.05 mm from its neighbours', () => {
    expect(moveThreshold([7, 6], 0, 2, ends)).toEqual([6.05, 6]);
    expect(moveThreshold([7, 6], 1, 8, ends)).toEqual([7, 6.95]);
  });

  it('stops where the piles at the ends would be empty', () => {
    expect(moveThreshold([7, 6], 0, 20, ends)).toEqual([9, 6]);
    expect(moveThreshold([7, 6], 1, 0, ends)).toEqual([7, 4.01]);
  });

  it('stays where neighbours leave no room', () => {
    expect(reachOf([6.02, 6, 5.98], 1, ends)).toEqual({ lowMm: 5.97, highMm: 6.03 });
    expect(moveThreshold([6.02, 6, 5.98], 1, 6, ends)).toEqual([6.02, 6, 5.98]);
  });
});
