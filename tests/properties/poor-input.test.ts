import { describe, expect, it } from 'vitest';
import { createRandom } from '$lib/engine';
import {
  type PlanRequest,
  createSimulation,
  kickChances,
  planCourses,
  waysOut,
  whatIf
} from '$lib/engine/courses';
import { reservesWithinRisk, runOutChances } from '$lib/engine/courses/risk';
import {
  crossValidationRound,
  equalShares,
  gradeFigures,
  kickerCurve,
  naturalBreaks,
  regradeAdvice,
  splitIntoPiles,
  suitTheRoof,
  weightedKappa
} from '$lib/engine/grading';
import { normalMisgrading } from '$lib/engine/grading/misgrading';
import { layOutRoof, makeSlope, markingSheet, slateSpec, slopeProblems } from '$lib/engine/roof';
import {
  type PalletSample,
  anovaStudy,
  averageRangeStudy,
  comparePallets,
  doubleSample,
  estimateGrade,
  estimateMean,
  gradeByDoubleSample,
  learnHand,
  meanByDoubleSample,
  sampleAdvice,
  stockDrift,
  tapsBetweenChecks
} from '$lib/engine/statistics';
import {
  type ThicknessBins,
  binsFromPairs,
  histogram,
  mergeBins,
  momentsOfBins,
  quantilesMm,
  totalCount
} from '$lib/engine/thickness';

/** What a labourer may bring: hardly anything, or the same thing again and again. */
interface Poor {
  readonly pallets: readonly PalletSample[];
}
const pallet = (palletId: string, slates: number, ...pairs: [number, number][]): PalletSample => ({
  palletId,
  slates,
  bins: binsFromPairs(pairs)
});
const poor: [string, Poor][] = [
  ['nothing', { pallets: [] }],
  ['one pallet, not a reading', { pallets: [pallet('a', 300)] }],
  ['one reading', { pallets: [pallet('a', 300, [600, 1])] }],
  ['one reading of several pallets', { pallets: [pallet('a', 300, [600, 1]), pallet('b', 300)] }],
  ['two equal readings', { pallets: [pallet('a', 300, [600, 2])] }],
  ['all equal', { pallets: [pallet('a', 300, [600, 40]), pallet('b', 200, [600, 30])] }],
  ['a slate of each thickness', { pallets: [pallet('a', 300, [500, 1], [600, 1], [700, 1])] }],
  ['one reading a pallet', { pallets: [pallet('a', 90, [500, 1]), pallet('b', 90, [700, 1])] }],
  ['two slates, both gauged', { pallets: [pallet('a', 2, [500, 1], [700, 1])] }],
  ['one slate, gauged', { pallets: [pallet('a', 1, [600, 1])] }],
  ['two slates, one gauged', { pallets: [pallet('a', 2, [600, 1])] }]
];
const CUTS = [6.5, 5.5];
const COURSES = [
  { slates: 20, joints: 19 },
  { slates: 1, joints: 0 }
];

/** Fails on any number that is no number, and on −0 kickers or chances outside 0 to 1. */
function expectSense(told: unknown, path = 'result'): void {
  if (typeof told === 'number') {
    expect(Number.isNaN(told), `${path} is NaN`).toBe(false);
    if (/(kickProbability|share|chance)$/i.test(path)) {
      expect(told, path).toBeGreaterThanOrEqual(0);
      expect(told, path).toBeLessThanOrEqual(1);
    }
  } else if (ArrayBuffer.isView(told)) {
    for (const value of told as unknown as Iterable<number>) expectSense(value, path);
  } else if (told !== null && typeof told === 'object') {
    for (const [key, value] of Object.entries(told)) expectSense(value, `${path}.${key}`);
  }
}

