import { describe, expect, it } from 'vitest';
import type { CourseDemand } from './course-demand.ts';
import { courseStretch, piecesOfDemand } from './course-stretch.ts';

const run = (slates: number, startsWithSlateAndAHalf = false, endsWithSlateAndAHalf = false) => ({
  ...{ slates, startsWithSlateAndAHalf, endsWithSlateAndAHalf }
});
const course: CourseDemand = {
  ...{ slopeId: 's', course: 3, heightMm: 400 },
  runs: [run(4, true), run(1), run(3, false, true)]
};

describe('a stretch of a course', () => {
  it('cuts runs and keeps a slate-and-a-half at its own end alone', () => {
    expect(piecesOfDemand(course)).toBe(10);
    expect(courseStretch(course, 0, 3).runs).toEqual([run(2, true)]);
    expect(courseStretch(course, 3, 8).runs).toEqual([run(2), run(1), run(2)]);
    expect(courseStretch(course, 8, 10).runs).toEqual([run(1, false, true)]);
  });

  it('keeps place and height, and is nothing where nothing is asked', () => {
    expect(courseStretch(course, 0, 99)).toEqual(course);
    expect(courseStretch(course, 10, 10)).toEqual({ ...course, runs: [] });
    expect(courseStretch(course, 4, 4).runs).toEqual([]);
  });

  it('two stretches have the pieces of the whole, wherever the course is cut', () => {
    for (let at = 0; at <= 10; at++) {
      const halves = [courseStretch(course, 0, at), courseStretch(course, at, 10)];
      expect(halves.map(piecesOfDemand)).toEqual([at, 10 - at]);
      const wides = halves
        .flatMap(({ runs }) => runs)
        .reduce(
          (sum, one) =>
            sum + Number(one.startsWithSlateAndAHalf) + Number(one.endsWithSlateAndAHalf),
          0
        );
      expect(wides).toBe(2);
    }
  });
});
