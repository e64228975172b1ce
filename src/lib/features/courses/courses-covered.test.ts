import { describe, expect, it } from 'vitest';
import { coursesCovered } from './courses-covered.ts';

const slope = (slopeId: string, from: number, to: number) =>
  Array.from({ length: to - from + 1 }, (_, at) => ({ slopeId, course: from + at }));
const ROOF = [...slope('back', 1, 27), ...slope('dormer', 1, 9)];

describe('the courses that a plan covers', () => {
  it('are all, or those up to one course on every slope as far as it goes', () => {
    expect(coursesCovered(ROOF, ROOF)).toEqual({ isAll: true, courses: 36, of: 36 });
    const lowest = [...slope('back', 1, 15), ...slope('dormer', 1, 9)];
    expect(coursesCovered(ROOF, lowest)).toMatchObject({ isAll: false, upTo: 15 });
    const few = [...slope('back', 1, 4), ...slope('dormer', 1, 4)];
    expect(coursesCovered(ROOF, few)).toMatchObject({ upTo: 4, courses: 8, of: 36 });
  });

  it('are so many of so many where slopes end at different courses, or one is left out between', () => {
    const apart = [...slope('back', 1, 15), ...slope('dormer', 1, 3)];
    expect(coursesCovered(ROOF, apart)).toEqual({ isAll: false, courses: 18, of: 36 });
    const between = [...slope('back', 1, 5), ...slope('back', 7, 9), ...slope('dormer', 1, 9)];
    expect(coursesCovered(ROOF, between).upTo).toBeUndefined();
    expect(coursesCovered(ROOF, [])).toEqual({ isAll: false, courses: 0, of: 36 });
  });
});
