import { describe, expect, it } from 'vitest';
import {
  type Cluster,
  type PalletSample,
  comparePallets,
  estimateGrade,
  oneWayRandomEffects,
  twoStageMean
} from '$lib/engine/statistics';
import { binsFromPairs } from '$lib/engine/thickness';
import { SIRSTV } from './nist-data.ts';

/**
 * Acres of farmland in 1992 in the counties of the United States (Lohr, Sampling: Design and
 * Analysis; CRAN SDAResources, data sets agpop, agstrat and agsrs): counties stand for slates and
 * regions for pallets, all of which were opened. Region figures computed from the raw data.
 */
const REGIONS = Object.freeze([
  { size: 1054, sampled: 103, mean: 300504.1553398, variance: 29618183543.2894, small: 31 },
  { size: 220, sampled: 21, mean: 97629.8095238, variance: 7647472708.1619, small: 20 },
  { size: 1382, sampled: 135, mean: 211315.0444444, variance: 53587487856.1921, small: 91 },
  { size: 422, sampled: 41, mean: 662295.5121951, variance: 396185950266.2576, small: 12 }
]);
const COUNTIES = 3078;
const Z = 1.959963984540054;

const estimate = (clusters: readonly Cluster[]) => {
  const result = twoStageMean(Object.freeze(clusters), [], 0.95);
  if (!result.ok) throw new Error(result.reason);
  return result;
};

describe('1992 agriculture sample, stratified by region', () => {
  const result = estimate(REGIONS);

  it('mean 295560.7652, standard error 16379.8727', () => {
    expect(result.estimate).toBeCloseTo(295560.7652, 4);
    expect(result.standardError).toBeCloseTo(16379.8727, 4);
  });

  it('total 909736035, standard error 50417248', () => {
    expect(Math.round(result.estimate * COUNTIES)).toBe(909736035);
    expect(Math.round(result.standardError * COUNTIES)).toBe(50417248);
  });

  it('normal interval 263456.8 to 327664.7; the t interval here lies just outside it', () => {
    expect(result.estimate - Z * result.standardError).toBeCloseTo(263456.8, 1);
    expect(result.estimate + Z * result.standardError).toBeCloseTo(327664.7, 1);
    expect(result.low).toBeLessThan(263456.8);
    expect(result.low).toBeGreaterThan(262500);
    expect(result.high).toBeGreaterThan(327664.7);
    expect(result.high).toBeLessThan(328600);
  });
});

describe('1992 agriculture sample, counties below 200,000 acres as a grade (computed)', () => {
  it('share 0.513914774525, standard error 0.024794556997, from the figures', () => {
    const result = estimate(
      REGIONS.map(({ size, sampled, small }) => {
        const share = small / sampled;
        return {
          size,
          sampled,
          mean: share,
          variance: (sampled * share * (1 - share)) / (sampled - 1)
        };
      })
    );
    expect(result.estimate).toBeCloseTo(0.513914774525, 12);
    expect(result.standardError).toBeCloseTo(0.024794556997, 11);
  });

  it('count 1581.82968, standard error 76.31765, from thickness bins', () => {
    const pallets: PalletSample[] = REGIONS.map(({ size, sampled, small }, index) => ({
      palletId: String(index),
      slates: size,
      bins: binsFromPairs([
        [500, small],
        [600, sampled - small]
      ])
    }));
    const result = estimateGrade(pallets, { fromMm: 0, toMm: 6 });
    if (!result.ok) throw new Error(result.reason);
    expect(result.count).toBeCloseTo(1581.82968, 5);
    expect(result.countStandardError).toBeCloseTo(76.31765, 5);
    // within a few slates of the plain t interval, as it should be so far from 0 and from all
    expect(Math.abs(result.countLow - (1581.83 - 1.97 * 76.32))).toBeLessThan(5);
    expect(Math.abs(result.countHigh - (1581.83 + 1.97 * 76.32))).toBeLessThan(5);
  });
});

it('1992 agriculture, simple random sample of 300: standard error 18898.434428', () => {
  const result = estimate([
    { size: COUNTIES, sampled: 300, mean: 297897.0466667, variance: 344551.894757 ** 2 }
  ]);
  expect(result.estimate).toBe(297897.0466667);
  expect(result.standardError).toBeCloseTo(18898.434428, 5);
  expect(result.degreesOfFreedom).toBeCloseTo(299, 9);
});

describe('one-way random effects', () => {
  const compare = (groups: readonly (readonly number[])[]) => {
    const result = oneWayRandomEffects(groups);
    if (!result.ok) throw new Error(result.reason);
    return result;
  };

  it('NIST StRD SiRstv, certified analysis of variance', () => {
    const result = compare(SIRSTV);
    expect(result.squaresBetween / 5.11462616e-2).toBeCloseTo(1, 11);
    expect(result.squaresWithin / 2.1663656e-1).toBeCloseTo(1, 11);
    expect(result.f).toBeCloseTo(1.18046237440255, 10);
    expect(result.squaresBetween / (result.squaresBetween + result.squaresWithin)).toBeCloseTo(
      0.190999039051129,
      11
    );
    expect(Math.sqrt(result.varianceWithin)).toBeCloseTo(0.104076068334656, 12);
    // components computed
    expect(result.varianceBetween).toBeCloseTo(0.00039094748, 11);
    expect(result.intraclassCorrelation).toBeCloseTo(0.0348351867768, 10);
  });

  /** Yield of dyestuff in grams, five samples of each of six batches (CRAN lme4, Dyestuff). */
  const DYESTUFF = [
    [1545, 1440, 1440, 1520, 1580],
    [1540, 1555, 1490, 1560, 1495],
    [1595, 1550, 1605, 1510, 1560],
    [1445, 1440, 1595, 1465, 1545],
    [1595, 1630, 1515, 1635, 1625],
    [1520, 1455, 1450, 1480, 1445]
  ];

  it('Dyestuff: between 1764.05, within 2451.25', () => {
    const result = compare(DYESTUFF);
    expect(result.mean).toBeCloseTo(1527.5, 10);
    expect(result.varianceBetween).toBeCloseTo(1764.05, 8);
    expect(result.varianceWithin).toBeCloseTo(2451.25, 8);
    expect(result.intraclassCorrelation).toBeCloseTo(0.418487414893, 12);
  });

  it('Dyestuff as pallets: the same correlation, variances in mm²', () => {
    const result = comparePallets(
      DYESTUFF.map((batch, index) => ({
        palletId: String(index),
        slates: 100,
        bins: binsFromPairs(batch.map((grams) => [grams, 1]))
      }))
    );
    if (!result.ok) throw new Error(result.reason);
    expect(result.varianceBetween * 10_000).toBeCloseTo(1764.05, 8);
    expect(result.varianceWithin * 10_000).toBeCloseTo(2451.25, 8);
    expect(result.intraclassCorrelation).toBeCloseTo(0.418487414893, 12);
  });

  it('ratings of six subjects by four judges (Shrout and Fleiss 1979; CRAN psych, ICC): ICC(1,1) 0.1657417684', () => {
    const result = compare([
      [9, 2, 5, 8],
      [6, 1, 3, 2],
      [8, 4, 6, 8],
      [7, 1, 2, 6],
      [10, 5, 6, 9],
      [6, 2, 4, 7]
    ]);
    expect(result.squaresBetween / result.degreesBetween).toBeCloseTo(11.2416667, 7);
    expect(result.varianceWithin).toBeCloseTo(6.2638889, 7);
    expect(result.intraclassCorrelation).toBeCloseTo(0.1657417684, 10);
  });
});
