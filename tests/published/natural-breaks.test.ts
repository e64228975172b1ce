import { ckmeans } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { type NaturalClasses, naturalBreaks, naturalClasses } from '$lib/engine/grading';
import { binsFromPairs } from '$lib/engine/thickness';

/**
 * Optimal classification in one dimension. Data, classes and centres read in the test suites of
 * CRAN Ckmeans.1d.dp (tests/testthat/test_Ckmeans.1d.dp.R) and of simple-statistics
 * (test/ckmeans.test.js, test/jenks.test.js). Totals and goodness of fit to full length were
 * computed by an independent O(k·n²) programme.
 */
function tally(data: readonly number[], weights: readonly number[] = data.map(() => 1)) {
  const totals = new Map<number, number>();
  for (const [index, value] of data.entries())
    totals.set(value, (totals.get(value) ?? 0) + weights[index]);
  const values = [...totals.keys()].sort((one, other) => one - other);
  return { values, weights: values.map((value) => totals.get(value) as number) };
}

function classify(data: readonly number[], count: number, weights?: readonly number[]) {
  const sorted = tally(data, weights);
  const result = naturalClasses(sorted.values, sorted.weights, count);
  expect(result.ok).toBe(true);
  return result as NaturalClasses;
}

const SMALL = [-1, 2, -1, 2, 4, 5, 6, -1, 2, -1];
const SPREAD_OUT = [-3, 2.2, -6, 7, 9, 11, -6.3, 75, 82.6, 32.3, -9.5, 62.5, 7, 95.2];
const ONE_TO_TEN = Array.from({ length: 10 }, (_value, index) => index + 1);
const COSINES = Array.from({ length: 21 }, (_value, index) => Math.cos(index - 10));
const DECAY = Array.from({ length: 19 }, (_value, index) => {
  const x = 1 + index / 2;
  return x * Math.exp(-x);
});

describe('natural classes, Ckmeans.1d.dp', () => {
  it.each([
    {
      data: SMALL,
      count: 3,
      sizes: [4, 3, 3],
      centres: [-1, 2, 5],
      within: 2,
      fit: 0.968798751950078
    },
    {
      data: ONE_TO_TEN,
      count: 2,
      sizes: [5, 5],
      centres: [3, 8],
      within: 20,
      fit: 0.757575757575758
    },
    {
      data: SPREAD_OUT,
      count: 8,
      sizes: [3, 2, 4, 1, 1, 1, 1, 1],
      centres: [-7.266666667, -0.4, 8.5, 32.3, 62.5, 75, 82.6, 95.2],
      within: 32.0466666667,
      fit: 0.9981929591
    },
    {
      data: [3.5, 3.6, 3.7, 3.1, 1.1, 0.9, 0.8, 2.2, 1.9, 2.1],
      count: 3,
      sizes: [3, 3, 4],
      centres: [0.933333333, 2.066666667, 3.475],
      within: 0.3008333333,
      fit: 0.9740414761
    },
    {
      data: COSINES,
      count: 2,
      sizes: [12, 9],
      centres: [-0.6592474631, 0.6751193405],
      within: 1.6797770059,
      fit: 0.8449934484
    },
    {
      data: DECAY,
      count: 3,
      sizes: [13, 3, 3],
      centres: [0.01702193495, 0.15342151454, 0.32441508262],
      within: 0.0159870691,
      fit: 0.9389760407
    }
  ])('$count classes of $data', ({ data, count, sizes, centres, within, fit }) => {
    const result = classify(data, count);
    expect(result.classes.map(({ weight }) => weight)).toEqual(sizes);
    for (const [index, centre] of centres.entries())
      expect(result.classes[index].mean).toBeCloseTo(centre, 9);
    expect(result.withinSumOfSquares).toBeCloseTo(within, 9);
    expect(result.goodnessOfFit).toBeCloseTo(fit, 9);
  });

  it.each([
    { data: SMALL, count: 3, squares: [0, 0, 2] },
    { data: ONE_TO_TEN, count: 2, squares: [10, 10] },
    { data: SPREAD_OUT, count: 8, squares: [7.526666667, 13.52, 11, 0, 0, 0, 0, 0] },
    {
      data: [3.5, 3.6, 3.7, 3.1, 1.1, 0.9, 0.8, 2.2, 1.9, 2.1],
      count: 3,
      squares: [0.0466666667, 0.0466666667, 0.2075]
    },
    { data: COSINES, count: 2, squares: [1.05647931, 0.6232976959] },
    { data: DECAY, count: 3, squares: [0.006126754998, 0.004977009034, 0.00488330512] }
  ])('sum of squares of each of $count classes of $data', ({ data, count, squares }) => {
    const result = classify(data, count);
    for (const [index, square] of squares.entries())
      expect(result.classes[index].sumOfSquares).toBeCloseTo(square, 8);
  });

  it('weighted as the repeated values', () => {
    const result = classify([-1, 2, 4, 5, 6], 3, [4, 3, 1, 1, 1]);
    expect(result.classes.map(({ weight }) => weight)).toEqual([4, 3, 3]);
    expect(result.classes.map(({ sumOfSquares }) => sumOfSquares)).toEqual([0, 0, 2]);
    expect(result.goodnessOfFit).toBeCloseTo(0.968798751950078, 14);
  });

  it('weighted, with unlike weights', () => {
    const result = classify([-0.9, 1, 1.1, 1.9, 2, 2.1], 3, [3, 1, 2, 2, 1, 1]);
    expect(result.classes.map(({ weight }) => weight)).toEqual([3, 3, 4]);
    expect(result.classes[0].mean).toBeCloseTo(-0.9, 14);
    expect(result.classes[1].mean).toBeCloseTo(3.2 / 3, 14);
    expect(result.classes[2].mean).toBeCloseTo(7.9 / 4, 14);
    expect(result.withinSumOfSquares).toBeCloseTo(0.0341666667, 10);
    expect(result.goodnessOfFit).toBeCloseTo(0.9976312627, 10);
  });

  it('1 to 10 in three classes: three optima tie, all of sum of squares 9', () => {
    const result = classify(ONE_TO_TEN, 3);
    expect(result.withinSumOfSquares).toBe(9);
    expect(result.classes.map(({ weight }) => weight).sort()).toEqual([3, 3, 4]);
    expect(classify(ONE_TO_TEN, 3)).toEqual(result);
  });
});

