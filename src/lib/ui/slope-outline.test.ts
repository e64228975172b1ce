import { expect, it } from 'vitest';
import { numberedCourses } from './slope-outline.ts';

const courses = (count: number) =>
  Array.from({ length: count }, (_, n) => ({ course: n + 1, tailMm: n * 200 }));

it('numbers the first course, every fifth and the last', () => {
  expect(numberedCourses(courses(12), 5, 100).map(({ course }) => course)).toEqual([1, 5, 10, 12]);
});

it('leaves out a number that would stand on the last', () => {
  expect(numberedCourses(courses(11), 5, 250).map(({ course }) => course)).toEqual([1, 5, 11]);
  expect(numberedCourses(courses(1), 5, 250).map(({ course }) => course)).toEqual([1]);
  expect(numberedCourses([], 5, 250)).toEqual([]);
});

it('leaves out a number that would stand on the one below it', () => {
  const numbered = numberedCourses(courses(36), 5, 1900).map(({ course }) => course);
  expect(numbered).toEqual([1, 15, 25, 36]);
});
