import { describe, expect, it } from 'vitest';
import type { JudgingPlan } from './judging-plan.ts';
import { findAll, type DeliveryEvidence, type DeliveryFindings } from './findings.ts';
import type { MeasuredSlate } from './slate-conformity.ts';
import { judgeDelivery } from './verdict.ts';

const plan: JudgingPlan = {
  sampleSize: 20,
  acceptAtMost: 2,
  acceptableShare: 0.04,
  basis: [{ standing: 'set by the order', source: 'the order' }]
};

const slate = (thicknessMm: number, more: Partial<MeasuredSlate> = {}): MeasuredSlate => ({
  palletId: 'P1',
  drawnAs: 'unsorted sample',
  pointsMm: [thicknessMm],
  ...more
});

/** Twenty slates of 4.5 to 5.45 mm, all inside 5 mm ± 35 %. */
const twentyInside = Array.from({ length: 20 }, (_, index) => slate(4.5 + index * 0.05));

function evidence(more: Partial<DeliveryEvidence> = {}): DeliveryEvidence {
  return Object.freeze({
    order: {
      lengthMm: 500,
      widthMm: 250,
      nominalThicknessMm: 5,
      thicknessTolerancePercent: 35,
      texture: 'normal' as const,
      slatesOrdered: 1000
    },
    delivered: 1000,
    slates: twentyInside,
    plan,
    stacks: [{ slates: 100, totalMm: 540 }],
    labelMmPer100: 540,
    need: { slates: 700, reserve: 50 },
    sorting: { slatesPerHour: 250, costPerHour: 30, acceptableKickersPer100: 10 },
    evenness: { unsortedKickersPer100: 22, sortedKickersPer100: 4, piles: 3 },
    level: 0.95,
    ...more
  });
}

function findings(more: Partial<DeliveryEvidence> = {}): DeliveryFindings {
  const result = findAll(evidence(more));
  if (!result.ok) throw new Error(result.reason);
  return result.findings;
}

const codes = (found: DeliveryFindings): string[] =>
  judgeDelivery(found).reasons.map(({ code, weight }) => `${weight}: ${code}`);

/** The twenty, with the first few replaced. */
const withFirst = (...first: MeasuredSlate[]): MeasuredSlate[] => [
  ...first,
  ...twentyInside.slice(first.length)
];

describe('evidence that cannot judge', () => {
  it.each<[string, Partial<DeliveryEvidence>]>([
    ['no-unsorted-sample', { slates: [] }],
    ['no-unsorted-sample', { slates: [slate(5, { drawnAs: 'other' })] }],
    ['no-unsorted-sample', { slates: [slate(5, { pointsMm: [] })] }],
    ['sample-exceeds-lot', { delivered: 19 }],
    ['sample-exceeds-lot', { slates: [slate(5)], delivered: 19 }],
    ['count-zero', { delivered: 0 }]
  ])('%s', (reason, more) => {
    expect(findAll(evidence(more))).toEqual({ ok: false, reason });
  });

  it('a tolerance over 100 % is refused before anything is judged', () => {
    const order = { ...evidence().order, thicknessTolerancePercent: 120 };
    expect(findAll(evidence({ order }))).toEqual({ ok: false, reason: 'tolerance-over-100' });
  });
});

