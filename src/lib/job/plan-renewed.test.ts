import { describe, expect, it } from 'vitest';
import type { Plan } from '$lib/engine/courses';
import type { BodyOf, NewEvent } from '$lib/journal';
import { renewedCourses } from './plan-renewed.ts';
import { TestJournal as Journal } from '../../../tests/support/test-journal.ts';

const grades = (thresholdsMm: number[], piles?: number[]): NewEvent => ({
  type: 'gradesSet',
  body: { method: 'byHand', thresholdsMm, ...(piles && { piles }) }
});
const old = (gradesId: string | null): BodyOf<'planAdopted'> => ({
  ...{ gradesId, kickAllowanceMm: 1.5, expectedKickers: 0, joints: 0 },
  courses: [1, 1, 2, 2, 3].map((pile, index) => ({
    ...{ slopeId: 'south', course: index + 1 },
    piles: [{ pile, pieces: 20 }]
  }))
});
/** A plan of the courses 1, 2, 3 … by the places of the piles. */
const fresh = (...places: number[]): Plan =>
  ({
    courses: places.map((pile, index) => ({
      ...{ slopeId: 'south', course: index + 1, heightMm: index },
      parts: [{ pile, slates: 20, slateAndAHalves: 0 }]
    }))
  }) as unknown as Plan;

describe('a plan made under other grades beside a new one', () => {
  const journal = new Journal().add(grades([7, 6]), grades([7.6, 6], [4, 5, 3]));
  const first = Journal.id(0);

  it('is told in stretches, each pile by its number and by what it was and is for', () => {
    expect(renewedCourses(journal.view, old(first), fresh(1, 2, 2, 3, 3), [4, 5, 3])).toEqual([
      {
        ...{ slopeId: 'south', fromCourse: 1, toCourse: 1 },
        was: [{ number: 1, band: { fromMm: 7, toMm: Infinity } }],
        now: [{ number: 4, band: { fromMm: 7.6, toMm: Infinity } }]
      },
      {
        ...{ slopeId: 'south', fromCourse: 2, toCourse: 2 },
        was: [{ number: 1, band: { fromMm: 7, toMm: Infinity } }],
        now: [{ number: 5, band: { fromMm: 6, toMm: 7.6 } }]
      },
      {
        ...{ slopeId: 'south', fromCourse: 3, toCourse: 3 },
        was: [{ number: 2, band: { fromMm: 6, toMm: 7 } }],
        now: [{ number: 5, band: { fromMm: 6, toMm: 7.6 } }]
      },
      {
        ...{ slopeId: 'south', fromCourse: 4, toCourse: 4 },
        was: [{ number: 2, band: { fromMm: 6, toMm: 7 } }],
        now: [{ number: 3, band: { fromMm: 0, toMm: 6 } }]
      }
    ]);
  });

  it('tells of a pile that kept its number but not its boundary, in one stretch', () => {
    const { view } = new Journal().add(grades([7, 6]), grades([7.1, 6]));
    const [one, ...more] = renewedCourses(view, old(first), fresh(1, 1, 2, 2, 3), [1, 2, 3]);
    expect(one).toMatchObject({ fromCourse: 1, toCourse: 2 });
    expect(one.was[0].band?.fromMm).toBe(7);
    expect(one.now[0].band?.fromMm).toBe(7.1);
    expect(more.map(({ fromCourse, toCourse }) => [fromCourse, toCourse])).toEqual([[3, 4]]);
  });

  it('says that a course was not planned', () => {
    const stretches = renewedCourses(journal.view, old(first), fresh(1, 1, 2, 2, 3, 3), [4, 5, 3]);
    expect(stretches.at(-1)).toMatchObject({ fromCourse: 6, toCourse: 6, was: [] });
  });

  it('is nothing under the same grades, or before there are any', () => {
    const plan = fresh(1, 1, 2, 2, 3);
    expect(renewedCourses(journal.view, old(Journal.id(1)), plan, [4, 5, 3])).toEqual([]);
    expect(renewedCourses(new Journal().view, old(null), plan, [1, 2, 3])).toEqual([]);
  });
});
