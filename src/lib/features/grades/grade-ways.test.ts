import { describe, expect, it } from 'vitest';
import { gradeFigures } from '$lib/engine/grading';
import { binsFromPairs } from '$lib/engine/thickness';
import { rememberFigures } from './grade-ways.ts';

const bins = binsFromPairs([
  [450, 20],
  [600, 20],
  [800, 20]
]);
const figuresAt = gradeFigures({ bins, stockSlates: 60, courses: [], kickAllowanceMm: 1 });

describe('figures that are remembered', () => {
  it('are worked out once for the same boundaries', () => {
    const asked: (readonly number[])[] = [];
    const remembered = rememberFigures((thresholdsMm) => {
      asked.push(thresholdsMm);
      return figuresAt(thresholdsMm);
    });
    const once = remembered([7, 5]);
    expect(remembered([7, 5])).toBe(once);
    expect(remembered([])).not.toBe(once);
    expect(asked).toEqual([[7, 5], []]);
  });

  it('are those of the boundaries asked for, however many were asked for before', () => {
    const remembered = rememberFigures(figuresAt);
    for (let round = 0; round < 2; round++)
      for (let hundredths = 440; hundredths < 820; hundredths += 5)
        expect(remembered([hundredths / 100])).toEqual(figuresAt([hundredths / 100]));
  });
});
