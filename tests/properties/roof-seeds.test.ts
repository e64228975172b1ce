/** The four invented roofs of the worked examples lay out whole. */
import { describe, expect, it } from 'vitest';
import {
  type SlateSpecInput,
  type SlopeInput,
  layOutRoof,
  makeSlope,
  markingSheet,
  piecesInRun,
  slateSpec
} from '$lib/engine/roof';
import seeds from '../../seeds/roofs.json';

interface SeedRoof {
  readonly id: string;
  readonly slate: SlateSpecInput;
  readonly slopes: readonly SlopeInput[];
}

const roofs = (seeds.roofs as readonly SeedRoof[]).map(({ id, slate, slopes }) => {
  const roof = layOutRoof(slopes.map(makeSlope), slateSpec(slate));
  if (!roof.ok) throw new Error(`${id}: ${JSON.stringify(roof.problems)}`);
  return { id, roof };
});
const byId = (id: string) => roofs.find((one) => one.id === id)!.roof;

describe('the four invented roofs', () => {
  it('are the four that the examples promise', () => {
    expect(roofs.map((one) => one.id)).toEqual([
      'gable',
      'hipped',
      'l-with-valley',
      'gable-with-rooflight'
    ]);
  });

  it.each(roofs)(
    '$id: every course takes slates, and the totals are the sum of its slopes',
    ({ roof }) => {
      for (const course of roof.demand)
        expect(course.runs.map(piecesInRun).every((pieces) => pieces > 0)).toBe(true);
      expect(roof.totals.slates).toBe(
        roof.slopes.reduce((sum, laid) => sum + laid.totals.slates, 0)
      );
      expect(roof.totals.areaM2).toBeCloseTo(
        roof.slopes.reduce((sum, laid) => sum + laid.totals.areaM2, 0),
        9
      );
    }
  );

  it.each(roofs)(
    '$id: the count is what the area asks for, and a little more for cutting',
    ({ roof }) => {
      for (const laid of roof.slopes) {
        const showsM2 = ((roof.spec.widthMm + laid.perps.bonds.A.jointMm) * laid.gaugeMm) / 1e6;
        const used = laid.totals.slates + 1.5 * laid.totals.slateAndAHalves;
        const needed = laid.totals.areaM2 / showsM2;
        expect(used).toBeGreaterThan(0.93 * needed);
        expect(used).toBeLessThan(1.25 * needed);
      }
    }
  );

  it('the gable has two equal slopes', () => {
    const [south, north] = byId('gable').slopes;
    expect(north.totals).toEqual(south.totals);
  });

  it('the hipped roof cuts both ends of every course, and its hip ends close at the ridge', () => {
    const { slopes } = byId('hipped');
    for (const laid of slopes)
      for (const course of laid.courses.filter((line) => line.runs.length > 0)) {
        const { pieces } = course.runs[0];
        expect(pieces[0].isCut && pieces[pieces.length - 1].isCut).toBe(true);
      }
    const last = slopes[1].courses[slopes[1].courses.length - 1];
    expect(last.marginRightMm - last.marginLeftMm).toBeLessThan(5);
  });

  it('the valley sides widen by as much as they meet: courses grow towards the ridge', () => {
    const { slopes } = byId('l-with-valley');
    const [inner] = slopes;
    const first = inner.courses[0];
    const last = inner.courses[inner.courses.length - 1];
    expect(last.marginRightMm - last.marginLeftMm).toBeGreaterThan(
      first.tailRightMm - first.tailLeftMm + 2900
    );
    const heights = slopes.map((laid) => laid.courses.map((course) => course.heightMm));
    for (const other of heights) expect(other).toEqual(heights[0]);
  });

  it('the rooflight splits courses and the chimney at the ridge does too', () => {
    const [front, back] = byId('gable-with-rooflight').slopes;
    expect(front.courses.filter((course) => course.runs.length === 2).length).toBeGreaterThan(4);
    expect(back.courses.filter((course) => course.runs.length === 2).length).toBeGreaterThan(2);
  });

  it.each(roofs)('$id: a marking sheet for every slope, marks strictly rising', ({ roof }) => {
    for (const laid of roof.slopes) {
      const sheet = markingSheet(laid, roof.spec);
      for (const marks of [sheet.gaugeRod, sheet.perps.marks.A, sheet.perps.marks.B])
        for (let index = 1; index < marks.length; index++)
          expect(marks[index].markMm).toBeGreaterThan(marks[index - 1].markMm);
      expect(sheet.undereave.slates).toBeGreaterThan(0);
      expect(sheet.scaleCheckMm).toBe(100);
    }
  });
});
