import { describe, expect, it } from 'vitest';
import { planCourses } from '$lib/engine/courses';
import type { NewEvent } from '$lib/journal';
import { partOf } from '$lib/journal';
import {
  gradesOf,
  planRequestOf,
  roofLayoutOf,
  sizesOf,
  specOf,
  stockOf,
  tallyPallets
} from '../index.ts';
import { TestJournal as Journal } from '../../../../tests/support/test-journal.ts';
import { actOfSize, sizeProblemsOf, sizesLaidOut, viewOfSize } from './index.ts';

const SPEC: NewEvent = {
  type: 'slateSpecSet',
  body: {
    ...{ lengthMm: 500, widthMm: 250, nailing: 'centre' as const, headlapMm: 90 },
    ...{ jointMinMm: 3, jointMaxMm: 5, eaveOverhangMm: 50, vergeOverhangMm: 50 }
  }
};
const slope = (slopeId: string, rafterLengthMm: number): NewEvent => ({
  type: 'slopeSet',
  body: {
    ...{ slopeId, name: slopeId, rafterLengthMm, eaveWidthMm: 4000 },
    ...{ pitchDegrees: 40, eaveHeightMm: 0, openings: [] },
    ...{ left: { kind: 'verge' as const }, right: { kind: 'verge' as const } }
  }
});
const SIZES: NewEvent = {
  type: 'slateSizesSet',
  body: {
    sizes: [
      { sizeId: 'first', lengthMm: 500, widthMm: 250 },
      { sizeId: 'mid', lengthMm: 400, widthMm: 200 },
      { sizeId: 'short', lengthMm: 300, widthFromMm: 150, widthToMm: 250 }
    ]
  }
};

/** A pallet of a size with readings that no other size has. */
function pallet(sizeId: string | undefined, slates: number, fromHundredths: number): NewEvent[] {
  const palletId = `pallet-${sizeId ?? 'old'}`;
  return [
    { type: 'palletAdded', body: { palletId, label: palletId, slates, ...(sizeId && { sizeId }) } },
    ...Array.from({ length: 20 }, (_, n): NewEvent => ({
      type: 'slateGauged',
      body: { palletId, points: [fromHundredths + 9 * n], gradesId: null, pile: null }
    }))
  ];
}

const grades = (sizeId: string, thresholdMm: number): NewEvent => ({
  type: 'gradesSet',
  body: { method: 'byHand', thresholdsMm: [thresholdMm], sizeId }
});

function chapel(): Journal {
  return new Journal().add(
    SPEC,
    slope('south', 3500),
    slope('porch', 2000),
    // Entered before there were several sizes: of the slate as it was.
    ...pallet(undefined, 400, 600),
    SIZES,
    ...pallet('mid', 600, 500),
    ...pallet('short', 900, 400),
    grades('first', 7),
    grades('mid', 6),
    grades('short', 5)
  );
}

describe('J80 a job of one size has nothing of sizes', () => {
  it('no size, and its view is the whole job', () => {
    const { view } = new Journal().add(SPEC, slope('south', 3500), ...pallet(undefined, 400, 600));
    expect(sizesOf(view)).toEqual([]);
    expect(viewOfSize(view, 'first')).toBe(view);
  });

  it('taken back to one size, it is as it was, and keeps what was sorted', () => {
    const back = chapel().add({ type: 'slateSizesSet', body: { sizes: [] } }).view;
    expect(sizesOf(back)).toEqual([]);
    expect(tallyPallets(back)).toHaveLength(3);
    expect(specOf(back)?.lengthMm).toBe(500);
  });
});

describe('J81 each size has its own slate, pallets, grades, stock and courses', () => {
  const { view } = chapel();
  const seen = (sizeId: string) => viewOfSize(view, sizeId);

  it('slate, pallets and grades; what names no size is of the old slate', () => {
    expect(specOf(seen('mid'))).toMatchObject({ lengthMm: 400, widthMm: 200, headlapMm: 90 });
    expect(specOf(seen('short'))).toMatchObject({ lengthMm: 300, widthMm: 200 });
    expect(tallyPallets(seen('first')).map(({ label }) => label)).toEqual(['pallet-old']);
    expect(tallyPallets(seen('short')).map(({ label }) => label)).toEqual(['pallet-short']);
    expect(gradesOf(seen('mid'))?.thresholdsMm).toEqual([6]);
    expect(stockOf(seen('mid')).delivered).toBe(600);
  });

  it('the courses of all sizes are those of each slope, once each, from the eave up', () => {
    const laid = sizesLaidOut(view);
    if (!laid.ok) throw new Error(laid.reason);
    for (const slopeId of ['south', 'porch']) {
      const numbers = laid.sets.flatMap(({ set }) =>
        laid.roofs[set.id].slopes
          .filter((each) => each.slope.id === slopeId)
          .flatMap(({ courses }) => courses.map(({ course }) => course))
      );
      expect(numbers).toEqual(numbers.map((_number, index) => index + 1));
      expect(numbers.length).toBeGreaterThan(8);
    }
    expect(laid.standing).toBe('proposed');
    for (const { used, stock } of laid.sets) expect(used).toBeLessThanOrEqual(stock);
  });

  it('one drop course for each shorter size on a slope, marked', () => {
    const laid = sizesLaidOut(view);
    if (!laid.ok) throw new Error(laid.reason);
    const used = laid.sets.filter(({ courses }) => courses > 0);
    const drops = used.map(
      ({ set }) =>
        laid.roofs[set.id].slopes
          .filter((each) => each.slope.id === 'south')
          .flatMap(({ courses }) => courses.filter(({ isDrop }) => isDrop)).length
    );
    expect(drops).toEqual(used.map((_set, index) => Math.min(index, 1)));
  });

  it('a plan within the size, from its own stock', () => {
    for (const sizeId of ['first', 'mid', 'short']) {
      const ready = planRequestOf(seen(sizeId));
      if (!ready.ok) throw new Error(`${sizeId}: ${ready.missing}`);
      const plan = planCourses(ready.request);
      expect(plan.status).toBe('optimal');
      expect(ready.request.courses.length).toBeGreaterThan(0);
    }
  });

  it('random widths ask for no slate-and-a-half', () => {
    const roof = roofLayoutOf(seen('short'));
    if (!roof.ok) throw new Error(roof.reason);
    expect(roof.totals.slateAndAHalves).toBe(0);
    expect(roof.slopes[0].perps.bonds.A.marksMm).toEqual([]);
  });

  it('a course laid belongs to its size alone', () => {
    const laid = sizesLaidOut(view);
    if (!laid.ok) throw new Error(laid.reason);
    const course = laid.roofs.mid.demand[0];
    const counts = laid.sets.map(({ set, courses }) => ({ sizeId: set.id, courses }));
    const after = chapel().add(
      { type: 'setCoursesChosen', body: { courses: counts } },
      {
        type: 'courseLaid',
        body: { slopeId: course.slopeId, course: course.course, piles: [{ pile: 1, pieces: 20 }] }
      }
    ).view;
    const laidOf = (sizeId: string) =>
      Object.keys(partOf(viewOfSize(after, sizeId), 'laying').laid).length;
    expect(['first', 'mid', 'short'].map(laidOf)).toEqual([0, 1, 0]);
  });

  it('the same act on the same view gives the same view of a size', () => {
    expect(seen('mid')).toBe(viewOfSize(view, 'mid'));
    expect(stockOf(seen('mid'))).toBe(stockOf(seen('mid')));
  });
});

