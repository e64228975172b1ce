import { describe, expect, it } from 'vitest';
import {
  binsFromPairs,
  lag1Autocorrelation,
  momentsOfBins,
  momentsOfList
} from '$lib/engine/thickness';
import { LEW, LOTTERY, MAVRO, MICHELSO } from './nist-data.ts';

/**
 * NIST Statistical Reference Datasets, univariate summary statistics: certified mean, standard
 * deviation (n − 1) and lag-1 autocorrelation. NumAcc1 to 4 are built as their definition says and
 * the digits of PiDigits are computed here. The set as distributed has a 3 where π has an 8, at its
 * digit 957, and the certified figures are those of the set: the true digits have mean 4.5358.
 */
const alternating = (first: number, low: number, high: number): number[] => [
  first,
  ...Array.from({ length: 1000 }, (_, index) => (index % 2 === 0 ? low : high))
];

/** The first digits of π, the 3 included, by Machin's formula in whole numbers. */
function digitsOfPi(count: number): number[] {
  const scale = 10n ** BigInt(count + 10);
  const arctanOfInverse = (x: bigint): bigint => {
    let power = scale / x;
    let sum = power;
    for (let odd = 3n, sign = -1n; power > 0n; odd += 2n, sign = -sign) {
      power /= x * x;
      sum += (sign * power) / odd;
    }
    return sum;
  };
  const pi = 4n * (4n * arctanOfInverse(5n) - arctanOfInverse(239n));
  return [...pi.toString().slice(0, count)].map(Number);
}

function piDigitsAsDistributed(): number[] {
  const digits = digitsOfPi(5000);
  digits[956] = 3;
  return digits;
}

interface Certified {
  readonly name: string;
  readonly values: readonly number[];
  readonly mean: number;
  readonly sd: number;
  readonly autocorrelation: number;
  /** Relative tolerance of the SD: the last ones are as near as the data sets' binary form lets. */
  readonly sdTolerance: number;
}

const CERTIFIED: Certified[] = [
  {
    name: 'NumAcc1',
    values: [10000001, 10000003, 10000002],
    mean: 10000002,
    sd: 1,
    autocorrelation: -0.5,
    sdTolerance: 0
  },
  {
    name: 'NumAcc2',
    values: alternating(1.2, 1.1, 1.3),
    mean: 1.2,
    sd: 0.1,
    autocorrelation: -0.999,
    sdTolerance: 1e-13
  },
  {
    name: 'NumAcc3',
    values: alternating(1000000.2, 1000000.1, 1000000.3),
    mean: 1000000.2,
    sd: 0.1,
    autocorrelation: -0.999,
    sdTolerance: 1e-9
  },
  {
    name: 'NumAcc4',
    values: alternating(10000000.2, 10000000.1, 10000000.3),
    mean: 10000000.2,
    sd: 0.1,
    autocorrelation: -0.999,
    sdTolerance: 1e-7
  },
  {
    name: 'Mavro',
    values: MAVRO,
    mean: 2.001856,
    sd: 0.000429123454003053,
    autocorrelation: 0.937989183438248,
    sdTolerance: 1e-13
  },
  {
    name: 'Michelso',
    values: MICHELSO,
    mean: 299.8524,
    sd: 0.0790105478190518,
    autocorrelation: 0.535199668621283,
    sdTolerance: 1e-13
  },
  {
    name: 'Lew',
    values: LEW,
    mean: -177.435,
    sd: 277.332168044316,
    autocorrelation: -0.307304800605679,
    sdTolerance: 1e-14
  },
  {
    name: 'Lottery',
    values: LOTTERY,
    mean: 518.95871559633,
    sd: 291.699727470969,
    autocorrelation: -0.120948622967393,
    sdTolerance: 1e-14
  },
  {
    name: 'PiDigits',
    values: piDigitsAsDistributed(),
    mean: 4.5348,
    sd: 2.86733906028871,
    autocorrelation: -0.00355099287237972,
    sdTolerance: 1e-14
  }
];

const relativeError = (value: number, certified: number) =>
  Math.abs(value - certified) / Math.abs(certified);

describe.each(CERTIFIED)('NIST StRD $name', (set) => {
  const { values } = set;
  const moments = momentsOfList(Object.freeze([...values]));
  if (!moments.ok) throw new Error('not empty');

  it('mean', () => {
    expect(relativeError(moments.mean, set.mean)).toBeLessThanOrEqual(1e-14);
  });

  it('standard deviation', () => {
    expect(relativeError(moments.sd ?? 0, set.sd)).toBeLessThanOrEqual(
      Math.max(set.sdTolerance, 2e-15)
    );
  });

  it('lag-1 autocorrelation', () => {
    const result = lag1Autocorrelation(values);
    if (!result.ok) throw new Error(result.reason);
    // bounded by the same binary form of the data, and by the 15 digits that are printed
    expect(relativeError(result.correlation, set.autocorrelation)).toBeLessThanOrEqual(
      Math.max(set.sdTolerance, 1e-12)
    );
  });
});

describe('the same figures from bins', () => {
  const inBins = (values: readonly number[], binsPerUnit: number) =>
    binsFromPairs(values.map((value) => [Math.round(value * binsPerUnit), 1]));

  it('Michelso: hundredths of its unit taken as hundredths of a millimetre', () => {
    const moments = momentsOfBins(inBins(MICHELSO, 100));
    if (!moments.ok) throw new Error('not empty');
    expect(relativeError(moments.meanMm, 299.8524)).toBeLessThan(1e-15);
    expect(relativeError(moments.sdMm ?? 0, 0.0790105478190518)).toBeLessThan(1e-14);
  });

  it('Lottery: whole numbers taken as hundredths of a millimetre', () => {
    const moments = momentsOfBins(inBins(LOTTERY, 1));
    if (!moments.ok) throw new Error('not empty');
    expect(relativeError(moments.meanMm, 5.1895871559633)).toBeLessThan(1e-14);
    expect(relativeError(moments.sdMm ?? 0, 2.91699727470969)).toBeLessThan(1e-14);
  });

  it('NumAcc1, where a one-pass sum of squares loses the spread', () => {
    const moments = momentsOfBins(inBins([10000001, 10000003, 10000002], 1));
    expect(moments).toMatchObject({ meanMm: 100000.02, sdMm: 0.01 });
  });
});