describe('findings', () => {
  it('0 of 20 in 1000: exact limits 0 to 166 slates, hours and cost follow', () => {
    const { outsideOrder, sorting, roof } = findings();
    // Computed apart with whole-number binomials: C(834, 20)/C(1000, 20) = .0255, at 833 .0249.
    expect(outsideOrder.countInterval).toEqual({ low: 0, high: 166, level: 0.95 });
    expect(outsideOrder.attributes).toEqual({ state: 'accepted', acceptAtMost: 2, toJudge: 0 });
    expect(sorting.insideInterval).toEqual({ low: 834, high: 1000, level: 0.95 });
    expect(sorting.hours).toEqual({ low: 834 / 250, high: 4, level: 0.95 });
    expect(sorting.cost?.high).toBe(120);
    expect(sorting.spread).toMatchObject({ slates: 20, thinnestMm: 4.5, thickestMm: 5.45 });
    expect(roof).toMatchObject({ state: 'enough', unusable: 0 });
    expect(roof.missingInterval).toEqual({ low: 0, high: 0, level: 0.95 });
  });

  it('a thick slate is outside the order and still usable on the roof', () => {
    const { outsideOrder, roof } = findings({ slates: withFirst(slate(7)) });
    expect(outsideOrder.outside).toBe(1);
    expect(roof.unusable).toBe(0);
  });

  it('counts each check over the slates that were measured for it', () => {
    const slates = withFirst(slate(5, { lengthMm: 494 }), slate(5, { lengthMm: 495 }));
    const lengths = findings({ slates }).outsideOrder.byCheck.find(
      ({ check }) => check === 'length'
    );
    expect(lengths).toMatchObject({ measured: 2, failed: 1, basis: { standing: 'quoted' } });
    const ring = findings({ slates }).outsideOrder.byCheck.find(({ check }) => check === 'ring');
    expect(ring).toEqual({
      check: 'ring',
      measured: 0,
      failed: 0,
      failedForCertain: 0,
      basis: { standing: 'common practice', source: '' }
    });
  });

  it('ring and defects marked on some slates alone tell no share; on every slate they do', () => {
    const checkOf = (slates: MeasuredSlate[], name: string) =>
      findings({ slates }).outsideOrder.byCheck.find(({ check }) => check === name);
    const oneDull = withFirst(slate(5, { ring: 'dull', defects: ['broken'] }));
    for (const name of ['ring', 'defects']) {
      const partly = checkOf(oneDull, name);
      expect(partly).toMatchObject({ measured: 1, failed: 1 });
      expect(partly).not.toHaveProperty('countInterval');
      expect(partly).not.toHaveProperty('shareInterval');
    }
    const all = oneDull.map((each) => ({ ...each, ring: each.ring ?? ('clear' as const) }));
    expect(checkOf(all, 'ring')).toMatchObject({ measured: 20, failed: 1 });
    expect(checkOf(all, 'ring')?.countInterval).toEqual(
      findings({ slates: withFirst(slate(9)) }).outsideOrder.countInterval
    );
    expect(findings({ slates: oneDull }).roof.unusable).toBe(1);
    expect(findings({ slates: oneDull }).roof.judged).toBe(20);
  });

  it('slates that are not of the unsorted sample judge nothing and are counted apart', () => {
    const worst = Array.from({ length: 30 }, () => slate(9, { drawnAs: 'other' }));
    const found = findings({ slates: [...twentyInside, ...worst] });
    expect(found.listedApart).toBe(30);
    expect({ ...found, listedApart: 0 }).toEqual(findings());
  });

  it('compares the pallets by their sampled slates', () => {
    const slates = twentyInside.map((each, index) => ({
      ...each,
      palletId: index < 10 ? 'thin' : 'thick'
    }));
    const { pallets, chart } = findings({ slates }).pallets;
    expect(pallets.map(({ id, judged, sampled }) => [id, judged, sampled])).toEqual([
      ['thick', 10, 10],
      ['thin', 10, 10]
    ]);
    expect(pallets[0].meanMm).toBeCloseTo(5.225, 12);
    // Means 0.25 mm from the centre; limits 3 · 0.1514 / √10 = 0.1436 mm either side.
    expect(chart.ok && chart.chart.points.map(({ position }) => position)).toEqual([
      'above',
      'below'
    ]);
    expect(findings().pallets.chart).toEqual({ ok: false, reason: 'too-few' });
  });

  it('survives the way to a worker and back', () => {
    const found = findings();
    expect(structuredClone(found)).toEqual(found);
  });
});

