import { describe, expect, it } from 'vitest';
import { anovaStudy } from './gauge-anova.ts';
import { averageRangeStudy } from './gauge-average-range.ts';

const oneSorter = [[[5, 5.1]], [[6, 6.1]]];

describe.each([
  ['averages and ranges', averageRangeStudy],
  ['analysis of variance', anovaStudy]
])('a gauge study by %s', (_, study) => {
  it('needs two parts and two trials that differ', () => {
    expect(study([])).toEqual({ ok: false, reason: 'too-few-parts' });
    expect(study([[[5, 6]]])).toEqual({ ok: false, reason: 'too-few-parts' });
    expect(study([[[5]], [[6]]])).toEqual({ ok: false, reason: 'too-few-trials' });
    expect(study([[[5, 5]], [[5, 5]]])).toEqual({ ok: false, reason: 'no-spread' });
  });

  it('refuses a study with gaps', () => {
    expect(() =>
      study([
        [[5, 6]],
        [
          [5, 6],
          [5, 6]
        ]
      ])
    ).toThrow(/wrong-length/);
    expect(() => study([[[5, 6]], [[5]]])).toThrow(/wrong-length/);
    expect(() => study([[[5, Number.NaN]], [[5, 6]]])).toThrow(/not-finite/);
  });

  it('knows no classes for a gauge that never differed', () => {
    expect(study([[[5, 5]], [[6, 6]]])).toMatchObject({ ok: true, distinctCategories: null });
  });
});

describe('a sorter who works alone', () => {
  it('has a repeatability and nobody to differ from', () => {
    expect(averageRangeStudy(oneSorter)).toMatchObject({
      repeatabilitySdMm: expect.closeTo(0.08862, 10),
      reproducibilitySdMm: 0
    });
    expect(anovaStudy(oneSorter)).toMatchObject({
      repeatabilityVariance: expect.closeTo(0.005, 12),
      sorterVariance: 0,
      interactionVariance: 0,
      interactionTest: null
    });
  });
});

it('averages and ranges have no constants for four trials; analysis of variance needs none', () => {
  const study = [[[5, 5.1, 5, 5.1]], [[6, 6.1, 6, 6.1]]];
  expect(averageRangeStudy(study)).toEqual({ ok: false, reason: 'no-constants' });
  expect(anovaStudy(study)).toMatchObject({ ok: true });
});

it('refuses to pool above a p that cannot be', () => {
  expect(() => anovaStudy(oneSorter, 1.5)).toThrow(/out-of-range/);
});
