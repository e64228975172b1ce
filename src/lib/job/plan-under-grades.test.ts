import { describe, expect, it } from 'vitest';
import type { NewEvent } from '$lib/journal';
import type { AdoptedPlan } from './adopted-plan.ts';
import { regradedCourses } from './plan-under-grades.ts';
import { TestJournal as Journal } from '../../../tests/support/test-journal.ts';

const grades = (...thresholdsMm: number[]): NewEvent => ({
  type: 'gradesSet',
  body: { method: 'byHand', thresholdsMm }
});
const course = (slopeId: string, number: number, pile: number) => ({
  ...{ slopeId, course: number },
  parts: [{ pile, slates: 20, slateAndAHalves: 0 }]
});
const plan = (gradesId: string | null) =>
  ({
    body: { gradesId },
    rest: {
      courses: [
        course('south', 1, 1),
        course('south', 2, 2),
        course('north', 2, 2),
        course('south', 3, 2),
        course('south', 4, 3)
      ]
    }
  }) as unknown as AdoptedPlan;

const NUMBERS = [1, 2, 3];

describe('a plan made under other grades', () => {
  it('says of its courses what their pile was and is', () => {
    const { view } = new Journal().add(grades(7, 6), grades(7, 6.5));
    const medium = { pile: 2, was: { fromMm: 6, toMm: 7 }, now: { fromMm: 6.5, toMm: 7 } };
    expect(regradedCourses(view, plan(Journal.id(0)), NUMBERS)).toEqual([
      { slopeId: 'south', fromCourse: 2, toCourse: 3, ...medium },
      { slopeId: 'north', fromCourse: 2, toCourse: 2, ...medium },
      {
        ...{ slopeId: 'south', fromCourse: 4, toCourse: 4, pile: 3 },
        ...{ was: { fromMm: 0, toMm: 6 }, now: { fromMm: 0, toMm: 6.5 } }
      }
    ]);
  });

  it('names no thickness for a pile that is no more', () => {
    const { view } = new Journal().add(grades(7, 6), grades(7));
    const last = regradedCourses(view, plan(Journal.id(0)), NUMBERS).at(-1);
    expect(last).toMatchObject({ pile: 3, was: { fromMm: 0, toMm: 6 } });
    expect(last?.now).toBeUndefined();
  });

  it('says nothing under the same grades, the same boundaries, or none that is known', () => {
    const { view } = new Journal().add(grades(7, 6), grades(7, 6));
    expect(regradedCourses(view, plan(Journal.id(1)), NUMBERS)).toEqual([]);
    expect(regradedCourses(view, plan(Journal.id(0)), NUMBERS)).toEqual([]);
    expect(regradedCourses(view, plan(null), NUMBERS)).toEqual([]);
  });
});
