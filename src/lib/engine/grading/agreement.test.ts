import { describe, expect, it } from 'vitest';
import { agreementFromDisagreement, agreementTable, weightedKappa } from './agreement.ts';

describe('agreementTable', () => {
  it('counts rows by tap and columns by gauge', () => {
    expect(agreementTable([], 2)).toEqual([
      [0, 0],
      [0, 0]
    ]);
    const pairs = Object.freeze([
      { tapped: 1, gauged: 2 },
      { tapped: 1, gauged: 2 },
      { tapped: 3, gauged: 3 }
    ]);
    expect(agreementTable(pairs, 3)).toEqual([
      [0, 2, 0],
      [0, 0, 0],
      [0, 0, 1]
    ]);
  });

  it.each([
    [{ tapped: 0, gauged: 1 }, 'out-of-range'],
    [{ tapped: 1, gauged: 4 }, 'out-of-range'],
    [{ tapped: 1.5, gauged: 1 }, 'not-whole']
  ])('refuses %j: %s', (pair, code) => {
    expect(() => agreementTable([pair], 3)).toThrow(expect.objectContaining({ code }) as Error);
  });
});

describe('weightedKappa', () => {
  it('has no meaning for an empty table or for slates all in one cell', () => {
    const none = [
      [0, 0],
      [0, 0]
    ];
    expect(weightedKappa(none, 'linear')).toEqual({ ok: false, reason: 'too-few' });
    expect(weightedKappa([], 'equal')).toEqual({ ok: false, reason: 'too-few' });
    const one = [
      [7, 0],
      [0, 0]
    ];
    expect(weightedKappa(one, 'linear')).toEqual({ ok: false, reason: 'no-variation' });
  });

  it('is 1 without error for full agreement', () => {
    const full = [
      [4, 0],
      [0, 6]
    ];
    expect(weightedKappa(full, 'quadratic')).toMatchObject({ kappa: 1, slates: 10 });
    const result = weightedKappa(full, 'quadratic');
    expect(result.ok && result.standardError).toBeCloseTo(0, 12);
  });

  it('is 0 for what chance gives, and all weights agree with two piles', () => {
    const chance = [
      [8, 12],
      [12, 18]
    ];
    for (const weights of ['equal', 'linear', 'quadratic'] as const) {
      const result = weightedKappa(chance, weights);
      expect(result.ok && result.kappa).toBeCloseTo(0, 14);
    }
  });

  it.each([
    [[[1, 2]], 'equal' as const, 'wrong-length'],
    [
      [
        [1, -1],
        [0, 1]
      ],
      'equal' as const,
      'out-of-range'
    ],
    [
      [
        [1, Number.NaN],
        [0, 1]
      ],
      'equal' as const,
      'not-finite'
    ],
    [
      [
        [1, 1],
        [0, 1]
      ],
      [[1, 0]],
      'wrong-length'
    ]
  ])('refuses %j with weights %j: %s', (table, weights, code) => {
    expect(() => weightedKappa(table, weights)).toThrow(expect.objectContaining({ code }) as Error);
  });

  it('refuses weights of disagreement that are all 0', () => {
    expect(() =>
      agreementFromDisagreement([
        [0, 0],
        [0, 0]
      ])
    ).toThrow(/out-of-range/);
  });
});
