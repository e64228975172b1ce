import { describe, expect, it } from 'vitest';
import { anovaStudy, averageRangeStudy } from '$lib/engine/statistics';

/** Ten parts, three sorters, three trials (AIAG, Measurement Systems Analysis, 4th edition). */
// prettier-ignore
const AIAG_BY_SORTER = [
  [[0.29, -0.56, 1.34, 0.47, -0.8, 0.02, 0.59, -0.31, 2.26, -1.36], [0.41, -0.68, 1.17, 0.5, -0.92, -0.11, 0.75, -0.2, 1.99, -1.25], [0.64, -0.58, 1.27, 0.64, -0.84, -0.21, 0.66, -0.17, 2.01, -1.31]],
  [[0.08, -0.47, 1.19, 0.01, -0.56, -0.2, 0.47, -0.63, 1.8, -1.68], [0.25, -1.22, 0.94, 1.03, -1.2, 0.22, 0.55, 0.08, 2.12, -1.62], [0.07, -0.68, 1.34, 0.2, -1.28, 0.06, 0.83, -0.34, 2.19, -1.5]],
  [[0.04, -1.38, 0.88, 0.14, -1.46, -0.29, 0.02, -0.46, 1.77, -1.49], [-0.11, -1.13, 1.09, 0.2, -1.07, -0.67, 0.01, -0.56, 1.45, -1.77], [-0.15, -0.96, 0.67, 0.11, -1.45, -0.49, 0.21, -0.49, 1.87, -2.16]]
];
const AIAG = AIAG_BY_SORTER[0][0].map((_, part) =>
  AIAG_BY_SORTER.map((trials) => trials.map((readings) => readings[part]))
);

/** Thermal impedance of ten parts, three operators, three trials (Houf and Berman 1988). */
// prettier-ignore
const HOUF = [
  [[37, 38, 37], [41, 41, 40], [41, 42, 41]],
  [[42, 41, 43], [42, 42, 42], [43, 42, 43]],
  [[30, 31, 31], [31, 31, 31], [29, 30, 28]],
  [[42, 43, 42], [43, 43, 43], [42, 42, 42]],
  [[28, 30, 29], [29, 30, 29], [31, 29, 29]],
  [[42, 42, 43], [45, 45, 45], [44, 46, 45]],
  [[25, 26, 27], [28, 28, 30], [29, 27, 27]],
  [[40, 40, 40], [43, 42, 42], [43, 43, 41]],
  [[25, 25, 25], [27, 29, 28], [26, 26, 26]],
  [[35, 34, 34], [35, 35, 34], [35, 34, 35]]
];

describe('AIAG study by averages and ranges', () => {
  const result = averageRangeStudy(AIAG);
  if (!result.ok) throw new Error(result.reason);

  it.each([
    ['mean range', result.meanRangeMm, 0.3417, 0.3416667],
    ['range of the sorters’ means', result.sorterRangeMm, 0.4446, 0.4446667],
    ['range of the parts’ means', result.partRangeMm, 3.5111, 3.5111111],
    ['equipment variation', result.repeatabilitySdMm, 0.20188, 0.2018567],
    ['appraiser variation', result.reproducibilitySdMm, 0.22963, 0.229667],
    ['gauge', result.gaugeSdMm, 0.30575, 0.3057663],
    ['parts', result.partSdMm, 1.10456, 1.1045956],
    ['total', result.totalSdMm, 1.1461, 1.1461345]
  ])('%s', (_, value, published, computed) => {
    expect(Math.abs(value - published)).toBeLessThan(1e-4); // the source rounds as it goes
    expect(Math.abs(value - computed)).toBeLessThan(1e-7);
  });

  it('per cent of the total: 17.62, 20.04, 26.68 and 96.38', () => {
    expect(Math.abs(result.repeatabilityPercent - 17.612)).toBeLessThan(5e-4);
    expect(Math.abs(result.reproducibilityPercent - 20.038)).toBeLessThan(5e-4);
    expect(Math.abs(result.gaugePercent - 26.678)).toBeLessThan(5e-4);
    expect(Math.abs(result.partPercent - 96.376)).toBeLessThan(5e-4);
  });

  it('tells five classes apart', () => {
    expect(result.distinctCategories).toBe(5);
  });
});

