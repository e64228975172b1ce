import { pluralizer } from '../plural.ts';
import { common } from './common.ts';

const many = pluralizer('en');
const READING = { one: 'reading', other: 'readings' };
const MISSING = { one: 'slate is missing', other: 'slates are missing' };

/** Words of the grades screen. */
export const grades = {
  title: 'Grades',
  empty: {
    title: 'Nothing is gauged yet',
    why: 'Boundaries are cut from thicknesses in millimetres. Measure about 20 slates of each pallet, or take in a file of readings.',
    onlyTaps: (taps: number) =>
      `${many(taps, { one: 'slate was', other: 'slates were' })} put on piles by hand and none was gauged. Piles told by hand have a count and no millimetres: gauge some slates, so that boundaries can be cut.`,
    toSort: 'Measure slates',
    toFiles: 'Take in a file'
  },
  few: (readings: number) =>
    `Only ${many(readings, READING)}: the counts below may be far off, as their intervals say. Gauge more before you sort.`,
  oneThickness: (thickness: string) =>
    `Every slate gauged is ${thickness} thick, so there is nothing to grade: one pile will do. If that surprises you, check the gauge.`,
  tooFewThicknesses: (distinct: number, piles: number) =>
    `The slates gauged have ${many(distinct, { one: 'thickness', other: 'different thicknesses' })}; ${common.piles(piles)} need as many different ones at least. Choose fewer piles, or gauge more slates.`,
  chart: {
    label: 'Spread of the stock',
    caption: 'Slates of the stock by thickness in mm',
    handle: (thicker: string, thinner: string) => `Boundary between ${thicker} and ${thinner}`,
    description: (slates: string, from: string, to: string, mean: string) =>
      `Bars: how many of ${slates} have each thickness, from ${from} to ${to}, ${mean} on average. The same figures are in the table below.`,
    hint: 'Drag a boundary, or use the arrow keys (0.05 mm) and the page keys (0.5 mm). A slate exactly on a boundary goes to the thicker pile.',
    whiskers: 'The thin lines show between how many slates each bar may be, at 95 %.',
    outline: 'Outline',
    noOutline: 'No pallet',
    outlineOf: (pallet: string) => `Pallet ${pallet}`,
    outlineHint: (pallet: string) =>
      `The outline is pallet ${pallet} alone, drawn as if the whole stock were like it.`,
    table: 'The spread as a table',
    thickness: 'Thickness',
    slates: 'Slates',
    pile: 'Pile',
    barFromTo: (from: string, to: string) => `${from} to ${to}`,
    between: (low: string, high: string) => `between ${low} and ${high}`,
    basis: (readings: string, slates: string, mean: string) =>
      `${readings} gauged of ${slates}; mean ${mean}.`,
    meanBetween: (low: string, high: string) =>
      `The mean of the whole stock lies between ${low} and ${high} (95 %).`
  },
  readings: (n: number) => many(n, READING),
  piles: {
    title: 'The piles',
    label: 'What each pile will hold',
    pile: 'Pile',
    slates: 'Slates',
    ofStock: (stock: string) => `of ${stock}`,
    between: (low: string, high: string, stock: string) => `between ${low} and ${high} of ${stock}`,
    exactly: (stock: string) => `of ${stock}, every one gauged`,
    byGauge: (words: string) => `by gauge alone ${words}`,
    courses: 'Courses filled',
    mean: 'Mean',
    range: 'Range',
    sd: 'SD',
    kickers: 'Kickers per 100 joints',
    worstStep: 'Worst step',
    fromTo: (from: string, to: string) => `${from} to ${to}`,
    none: '–'
  },
  stepper: { label: 'Piles', fewer: 'One pile fewer', more: 'One pile more' },
  allowance: {
    label: 'Kick allowance',
    hint: 'The step between two neighbours that you accept. 1.5 mm is our starting value; no published source.',
    wrong: 'Type a step from 0 to 20 mm, for example 1.5.',
    saved: 'Kick allowance kept for this job.'
  },
  ways: {
    title: 'Boundaries by, and kickers per 100 joints',
    chosen: '(shown above)',
    names: {
      naturalBreaks: 'Natural breaks',
      suitTheRoof: 'To suit the roof',
      equalShares: 'Equal shares',
      byHand: 'By hand'
    },
    kickers: (kickers: string) => `${kickers} per 100 joints`,
    at: (thresholds: string) => `at ${thresholds}`,
    noRoof: 'Enter the roof first',
    roofProblems: 'The roof has fields to mend first',
    working: 'Working it out…',
    failed: 'The search stopped. Change the number of piles, or open the screen again.',
    tooFew: 'Too few different thicknesses',
    missing: (slates: string) => slates,
    missingSlates: (n: number) => `${many(Math.ceil(n), MISSING)} for the roof`,
    toRoof: 'Enter the roof'
  },
  verdict: {
    kickers: (kickers: string, joints: string) =>
      `Expected: ${kickers} kickers per 100 joints ${joints}.`,
    onRoof: 'on this roof',
    onStock: 'if all the stock is laid pile by pile',
    baselines: (unsorted: string, perfect: string) =>
      `Unsorted it would be ${unsorted}; in perfect order, every slate measured, ${perfect}: the physical limit.`,
    worst: (step: string) => `The worst step between neighbours of one pile is ${step}.`,
    coursesMissing: (n: number) =>
      `${many(n, { one: 'course', other: 'courses' })} near the ridge cannot be filled with whole courses from these piles. The Courses screen also plans courses that change pile.`
  },
  set: {
    button: 'Set these grades',
    again: 'Set the grades anew',
    inForce: 'These grades are in force.',
    done: (moment: string) => `Grades set at ${moment}.`,
    notSaved:
      'The grades were not saved; the boundaries are still here. Mend what the red strip says, then try again.',
    sortedAlready: (slates: string) =>
      `${slates} are on piles already. They keep the grades they were sorted under; only slates sorted from now on follow new grades.`
  }
};
