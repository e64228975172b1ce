import { describe, expect, it } from 'vitest';
import {
  type ThicknessBins,
  binsFromPairs,
  momentsOfBins,
  totalCount
} from '../thickness/index.ts';
import { gradeByDoubleSample, meanByDoubleSample } from './double-sampling-figures.ts';
import { type DoubleSample, type TappedPallet, doubleSample } from './double-sampling.ts';
import { estimateGrade } from './two-stage.ts';

const of = (...hundredths: number[]): ThicknessBins =>
  binsFromPairs(hundredths.map((value) => [value, 1]));
const NONE = of();

/** A pallet of so many slates, with the piles of one hand. */
const pallet = (
  palletId: string,
  slates: number,
  bins: ThicknessBins,
  taps: number[] = [0, 0],
  checks: ThicknessBins[] = taps.map(() => NONE)
): TappedPallet => Object.freeze({ palletId, slates, bins, taps: [taps], checks: [checks] });

function known(...given: Parameters<typeof doubleSample>): DoubleSample {
  const sample = doubleSample(...given);
  if (!sample.ok) throw new Error(sample.reason);
  return sample;
}
const THICK = { fromMm: 6, toMm: Infinity };

/** The figures of a sample, or why there are none; never anything that is no number. */
function figuresOf(sample: DoubleSample) {
  const grade = gradeByDoubleSample(sample, THICK);
  const mean = meanByDoubleSample(sample);
  for (const told of [grade, mean])
    if (told.ok)
      for (const value of Object.values(told))
        if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
  if (grade.ok) {
    const all = sample.pallets.reduce((sum, { slates }) => sum + slates, 0);
    expect(grade.countLow).toBeGreaterThanOrEqual(0);
    expect(grade.countLow).toBeLessThanOrEqual(grade.count);
    expect(grade.countHigh).toBeGreaterThanOrEqual(grade.count);
    expect(grade.countHigh).toBeLessThanOrEqual(all);
  }
  if (mean.ok) expect(mean.lowMm).toBeLessThanOrEqual(mean.highMm);
  return { grade, mean };
}

describe('doubleSample', () => {
  it('weighs checks by the taps of their pile: Cochran’s strata', () => {
    // 40 tapped, 30 thick: of 4 checked there one is 5 mm, of 2 thin ones both; nothing else gauged
    const { pallets, bins } = known([
      pallet('a', 40, NONE, [30, 10], [of(700, 700, 700, 500), of(500, 500)])
    ]);
    const share = (0.75 * 3) / 4;
    expect([...pallets[0].spread.hundredths]).toEqual([500, 700]);
    expect(pallets[0].spread.counts[1]).toBeCloseTo(share, 12);
    expect(totalCount(bins)).toBeCloseTo(6, 12);
    expect(bins.counts[1]).toBeCloseTo(6 * share, 12);
  });

  it('is the gauge alone without taps, as estimateGrade tells it', () => {
    const list = [
      pallet('a', 100, of(500, 550, 610, 620)),
      pallet('b', 300, of(570, 590, 640, 690, 700))
    ];
    const sample = known(list);
    expect(sample.tapsCounted).toBe(0);
    const { grade } = figuresOf(sample);
    const alone = estimateGrade(list, THICK);
    if (!grade.ok || !alone.ok) throw new Error('estimable');
    expect(grade.share).toBeCloseTo(alone.share, 12);
    expect(grade.countLow).toBe(alone.countLow);
    expect(grade.countHigh).toBe(alone.countHigh);
  });

  it('tells a tap by its own pallet as far as that was checked', () => {
    const { told } = known([
      pallet('thin', 100, NONE, [50, 50], [of(...Array<number>(12).fill(600)), of(500)]),
      pallet('thick', 100, NONE, [50, 50], [of(...Array<number>(4).fill(700)), of(500)])
    ]);
    const meanOn = (place?: number): number => {
      const moments = momentsOfBins(told(0, 1, place) ?? NONE);
      if (!moments.ok) throw new Error('nothing told');
      return moments.meanMm;
    };
    // pooled mean 6.25 mm; 12 of 12 + 4 are own on the thin pallet, 4 of 4 + 4 on the thick one
    expect(meanOn(0)).toBeCloseTo(0.75 * 6 + 0.25 * 6.25, 12);
    expect(meanOn(1)).toBeCloseTo(0.5 * 7 + 0.5 * 6.25, 12);
    expect(meanOn()).toBeCloseTo((meanOn(0) + meanOn(1)) / 2, 12);
  });

  it('puts a pile without a check to the nearest pile of the same hand that has some', () => {
    const piles = (checks: ThicknessBins[]) => [pallet('a', 90, NONE, [30, 30, 30], checks)];
    const thickToo = known(piles([NONE, of(600), of(500)]));
    expect(thickToo.pallets[0].spread.counts[1]).toBeCloseTo(2 / 3, 12);
    expect(thickToo.told(0, 1)).toEqual(thickToo.told(0, 2));
    const all = known(piles([of(700), NONE, NONE]));
    expect(all.pallets[0].spread).toEqual(of(700));
  });

  it('leaves out the taps of a hand that was never checked', () => {
    const two: TappedPallet = {
      ...pallet('a', 100, of(600, 620)),
      taps: [
        [30, 10],
        [5, 6]
      ],
      checks: [
        [of(650), of(550)],
        [NONE, NONE]
      ]
    };
    const sample = known([two]);
    expect([sample.tapsCounted, sample.tapsLeftOut]).toEqual([40, 11]);
    expect(sample.told(1, 1)).toBeUndefined();
  });

  it('counts a check of which the pallet is not known for every pallet', () => {
    const sample = known([pallet('a', 50, NONE, [40, 0])], [[of(640, 660), NONE]]);
    expect(sample.pallets[0].spread.counts).toEqual(Float64Array.of(0.5, 0.5));
    expect(figuresOf(sample).grade).toMatchObject({ share: 1, countHigh: 50 });
  });

  it('trusts gauge and checks by what each is worth', () => {
    // hands that sort at random: a check is then worth a reading, and all readings weigh alike
    const slates = (start: number) =>
      Array.from({ length: 40 }, (_, k) => start + ((37 * k) % 200));
    const sample = known([
      pallet('a', 4000, of(...slates(500)), [2000, 1960], [of(...slates(500)), of(...slates(500))])
    ]);
    const [gauge, ...checks] = sample.groups;
    for (const { weight } of checks) expect(weight / gauge.weight).toBeCloseTo(1, 1);
  });

  it('refuses without a reading, and taps that nothing tells', () => {
    expect(doubleSample([])).toEqual({ ok: false, reason: 'nothing-gauged' });
    expect(doubleSample([pallet('a', 50, NONE)])).toEqual({ ok: false, reason: 'nothing-gauged' });
    expect(doubleSample([pallet('a', 50, of(600), [3, 4])])).toEqual({
      ok: false,
      reason: 'no-spot-checks'
    });
  });

  it('refuses pallets that tell different hands or more slates than they hold', () => {
    const other = { ...pallet('b', 50, NONE), taps: [[1, 2, 3]] };
    expect(() => doubleSample([pallet('a', 50, NONE), other])).toThrow(/wrong-length/);
    expect(() => doubleSample([pallet('a', 1, of(600, 620))])).toThrow(/out-of-range/);
    expect(() => doubleSample([pallet('a', 50, NONE, [1.5, 0])])).toThrow(/not-whole/);
  });
});