describe('J82 acts say which size they belong to', () => {
  const { view } = chapel();

  it('grades, pallets and counts are stamped with the size in hand; readings are not', () => {
    const acts = actOfSize(view, 'mid', [
      { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [6] } },
      { type: 'slateTapped', body: { palletId: 'pallet-mid', pile: 1, gradesId: null } }
    ]);
    expect(acts[0].body).toMatchObject({ sizeId: 'mid' });
    expect(acts[1].body).not.toHaveProperty('sizeId');
  });

  it('the first course laid keeps the courses as they were proposed', () => {
    const laid: NewEvent = {
      type: 'courseLaid',
      body: { slopeId: 'south', course: 1, piles: [{ pile: 1, pieces: 16 }] }
    };
    const acts = actOfSize(view, 'first', [laid]);
    expect(acts.map(({ type }) => type)).toEqual(['setCoursesChosen', 'courseLaid']);
    // More of the long slate would move the proposal; the choice stays.
    const more: NewEvent = {
      type: 'palletAdded',
      body: { palletId: 'p9', label: 'More', slates: 2000, sizeId: 'first' }
    };
    const courses = (journal: Journal) => {
      const found = sizesLaidOut(journal.view);
      return found.ok ? found.sets.map(({ courses: n }) => n) : found.reason;
    };
    const before = courses(chapel());
    expect(courses(chapel().add(more))).not.toEqual(before);
    expect(courses(chapel().add(...acts, more))).toEqual(before);
  });

  it('a slate saved with another length changes the size in hand', () => {
    const slate: NewEvent = {
      ...SPEC,
      body: { ...SPEC.body, lengthMm: 420, widthMm: 200 }
    } as NewEvent;
    const acts = actOfSize(view, 'mid', [slate]);
    expect(acts.at(-1)).toMatchObject({
      type: 'slateSizesSet',
      body: { sizes: [{ lengthMm: 500 }, { sizeId: 'mid', lengthMm: 420 }, { lengthMm: 300 }] }
    });
  });
});

describe('sizes that cannot be laid say why', () => {
  const withSizes = (...lengths: number[]) =>
    new Journal().add(SPEC, slope('south', 3500), {
      type: 'slateSizesSet',
      body: {
        sizes: lengths.map((lengthMm) => ({ sizeId: `s${lengthMm}`, lengthMm, widthMm: 150 }))
      }
    }).view;

  it('rising lengths, and a length below twice the lap', () => {
    expect(sizeProblemsOf(withSizes(400, 500)).map(({ code }) => code)).toEqual(['rising']);
    expect(sizesLaidOut(withSizes(400, 500))).toMatchObject({ ok: false, reason: 'sizes' });
    expect(sizeProblemsOf(withSizes(500, 170))[0].code).toBe('below-twice-lap');
    expect(roofLayoutOf(viewOfSize(withSizes(400, 500), 's400')).ok).toBe(false);
  });

  it('courses chosen that fill the roof no more give way to those proposed', () => {
    const { view } = chapel().add({
      type: 'setCoursesChosen',
      body: { courses: [{ sizeId: 'first', courses: 3 }] }
    });
    expect(sizesLaidOut(view)).toMatchObject({ standing: 'proposed', isChoiceStale: true });
  });

  it('without a slate entered, all lengths are taken to be there alike', () => {
    const laid = sizesLaidOut(withSizes(500, 400, 300));
    if (!laid.ok) throw new Error(laid.reason);
    expect(laid.isStockKnown).toBe(false);
    expect(laid.sets.every(({ courses }) => courses > 0)).toBe(true);
  });
});
