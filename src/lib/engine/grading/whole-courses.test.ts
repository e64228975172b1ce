import { describe, expect, it } from 'vitest';
import { fillWholeCourses, reserveShares, sumCourses, usableSlates } from './whole-courses.ts';

const pile = (slates: number, kickProbability: number, meanSquaredStepMm2 = 0) => ({
  slates,
  kickProbability,
  meanSquaredStepMm2
});
const courses = Object.freeze(Array.from({ length: 4 }, () => ({ slates: 10, joints: 9 })));

describe('usableSlates', () => {
  it.each([
    [100, 0.1, 90],
    [100, 0.33, 67],
    [29.999999999999996, 0, 30],
    [29.9, 0, 29],
    [0, 0.5, 0]
  ])('%d slates less a reserve of %d leave %i', (slates, reserve, usable) => {
    expect(usableSlates(slates, reserve)).toBe(usable);
  });
});

describe('fillWholeCourses', () => {
  it('lays nothing from nothing, and nothing on no roof', () => {
    const nothing = { coursesPerPile: [0], laid: 0, expectedKickers: 0 };
    expect(fillWholeCourses([pile(0, 0)], courses)).toEqual(nothing);
    expect(fillWholeCourses([pile(50, 0.5)], [])).toEqual(nothing);
    expect(fillWholeCourses([], courses)).toEqual({ ...nothing, coursesPerPile: [] });
  });

  it('lays whole courses only', () => {
    expect(fillWholeCourses([pile(19, 0), pile(21, 0)], courses)).toMatchObject({
      coursesPerPile: [1, 2],
      laid: 3
    });
  });

  it('prefers the even pile where there is a choice', () => {
    expect(fillWholeCourses([pile(40, 0.2), pile(30, 0.1)], courses)).toEqual({
      coursesPerPile: [1, 3],
      laid: 4,
      expectedKickers: 9 * 0.2 + 27 * 0.1
    });
  });

  it('of equally even piles lays more from the thicker', () => {
    expect(fillWholeCourses([pile(30, 0), pile(30, 0)], courses).coursesPerPile).toEqual([3, 1]);
  });

  it('settles equal kickers by the smaller step', () => {
    expect(fillWholeCourses([pile(30, 0, 0.5), pile(30, 0, 0.1)], courses).coursesPerPile).toEqual([
      1, 3
    ]);
  });

  it('keeps each pile its reserve', () => {
    expect(fillWholeCourses([pile(40, 0)], courses, 0.05)).toMatchObject({ laid: 3 });
    expect(fillWholeCourses([pile(20, 0), pile(22, 0)], courses, [0, 0.05]).laid).toBe(4);
    expect(fillWholeCourses([pile(20, 0), pile(22, 0)], courses, [0.05, 0]).laid).toBe(3);
  });

  it('passes over a course that needs no slates', () => {
    const gap = [courses[0], { slates: 0, joints: 0 }, courses[1]];
    expect(fillWholeCourses([pile(20, 0)], gap).laid).toBe(3);
  });

  it('refuses part slates, reserves out of range and a reserve for another number of piles', () => {
    expect(() => sumCourses([{ slates: 1.5, joints: 0 }])).toThrow(/not-whole/);
    expect(() => sumCourses([{ slates: 1, joints: -1 }])).toThrow(/out-of-range/);
    expect(() => reserveShares(1, 2)).toThrow(/out-of-range/);
    expect(() => reserveShares([0.1], 2)).toThrow(/wrong-length/);
    expect(() => reserveShares([0.1, Number.NaN], 2)).toThrow(/not-finite/);
  });
});