describe('figures by double sampling', () => {
  it.each<[string, TappedPallet[], object]>([
    ['one reading', [pallet('a', 50, of(600))], { ok: false, reason: 'one-slate-a-pallet' }],
    [
      'one check and no gauge',
      [pallet('a', 50, NONE, [20, 30], [of(620), NONE])],
      { ok: false, reason: 'one-slate-a-pallet' }
    ],
    [
      'one check beside the gauge',
      [pallet('a', 50, of(580, 600, 620), [20, 27], [of(640), NONE])],
      { ok: true }
    ],
    ['all equal', [pallet('a', 50, of(600, 600), [20, 28], [of(600), of(600)])], { share: 1 }],
    [
      'one pallet known of two',
      [pallet('a', 50, of(580, 620), [20, 28], [of(640), of(560)]), pallet('b', 50, NONE)],
      { ok: false, reason: 'one-pallet-of-many' }
    ],
    [
      'everything tapped, nothing gauged',
      [pallet('a', 50, NONE, [20, 30], [of(640, 610), of(560, 590)])],
      { share: 0.4 }
    ],
    ['everything gauged', [pallet('a', 3, of(580, 620, 640))], { countLow: 2, countHigh: 2 }],
    [
      'every tap checked',
      [pallet('a', 4, NONE, [2, 2], [of(640, 590), of(560, 570)])],
      { countLow: 1, countHigh: 1 }
    ],
    ['two slates, both tapped', [pallet('a', 2, NONE, [1, 1], [of(640), of(560)])], { count: 1 }],
    [
      'gauged slates that were tapped later too',
      [pallet('a', 4, of(560, 640), [2, 2], [of(640), of(560)])],
      { share: 0.5 }
    ]
  ])('%s: a right figure or what is missing', (_, list, expected) => {
    const { grade } = figuresOf(known(list));
    expect(grade).toMatchObject(expected);
  });

  it('refuse a confidence outside 0 to 1', () => {
    const sample = known([pallet('a', 50, of(600, 620))]);
    expect(() => gradeByDoubleSample(sample, THICK, 1)).toThrow(/out-of-range/);
    expect(() => meanByDoubleSample(sample, 0)).toThrow(/out-of-range/);
  });
});
