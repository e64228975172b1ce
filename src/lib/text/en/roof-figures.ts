import { pluralizer } from '../plural.ts';

const many = pluralizer('en');
const number = (value: number) => value.toLocaleString('en', { maximumFractionDigits: 1 });

/** What a slope takes. */
export const figures = {
  title: (name: string) => `What ${name} takes`,
  asTyped: 'as typed, not saved',
  waiting: 'Fill every box to see the figures.',
  gauge: 'Gauge',
  gaugeMost: (most: string) => `${most} at most`,
  courses: 'Courses',
  courseParts: (full: number) => `${many(full, { one: 'full', other: 'full' })} and the top course`,
  perCourse: 'Slates per course',
  perCourseRange: (least: number, most: number) =>
    least === most ? number(least) : `${number(least)} to ${number(most)}`,
  perCourseNote: 'pieces of every kind',
  headlap: 'Headlap',
  headlapGained: (gained: string) => `${gained} more than asked, since courses are equal`,
  undereave: 'Undereave slate',
  undereaveNote: (hole: string, slates: number) =>
    `hole ${hole} from the tail, ${many(slates, { one: 'piece', other: 'pieces' })}`,
  top: 'Top course',
  topNote: 'slates cut to this length',
  hole: 'Hole in a full slate',
  holeNote: 'from the tail',
  joint: 'Joint',
  joints: (a: string, b: string) => (a === b ? a : `A ${a}, B ${b}`),
  sideLap: 'Least side lap',
  battens: 'Batten lines',
  battenM: (run: string) => `${run} of batten, waste not counted`,
  full: 'Full slates',
  cut: 'Cut pieces',
  cutNote: 'each from one slate',
  slateAndAHalf: 'Slate-and-a-halves',
  slateAndAHalfCut: (n: number) => `${number(n)} of them cut`,
  slates: 'Slates used up',
  slatesNote: 'full and cut, without the undereave',
  undereaveSlates: 'Undereave pieces',
  nails: 'Nails',
  nailsNote: 'two to a piece',
  area: 'Slated area',
  areaUnit: (area: string, unit: string) => `${area} ${unit}`,
  metres: (run: string, unit: string) => `${run} ${unit}`,
  pieces: (n: number) => many(n, { one: 'piece', other: 'pieces' }),
  lines: (n: number) => many(n, { one: 'line', other: 'lines' })
};

/** The drawing of a slope. */
export const drawing = {
  title: (name: string) => `${name}, true to scale`,
  hint: 'Tap a course, or use the arrow keys, to see its figures.',
  label: (name: string) => `Courses of ${name}`,
  value: (course: number, courses: number) => `Course ${course} of ${courses}`,
  below: 'Course below',
  above: 'Course above',
  key: {
    full: 'Full slate',
    slateAndAHalf: 'Slate-and-a-half',
    cut: 'Cut piece',
    opening: 'Opening'
  },
  eave: 'eave',
  outline: (name: string) => `Outline of ${name}`
};

/** One course of it. */
export const course = {
  title: (course: number, courses: number) => `Course ${course} of ${courses}`,
  top: 'the top course, cut short',
  bond: 'Bond',
  bonds: {
    A: 'A, full slates from the start',
    B: 'B, a slate-and-a-half or half a slate on'
  },
  batten: 'Batten line from the eave',
  onRod: (mark: string) => `${mark} on the gauge rod`,
  tail: 'Tails from the eave',
  margin: 'Margin',
  full: 'Full slates',
  slateAndAHalf: 'Slate-and-a-halves',
  cut: 'Cut pieces',
  cutWidths: 'Cut pieces in full, left to right',
  perps: (datum: string) => `Perp marks from ${datum}`,
  none: 'none',
  past: (distance: string) => `${distance} past the eave`,
  noSlate: 'An opening or the edges take this course: no slate is laid.'
};

/** Where a course is set out from. */
export const datum = {
  left: 'the left end of the slates',
  right: 'the right end of the slates',
  centre: 'the middle of the eave'
};