describe.each(poor)('from %s', (_, { pallets }) => {
  const bins: ThicknessBins = mergeBins(pallets.map((own) => own.bins));
  const slates = pallets.reduce((sum, own) => sum + own.slates, 0);
  const ground = { bins, stockSlates: slates, courses: COURSES, kickAllowanceMm: 0.5 };
  const tapped = pallets.map((own) => ({
    ...own,
    taps: [[1, 0, 0]],
    checks: [[0, 1, 2].map(() => binsFromPairs([]))]
  }));

  const entries: [string, () => unknown][] = [
    ['moments', () => momentsOfBins(bins)],
    ['quantiles', () => quantilesMm(bins, [0, 0.5, 1])],
    ['histogram', () => histogram(bins)],
    ['mean', () => estimateMean(pallets)],
    ['grade', () => estimateGrade(pallets, { fromMm: 5.5, toMm: 6.5 })],
    ['grade nobody saw', () => estimateGrade(pallets, { fromMm: 9, toMm: Infinity })],
    ['pallets compared', () => comparePallets(pallets)],
    ['sample advice', () => sampleAdvice(pallets, CUTS, 10)],
    ['drift', () => stockDrift(pallets.map((own) => ({ sample: own.bins, since: own.bins })))],
    ['taps without a check', () => doubleSample(tapped)],
    [
      'taps with one check',
      () => {
        const sample = doubleSample(tapped, [
          [binsFromPairs([[620, 1]]), binsFromPairs([]), binsFromPairs([])]
        ]);
        if (!sample.ok) return sample;
        return [
          sample.bins,
          gradeByDoubleSample(sample, { fromMm: 6, toMm: Infinity }),
          meanByDoubleSample(sample)
        ];
      }
    ],
    ['natural breaks', () => naturalBreaks(bins, 3)],
    ['equal shares', () => equalShares(bins, 3)],
    ['suit the roof', () => suitTheRoof({ ...ground, piles: 3 })],
    ['figures', () => gradeFigures(ground)(CUTS)],
    [
      'figures with misgrading',
      () => gradeFigures({ ...ground, chanceAbove: normalMisgrading(0.3) })(CUTS)
    ],
    ['curve', () => kickerCurve(gradeFigures(ground), (piles) => naturalBreaks(bins, piles))],
    ['regrade advice', () => regradeAdvice(gradeFigures(ground), CUTS, [6.4, 5.4], [])],
    [
      'held out',
      () =>
        crossValidationRound(
          ground,
          pallets,
          [
            (cut) => {
              const told = naturalBreaks(cut, 3);
              return told.ok ? told.thresholdsMm : undefined;
            }
          ],
          createRandom(1)
        )
    ],
    ['kick chances', () => kickChances(splitIntoPiles(bins, CUTS), 0.5)]
  ];
  it.each(entries)('%s: a figure or what is missing', (__, entry) => {
    expectSense(entry());
  });

  it('a plan from its piles, its risk, a laying of it, and what if', () => {
    const piles = splitIntoPiles(bins, CUTS).map((own) => ({
      slates: Math.floor(totalCount(own)),
      slateAndAHalves: 0,
      reservedSlates: 0,
      reservedSlateAndAHalves: 0
    }));
    const run = { slates: 1, startsWithSlateAndAHalf: false, endsWithSlateAndAHalf: false };
    const request: PlanRequest = {
      courses: [{ slopeId: 's', course: 1, heightMm: 0, runs: [run] }],
      piles,
      kicks: kickChances(splitIntoPiles(bins, CUTS), 0.5)
    };
    const plan = planCourses(request);
    expectSense(plan);
    if (plan.status === 'optimal') {
      const estimates = piles.map((own) => ({ meanSlates: own.slates, sdSlates: 0 }));
      expectSense(runOutChances(plan, estimates));
      expectSense(reservesWithinRisk(piles, estimates, 0.05));
      const trial = createSimulation(
        {
          plan,
          courses: request.courses,
          piles: splitIntoPiles(bins, CUTS),
          stocks: piles,
          kickAllowanceMm: 0.5
        },
        createRandom(1)
      );
      trial.step(3);
      expectSense(trial.summary());
    } else expectSense(waysOut(request, plan));
    if (bins.counts.length > 0)
      expectSense(
        whatIf(
          request.courses,
          { spread: bins, slates, slateAndAHalves: 0, reservedShare: 0.05 },
          { thresholdsMm: [CUTS, []], kickAllowancesMm: [0, 0.5], reservedShares: [0, 0.1] }
        )
      );
  });
});

