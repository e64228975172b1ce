import type { Piles } from '../pile-names.ts';
import { pluralizer } from '../plural.ts';
import { common } from './common.ts';
import { draw, load, trial, whatIf } from './courses-lists.ts';
import { older, short } from './courses-ways.ts';
import { joints } from './joints.ts';
import { pieces, wides } from './pieces.ts';

const many = pluralizer('en');

/** Words of the courses screen; the lay screen shares some. */
export const courses = {
  title: 'Courses',
  slateAndAHalves: wides,

  missing: {
    title: 'No plan yet. It still needs:',
    spec: { what: 'The slate: length, width and headlap', go: 'Enter the slate' },
    roof: { what: 'The roof: at least one slope', go: 'Enter the roof' },
    stock: { what: 'Pallets, and how many slates are on them', go: 'Add pallets' },
    grades: { what: 'Grades: where thick ends and thin begins', go: 'Set the grades' }
  },

  /** Which pile goes where: "Thick 1–12". */
  run: (pile: number, piles: Piles, from: number, to: number) =>
    `${common.pileWord(pile, piles) || `${common.pile(pile, piles)}:`} ${from === to ? from : `${from}–${to}`}`,
  rangeOf: (pile: string, range: string) => `${pile} ${range}`,
  runsOn: (slope: string, runs: string) => `${slope}: ${runs}`,
  moreSlopes: (n: number) =>
    `${many(n, { one: 'slope', other: 'slopes' })} more: see “Every course”.`,
  /** The three plans beside each other, each in one line. */
  sideBySide: {
    title: 'Which plan?',
    names: { byRule: 'By the rule', mostEven: 'Most even', own: 'My own' },
    show: (kickers: number) =>
      kickers < 1
        ? 'Hardly a joint shows.'
        : `${many(Math.round(kickers), { one: 'joint shows', other: 'joints show' })}.`,
    /** Before the figures of a plan that does not lay all courses. */
    overLowest: (to: number) => (to === 1 ? 'Course 1 only:' : `Courses 1 to ${to} only:`),
    overSome: (courseCount: number, of: number) => `Only ${courseCount} of ${common.courses(of)}:`,
    runsOut: (pile: string, share: number) =>
      share < 0.01 ? 'All piles last.' : `${pile} runs out: ${odds(share)}.`
  },
  /** The plan that the slater sets by hand. */
  own: {
    how: 'Drag a change up or down, or tap a course and give it a pile.',
    change: (slope: string, lower: string, upper: string) =>
      `${slope}: where ${lower} ends and ${upper} begins`,
    after: (course: number) => `above course ${course}`,
    layFrom: 'Lay it from',
    broken: (slope: string, course: number) =>
      `${slope}, course ${course} is thicker than the one below it. You may lay it so.`,
    /** Why fewer joints show than on the most even plan. */
    fewer: {
      thinBelowThick: 'Fewer joints show than on Most even, because it lays thin below thick.',
      slopesApart:
        'Fewer joints show than on Most even, because slopes change pile at different heights.',
      intoReserve: 'Fewer joints show than on Most even, because it lays slates kept back.'
    },
    lacking: (pile: string, takes: number, has: number) =>
      `${pile} has ${has.toLocaleString('en')}, this takes ${takes.toLocaleString('en')}.`,
    refused: (pile: string, takes: number, has: number) =>
      `Not used: it takes ${common.slates(takes)} of ${pile}, and ${has.toLocaleString('en')} are there. Give ${pile} fewer courses.`,
    undo: 'Undo the last step'
  },
  /** @param isUnsorted whether nothing is on the piles yet: sorting by eye lets more show */
  even: (per100: number, isUnsorted: boolean) =>
    `${joints(per100)} will show${isUnsorted ? ' if sorted right' : ''}.`,
  making: 'Planning…',
  use: 'Use this plan',
  useNew: 'Use the new plan',
  inUse: 'In use.',
  upToDate: 'In use, up to date.',
  inUseSince: (when: string) => `Plan in use since ${when}`,
  notInUse: 'Plan not in use yet',
  start: 'Start laying',
  goOn: 'Go on laying',
  saveFailed: 'The plan is not saved. Fix what the red strip says, then press the button again.',
  failed: (detail: string) =>
    `No plan could be made (${detail}). What is saved is safe: check the roof and try again.`,

  stages: {
    before: (sorted: number, all: number, isByEye: boolean) =>
      `${sorted.toLocaleString('en')} of ${common.slates(all)} sorted${isByEye ? ' by eye' : ', rest estimated'}.`,
    sorted: (isByEye: boolean) => `All slates are sorted${isByEye ? ' by eye' : ''} and counted.`,
    partLaid: (laid: number, all: number) =>
      `${laid} of ${common.courses(all)} laid; the plan is for the rest.`,
    allLaid: (all: number) => `All ${common.courses(all)} are laid.`,
    begun: (slope: string, course: number, laid: string) => `${slope}, course ${course}: ${laid}.`
  },
  byHandOnly: 'No slate is measured, so we cannot say how even it will be. Measure some on Sort.',
  notOnRoof: (n: number) =>
    `${common.courses(n)} laid ${n === 1 ? 'is' : 'are'} no longer on the roof as entered. Their slates count as used.`,
  overdrawn: (pile: string) =>
    `${pile} gave more slates than we thought it had. Count it on the Lay screen.`,
  /** Below the cards, of which the chosen one says what the chance is of. */
  tight: (pile: string, share: number) =>
    share > 0.95 ? `${pile} will almost surely run out.` : `${pile} may run out: ${odds(share)}.`,
  apart: (one: string, course: number, other: string, otherCourse: number) =>
    `Course ${course} of ${one} and ${otherCourse} of ${other} take different piles: too few slates to change together. Keep fewer back.`,

  folds: {
    every: 'Every course',
    changes: 'What changes in the new plan?',
    last: 'Will each pile last?',
    even: 'How even?',
    wide: 'Slate-and-a-halves and undereave',
    draw: 'Draw list',
    load: 'Loading out',
    whatIf: 'What if …?',
    trial: 'Computer test'
  },

  notEveryOrder:
    'Too many different courses lie at one height to try every order. A better plan may exist.',
  glance: {
    per100: 'Joints that will show, in 100',
    kickers: 'Joints that will show on the roof',
    left: 'Joints that will show, still to lay',
    changeovers: 'Courses laid from two piles',
    joints: (n: number) => `of ${many(n, { one: 'joint', other: 'joints' })}`,
    sharp: 'In 100, if every slate lay on its right pile',
    kicker: 'A joint shows where a thick slate lies beside a thin one (a kicker).',
    proved: {
      mostEven:
        'Best fit for your slates: of the plans that keep as many slates back, none has fewer joints that show. This is proved, not guessed.',
      byRule: (off: number) =>
        `Thickest at the eaves, every pile used in proportion. Each change lies within ${off === 1 ? 'one course' : common.courses(off)} of that; of those plans none has fewer joints that show. This is proved, not guessed.`
    },
    estimate: 'Until all slates are sorted and counted, the piles are an estimate.',
    byHand: (percent: string) =>
      `The figures allow for slates on a wrong pile: ${percent} of the slates sorted so far were sorted by eye. We expect the rest to be sorted the same way.`,
    byGauge: 'The figures allow for slates that a gauge puts on a wrong pile.',
    tapsAssumed: (n: number, sd: string) =>
      `${common.slates(n)} ${n === 1 ? 'was' : 'were'} sorted by eye without enough spot checks. For them we assume that the eye is off by ${sd}.`,
    unknown: 'not known',
    pileTable: 'Left over after the reserve',
    keptBack: (share: string, breakage: string, spares: string) =>
      `Kept back: ${share} of each pile as it stood before laying, rounded up. ${breakage} is for breakage, ${spares} for repairs.`,
    keptForChance: (parts: readonly string[], heldTo: string) =>
      `Of that, ${parts.join(', ')} only to hold each pile to ${heldTo}.`,
    keptPart: (slates: number, pile: string) => `${common.slates(slates)} of ${pile}`,
    pile: 'Pile',
    uses: 'Lays',
    reserve: 'Kept back',
    stands: 'Has',
    spare: 'Left over'
  },

  atMean: (mean: string) => `Random widths: slates are counted at the mean, ${mean}.`,
  wide: {
    title: 'Slate-and-a-halves',
    assumed: (n: number) =>
      `The rest of the roof takes ${wides(n)}. Nobody counted them, so we take it that there are enough of each thickness. Count them here, or order by pile:`,
    counted: 'As counted by pile:',
    notCounted: 'not yet',
    count: 'Count now',
    countOf: (pile: string) => `Slate-and-a-halves of ${pile}, counted now`,
    save: 'Save the count',
    refused: 'Give whole numbers from 0 to 20,000.',
    none: 'No course needs a slate-and-a-half.',
    takes: 'Plan takes',
    order: 'With reserve',
    stands: 'Stands there'
  },
  undereave: (n: number, wide: number) =>
    `The undereave row comes on top: ${many(n, { one: 'undereave slate', other: 'undereave slates' })}${wide > 0 ? ` and ${wide.toLocaleString('en')} of the width of a slate-and-a-half` : ''}.`,
  undereaveOf: (parts: readonly string[]) =>
    `Among what is laid are the undereave slates: ${parts.join(', ')}.`,
  undereavePart: (slates: number, wide: number, pile: string) =>
    `${pieces(slates, wide)} of ${pile}`,
  undereaveOrdered: 'The undereave slates are ordered ready cut',
  undereaveIsOrdered: 'They come ready cut, so no pile gives any.',
  undereaveFrom: (served: number, slates: number, wide: number) =>
    served === 0
      ? 'No slate set aside is marked for the undereave and fit for it. All of them come from stock; no plan lays those on a course.'
      : `Of the slates set aside, at most ${served.toLocaleString('en')}, marked for the undereave, will do; ${slates + wide === 0 ? 'that is enough.' : `the rest comes from stock, and no plan lays it on a course: ${pieces(slates, wide)}.`}`,

  drawing: {
    label: (slope: string) => `Courses of ${slope}; arrow keys go from course to course`,
    value: (course: number, of: number, piles: string, laid: string) =>
      `course ${course} of ${of}, ${piles}${laid && `, ${laid}`}`,
    begun: (pieces: number, of: number, from: 'left' | 'right') =>
      `${pieces.toLocaleString('en')} of ${of.toLocaleString('en')} laid, from the ${from}`,
    below: 'Below',
    above: 'Above',
    laid: 'laid',
    change: 'pile changes',
    next: 'next to lay',
    noPlan: 'no plan'
  },

  course: {
    title: (course: number, of: number, slope: string) => `${slope}: course ${course} of ${of}`,
    laid: 'laid',
    none: 'This course is not in the plan.',
    pieces: (slates: number, wide: number) =>
      wide > 0 ? `${common.slates(slates)} and ${wides(wide)}` : common.slates(slates),
    expected: 'Joints that will show',
    asGraded: (range: string) => `graded ${range}`,
    height: 'Height above the lowest eaves'
  },

  table: {
    caption: (slope: string) => `${slope}, from the eaves up`,
    course: 'Course',
    pile: 'Pile',
    slates: 'Slates',
    wide: 'Slate-and-a-halves',
    thickness: 'Thickness as graded, mm',
    kickers: 'Joints that will show',
    total: 'Total',
    laid: 'laid',
    begun: (pieces: number, of: number) =>
      `${pieces.toLocaleString('en')} of ${of.toLocaleString('en')} laid`,
    noThickness: '–'
  },

  risk: {
    lead: 'The chance that a pile is empty before its last course. It comes from what was measured and how much breaks.',
    table: 'Will each pile last?',
    pile: 'Pile',
    expected: 'Slates',
    give: 'Give or take (95 % confidence)',
    lays: 'Lays and breaks',
    chance: 'Chance that it runs out',
    likeliest: (pile: string, percent: string) => `Likeliest to run out: ${pile}, ${percent}.`,
    counted: 'counted',
    unknown:
      'We cannot say how sure the counts are. Measure slates from at least two pallets, or a few of each.',
    working: 'Working it out…',
    hold: 'Keep each chance under',
    holdGo: 'Plan with this limit',
    held: (percent: string) => `By the rule, no pile is likelier to run out than ${percent}.`,
    raised: (slates: number, pile: string) =>
      `For that, ${common.slates(slates)} more ${slates === 1 ? 'is' : 'are'} kept back on ${pile}.`,
    cannotHold: (percent: string) =>
      `With what is left, no plan holds each pile to ${percent}. This one shares it out as it stands.`,
    refused: 'Give a chance from 0.1 to 50 %.'
  },

  short,
  older,
  draw,
  load,
  whatIf,
  trial,

  caution:
    'Evenness only: local code and licensed trade decide headlap, pitch, fixing, safe access.',
  print: 'Print'
};

/** A chance as odds, as it is said on site: 1 in 3. */
function odds(share: number): string {
  if (share >= 0.85) return '9 in 10';
  if (share >= 0.77) return '4 in 5';
  if (share >= 0.7) return '3 in 4';
  if (share >= 0.58) return '2 in 3';
  if (share >= 0.43) return '1 in 2';
  if (share >= 0.37) return '2 in 5';
  return `1 in ${Math.round(1 / share)}`;
}
