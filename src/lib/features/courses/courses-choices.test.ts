import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '$lib/engine/thickness';
import { DEFAULT_SETTINGS, type Grades, type PlanGround } from '$lib/job';
import { stockKnowledge, unsortedStock, whatIfLines } from './courses-choices.ts';

const spread = binsFromPairs([
  [450, 10],
  [520, 12],
  [600, 9],
  [680, 4]
]);
const GRADES: Grades = {
  ...{ gradesId: 'g1', at: '', method: 'byHand' },
  ...{ thresholdsMm: [6, 5], numbers: [1, 2, 3] }
};

function ground(counted?: number): PlanGround {
  return {
    stock: { spread, usable: 1000, isGauged: true },
    pileBins: [spread, spread, spread],
    sortedBins: [spread, spread, spread],
    before: [1, 2, 3].map((pile) => ({
      pile,
      slates: 300,
      reservedSlates: 10,
      sparesForRepairs: 5,
      ...(counted !== undefined && { slateAndAHalves: counted })
    })),
    undereave: [{ parts: [{ pile: 1, slates: 40, slateAndAHalves: 2 }] }],
    slateAndAHalvesNeeded: 24
  } as unknown as PlanGround;
}

describe('whatIfLines', () => {
  it('changes one thing at a time: piles, kick allowance, reserve', () => {
    const lines = whatIfLines(ground(), GRADES, DEFAULT_SETTINGS);
    expect(lines.map(({ change }) => change.kind)).toEqual([
      'as-now',
      ...['piles', 'piles', 'piles'], // four different thicknesses allow 2 to 4 piles
      'allowance',
      'allowance',
      'reserve',
      'reserve'
    ]);
    for (const { choices } of lines)
      expect([
        choices.thresholdsMm.length,
        choices.kickAllowancesMm.length,
        choices.reservedShares.length
      ]).toEqual([1, 1, 1]);
    expect(lines[0].choices.thresholdsMm).toEqual([[6, 5]]);
  });

  it('leaves out an allowance of nothing and a reserve that is more than the stock', () => {
    const strict = { ...DEFAULT_SETTINGS, kickAllowanceMm: 0.5, breakageShare: 0.6 };
    const changes = whatIfLines(ground(), GRADES, strict).map(({ change }) => change);
    expect(changes).toContainEqual({ kind: 'allowance', kickAllowanceMm: 1 });
    expect(changes.filter(({ kind }) => kind === 'allowance')).toHaveLength(1);
    expect(changes.filter(({ kind }) => kind === 'reserve')).toEqual([
      { kind: 'reserve', reservedShare: 0 }
    ]);
  });
});

describe('unsortedStock', () => {
  it('takes slate-and-a-halves to be enough unless every pile was counted', () => {
    expect(unsortedStock(ground()).slateAndAHalves).toBe(24_000);
    // Two of the 24 are for the undereave.
    expect(unsortedStock(ground(8)).slateAndAHalves).toBe(22);
  });

  it('keeps the slates of the undereave rows back', () => {
    expect(unsortedStock(ground()).slates).toBe(1000 - 40);
  });
});

describe('stockKnowledge', () => {
  it('is there only where slates were gauged and graded', () => {
    expect(stockKnowledge(ground(), undefined, 1.5)).toBeUndefined();
    expect(stockKnowledge(ground(), { ...GRADES, thresholdsMm: [6] }, 1.5)).toBeUndefined();
    expect(stockKnowledge(ground(), GRADES, 1.5)).toMatchObject({
      thresholdsMm: [6, 5],
      kickAllowanceMm: 1.5
    });
  });

  it('proposes one pile fewer and one more by natural breaks', () => {
    const other = stockKnowledge(ground(), GRADES, 1.5)?.otherThresholdsMm ?? [];
    expect(other.map((thresholds) => thresholds.length)).toEqual([1, 3]);
  });
});
