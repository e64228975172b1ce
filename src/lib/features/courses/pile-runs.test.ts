import { expect, it } from 'vitest';
import type { PlannedCourse } from '$lib/engine/courses';
import { pileRuns, slopesByRuns } from './pile-runs.ts';

function course(slopeId: string, number: number, ...piles: number[]): PlannedCourse {
  return {
    ...{ slopeId, course: number, heightMm: number * 200, joints: 9, kickers: 0, per100Joints: 0 },
    commonSlateAndAHalves: 0,
    parts: piles.map((pile) => ({ pile, slates: 5, slateAndAHalves: 0 }))
  };
}

it('a course of two piles ends the one run and begins the other', () => {
  const courses = [course('s', 1, 1), course('s', 2, 1, 2), course('s', 3, 2), course('s', 4, 3)];
  expect(pileRuns(courses)).toEqual([
    { pile: 1, from: 1, to: 2 },
    { pile: 2, from: 2, to: 3 },
    { pile: 3, from: 4, to: 4 }
  ]);
});

it('a course that the roof leaves without a slate breaks no run, and no courses give none', () => {
  expect(pileRuns([course('s', 1, 1), course('s', 2), course('s', 3, 1)])).toEqual([
    { pile: 1, from: 1, to: 3 }
  ]);
  expect(pileRuns([])).toEqual([]);
});

it('a pile that comes back above another is told twice', () => {
  expect(pileRuns([course('s', 1, 2), course('s', 2, 1), course('s', 3, 2)])).toHaveLength(3);
});

it('slopes with the same runs are one line, in whatever order their courses come', () => {
  const courses = [
    ...[course('south', 2, 2), course('south', 1, 1)],
    ...[course('north', 1, 1), course('north', 2, 2)],
    ...[course('porch', 1, 2)]
  ];
  expect(slopesByRuns(['south', 'north', 'porch'], courses)).toEqual([
    {
      slopeIds: ['south', 'north'],
      runs: [
        { pile: 1, from: 1, to: 1 },
        { pile: 2, from: 2, to: 2 }
      ]
    },
    { slopeIds: ['porch'], runs: [{ pile: 2, from: 1, to: 1 }] }
  ]);
});

it('a pile that gives out within one height is one line, more than a course apart is two', () => {
  const twoOne = [course('south', 1, 1), course('south', 2, 1), course('south', 3, 2)];
  const oneTwo = [course('north', 1, 1), course('north', 2, 2), course('north', 3, 2)];
  expect(slopesByRuns(['south', 'north'], [...twoOne, ...oneTwo])).toEqual([
    {
      slopeIds: ['south', 'north'],
      runs: [
        { pile: 1, from: 1, to: 2 },
        { pile: 2, from: 2, to: 3 }
      ]
    }
  ]);
  const later = [course('east', 1, 1), course('east', 2, 1), course('east', 3, 1)];
  const fourth = [course('east', 4, 2)];
  expect(slopesByRuns(['north', 'east'], [...oneTwo, ...later, ...fourth])).toHaveLength(2);
});
