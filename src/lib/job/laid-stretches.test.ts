import { describe, expect, it } from 'vitest';
import type { Register } from '$lib/journal';
import { courseLying, slicePieces } from './laid-stretches.ts';

type Parts = Parameters<typeof courseLying>[0];
type Laid = NonNullable<Parameters<typeof courseLying>[1]>;

const parts = (
  ...said: readonly (readonly [id: string, pieces: number, from?: 'left' | 'right'])[]
): Parts =>
  said.map(([id, pieces, from = 'left']) => ({
    id,
    at: '',
    value: { slopeId: 's', course: 12, from, piles: [{ pile: 1, pieces }] }
  })) as Register<Parts[number]['value']>;
const whole = (id: string, pieces: number): Laid => ({
  id,
  at: '',
  value: { slopeId: 's', course: 12, piles: [{ pile: 1, pieces }] }
});
const stretches = (...given: Parameters<typeof courseLying>) =>
  courseLying(...given).stretches.map(({ id, start, end }) => [id, start, end]);

describe('courseLying', () => {
  it('lets each entry lay what it says beyond the one before', () => {
    expect(stretches(parts(['a', 18], ['b', 30]), whole('c', 51), 51)).toEqual([
      ['a', 0, 18],
      ['b', 18, 30],
      ['c', 30, 51]
    ]);
  });

  it('counts from the right where it was begun there', () => {
    expect(stretches(parts(['a', 18, 'right'], ['b', 30, 'right']), undefined, 51)).toEqual([
      ['a', 33, 51],
      ['b', 21, 33]
    ]);
    expect(courseLying(parts(['a', 18, 'right']), undefined, 51)).toMatchObject({
      first: 33,
      pieces: 18
    });
  });

  it('takes the same said twice once, and a lower number as putting right', () => {
    expect(stretches(parts(['a', 18], ['b', 18]), undefined, 51)).toEqual([['a', 0, 18]]);
    expect(stretches(parts(['a', 18], ['b', 30], ['c', 25]), undefined, 51)).toEqual([
      ['a', 0, 18],
      ['b', 18, 25]
    ]);
    expect(stretches(parts(['a', 18], ['b', 5], ['c', 9]), undefined, 51)).toEqual([
      ['a', 0, 5],
      ['c', 5, 9]
    ]);
    expect(stretches(parts(['a', 18], ['b', 0]), undefined, 51)).toEqual([]);
    expect(stretches(parts(['a', 0], ['b', 7], ['c', 9]), undefined, 51)).toEqual([
      ['b', 0, 7],
      ['c', 7, 9]
    ]);
  });

  it('begins again where the end changes', () => {
    expect(stretches(parts(['a', 18], ['b', 20, 'right']), undefined, 51)).toEqual([['b', 31, 51]]);
  });

  it('holds a whole course against a part entered later', () => {
    expect(stretches(parts(['b', 18]), whole('a', 51), 51)).toEqual([['a', 0, 51]]);
    expect(courseLying(parts(['b', 18]), whole('a', 51), 51).pieces).toBe(51);
  });

  it('is nothing where nothing was said', () => {
    expect(courseLying([], undefined, 51)).toEqual({
      ...{ from: 'left', piles: [], pieces: 0, first: 0, stretches: [] }
    });
  });
});

describe('rows of pieces', () => {
  const row = [
    { pile: 1, pieces: 4 },
    { pile: 2, pieces: 6 }
  ];
  const pilesOf = (stretch: typeof row): number[] =>
    stretch.flatMap(({ pile, pieces }) => new Array<number>(pieces).fill(pile));
  it('are cut piece by piece', () => {
    for (let start = 0; start <= 10; start++)
      for (let end = start; end <= 12; end++)
        expect(pilesOf(slicePieces(row, start, end))).toEqual(pilesOf(row).slice(start, end));
    expect(slicePieces(row, 3, 5)).toEqual([
      { pile: 1, pieces: 1 },
      { pile: 2, pieces: 1 }
    ]);
  });
});