describe('hardly any readings tell what they can and no more', () => {
  const told = (name: string, fromMm: number) => {
    const found = poor.find(([other]) => other === name);
    if (!found) throw new Error(name);
    return estimateGrade(found[1].pallets, { fromMm, toMm: Infinity });
  };
  it.each<[string, number, object]>([
    ['nothing', 6, { ok: false, reason: 'nothing-gauged' }],
    ['one pallet, not a reading', 6, { ok: false, reason: 'nothing-gauged' }],
    ['one reading', 6, { ok: false, reason: 'one-slate-a-pallet' }],
    ['one reading of several pallets', 6, { ok: false, reason: 'one-pallet-of-many' }],
    ['one reading a pallet', 6, { ok: false, reason: 'one-slate-a-pallet' }],
    // 2 of 300 seen, both of the grade: at least those two, at most all
    ['two equal readings', 6, { share: 1, countHigh: 300 }],
    ['all equal', 6, { share: 1, countHigh: 500 }],
    ['all equal', 6.01, { share: 0, countLow: 0 }],
    ['two slates, both gauged', 6, { countLow: 1, count: 1, countHigh: 1 }],
    ['one slate, gauged', 6, { countLow: 1, count: 1, countHigh: 1 }],
    ['two slates, one gauged', 6, { ok: false, reason: 'one-slate-a-pallet' }]
  ])('%s, a grade from %f mm', (name, fromMm, expected) => {
    expect(told(name, fromMm)).toMatchObject(expected);
  });

  it('says of readings all alike neither that all slates are nor that none may differ', () => {
    const alike = told('all equal', 6);
    const other = told('all equal', 6.01);
    if (!alike.ok || !other.ok) throw new Error('gauged');
    expect(alike.countLow).toBeGreaterThan(400);
    expect(alike.countLow).toBeLessThan(500);
    expect(other.countHigh).toBe(500 - alike.countLow);
  });
});

/** Slates by appraisers by trials, every reading the same. */
const alike = Array.from({ length: 5 }, () => [
  [6, 6],
  [6, 6]
]);

describe('hands and gauges of which hardly anything is known', () => {
  it.each<[string, () => unknown]>([
    ['no check', () => learnHand([], 3)],
    ['one check', () => learnHand([{ pile: 1, thicknessMm: 6 }], 3)],
    [
      'checks all of one thickness',
      () =>
        learnHand(
          [1, 2, 3].flatMap((pile) => Array.from({ length: 6 }, () => ({ pile, thicknessMm: 6 }))),
          3
        )
    ],
    ['pace of a hand without a check', () => tapsBetweenChecks(learnHand([], 3))],
    [
      'kappa of nothing',
      () =>
        weightedKappa(
          [
            [0, 0],
            [0, 0]
          ],
          'linear'
        )
    ],
    [
      'kappa of one pile',
      () =>
        weightedKappa(
          [
            [5, 0],
            [0, 0]
          ],
          'linear'
        )
    ],
    ['gauge study of nothing', () => averageRangeStudy([])],
    ['gauge study of readings all alike', () => anovaStudy(alike)],
    ['the same by ranges', () => averageRangeStudy(alike)]
  ])('%s: a figure or what is missing', (_, entry) => {
    expectSense(entry());
  });
});
describe('roofs that are hardly there', () => {
  const spec = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 });
  const base = { id: 's', rafterLengthMm: 2500, eaveWidthMm: 5000, pitchDegrees: 40 };
  const hip = { kind: 'hip', insetAtTopMm: 2500 } as const;
  const opening = (widthMm: number, heightMm: number) => ({
    kind: 'rooflight' as const,
    fromLeftMm: 0,
    widthMm,
    fromEaveMm: 500,
    heightMm
  });
  it.each<[string, Parameters<typeof makeSlope>[0]]>([
    ['narrower than a slate', { ...base, eaveWidthMm: 100 }],
    ['as wide as a slate', { ...base, eaveWidthMm: 250 }],
    ['shorter than a course', { ...base, rafterLengthMm: 150 }],
    ['of no width', { ...base, eaveWidthMm: 0 }],
    ['of no length', { ...base, rafterLengthMm: 0 }],
    ['coming to a point', { ...base, left: hip, right: hip }],
    ['with hips that cross', { ...base, left: { ...hip, insetAtTopMm: 2600 }, right: hip }],
    ['with an opening up to the verge', { ...base, openings: [opening(600, 800)] }],
    ['with an opening as wide as the slope', { ...base, openings: [opening(5000, 800)] }],
    ['with an opening of no width', { ...base, openings: [opening(0, 800)] }],
    ['with a number that is none', { ...base, eaveWidthMm: Number.NaN }]
  ])('%s: laid out in numbers, or refused with the reason', (_, input) => {
    const slope = makeSlope(input);
    const problems = slopeProblems(slope, spec);
    const roof = layOutRoof([slope], spec);
    expect(roof.ok).toBe(problems.length === 0);
    if (!roof.ok) {
      // the screen says each in words; the code and the field tell which
      for (const { code, field } of problems) expect(`${code} ${field}`).toMatch(/^[a-z-]+ \w+/);
      return;
    }
    expectSense(roof);
    for (const laid of roof.slopes)
      for (const { counts } of laid.courses)
        for (const pieces of Object.values(counts)) expect(pieces).toBeGreaterThanOrEqual(0);
    expectSense(roof.slopes.map((laid) => markingSheet(laid, spec)));
  });
});