describe('verdict', () => {
  it('take: inside the order, needs sorting, enough for the roof', () => {
    const result = judgeDelivery(findings());
    expect(result.verdict).toBe('take');
    expect(result.reasons).toEqual([
      {
        code: 'sorting-needed',
        weight: 'note',
        figures: {
          unsortedKickersPer100: 22,
          sortedKickersPer100: 4,
          piles: 3,
          hoursLow: 3.336,
          hoursHigh: 4,
          costLow: 100.08,
          costHigh: 120
        }
      }
    ]);
  });

  it('take with two outside, refuse with three', () => {
    expect(judgeDelivery(findings({ slates: withFirst(slate(7), slate(8)) })).verdict).toBe('take');
    const three = findings({ slates: withFirst(slate(7), slate(8), slate(3)) });
    expect(judgeDelivery(three).verdict).toBe('refuse');
    expect(codes(three)[0]).toBe('refuse: outside-order');
  });

  it.each<[string, Partial<MeasuredSlate>]>([
    ['length', { lengthMm: 480 }],
    ['ring', { ring: 'dull' }],
    ['colour', { defects: ['colour'] }]
  ])(
    '%s refuses only where the buyer confirmed it from the order, else it queries',
    (limit, bad) => {
      const slates = withFirst(slate(5, bad), slate(5, bad), slate(5, bad));
      const asked = findings({ slates });
      expect(asked.outsideOrder).toMatchObject({ outside: 3, outsideForCertain: 0 });
      // 0 of 20 in 1,000, as above: what is only asked about widens no range of the order.
      expect(asked.outsideOrder.countIntervalForCertain).toMatchObject({ low: 0, high: 166 });
      expect(judgeDelivery(asked).wouldChange.slice(0, 2)).toEqual([
        { code: 'outside-in-sample-at-most', now: 0, limit: 2 },
        { code: 'outside-with-asked-at-most', now: 3, limit: 2 }
      ]);
      expect(judgeDelivery(asked).verdict).toBe('query');
      expect(codes(asked)[0]).toBe('query: outside-order-unconfirmed');

      const order = { ...evidence().order, agreed: { [limit]: { where: 'order, line 3' } } };
      const firm = findings({ order, slates });
      expect(judgeDelivery(firm).verdict).toBe('refuse');
      const check = firm.outsideOrder.byCheck.find(({ failed }) => failed > 0);
      expect(check).toMatchObject({
        failed: 3,
        failedForCertain: 3,
        basis: { standing: 'set by the order', source: 'order, line 3' }
      });
    }
  );

  it('size, squareness, edge and bow tell a share only by the slates that chance picked', () => {
    const bowOf = (check: string, slates: MeasuredSlate[]) =>
      findings({ slates }).outsideOrder.byCheck.find((each) => each.check === check);
    const bow = (bowMm: number, isFullCheck = false): MeasuredSlate =>
      slate(5, { bowMm, isFullCheck });
    // By eye: four look bowed and are measured, one fails. No range of the delivery follows.
    expect(bowOf('flatness', withFirst(bow(9), bow(7), bow(6), bow(7)))).toMatchObject({
      measured: 4,
      failed: 1
    });
    expect(bowOf('flatness', withFirst(bow(9), bow(7)))?.countInterval).toBeUndefined();
    // By chance: five are picked; the two measured by eye beside them count, but tell no share.
    const picked = [1, 1, 1, 1, 8].map((mm) => bow(mm, true));
    const found = bowOf('flatness', withFirst(...picked, bow(9), bow(9)));
    expect(found).toMatchObject({ measured: 7, failed: 3, drawn: { slates: 5, failed: 1 } });
    // scipy 1.17: hypergeom(1000, K, 5) has both tails at 1 found above 2.5 % for K from 6 to 715
    expect(found?.countInterval).toMatchObject({ low: 6, high: 715 });
    // One of the picked was left out: whoever leaves out as they like makes a share of their own.
    const left = withFirst(...picked.slice(0, 4), slate(5, { isFullCheck: true }));
    expect(bowOf('flatness', left)?.countInterval).toBeUndefined();
  });

  it('a slate that could not be gauged counts as inside for the low end, outside for the high', () => {
    const slates = [slate(8), ...twentyInside.slice(2), slate(5, { pointsMm: [], ring: 'clear' })];
    const [thickness] = findings({ slates }).outsideOrder.byCheck;
    expect(thickness).toMatchObject({ measured: 19, failed: 1, drawn: { slates: 20, failed: 1 } });
    const [all] = findings({ slates: [slate(8), slate(8), ...twentyInside.slice(2)] }).outsideOrder
      .byCheck;
    expect(thickness.countInterval?.high).toBe(all.countInterval?.high);
  });

  it('the reserve may run short where the low end covers the roof, the roof where it does not', () => {
    const dull = (count: number): MeasuredSlate[] =>
      withFirst(...Array.from({ length: count }, () => slate(5, { ring: 'dull' })));
    const { low, high } = findings({ slates: dull(2) }).roof.usableInterval;
    const stateFor = (slates: number, reserve: number): string =>
      findings({ slates: dull(2), need: { slates, reserve } }).roof.state;
    expect(stateFor(low, 0)).toBe('enough');
    expect(stateFor(low, 1)).toBe('reserve uncertain');
    expect(stateFor(low, high - low + 1)).toBe('reserve short');
    expect(stateFor(low + 1, 0)).toBe('uncertain');
    expect(stateFor(high + 1, 0)).toBe('short');
  });

  it('sorting speaks of the slates inside the order alone, whatever put the others outside', () => {
    const slates = withFirst(slate(9), slate(4.5, { bowMm: 30 }), slate(4.6, { ring: 'dull' }));
    const { spread } = findings({ slates }).sorting;
    expect(spread).toMatchObject({ slates: 17, thinnestMm: 4.65, thickestMm: 5.45 });
  });

  it('a limit of another figure in the order is held to that figure', () => {
    const order = {
      ...evidence().order,
      agreed: { length: { where: 'order, line 1', limitMm: 2 } }
    };
    const slates = withFirst(slate(5, { lengthMm: 497 }), slate(5, { lengthMm: 502 }));
    expect(findings({ slates }).outsideOrder.outside).toBe(0);
    expect(findings({ order, slates }).outsideOrder.outsideForCertain).toBe(1);
  });

  it('no tolerance agreed: no slate is outside for its thickness, and it is asked', () => {
    const order = { ...evidence().order, thicknessTolerancePercent: undefined };
    const found = findings({ order, slates: withFirst(slate(7), slate(8), slate(3)) });
    expect(found.outsideOrder).toMatchObject({ judged: 20, outside: 0 });
    expect(found.outsideOrder.byCheck[0]).toMatchObject({
      measured: 20,
      failed: 0,
      basis: { standing: 'not agreed' }
    });
    expect(found.outsideOrder.byCheck[0].countInterval).toBeUndefined();
    expect(codes(found)).toEqual(['query: tolerance-not-agreed', 'note: sorting-needed']);
  });

  it('an unfinished sample queries until it can no longer change', () => {
    expect(codes(findings({ slates: twentyInside.slice(0, 17) }))).toContain(
      'query: sample-unfinished'
    );
    expect(judgeDelivery(findings({ slates: twentyInside.slice(0, 18) })).verdict).toBe('take');
    const early = findings({ slates: [slate(7), slate(8), slate(3)] });
    expect(judgeDelivery(early).verdict).toBe('refuse');
  });

  it.each<[string, Partial<DeliveryEvidence>]>([
    ['query: count-short', { delivered: 960 }],
    ['note: count-over', { delivered: 1040 }],
    ['query: label-missing', { labelMmPer100: undefined }],
    ['note: stack-not-measured', { stacks: [] }],
    [
      'query: stack-off-label',
      { stacks: [{ slates: 100, totalMm: 600 }], stackTolerancePercent: 10 }
    ],
    ['query: roof-short', { need: { slates: 1001, reserve: 0 } }],
    ['query: roof-reserve-short', { need: { slates: 830, reserve: 171 } }],
    ['query: roof-uncertain', { need: { slates: 900, reserve: 50 } }],
    ['note: listed-apart', { slates: [...twentyInside, slate(9, { drawnAs: 'other' })] }]
  ])('%s', (expected, more) => {
    expect(codes(findings(more))).toContain(expected);
  });

  it('a variables plan that refuses makes a query', () => {
    const found = findings({
      slates: Array.from({ length: 20 }, (_, index) => slate(index % 2 ? 3.4 : 6.6)),
      variablesPlan: {
        sampleSize: 20,
        allowedShare: 0.0895,
        acceptability: 1.35,
        letter: 'H',
        everySlate: false,
        basis: { standing: 'published', source: 'MIL-STD-414' }
      }
    });
    expect(found.outsideOrder.outside).toBe(0);
    expect(codes(found)).toContain('query: thickness-by-variables');
  });
});

