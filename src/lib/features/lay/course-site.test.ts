import { describe, expect, it } from 'vitest';
import { layOutRoof, makeSlope, slateSpec } from '$lib/engine/roof';
import { courseSite } from './course-site.ts';

const spec = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 });
const roof = layOutRoof(
  [makeSlope({ id: 's', rafterLengthMm: 2400, eaveWidthMm: 5000, pitchDegrees: 35 })],
  spec
);
if (!roof.ok) throw new Error('the slope is sound');
const [laid] = roof.slopes;

describe('courseSite', () => {
  it('gives the batten of a full course, and none to one that shares it', () => {
    const last = laid.battens[laid.battens.length - 1];
    expect(courseSite(laid, spec, 1)?.battenMm).toBe(laid.battens[1].fromEaveMm);
    expect(courseSite(laid, spec, last.batten + 1)?.battenMm).toBeUndefined();
    expect(courseSite(laid, spec, 99)).toBeUndefined();
  });

  it('of random widths says what to fill and which widths to look for, and of one width nothing', () => {
    expect(courseSite(laid, spec, 3)?.random).toBeUndefined();
    const random = slateSpec({ ...spec, randomWidths: { fromMm: 200, toMm: 300 } });
    const laidOut = layOutRoof([laid.slope], random);
    if (!laidOut.ok) throw new Error('the slope is sound');
    // 5,000 mm and a verge overhang of 50 mm on either side; half of 200 less two joints of 5 mm
    expect(courseSite(laidOut.slopes[0], random, 3)?.random).toEqual({
      fillMm: 5000 + 2 * laid.slope.vergeOverhangMm,
      sideLapMm: 90,
      lookForMm: 2 * 90 + random.jointMinMm
    });
  });

  it('says the ends of a course as its pieces have them, bond by bond', () => {
    for (const { course, runs } of laid.courses) {
      const kinds = runs.flatMap(({ pieces }) => pieces).map(({ kind }) => kind);
      const ends = [kinds[0], kinds[kinds.length - 1]].map((kind) => kind === 'slate-and-a-half');
      const said = { 'true,true': 'both', 'true,false': 'left', 'false,true': 'right' };
      expect(courseSite(laid, spec, course)?.wideAt).toBe(
        said[String(ends) as keyof typeof said] ?? 'none'
      );
    }
    expect(
      new Set(laid.courses.map(({ course }) => courseSite(laid, spec, course)?.wideAt)).size
    ).toBe(2);
  });
});
