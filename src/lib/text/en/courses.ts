import { pluralizer } from '../plural.ts';
import { common } from './common.ts';

const many = pluralizer('en');
const wides = (n: number) => many(n, { one: 'slate-and-a-half', other: 'slate-and-a-halves' });
const kickers = (text: string) => `${text} ${text === '1' ? 'kicker' : 'kickers'}`;

/** Words of the courses screen; the lay screen shares some. */
export const courses = {
  title: 'Courses',
  lead: 'Which pile each course is laid from, thickest at the eaves, so that neighbours differ as little as this stock allows.',
  slateAndAHalves: wides,

  missing: {
    title: 'A plan still needs:',
    spec: { what: 'The slate: its length, width and headlap', go: 'Enter the slate' },
    roof: { what: 'The roof: at least one slope that can be laid out', go: 'Enter the roof' },
    stock: { what: 'The stock: pallets and how many slates are on them', go: 'Add pallets' },
    grades: { what: 'The grades: at what thickness one pile ends', go: 'Set the grades' }
  },

  make: 'Make the plan',
  making: 'Planning…',
  again: 'Plan again',
  adopt: 'Adopt this plan',
  adoptAnew: 'Adopt the new plan',
  adopted: (when: string) => `Plan in force, adopted ${when}.`,
  notAdopted: 'This plan is not in force yet. Adopt it to lay by it and to print it.',
  toLay: 'Lay by this plan',
  adoptFailed: 'The plan was not saved. Mend what the red strip says, then adopt it again.',
  ready: (courseCount: number, slopes: number) =>
    `${common.courses(courseCount)} on ${many(slopes, { one: 'slope', other: 'slopes' })} wait for a plan.`,
  failed: (detail: string) =>
    `The plan could not be made (${detail}). What was saved is safe; check the roof and try again.`,

  stages: {
    before: (sorted: number, all: number) =>
      `Before sorting is done: ${sorted.toLocaleString('en')} of ${common.slates(all)} are on a pile, the rest is expected from the measured spread. Plan again when all are sorted.`,
    sorted: 'After sorting: the piles are as they were counted.',
    partLaid: (laid: number, all: number) =>
      `Laid in part: ${laid} of ${common.courses(all)}. The plan covers the rest.`,
    allLaid: (all: number) => `All ${common.courses(all)} are laid.`
  },
  byHandOnly:
    'No slate was gauged, so thickness in millimetres and kickers are not known. Piles change as rarely as the counts allow; gauge some slates to plan for evenness.',
  strays: (n: number) =>
    `${common.courses(n)} marked as laid ${n === 1 ? 'is' : 'are'} no longer on the roof as entered. Their slates are taken off the piles.`,
  overdrawn: (pile: string) =>
    `${pile} gave more slates than it was taken to hold. Count what is left of it on the Lay screen.`,

  notEveryOrder:
    'Too many unlike courses share a height to try every order of them. A better plan may exist.',
  glance: {
    title: 'At a glance',
    per100: 'Expected kickers per 100 joints',
    kickers: 'Expected kickers on the roof',
    left: 'Expected kickers still to lay',
    changeovers: 'Courses in which the pile changes',
    joints: (n: number) => many(n, { one: 'joint', other: 'joints' }),
    sharp: 'Per 100 joints, if every slate lay on its right pile',
    runsOut: 'Chance that some pile runs out, at most',
    toRisk: 'pile by pile',
    proved: (heldTo: string) =>
      `${heldTo ? `Of the plans that hold each pile to ${heldTo}` : 'Of the plans that keep as many slates back'}, none has fewer expected kickers: this is proved, not a guess.`,
    foretold: 'What stands on the piles is an estimate until all are sorted and counted.',
    safer: (limit: string, kickersMore: string, isFewer: boolean, any: string) =>
      `Held to ${limit} for each pile: ${kickers(kickersMore)} ${isFewer ? 'fewer' : 'more'}, and some pile runs out with a chance of at most ${any}.`,
    saferGo: 'Take the safer plan',
    keptForChance: (parts: readonly string[], heldTo: string) =>
      `Of what is kept back, ${parts.join(', ')} only to hold each pile to ${heldTo}.`,
    keptPart: (slates: number, pile: string) => `${common.slates(slates)} of ${pile}`,
    byHand: (percent: string) =>
      `Slates on a wrong pile are reckoned with: ${percent} of those sorted so far were told by hand, and the rest is expected to be sorted alike.`,
    byGauge: 'Slates on a wrong pile are reckoned with, as far as the gauge strays.',
    tapsAssumed: (n: number, sd: string) =>
      `${common.slates(n)} ${n === 1 ? 'was' : 'were'} told by hands that spot checks do not tell yet: an error of ${sd} is assumed for them.`,
    keptBack: (share: string, breakage: string, spares: string) =>
      `Kept back: ${share} of each pile as it stood before laying, ${breakage} for breakage and ${spares} for repairs, rounded up.`,
    unknown: 'not known',
    spares: 'Left over beyond the reserve',
    pile: 'Pile',
    uses: 'Lays',
    reserve: 'Kept back',
    stands: 'Has',
    spare: 'Left over',
    thickness: 'Thickness'
  },

  wide: {
    title: 'Slate-and-a-halves',
    assumed: (n: number) =>
      `The rest of the roof takes ${wides(n)}. They are assumed to be enough and sorted to match the piles, since nobody counted them. Order or count by pile:`,
    counted: 'As counted by pile:',
    none: 'No course needs a slate-and-a-half.',
    takes: 'Plan takes',
    order: 'With reserve',
    stands: 'Counted'
  },
  undereave: (n: number, wide: number) =>
    `The undereave row comes on top: ${many(n, { one: 'undereave slate', other: 'undereave slates' })}${wide > 0 ? ` and ${wide.toLocaleString('en')} of the width of a slate-and-a-half` : ''}.`,
  undereaveFrom: (served: number, slates: number, wide: number) =>
    served === 0
      ? 'No slate set aside is marked for the undereave and fit for it, so all comes from stock, beyond what the courses take.'
      : `Of the slates set aside, at most ${served.toLocaleString('en')}, marked for the undereave, can serve; ${slates + wide === 0 ? 'that is enough.' : `the rest comes from stock, beyond what the courses take: ${pieces(slates, wide)}.`}`,

  views: {
    label: 'What to show',
    plan: 'Plan',
    draw: 'Draw list',
    load: 'Loading out',
    whatIf: 'What if',
    trial: 'Trial laying'
  },

  drawing: {
    title: 'The roof from outside',
    label: (slope: string) => `Courses of ${slope}; arrow keys go from course to course`,
    value: (course: number, of: number, piles: string, isLaid: boolean) =>
      `course ${course} of ${of}, ${piles}${isLaid ? ', laid' : ''}`,
    below: 'Below',
    above: 'Above',
    laid: 'laid',
    change: 'pile changes in this course',
    next: 'next to lay',
    noPlan: 'no plan'
  },

  course: {
    title: (course: number, of: number, slope: string) => `${slope}: course ${course} of ${of}`,
    laid: 'laid',
    none: 'The plan does not hold this course.',
    from: 'From the left',
    pieces: (slates: number, wide: number) =>
      wide > 0 ? `${common.slates(slates)} and ${wides(wide)}` : common.slates(slates),
    expected: 'Expected kickers',
    asGraded: (range: string) => `graded ${range}`,
    height: 'Height above the lowest eaves'
  },

  table: {
    title: 'Course by course',
    caption: (slope: string) => `${slope}, from the eaves up`,
    course: 'Course',
    pile: 'Pile',
    slates: 'Slates',
    wide: 'Slate-and-a-halves',
    thickness: 'Thickness as graded, mm',
    kickers: 'Expected kickers',
    total: 'Total',
    laid: 'laid',
    noThickness: '–'
  },

  short: {
    title: 'The stock is short',
    missing: (slates: number) =>
      `The roof needs ${common.slates(slates)} more than all piles hold beyond their reserve.`,
    missingWide: (n: number) =>
      `The roof needs ${wides(n)} more than all piles hold beyond their reserve.`,
    reserve: (pile: string, slates: number) =>
      `${pile} lacks ${common.slates(slates)} for its own reserve.`,
    reserveWide: (pile: string, n: number) => `${pile} lacks ${wides(n)} for its own reserve.`,
    mended: (parts: readonly string[], isAfterReserve: boolean) =>
      `${isAfterReserve ? 'With the reserves made good, enough' : 'Enough'} would be ${parts.length > 1 ? 'any one of: ' : ''}${parts.join(', or ')}.`,
    mendedPart: (pile: string, slates: number, wide: number) =>
      `${pieces(slates, wide)} more on ${pile}`,
    order:
      'There are slates enough in all, but not in an order that keeps every course to two piles and never thicker towards the ridge.',
    ways: 'Ways out',
    searching: 'Looking for ways out…',
    noWay: 'No single step mends this. Sort more slates, order slates, or enter the roof again.',
    price: (plan: { kickers: string; per100: string; changeovers: number; spare: number }) =>
      `Then ${kickers(plan.kickers)} expected (${plan.per100} per 100 joints), ${many(plan.changeovers, { one: 'change of pile', other: 'changes of pile' })}, ${common.slates(plan.spare)} left over.`,
    priceCounts: (plan: { changeovers: number; spare: number }) =>
      `Then ${many(plan.changeovers, { one: 'change of pile', other: 'changes of pile' })}, ${common.slates(plan.spare)} left over.`,
    narrow: (parts: string) => `Keep fewer slates back: ${parts}.`,
    narrowPart: (slates: number, wide: number, pile: string) =>
      `${pieces(slates, wide)} fewer of ${pile}`,
    narrowGo: (percent: string) => `Set the reserve to ${percent}`,
    narrowFor: (breakage: string, spares: string) =>
      `The reserve is one share for all piles: breakage ${breakage}, spares for repairs ${spares}.`,
    move: (
      threshold: string,
      from: string,
      to: string,
      look: number,
      pile: string,
      moved: number
    ) =>
      `Move the boundary ${threshold} from ${from} to ${to} and look again at ${common.slates(look)} of ${pile}; about ${moved.toLocaleString('en')} change pile.`,
    otherPiles: (piles: number, bounds: string, look: number) =>
      `Sort into ${common.piles(piles)} instead, at ${bounds}: ${common.slates(look)} to sort again.`,
    toGrades: 'Go to Grades',
    buy: (parts: string) => `Order ${parts}.`,
    buyPart: (slates: number, wide: number, pile: string, about: string) =>
      `${pieces(slates, wide)} for ${pile}${about ? `, about ${about} thick` : ''}`,
    differ: 'Let slopes change pile at different heights: what is laid binds only its own slope.',
    rise: 'Let thickness step out of order once, beside what is laid already.',
    part: (courseCount: number, of: number) =>
      `Lay the lowest ${courseCount} of ${common.courses(of)} now, and the rest when more slates have come.`,
    useThis: 'Adopt this plan'
  },

  older: {
    title: 'The plan is older than the stock',
    titleRoof: 'The plan is older than the roof',
    roofWhere: (parts: readonly string[]) => `These are ${parts.join(' and ')}.`,
    whyRoof: (n: number) =>
      `Planned again for the roof as it is now, ${common.courses(n)} of the others would change.`,
    roofPart: (slope: string, courseCount: number) => `${common.courses(courseCount)} of ${slope}`,
    planning: 'A new plan is being made; it can be shown and adopted in a moment.',
    noNew:
      'There is no new plan to show or to adopt: for the roof as it is now the stock is short, as told below.',
    why: (n: number) =>
      `Slates were sorted, counted, laid or lost since, or a setting changed. Planned again, ${common.courses(n)} would change.`,
    whyHeld: (n: number) => `To hold that, ${common.courses(n)} would change.`,
    whyFree: (n: number, was: string) =>
      `The plan in force holds each pile to a chance of ${was}. Without that, ${common.courses(n)} would change.`,
    free: 'Planned without a chance to hold',
    kickers: (fewer: string, isFewer: boolean) =>
      `The rest of the roof is expected to have ${kickers(fewer)} ${isFewer ? 'fewer' : 'more'}.`,
    asEven: 'The rest of the roof stays as even as it was.',
    same: 'Planned again from what is known now, no course would change.',
    cannot: (pile: string, toLay: number, withReserve: number) =>
      toLay > 0
        ? `${pile} no longer carries the plan: ${common.slates(toLay)} short to lay it, ${withReserve.toLocaleString('en')} with the reserve.`
        : `${pile} no longer carries the plan with its reserve: there are enough to lay it, but ${common.slates(withReserve)} fewer than the reserve asks for.`,
    foretold:
      'Sorting is not done, so this is foretold and will move by a few slates. Plan again when all are sorted.',
    roof: (n: number) =>
      `The roof or its slate was entered anew since the plan was adopted: ${common.courses(n)} ${n === 1 ? 'is' : 'are'} not in the plan, or with another number of pieces.`,
    show: 'Show the new plan',
    showOld: 'Show the plan in force',
    shortNow: 'Planned again from what is known now, the stock is short:',
    difference: 'What changes',
    place: (slope: string, course: number) => `${slope}, course ${course}`,
    part: (pile: string, slates: number, wide: number) =>
      `${pile} × ${[...(slates > 0 || wide === 0 ? [slates.toLocaleString('en')] : []), ...(wide > 0 ? [wides(wide)] : [])].join(' + ')}`,
    was: 'Was',
    now: 'Now',
    gain: 'Kickers',
    notKnown: 'not planned'
  },

  risk: {
    title: 'Will each pile last?',
    lead: 'Chance that a pile is empty before its last course, from what was measured and how much breaks.',
    pile: 'Pile',
    expected: 'Slates',
    give: 'Give or take, 95 times in 100',
    lays: 'Lays and breaks',
    chance: 'Chance that it runs out',
    any: (percent: string) => `Chance that any pile runs out: at most ${percent}.`,
    counted: 'counted',
    unknown:
      'The spread of the counts is not known: gauge slates from at least two pallets, or a few slates of each.',
    working: 'Working it out…',
    hold: 'Hold each chance under',
    holdGo: 'Plan within this chance',
    holdOff: 'Plan without it',
    held: (percent: string) =>
      `Planned so that each pile runs out with a chance of at most ${percent}.`,
    raised: (slates: number, pile: string) => `${common.slates(slates)} more kept back on ${pile}.`,
    cannotHold: (percent: string) =>
      `No plan of what is left holds each pile to a chance of ${percent}: with what that keeps back the stock is short, as told below.`,
    refused: 'Give a chance between 0.1 and 50 %.'
  },

  draw: {
    title: 'Draw list',
    lead: 'Slates of each course by pallet, from at least three pallets where the pile has three, so that colour blends.',
    course: 'Course',
    total: 'Total',
    short: (slates: number, pile: string) =>
      `The pallets do not account for ${common.slates(slates)} of ${pile}. Log which pallet they came from, or draw from the pile as it stands.`,
    wide: 'Slate-and-a-halves are drawn from the pile as they stand.'
  },

  load: {
    title: 'Loading out',
    lead: 'Lifts in the order in which they are laid. The reserve stays on the ground.',
    stackHeight: 'Highest stack',
    liftMass: 'Heaviest lift',
    use: 'Use these limits',
    refusedHeight: 'Give a height from 50 to 2,000 mm.',
    refusedMass: 'Give a mass from 20 to 5,000 kg.',
    lift: (n: number) => `Lift ${n}`,
    stack: 'Stack',
    pile: 'Pile',
    what: 'What',
    height: 'Height',
    mass: 'Mass',
    all: (lifts: number, mass: string) =>
      `${many(lifts, { one: 'lift', other: 'lifts' })}, ${mass} in all, each lift to the nearest kilogram.`,
    where: (slope: string, from: number, to: number) =>
      from === to ? `${slope}, course ${from}` : `${slope}, courses ${from} to ${to}`,
    tight: (height: string, mass: string) =>
      `A single slate does not fit these limits. The least that take every slate: stacks of ${height}, lifts of ${mass}.`,
    noThickness:
      'Masses need a thickness: gauge some slates, or enter the nominal thickness of the order.',
    tags: 'Print tags for piles and stacks',
    basis: (density: string) =>
      `Reckoned with ${density} and the mean thickness of each pile; holes and dressed edges are not taken off, uneven slates stack higher. Each mass is rounded by itself, so the stacks of a lift can add up to a little more or less.`,
    caution:
      'Limits are yours to set: what the hoist, the scaffold and the battens carry is for a competent person to say.'
  },

  whatIf: {
    title: 'What if',
    lead: 'Each line changes one thing and plans the whole roof again, as if nothing were sorted yet, by gauge alone and with every slate on its right pile. As set now: the grades in force; other numbers of piles: cut by natural breaks.',
    go: 'Work it out',
    working: 'Planning each…',
    change: 'Change',
    per100: 'Per 100 joints',
    kickers: 'Kickers',
    changeovers: 'Changes of pile',
    spares: 'Left over',
    asNow: 'As set now',
    piles: (n: number) => common.piles(n),
    allowance: (mm: string) => `Kick allowance ${mm}`,
    reserve: (percent: string) => `Reserve ${percent}`,
    short: (slates: number) =>
      slates > 0 ? `short by ${common.slates(slates)}` : 'short: the order of piles does not fit',
    toGrades: 'Set the grades',
    laid: 'Courses are laid already; what if is for before.',
    noReadings: 'Gauge some slates first: without a measured spread there is nothing to cut anew.'
  },

  trial: {
    title: 'Trial laying',
    lead: 'The plan is laid on paper again and again with slates dealt at random from the piles as sorted, beside the same roof unsorted and with every slate graded by hand.',
    go: (n: number) => `Lay it ${n.toLocaleString('en')} times`,
    cancel: 'Stop',
    cancelled: 'Stopped. Nothing was changed.',
    progress: (percent: string) => `${percent} done`,
    times: (n: number) => `Laid ${n.toLocaleString('en')} times each way.`,
    planned: 'As planned',
    byHandMeasured: (sd: string) => `Graded by hand, error ${sd} as measured`,
    byHandAssumed: (sd: string) => `Graded by hand, error ${sd} assumed`,
    unsorted: 'Unsorted',
    way: 'Way',
    mean: 'Kickers on average',
    range: 'In 90 of 100 roofs',
    worst: 'Worst course on average',
    worstAt: (slope: string, course: number, n: string) => `${slope}, course ${course}: ${n}`,
    fromTo: (low: string, high: string) => `${low} to ${high}`,
    exact: (text: string) => `Reckoned exactly for the slates dealt: ${text}.`,
    giveOrTake:
      '± says how far an average may still be off by chance, 95 times in 100: 1.96 standard errors of all the roofs laid.',
    slatesDealt:
      'The slates dealt are as many as stand on each pile, with the thicknesses expected there from the readings, slates on a wrong pile included.',
    axis: 'Kickers on a roof',
    chart: (way: string) => `How often a roof had how many kickers: ${way}`,
    needsReadings: 'Gauge some slates first: a trial needs thicknesses to deal.',
    failed: (detail: string) => `The trial stopped by itself (${detail}).`
  },

  caution:
    'Planned for evenness, not for strength or weather. Headlap, pitch and fixing follow the local code; work at height only from a proper scaffold, with licensed practice where it is required.',
  print: 'Print this page'
};

function pieces(slates: number, wide: number): string {
  if (wide === 0) return common.slates(slates);
  if (slates === 0) return wides(wide);
  return `${common.slates(slates)} and ${wides(wide)}`;
}
