import { describe, expect, it } from 'vitest';
import {
  type AgreementWeights,
  agreementFromDisagreement,
  weightedKappa
} from '$lib/engine/grading';

/**
 * Cohen's kappa. Tables and, where marked, values were read in the named sources; digits to eight
 * places were computed from the same tables at high precision, standard errors by the non-null
 * formula of Fleiss, Cohen and Everitt (1969).
 */
function kappaOf(table: number[][], weights: AgreementWeights) {
  const result = weightedKappa(table, weights);
  if (!result.ok) throw new Error(result.reason);
  return result;
}

/** Read: Cohen 1968 in CRAN psych, man/kappa.Rd. */
const COHEN = [
  [88, 14, 18],
  [10, 40, 10],
  [2, 6, 12]
];
/** Read: Fleiss, Cohen and Everitt 1969 in CRAN psych, man/kappa.Rd. */
const FLEISS_COHEN_EVERITT = [
  [106, 10, 4],
  [22, 28, 10],
  [2, 12, 6]
];
/** Fleiss 1981; read: stattutorials.com, SAS tutorial on kappa. */
const FLEISS = [
  [75, 1, 4],
  [5, 4, 1],
  [0, 0, 10]
];
/** Mammograms; read: Penn State STAT 509, 19.3_agreement_Cohen.sas. */
const MAMMOGRAMS = [
  [21, 12, 0, 0],
  [4, 17, 1, 0],
  [3, 9, 15, 2],
  [0, 0, 0, 1]
];
/** Multiple sclerosis, Winnipeg; read: CRAN vcd. */
const WINNIPEG = [
  [38, 5, 0, 1],
  [33, 11, 3, 0],
  [10, 14, 5, 6],
  [3, 7, 3, 10]
];

describe('kappa, computed to eight places', () => {
  it.each([
    { name: 'Cohen', table: COHEN, equal: 0.49152542, linear: 0.47368421, quadratic: 0.45454545 },
    {
      name: 'Fleiss, Cohen and Everitt',
      table: FLEISS_COHEN_EVERITT,
      equal: 0.42857143,
      linear: 0.49230769,
      quadratic: 0.56666667
    },
    { name: 'Fleiss', table: FLEISS, equal: 0.67647059, linear: 0.72222222, quadratic: 0.75531915 },
    {
      name: 'mammograms',
      table: MAMMOGRAMS,
      equal: 0.47278912,
      linear: 0.56839904,
      quadratic: 0.67137058
    },
    {
      name: 'Winnipeg',
      table: WINNIPEG,
      equal: 0.20794246,
      linear: 0.37973055,
      quadratic: 0.52457646
    }
  ])('$name', ({ table, equal, linear, quadratic }) => {
    expect(kappaOf(table, 'equal').kappa).toBeCloseTo(equal, 8);
    expect(kappaOf(table, 'linear').kappa).toBeCloseTo(linear, 8);
    expect(kappaOf(table, 'quadratic').kappa).toBeCloseTo(quadratic, 8);
  });

  it.each([
    { name: 'Cohen', table: COHEN, weights: 'equal' as const, error: 0.05100182 },
    { name: 'Cohen', table: COHEN, weights: 'linear' as const, error: 0.05443231 },
    {
      name: 'Fleiss, Cohen and Everitt',
      table: FLEISS_COHEN_EVERITT,
      weights: 'equal' as const,
      error: 0.053711
    },
    { name: 'mammograms', table: MAMMOGRAMS, weights: 'linear' as const, error: 0.06755609 },
    { name: 'Winnipeg', table: WINNIPEG, weights: 'equal' as const, error: 0.05045537 },
    { name: 'Winnipeg', table: WINNIPEG, weights: 'linear' as const, error: 0.05166683 }
  ])('standard error, $name, $weights weights', ({ table, weights, error }) => {
    expect(kappaOf(table, weights).standardError).toBeCloseTo(error, 8);
  });
});

describe('kappa, printed figures', () => {
  it('Cohen 1968, unweighted: .492 (read)', () => {
    expect(kappaOf(COHEN, 'equal').kappa).toBeCloseTo(0.492, 3);
  });

  it.each([
    {
      printed: 0.348,
      computed: 0.34782609,
      disagreement: [
        [0, 1, 3],
        [1, 0, 6],
        [3, 6, 0]
      ]
    },
    {
      printed: 0.353,
      computed: 0.35338346,
      disagreement: [
        [0, 1, 4],
        [1, 0, 6],
        [2, 2, 0]
      ]
    }
  ])(
    'Cohen 1968, weights of disagreement: $printed (read)',
    ({ printed, computed, disagreement }) => {
      const { kappa } = kappaOf(COHEN, agreementFromDisagreement(disagreement));
      expect(kappa).toBeCloseTo(printed, 3);
      expect(kappa).toBeCloseTo(computed, 8);
    }
  );

  it('Fleiss, Cohen and Everitt 1969, their weights: .507 (weights read, figure from memory)', () => {
    const result = kappaOf(FLEISS_COHEN_EVERITT, [
      [1, 0, 0.4444],
      [0, 1, 0.6667],
      [0.4444, 0.6667, 1]
    ]);
    expect(result.kappa).toBeCloseTo(0.507, 3);
    expect(result.kappa).toBeCloseTo(0.50706996, 8);
    expect(result.standardError).toBeCloseTo(0.05699388, 8);
  });

  it('mammograms, linear weights: .57 with 95 % interval .44 to .70 (read: brainheart.com)', () => {
    const { kappa, standardError } = kappaOf(MAMMOGRAMS, 'linear');
    expect(kappa).toBeCloseTo(0.57, 2);
    expect(kappa - 1.96 * standardError).toBeCloseTo(0.44, 2);
    expect(kappa + 1.96 * standardError).toBeCloseTo(0.7, 2);
  });
});
