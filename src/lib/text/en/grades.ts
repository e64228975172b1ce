import { pluralizer } from '../plural.ts';
import { common } from './common.ts';
import { hands, study } from './grades-hands.ts';
import { band } from './band.ts';
import { far } from './grades-far.ts';
import { gone } from './gone.ts';
import { joints } from './joints.ts';
import { shape } from './shape.ts';
import { waiting } from './waiting.ts';

const many = pluralizer('en');
const READING = { one: 'reading', other: 'readings' };
const MISSING = { one: 'slate is missing', other: 'slates are missing' };

/** Words of the grades screen. */
export const grades = {
  title: 'Grades',
  empty: {
    title: 'Nothing is measured yet',
    why: 'Measure about 20 slates of each pallet, or load a file of readings. Then you can split them here.',
    onlyTaps: (taps: number) =>
      `${many(taps, { one: 'slate is', other: 'slates are' })} sorted by eye and none is measured. Measure some slates of each pallet, then split them here.`,
    toSort: 'Measure slates',
    toFiles: 'Load a file'
  },
  few: (readings: number) =>
    `Only ${many(readings, READING)}: the counts may be far off. Measure more before you sort.`,
  barePile: (pile: string, readings: number) =>
    `${pile} rests on ${readings === 0 ? 'no reading' : 'one reading'}: too few to sort by. Choose fewer piles, or measure more.`,
  far,
  waiting,
  fewAndAll: (readings: number) =>
    `Only ${many(readings, READING)}, and no pallet is said to hold more. Are there more? Say on Sort how many each pallet holds.`,
  oneThickness: (thickness: string) =>
    `Every slate measured is ${thickness} thick: one pile will do. Surprised? Check the gauge.`,
  tooFewThicknesses: (distinct: number, piles: number) =>
    `The slates measured have ${many(distinct, { one: 'thickness', other: 'different thicknesses' })}, too few for ${common.piles(piles)}. Choose fewer piles, or measure more.`,
  chart: {
    caption: 'Your slates by thickness, in mm',
    handle: (thicker: string, thinner: string) => `Boundary between ${thicker} and ${thinner}`,
    description: (slates: string, from: string, to: string, mean: string) =>
      `Bars: how many of ${slates} have each thickness, from ${from} to ${to}, ${mean} on average. The same figures are in the table below.`,
    hint: 'Drag a boundary on the picture, or use the arrow keys (0.05 mm) and the page keys (0.5 mm). A slate exactly on a boundary goes to the thicker pile.',
    whiskers:
      'The thin lines show the range of each bar, with 95 % confidence. None seen is not proof that there is none.',
    outline: 'Draw one pallet over the picture',
    noOutline: 'no pallet',
    outlineOf: (pallet: string) => `pallet ${pallet}`,
    outlineHint: (pallet: string) =>
      `The outline is pallet ${pallet} alone, drawn as if the whole stock were like it.`,
    table: 'Every bar as a table',
    compare: 'Compare the splits',
    trust: 'Pallets, gauge and eye',
    thickness: 'Thickness',
    slates: 'Slates',
    pile: 'Pile',
    fromTo: (from: string, to: string) => `${from} to ${to}`,
    between: 'Range, 95 % confidence',
    parts: (list: string) => ` (${list})`,
    inSample: (n: string) => `${n} in the sample`,
    beforeGrades: (n: string) => `${n} before there were grades`,
    whileSorting: (n: string) => `${n} while sorting`,
    repeats: (n: string) => `less ${n} counted as second readings of the same slates`,
    noneSeen: 'none seen',
    basis: (readings: string, slates: string, mean: string) =>
      `${readings} of ${slates}; mean of the stock ${mean}`,
    basisWithTaps: (readings: string, taps: string, slates: string, mean: string) =>
      `${readings} and ${taps} sorted by eye, of ${slates}; mean of the stock ${mean}`,
    partOfTaps: (counted: string, taps: string) => `${counted} of ${taps}`,
    meanBetween: (low: string, high: string) => `, between ${low} and ${high} with 95 % confidence`
  },
  readings: (n: number) => many(n, READING),
  piles: {
    title: 'How sure is this?',
    label: 'What each pile will hold',
    pile: 'Pile',
    slates: 'Slates',
    ofStock: (stock: string) => `of ${stock}`,
    between: (low: string, high: string, stock: string) => `between ${low} and ${high} of ${stock}`,
    exactly: (stock: string) => `of ${stock}, every one measured`,
    unsure: {
      'nothing-gauged': (stock: string) => `of ${stock}`,
      'one-pallet-of-many': (stock: string) =>
        `of ${stock}; range not known: only one pallet of several was measured`,
      'one-slate-a-pallet': (stock: string) =>
        `of ${stock}; range not known: only one slate a pallet was measured`
    },
    flattered: (readings: string) =>
      `From ${readings} these figures are too good: slates thicker or thinner than any measured so far are not in them. The answer above is tried on slates left out.`,
    courses: 'Courses filled',
    mean: 'Mean',
    range: 'Range',
    spread: 'Usual variation',
    spreadMeans:
      'Usual variation: how far a slate of the pile is usually off its mean (standard deviation).',
    kickers: 'Joints that will show, in 100',
    worstStep: 'Worst step',
    fromTo: (from: string, to: string) => `${from} to ${to}`,
    none: '–'
  },
  stepper: { label: 'Piles', fewer: 'One pile fewer', more: 'One pile more' },
  allowance: {
    title: 'What step do you accept?',
    label: 'Biggest step you accept between neighbours',
    hint: 'A bigger step shows: a kicker. 1.5 mm is our starting value; no published source.',
    wrong: 'Type a step from 0 to 20 mm, for example 1.5.'
  },
  ways: {
    title: 'How to split, and joints that will show, in 100',
    chosen: '(chosen)',
    atBest: (kickers: string) => `${kickers} at best`,
    names: {
      naturalBreaks: 'Split at the gaps',
      suitTheRoof: 'Best for this roof',
      equalShares: 'Same number in each',
      byHand: 'My own split'
    },
    noRoof: 'Enter the roof first',
    roofProblems: 'The roof has fields to fix first',
    working: 'Working it out…',
    failed: 'The search stopped. Change the number of piles, or open the screen again.',
    tooFew: 'Too few different thicknesses',
    missingSlates: (n: number) => `${many(Math.ceil(n), MISSING)} for the roof`,
    toRoof: 'Enter the roof'
  },
  verdict: {
    kickers: (kickers: string, joints: string) =>
      `In 100 joints ${kickers} will show ${joints}, if every slate lies on its right pile. A joint shows where a thick slate lies beside a thin one (a kicker).`,
    onRoof: 'on this roof',
    onStock: 'with all the stock laid pile by pile',
    baselines: (unsorted: string, perfect: string) =>
      `Unsorted it would be ${unsorted}; with every slate measured and laid in order, ${perfect}.`,
    worst: (step: string) => `The worst step between neighbours of one pile is ${step}.`,
    coursesMissing: (n: number) =>
      `${many(n, { one: 'course', other: 'courses' })} near the ridge cannot come whole from one pile. Courses plans where piles change.`,
    working: 'How many joints will show is being worked out.',
    answer: (
      { per100, atBest }: { per100: number; atBest: boolean },
      unsorted: number,
      fewReadings: string
    ) =>
      `${joints(per100)} will show ${atBest ? 'at best ' : ''}if sorted right${fewReadings && `, from ${fewReadings}`}; unsorted it would be ${unsorted < 1 ? 'less than 1' : Math.round(unsorted)}.`
  },
  usable: (
    delivered: string,
    usable: string,
    setAside: string,
    expected: string,
    others: readonly string[]
  ) =>
    `${usable} usable of ${delivered} delivered: ${[`${setAside} set aside`, ...(expected ? [`about ${expected} more expected to be`] : []), ...others].join(', ')}.`,
  gone,
  shape,
  standing: {
    title: 'The piles as they stand',
    lead: (stock: string) =>
      `The split above takes the whole stock again from the start. Courses, Lay and Job count the piles as they are: what lies on a pile stays there, and the rest of the ${stock} is estimated pallet by pallet, by gauge.`,
    pile: 'Pile',
    onPile: 'On pile',
    toCome: 'To come',
    together: 'In all',
    splitAgain: 'Split again',
    plan: (kickers: string, joints: number) =>
      `The current plan: ${kickers} joints in 100 will show (${many(joints, { one: 'joint', other: 'joints' })}), slates on a wrong pile included.`,
    sharp: (kickers: string) => `If every slate lay on its right pile: ${kickers}.`
  },
  lines: {
    label: 'The piles',
    over: (mm: string) => `${mm} and over`,
    fromTo: (low: string, high: string) => `${low} to ${high}`,
    under: (mm: string) => `under ${mm}`,
    all: 'all of them',
    about: (slates: number) => `about ${slates.toLocaleString('en')}`
  },
  split: { title: 'How to split' },
  set: {
    button: 'Use these grades',
    inForce: 'These grades are in use.',
    /** Where the work goes on. */
    next: {
      roof: 'Enter the roof',
      plan: 'Make the plan',
      sort: 'Sort the slates',
      lay: 'Lay'
    },
    notSaved:
      'The grades are not saved; your split is still here. Fix what the red line says, then try again.',
    keep: 'They keep the grades they were sorted under; only slates sorted from now on follow new grades.'
  },
  /** Piles that the grades in use do not sort on to. */
  beside: {
    title: 'Piles beside the grades',
    lead: 'They get no more slates and are laid in their turn. Or bring one to an end:',
    lies: (pile: string, slates: string) => `${pile}: ${slates} lie there`,
    merge: 'Put it on another pile',
    again: 'It was sorted again',
    usedUp: 'Nothing is left of it',
    onTo: 'On which pile?',
    mergeSays: (from: string, to: string) => `All of ${from} goes on ${to}.`,
    together: (pile: string, range: string) => `${pile} is then ${range}.`,
    mergeGo: (from: string, to: string) => `${from} lies on ${to} now`,
    againSays: (pile: string) => `How many slates of ${pile} went on to each pile?`,
    againGo: 'Save the count',
    problems: {
      nothing: (_left: number) => 'Write how many slates went on to at least one pile.',
      'not-whole': (_left: number) => 'Write whole numbers of slates, as 40, and nothing else.',
      'too-many': (left: number) =>
        `Only ${common.slates(left)} lie on it. Check the numbers: together they are more.`
    },
    notSaved: 'Not saved. What you typed is still here: try again.',
    saved: 'Saved.',
    band
  },
  /** What the grades shown make of the piles that stand there. */
  after: {
    label: 'What becomes of the piles',
    kept: (piles: string, mm: string) =>
      `${piles}: same number, its boundaries move ${mm} at most.`,
    misfits: (pile: string, n: number) =>
      `${pile}: ${many(n, { one: 'slate measured on to it no longer fits', other: 'slates measured on to it no longer fit' })}. Take them off when you come to them.`,
    opened: (piles: string) => `New: ${piles}.`,
    beside: (pile: string, slates: string) =>
      `${pile} stays as it is: its ${slates} are laid in their turn.`
  },
  regrade: {
    title: 'Slates sorted under other grades',
    under: (slates: string, moment: string) =>
      `${slates} were sorted under the grades of ${moment}.`,
    underNone: (slates: string) =>
      `${slates} were put on piles before there were grades. Nobody knows where they were split, so check a few of each pile with the gauge.`,
    gain: (before: string, after: string) =>
      `Split the whole stock as shown and sort these slates again: ${after} joints in 100 will show instead of ${before}.`,
    noGain: (before: string, after: string) =>
      `Sorting them again as shown saves nothing: ${after} joints in 100 will show, ${before} as they are. Leave them.`,
    work: (slates: string) => `To do it, ${slates} must change pile:`,
    unmarked: (onPiles: string) =>
      `They are not marked. To find them, feel or measure the ${onPiles} that lie on those piles from those pallets. Move the ones within the thickness given.`,
    nothing: 'No slate whose thickness is known would change its pile.',
    unknown: (slates: string) =>
      `Besides, ${slates} on the piles were sorted by eye without enough spot checks, so their thickness is not known: feel or measure those near a boundary again.`,
    otherPiles: (slates: string) =>
      `They stay on their own piles and are laid in their turn. To put them on the new piles, sort all ${slates} again.`,
    pallet: 'Pallet',
    move: 'From pile to pile',
    fromTo: (from: string, to: string) => `${from} → ${to}`,
    slates: 'Slates to move',
    about: (slates: string) => `about ${slates}`,
    among: 'Lying there',
    between: 'Thickness',
    table: 'Slates that must change pile'
  },
  drift: {
    title: 'Is the stock still like the sample?',
    tooFew:
      'Too few slates are measured to compare. Each pallet needs ten in its sample and ten measured while sorting.',
    thicker: (shift: string) => `${shift} thicker`,
    thinner: (shift: string) => `${shift} thinner`,
    none: (shift: string, low: string, high: string) =>
      `The stock is like the sample the grades came from. Slates measured while sorting are ${shift} on average, which chance alone explains. The stock may run from ${low} to ${high} than the sample (95 % confidence).`,
    drifted: (shift: string, low: string, high: string) =>
      `The stock has drifted. Slates measured while sorting are ${shift} on average than the sample the grades came from, more than chance explains. The stock may run from ${low} to ${high} (95 % confidence).`,
    short: (pile: string, toLay: number, withReserve: number) =>
      toLay > 0
        ? `${pile} will run short: ${common.slates(toLay)} short to lay the plan, ${withReserve.toLocaleString('en')} with the reserve.`
        : `${pile} will not keep its reserve: there are enough to lay the plan, but ${common.slates(withReserve)} fewer than the reserve asks for.`,
    notShort:
      'By the slates expected on each pile, no pile falls short of the current plan. A pile can come out smaller: Courses says how likely that is.',
    toCourses: 'See the chances on Courses',
    noCourses: (courses: string) =>
      `With the grades in use, whole courses from single piles leave ${courses} unfilled.`,
    better: (thresholds: string, gain: string, slates: string) =>
      `By what is measured now, boundaries at ${thresholds} are better: ${gain} fewer joints in 100 will show; ${slates} must change pile.`,
    fine: 'The boundaries in use are as good as the best, within half a joint in 100.',
    showBetter: 'Show these boundaries'
  },
  sideBySide: {
    title: 'The four splits side by side',
    figure: 'Figure',
    boundaries: 'Boundaries',
    kickers: 'Joints that will show, in 100',
    heldOut: 'Tried on slates left out',
    sortedBy: { gauge: 'Sorted by gauge', assumed: 'Sorted by eye, not checked yet' },
    byHand: (name: string) => `Sorted by eye by ${name}`,
    sharp: 'Joints that will show, in 100: if every slate lies on its right pile.',
    heldOutMeans:
      'Tried on slates left out (cross-validation): a split looks better on the very readings it came from than on the stock. So it is made from four fifths of them and tried on the rest. Sorted by gauge or by eye: allows for slates put on a wrong pile. Your own split is not tried so.',
    tooFewToHoldOut:
      'A split looks better on the very readings it came from than on the stock, most of all with few readings. From 150 readings on this is tried and shown here.',
    worst: 'Worst step',
    unsorted: 'Unsorted',
    perfect: 'All measured, laid in order',
    between: (low: string, high: string) => `between ${low} and ${high}`,
    mean: (mean: string) => `mean ${mean}`,
    spread: (sd: string) => `usual variation ${sd}`,
    worstStep: (step: string) => `worst step ${step}`,
    per100: (kickers: string) => `${kickers} joints in 100`,
    empty: 'empty',
    coursesMissing: 'Courses not filled'
  },
  curve: {
    title: 'How many piles?',
    basis: 'The bars are split at the gaps, for each number of piles.',
    piles: 'Piles',
    suited: 'Best for this roof',
    kickers: 'Joints that will show, in 100',
    best: (piles: number, kickers: string, way: string, shown: string) =>
      `With ${common.piles(piles)} at their best ${kickers} joints in 100 will show (${way}); with the split above ${shown}.`,
    saves: (next: number, to: string, way: string, onRoof: string) =>
      `A ${ordinal(next)} pile would bring the best down to ${to} (${way})${onRoof}.`,
    worth: 'It is worth its floor space if you have the room.',
    notWorth: 'It is hardly worth its floor space.',
    savesNone: (next: number) => `A ${ordinal(next)} pile would save nothing.`,
    natural: 'split at the gaps',
    roof: 'best for this roof',
    onRoof: (kickers: string) => `, about ${kickers} fewer on this roof`,
    onRoofUnderOne: ', less than one joint on this roof',
    most: 'Eight piles are the most you can choose.',
    unsorted: 'Unsorted'
  },
  asSorted: {
    title: 'How much do gauge and eye cost?',
    why: 'Gauge and eye are both off by a little, so slates near a boundary land on the wrong pile. These figures allow for that. Off by: how far they usually are off on one slate (standard deviation).',
    by: 'Sorted by',
    ideal: 'Without error',
    gauge: (sd: string) => `Gauge, off by ${sd}`,
    hand: (name: string, sd: string) => `${name} by eye, off by ${sd}`,
    assumed: (sd: string) => `By eye, not checked yet, ${sd} assumed`,
    kickers: 'Joints that will show, in 100',
    worst: 'Worst step',
    counts: 'Slates on the piles',
    unstudied:
      'This gauge is not tested yet; 0.05 mm is our starting value. The gauge test below replaces it.',
    borderline: (sd: string, reach: string) =>
      `A reading within ${reach} of a boundary (twice the ${sd} by which the gauge is off) is borderline: measured again it might go to the other pile. Sort marks it; either pile is right.`,
    biasCounted: 'with its own boundaries',
    spreadOnly: 'by its variation alone'
  },
  pallets: {
    title: 'Are the pallets alike? Measure more?',
    pallet: 'Pallet',
    slates: 'Slates',
    gauged: 'Measured',
    mean: 'Mean',
    sd: 'Usual variation',
    middleHalf: 'Middle half',
    taper: 'Taper',
    fromTo: (from: string, to: string) => `${from} to ${to}`,
    means:
      'Usual variation: how far a slate is usually off the mean (standard deviation). Middle half: a quarter of the slates are thinner, a quarter thicker. Taper: thickest less thinnest point of one slate, on average, of those measured at several points.',
    odd: 'odd',
    share: (percent: string) =>
      `${percent} of the variation lies between the pallets (intraclass correlation), the rest within each.`,
    shareLow: 'The pallets are much alike: a few slates of any one show the rest.',
    shareHigh: 'The pallets differ: take from all of them, for measuring and for laying.',
    oddOne: (pallet: string, difference: string, thicker: boolean) =>
      `Pallet ${pallet} is odd: ${difference} ${thicker ? 'thicker' : 'thinner'} on average than the pallets that are not odd, which is more than slates of one pallet usually vary.`,
    oddLine: (pallet: string, difference: string, thicker: boolean) =>
      `Pallet ${pallet} stands out: ${difference} ${thicker ? 'thicker' : 'thinner'} than the others.`,
    noOdd:
      'No pallet stands out from the others by more than chance explains and more than slates of one pallet usually vary.',
    no: {
      'too-few-groups': 'Pallets cannot be compared: slates of one pallet only are measured.',
      'one-value-a-group': 'Pallets cannot be compared: measure two slates or more of some pallet.',
      'no-spread-within':
        'Pallets cannot be compared: the slates of each pallet are all of one thickness.'
    },
    adviceTitle: 'How many more slates?',
    within: 'Count of each pile within ±',
    unit: 'slates',
    wrong: 'Type a whole number of slates, 1 or more.',
    allGauged:
      'Every slate of the pallets is measured, as far as is known. If a pallet holds more, say so on Sort.',
    enough: (within: string) =>
      `The sample is enough: by the gauge alone, each pile's count is within ± ${within} with 90 % confidence.`,
    more: (slates: string, within: string) =>
      `Measure ${slates} more to know each pile's count within ± ${within} with 90 % confidence, by the gauge alone:`,
    first: {
      'nothing-gauged': 'Nothing is measured yet. Begin with:',
      'one-pallet-of-many':
        'One pallet of several is opened, so nothing shows how pallets differ. Measure:',
      'one-slate-a-pallet':
        'No pallet has two measured slates, so nothing shows how slates of a pallet differ. Measure:'
    },
    draw: (slates: string, pallet: string) => `${slates} of pallet ${pallet}`
  },
  hands,
  study
};

/** second, third … eighth: the numbers of piles that a further pile can have. */
function ordinal(n: number): string {
  return (
    ['', 'first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth'][n] ??
    String(n)
  );
}