describe('AIAG study by analysis of variance', () => {
  const result = anovaStudy(AIAG);
  if (!result.ok) throw new Error(result.reason);

  it('sums of squares', () => {
    expect(result.part.squares).toBeCloseTo(88.361934, 6);
    expect(result.sorter.squares).toBeCloseTo(3.167262, 5);
    expect(result.interaction.squares).toBeCloseTo(0.358982, 6);
    expect(result.error.squares).toBeCloseTo(2.758933, 6);
    expect(result.interaction.squares + result.error.squares).toBeCloseTo(3.118, 3);
    expect(
      [result.part, result.sorter, result.interaction, result.error].map((line) => line.degrees)
    ).toEqual([9, 2, 18, 60]);
  });

  it('interaction F 0.4337210, p 0.974, so it is pooled', () => {
    expect(result.interactionTest?.f).toBeCloseTo(0.433721, 6);
    expect(result.interactionTest?.pValue).toBeCloseTo(0.974, 3);
    expect(result.pooled).toBe(true);
  });

  it('variance components', () => {
    expect(result.repeatabilityVariance).toBeCloseTo(0.03997328, 8);
    expect(result.sorterVariance).toBeCloseTo(0.05145526, 8);
    expect(result.partVariance).toBeCloseTo(1.0864466, 7);
    expect(result.gaugeVariance).toBeCloseTo(0.09142854, 8);
    expect(result.gaugePercent).toBeCloseTo(27.8607, 4);
    expect(result.repeatabilitySdMm).toBeCloseTo(Math.sqrt(0.03997328), 6);
  });

  it('tells four classes apart, one fewer than by averages and ranges', () => {
    expect(result.distinctCategories).toBe(4);
  });

  it('without pooling the interaction would be −0.00867959 and is clamped to 0', () => {
    const kept = anovaStudy(AIAG, 1);
    if (!kept.ok) throw new Error(kept.reason);
    const { interaction, error } = kept;
    const raw = (interaction.squares / interaction.degrees - error.squares / error.degrees) / 3;
    expect(raw).toBeCloseTo(-0.00867959, 8);
    expect(kept.pooled).toBe(false);
    expect(kept.interactionVariance).toBe(0);
  });
});

describe('Houf and Berman: sorters who differ by part (data as in the SAS sample varcex2; figures computed)', () => {
  const result = anovaStudy(HOUF);
  if (!result.ok) throw new Error(result.reason);

  it('mean squares', () => {
    const square = (line: { squares: number; degrees: number }) => line.squares / line.degrees;
    expect(square(result.part)).toBeCloseTo(437.328395, 6);
    expect(square(result.sorter)).toBeCloseTo(19.633333, 6);
    expect(square(result.interaction)).toBeCloseTo(2.695062, 6);
    expect(square(result.error)).toBeCloseTo(0.511111, 6);
  });

  it('keeps the interaction, F 5.2729469', () => {
    expect(result.interactionTest?.f).toBeCloseTo(5.2729469, 7);
    expect(result.pooled).toBe(false);
  });

  it('variance components', () => {
    expect(result.repeatabilityVariance).toBeCloseTo(0.5111111, 7);
    expect(result.interactionVariance).toBeCloseTo(0.7279835, 7);
    expect(result.sorterVariance).toBeCloseTo(0.5646091, 7);
    expect(result.partVariance).toBeCloseTo(48.2925926, 7);
    expect(result.gaugeVariance).toBeCloseTo(1.8037037, 7);
    expect(result.gaugePercent).toBeCloseTo(18.9749, 4);
  });
});

describe('the constants of averages and ranges, recomputed from the range of normal values', () => {
  const density = (x: number) => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
  const step = 0.01;
  const grid = Array.from({ length: 1601 }, (_, i) => -8 + i * step);
  const below: number[] = [];
  grid.reduce((sum, x) => {
    const next = sum + (step * density(x)) / 2;
    below.push(next);
    return next + (step * density(x)) / 2;
  }, 0);

  /** Mean of the range of n normal values, or of its square. */
  const momentOfRange = (n: number, power: 1 | 2) => {
    let sum = 0;
    for (let low = 0; low < grid.length; low++)
      for (let width = 1; low + width < grid.length; width++) {
        const high = low + width;
        const joint =
          n *
          (n - 1) *
          density(grid[low]) *
          density(grid[high]) *
          (below[high] - below[low]) ** (n - 2);
        sum += joint * (width * step) ** power * step * step;
      }
    return sum;
  };

  it.each([
    [2, 0.8862],
    [3, 0.5908]
  ])('K1 for %i trials is %f: one over the mean range', (trials, constant) => {
    expect(1 / momentOfRange(trials, 1)).toBeCloseTo(constant, 3);
    // a study whose every range is 1 shows the constant as its repeatability
    const cell = Array.from({ length: trials }, (_, trial) => (trial === 0 ? 1 : 0));
    const study = averageRangeStudy([[cell], [cell]]);
    expect(study).toMatchObject({ repeatabilitySdMm: constant });
  });

  it.each([2, 3, 4, 5, 6, 7, 8, 9, 10])(
    'K3 for %i parts: one over the root mean square range',
    (parts) => {
      const study = averageRangeStudy(
        Array.from({ length: parts }, (_, part) => [part === 0 ? [1, 1] : [0, 0]])
      );
      if (!study.ok) throw new Error(study.reason);
      expect(study.partSdMm).toBeCloseTo(1 / Math.sqrt(momentOfRange(parts, 2)), 3);
    }
  );
});
