import { pluralizer } from '../plural.ts';
import { common } from './common.ts';

const many = pluralizer('en');

/** Words of the draw list. */
export const draw = {
  lead: 'What each course takes from each pallet. Where a pile has three pallets, each course draws from three at least, so that the colours blend.',
  course: 'Course',
  pallets: 'From each pallet',
  from: (pallet: string, slates: string) => `${pallet}: ${slates}`,
  total: 'Total',
  done: 'Done',
  print: 'Print the draw list',
  short: (slates: number, pile: string) =>
    `We do not know which pallets ${common.slates(slates)} of ${pile} came from. Log them, or draw from the pile as it stands.`,
  wide: 'Take slate-and-a-halves from the pile as they stand.',
  under: 'Under',
  underOf: (slope: string, slates: number, aside: number, lacking: number) =>
    [
      `${slope}: ${many(slates, { one: 'undereave slate', other: 'undereave slates' })} lie under course 1${aside > 0 ? `, ${aside.toLocaleString('en')} of them from those set aside` : ''}.`,
      ...(lacking > 0 ? [`No pile can spare ${common.slates(lacking)} of these: order them.`] : [])
    ].join(' ')
};

/** Words of the lifts to the roof. */
export const load = {
  lead: 'Lifts in the order in which they are laid. The reserve stays on the ground.',
  table: 'Loading out',
  stackHeight: 'Highest stack',
  liftMass: 'Heaviest lift',
  carryMass: 'One person carries',
  refusedCarry: 'Give a mass from 1 to 200 kg.',
  carryOf: (pile: string, slates: number) => `${pile} ${slates}`,
  carry: (slates: string, mass: string) =>
    `Hoist or pallet below. By hand at most ${mass} a person; that is, in slates: ${slates}.`,
  use: 'Use these limits',
  refusedHeight: 'Give a height from 50 to 2,000 mm.',
  refusedMass: 'Give a mass from 20 to 5,000 kg.',
  lift: (n: number) => `Lift ${n}`,
  lifts: (from: number, to: number) => (from === to ? `Lift ${from}` : `Lifts ${from} to ${to}`),
  stack: 'Stack',
  pile: 'Pile',
  what: 'What',
  height: 'Height',
  mass: 'Mass',
  all: (lifts: number, mass: string) =>
    `${many(lifts, { one: 'lift', other: 'lifts' })}, ${mass} in all, each lift to the nearest kilogram.`,
  where: (slope: string, from: number, to: number) =>
    from === to ? `${slope}, course ${from}` : `${slope}, courses ${from} to ${to}`,
  under: (slope: string) => `${slope}, undereave, under course 1`,
  aside: (slates: number) =>
    `${common.slates(slates)} set aside for the undereave ${slates === 1 ? 'goes' : 'go'} up with the first lift, on top of its mass.`,
  tight: (height: string, mass: string) =>
    `One slate alone does not fit these limits. The least that works: stacks of ${height}, lifts of ${mass}.`,
  noThickness: 'To work out masses, measure some slates or enter the thickness you ordered.',
  print: 'Print the loading out',
  tags: 'Print tags for piles and stacks',
  basis: (density: string) =>
    `Worked out with ${density} and the mean thickness of each pile. Holes and dressed edges are not taken off; uneven slates stack higher. Undereave slates count as not yet cut. Each mass is rounded by itself, so a lift can differ a little from the sum of its stacks.`,
  caution: 'You set these limits. A competent person says what hoist, scaffold and battens carry.'
};

/** Words of the table that changes one thing at a time. */
export const whatIf = {
  lead: 'Each line changes one thing and plans the whole roof again, as if nothing were sorted yet and every slate lay on its right pile. Other numbers of piles are split at the gaps.',
  table: 'What if',
  go: 'Work it out',
  working: 'Planning each…',
  change: 'Change',
  per100: 'Joints that will show, in 100',
  kickers: 'Joints that will show',
  changeovers: 'Changes of pile',
  spares: 'Left over',
  asNow: 'As set now',
  piles: (n: number) => common.piles(n),
  allowance: (mm: string) => `Step you accept ${mm}`,
  reserve: (percent: string) => `Reserve ${percent}`,
  short: (slates: number) =>
    slates > 0 ? `short by ${common.slates(slates)}` : 'short: the order of piles does not fit',
  toGrades: 'Set the grades',
  laid: 'Courses are laid already. This is for before laying.',
  noReadings: 'Measure some slates first: without readings there is nothing to split.'
};

/** Words of the computer test of a plan. */
export const trial = {
  lead: 'The computer lays the roof again and again, with slates drawn at random from the piles as sorted. Beside it: the same roof unsorted, and sorted by eye.',
  table: 'Computer test of the plan',
  go: (n: number) => `Lay it ${n.toLocaleString('en')} times`,
  cancel: 'Stop',
  cancelled: 'Stopped. Nothing was changed.',
  progress: (percent: string) => `${percent} done`,
  times: (n: number) => `Laid ${n.toLocaleString('en')} times each way.`,
  planned: 'As planned',
  byHandMeasured: (sd: string) => `Sorted by eye, off by ${sd} as measured`,
  byHandAssumed: (sd: string) => `Sorted by eye, off by ${sd} assumed`,
  unsorted: 'Unsorted',
  way: 'Way',
  mean: 'Joints that show, on average',
  range: 'In 90 of 100 roofs',
  worst: 'Worst course on average',
  worstAt: (slope: string, course: number, n: string) => `${slope}, course ${course}: ${n}`,
  fromTo: (low: string, high: string) => `${low} to ${high}`,
  exact: (text: string) => `Worked out exactly for these slates: ${text}.`,
  giveOrTake:
    '± says how far an average may still be off by chance (95 % confidence: 1.96 standard errors of all the roofs laid).',
  slatesDealt:
    'The test draws as many slates as stand on each pile, as thick as the readings lead us to expect, slates on a wrong pile included.',
  axis: 'Joints that show on a roof',
  chart: (way: string) => `How many joints showed, and on how many roofs: ${way}`,
  needsReadings: 'Measure some slates first: the test needs thicknesses to draw.',
  failed: (detail: string) => `The test stopped by itself (${detail}).`
};