describe('natural classes, simple-statistics', () => {
  it.each([
    {
      data: [3, 2, 3, 5, 2, 1],
      count: 3,
      sizes: [3, 2, 1],
      within: 0.6666666667,
      fit: 0.9285714286
    },
    {
      data: [1, 2, 4, 5, 7, 9, 10, 20],
      count: 3,
      sizes: [4, 3, 1],
      within: 14.6666666667,
      fit: 0.9425962166
    }
  ])('$count classes of $data', ({ data, count, sizes, within, fit }) => {
    const result = classify(data, count);
    expect(result.classes.map(({ weight }) => weight)).toEqual(sizes);
    expect(result.withinSumOfSquares).toBeCloseTo(within, 10);
    expect(result.goodnessOfFit).toBeCloseTo(fit, 10);
  });

  it('two values that differ in the last digits stay together', () => {
    const result = classify([64.64249127327881, 64.64249127328245, 57.79216426169771], 2);
    expect(result.classes.map(({ first, last }) => [first, last])).toEqual([
      [0, 0],
      [1, 2]
    ]);
  });

  it.each([
    { data: [1, 2, 4, 5, 7, 9, 10, 20], lowest: [1, 7, 20], top: 20 },
    { data: [2, 32, 33, 34, 100], lowest: [2, 32, 100], top: 100 }
  ])('lower bounds of three classes of $data (jenks)', ({ data, lowest, top }) => {
    const { values } = tally(data);
    const { classes } = classify(data, 3);
    expect(classes.map(({ first }) => values[first])).toEqual(lowest);
    expect(values[classes[2].last]).toBe(top);
  });
});

describe('natural breaks of bins', () => {
  it.each([SMALL, ONE_TO_TEN, [1, 2, 4, 5, 7, 9, 10, 20]])(
    'reach the within sum of squares of the same values read as millimetres: %j',
    (...data) => {
      const bins = binsFromPairs(data.map((value) => [value * 100, 1] as const));
      const result = naturalBreaks(bins, 3);
      expect(result.ok && result.withinSumOfSquares).toBeCloseTo(
        classify(data, 3).withinSumOfSquares,
        10
      );
    }
  );

  it('agree with ckmeans on the raw list (second opinion, not a published figure)', () => {
    const list = SPREAD_OUT.flatMap((value) => [value, value + 0.1, value + 0.25]);
    const clusters = ckmeans(list, 5);
    const within = clusters.reduce((sum, cluster) => {
      const mean = cluster.reduce((total, value) => total + value, 0) / cluster.length;
      return sum + cluster.reduce((total, value) => total + (value - mean) ** 2, 0);
    }, 0);
    expect(classify(list, 5).withinSumOfSquares).toBeCloseTo(within, 8);
  });
});