describe('what would change it', () => {
  const limitOf = (found: DeliveryFindings, code: string): number | undefined =>
    judgeDelivery(found).wouldChange.find((each) => each.code === code)?.limit;

  it('the tolerance that it names accepts, and a hair less does not', () => {
    const slates = withFirst(slate(7), slate(8), slate(3));
    const order = evidence().order;
    const limit = limitOf(findings({ slates }), 'thickness-tolerance-percent-at-least');
    expect(limit).toBeCloseTo(40, 9); // third worst: 3 and 7 mm are both 40 % from 5 mm
    const at = (thicknessTolerancePercent: number): string =>
      findings({ slates, order: { ...order, thicknessTolerancePercent } }).outsideOrder.attributes
        .state;
    expect(at(limit!)).toBe('accepted');
    expect(at(limit! - 0.001)).toBe('refused');
  });

  it('names no tolerance where other checks alone fail too many', () => {
    const short = slate(5, { lengthMm: 480 });
    const found = findings({ slates: withFirst(short, short, short) });
    expect(limitOf(found, 'thickness-tolerance-percent-at-least')).toBeUndefined();
  });

  it('the number of unusable slates that it names is enough, and one more is not', () => {
    const need = { slates: 700, reserve: 50 };
    const limit = limitOf(findings(), 'unusable-in-sample-at-most')!;
    const stateWith = (unusable: number): string =>
      findings({
        slates: withFirst(...Array.from({ length: unusable }, () => slate(5, { ring: 'dull' }))),
        need
      }).roof.state;
    expect(stateWith(limit)).toBe('enough');
    expect(stateWith(limit + 1)).not.toBe('enough');
  });

  it('the SD that it names is accepted, and a hair more is not', () => {
    const variablesPlan = {
      sampleSize: 20,
      allowedShare: 0.0895,
      acceptability: 1.35,
      letter: 'H' as const,
      everySlate: false,
      basis: { standing: 'published' as const, source: 'MIL-STD-414' }
    };
    const limit = limitOf(findings({ variablesPlan }), 'thickness-sd-mm-at-most')!;
    const spreadTo = (sd: number): boolean => {
      const now = findings({ variablesPlan }).outsideOrder.thickness!;
      const slates = twentyInside.map(({ pointsMm }) =>
        slate(now.mean + ((pointsMm[0] - now.mean) * sd) / now.sd)
      );
      return findings({ variablesPlan, slates }).outsideOrder.thickness!.accepted;
    };
    expect(spreadTo(limit * 0.9999)).toBe(true);
    expect(spreadTo(limit * 1.0001)).toBe(false);
  });
});
