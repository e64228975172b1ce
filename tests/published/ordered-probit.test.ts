import { describe, expect, it } from 'vitest';
import { type OrderedRow, orderedRegression } from '$lib/engine/statistics';

/**
 * Satisfaction with housing in Copenhagen, 1,681 tenants (CRAN MASS, data set housing; Venables and
 * Ripley, Modern Applied Statistics with S): counts of low, medium and high satisfaction by type of
 * dwelling, influence on its management (low, medium, high) and contact with neighbours. Fitted
 * figures recomputed independently.
 */
const LOW_CONTACT = [
  [21, 21, 28, 34, 22, 36, 10, 11, 36], // tower blocks
  [61, 23, 17, 43, 35, 40, 26, 18, 54], // apartments
  [13, 9, 10, 8, 8, 12, 6, 7, 9], // atrium houses
  [18, 6, 7, 15, 13, 13, 7, 5, 11] // terraced houses
];
const HIGH_CONTACT = [
  [14, 19, 37, 17, 23, 40, 3, 5, 23],
  [78, 46, 43, 48, 45, 86, 15, 25, 62],
  [20, 23, 20, 10, 22, 24, 7, 10, 21],
  [57, 23, 13, 31, 21, 13, 5, 6, 13]
];

const is = (condition: boolean) => (condition ? 1 : 0);
const rows: OrderedRow[] = [LOW_CONTACT, HIGH_CONTACT].flatMap((table, contact) =>
  table.flatMap((counts, type) =>
    counts.map((count, cell) => {
      const influence = Math.floor(cell / 3);
      return {
        covariates: [
          is(influence === 1),
          is(influence === 2),
          is(type === 1),
          is(type === 2),
          is(type === 3),
          contact
        ],
        category: (cell % 3) + 1,
        count
      };
    })
  )
);
Object.freeze(rows);

const fit = (link: 'probit' | 'logit', data: readonly OrderedRow[] = rows) => {
  const result = orderedRegression(data, 3, link);
  if (!result.ok) throw new Error(result.reason);
  return result;
};

it('holds 1,681 tenants, 567, 446 and 668 in the three classes', () => {
  const totals = [1, 2, 3].map((category) =>
    rows.reduce((sum, row) => sum + (row.category === category ? row.count : 0), 0)
  );
  expect(totals).toEqual([567, 446, 668]);
});

describe('ordered probit of housing satisfaction', () => {
  const result = fit('probit');

  it.each([
    ['influence medium', 0, 0.346423],
    ['influence high', 1, 0.782915],
    ['apartment', 2, -0.347537],
    ['atrium', 3, -0.217888],
    ['terrace', 4, -0.664174],
    ['contact high', 5, 0.222386]
  ])('coefficient of %s', (_, index, value) => {
    expect(Math.abs(result.coefficients[index] - value)).toBeLessThan(1e-6);
  });

  it('cuts and deviance', () => {
    expect(Math.abs(result.cuts[0] + 0.299828)).toBeLessThan(1e-6);
    expect(Math.abs(result.cuts[1] - 0.426721)).toBeLessThan(1e-6);
    expect(-2 * result.logLikelihood).toBeCloseTo(3479.688843, 6);
  });
});

it('ordered logit: cuts and deviance', () => {
  const result = fit('logit');
  expect(Math.abs(result.cuts[0] + 0.496135)).toBeLessThan(1e-6);
  expect(Math.abs(result.cuts[1] - 0.690708)).toBeLessThan(1e-6);
  expect(-2 * result.logLikelihood).toBeCloseTo(3479.149299, 6);
});

it('without covariates the probit cuts are the normal quantiles of the running shares', () => {
  const result = fit(
    'probit',
    rows.map((row) => ({ ...row, covariates: [] }))
  );
  expect(result.cuts[0]).toBeCloseTo(-0.4198453224, 10);
  expect(result.cuts[1]).toBeCloseTo(0.2601280252, 10);
});
