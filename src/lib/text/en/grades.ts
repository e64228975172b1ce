import { pluralizer } from '../plural.ts';
import { common } from './common.ts';
import { hands, study } from './grades-hands.ts';
import { gone } from './gone.ts';

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
    `Only ${many(readings, READING)}: the counts below may be far off. Gauge more before you sort.`,
  fewAndAll: (readings: number) =>
    `Only ${many(readings, READING)}, and no pallet is said to hold more slates. If there are more, enter on the Sort screen how many each pallet holds.`,
  oneThickness: (thickness: string) =>
    `Every slate gauged is ${thickness} thick, so there is nothing to grade: one pile will do. If that surprises you, check the gauge.`,
  tooFewThicknesses: (distinct: number, piles: number) =>
    `The slates gauged have ${many(distinct, { one: 'thickness', other: 'different thicknesses' })}; ${common.piles(piles)} need as many different ones at least. Choose fewer piles, or gauge more slates.`,
  chart: {
    caption: 'Slates of the stock by thickness in mm',
    handle: (thicker: string, thinner: string) => `Boundary between ${thicker} and ${thinner}`,
    description: (slates: string, from: string, to: string, mean: string) =>
      `Bars: how many of ${slates} have each thickness, from ${from} to ${to}, ${mean} on average. The same figures are in the table below.`,
    hint: 'Drag a boundary, or use the arrow keys (0.05 mm) and the page keys (0.5 mm). A slate exactly on a boundary goes to the thicker pile.',
    whiskers:
      'The thin lines show between how many slates each bar may be, at 95 %. None seen is not proof that there is none.',
    outline: 'Outline of',
    noOutline: 'no pallet',
    outlineOf: (pallet: string) => `pallet ${pallet}`,
    outlineHint: (pallet: string) =>
      `The outline is pallet ${pallet} alone, drawn as if the whole stock were like it.`,
    table: 'The spread as a table',
    thickness: 'Thickness',
    slates: 'Slates',
    pile: 'Pile',
    fromTo: (from: string, to: string) => `${from} to ${to}`,
    between: 'Between, at 95 %',
    parts: (list: string) => ` (${list})`,
    inSample: (n: string) => `${n} in the sample`,
    beforeGrades: (n: string) => `${n} before there were grades`,
    whileSorting: (n: string) => `${n} while sorting`,
    repeats: (n: string) => `less ${n} taken as second readings of the same slates`,
    noneSeen: 'none seen',
    basis: (readings: string, slates: string, mean: string) =>
      `${readings} of ${slates}; mean ${mean}`,
    basisWithTaps: (readings: string, taps: string, slates: string, mean: string) =>
      `${readings} and ${taps} told by hand, of ${slates}; mean ${mean}`,
    partOfTaps: (counted: string, taps: string) => `${counted} of ${taps}`,
    meanWorking: ', how far off it may be is being worked out',
    meanByGauge: (low: string, high: string) =>
      `, by gauge alone between ${low} and ${high} at 95 %`,
    meanBetween: (low: string, high: string) => `, between ${low} and ${high} at 95 %`
  },
  readings: (n: number) => many(n, READING),
  piles: {
    title: 'The piles',
    label: 'What each pile will hold',
    pile: 'Pile',
    slates: 'Slates',
    ofStock: (stock: string) => `of ${stock}`,
    between: (low: string, high: string, stock: string) => `between ${low} and ${high} of ${stock}`,
    working: (stock: string) => `of ${stock}, interval being worked out`,
    exactly: (stock: string) => `of ${stock}, every one gauged`,
    unsure: {
      'nothing-gauged': (stock: string) => `of ${stock}`,
      'one-pallet-of-many': (stock: string) =>
        `of ${stock}; how far off is not known, for one pallet of several was gauged`,
      'one-slate-a-pallet': (stock: string) =>
        `of ${stock}; how far off is not known, for one slate a pallet was gauged`
    },
    flattered: (readings: string) =>
      `From ${readings} kickers and steps come out too low: slates thicker or thinner than any gauged so far are not in them.`,
    byGauge: (words: string) => `by gauge alone ${words}`,
    courses: 'Courses filled',
    mean: 'Mean',
    range: 'Range',
    spread: 'Spread',
    spreadMeans:
      'Spread: how far a slate of the pile usually lies from its mean (standard deviation).',
    kickers: 'Kickers per 100 joints',
    worstStep: 'Worst step',
    fromTo: (from: string, to: string) => `${from} to ${to}`,
    none: '–'
  },
  stepper: { label: 'Piles', fewer: 'One pile fewer', more: 'One pile more' },
  allowance: {
    label: 'Kick allowance',
    hint: 'The step between two neighbours that you accept. 1.5 mm is our starting value; no published source.',
    wrong: 'Type a step from 0 to 20 mm, for example 1.5.'
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
    noRoof: 'Enter the roof first',
    roofProblems: 'The roof has fields to mend first',
    working: 'Working it out…',
    failed: 'The search stopped. Change the number of piles, or open the screen again.',
    tooFew: 'Too few different thicknesses',
    missingSlates: (n: number) => `${many(Math.ceil(n), MISSING)} for the roof`,
    toRoof: 'Enter the roof'
  },
  verdict: {
    kickers: (kickers: string, joints: string) =>
      `Expected: ${kickers} kickers per 100 joints ${joints}, if every slate lies on its right pile.`,
    onRoof: 'on this roof',
    onStock: 'if all the stock is laid pile by pile',
    baselines: (unsorted: string, perfect: string) =>
      `Unsorted it would be ${unsorted}; in perfect order, every slate measured, ${perfect}: the physical limit.`,
    worst: (step: string) => `The worst step between neighbours of one pile is ${step}.`,
    coursesMissing: (n: number) =>
      `${many(n, { one: 'course', other: 'courses' })} near the ridge cannot be filled with whole courses from these piles. The Courses screen also plans courses that change pile.`
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
  standing: {
    title: 'The piles as they stand, in slates',
    lead: (stock: string) =>
      `The table above cuts the whole stock anew. Courses, Lay and the job count the piles as they are: what was put on a pile stays there, and the rest of the ${stock} is foretold pallet by pallet, by gauge.`,
    pile: 'Pile',
    onPile: 'On pile',
    toCome: 'To come',
    together: 'In all',
    anew: 'Cut anew',
    plan: (kickers: string, joints: number) =>
      `The plan in force expects ${kickers} kickers per 100 joints (${many(joints, { one: 'joint', other: 'joints' })}), with the slates that lie on a wrong pile.`,
    sharp: (kickers: string) => `If every slate lay on its right pile: ${kickers}.`
  },
  set: {
    button: 'Set these grades',
    again: 'Set the grades anew',
    inForce: 'These grades are in force.',
    notSaved:
      'The grades were not saved; the boundaries are still here. Mend what the red strip says, then try again.',
    keep: 'They keep the grades they were sorted under; only slates sorted from now on follow new grades.'
  },
  regrade: {
    title: 'Slates sorted under other grades',
    under: (slates: string, moment: string) =>
      `${slates} were sorted under the grades of ${moment}.`,
    underNone: (slates: string) =>
      `${slates} were put on piles before there were grades. By what boundaries is not known, so check a few of each pile with the gauge.`,
    gain: (before: string, after: string) =>
      `If all the stock is cut at the boundaries shown, and these slates are regraded: ${after} kickers per 100 joints instead of ${before}.`,
    noGain: (before: string, after: string) =>
      `Regrading them to the boundaries shown would save nothing: ${after} kickers per 100 joints, and ${before} as they were cut. Leave them.`,
    work: (slates: string) => `To do it, ${slates} must change pile:`,
    unmarked: (onPiles: string) =>
      `They carry no mark. To find them, feel or gauge the ${onPiles} that lie on those piles from those pallets, and move the ones within the thickness given.`,
    nothing: 'No slate whose thickness is known would change its pile.',
    unknown: (slates: string) =>
      `Besides, ${slates} on the piles were told by a hand that is not known, so their thickness is not: feel or gauge those near a boundary again.`,
    otherNumber: (slates: string) =>
      `The number of piles differs, so all ${slates} would have to be sorted again.`,
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
    title: 'While sorting: drift and short piles',
    tooFew:
      'Too few slates were gauged to compare what is sorted with the sample. Each pallet is compared with its own sample: ten slates sampled and ten gauged while sorting, of the same pallets, are the least.',
    thicker: (shift: string) => `${shift} thicker`,
    thinner: (shift: string) => `${shift} thinner`,
    none: (shift: string, low: string, high: string) =>
      `The stock keeps to the sample the grades came from: pallet compared with pallet, the slates gauged while sorting are ${shift} on average, which chance alone can explain. By these readings the stock may run from ${low} to ${high} than the sample (at 95 %).`,
    drifted: (shift: string, low: string, high: string) =>
      `The stock has drifted: pallet compared with pallet, the slates gauged while sorting are ${shift} on average than the sample the grades came from, more than chance explains. By these readings the stock may run from ${low} to ${high} (at 95 %).`,
    short: (pile: string, toLay: number, withReserve: number) =>
      toLay > 0
        ? `${pile} will run short: ${common.slates(toLay)} short to lay the plan, ${withReserve.toLocaleString('en')} with the reserve.`
        : `${pile} will not keep its reserve: there are enough to lay the plan, but ${common.slates(withReserve)} fewer than the reserve asks for.`,
    notShort:
      'By the slates expected on each pile, no pile falls short of the plan in force. A pile can come out smaller than expected: Courses tells the chance that one runs out.',
    toCourses: 'See the chances on Courses',
    noCourses: (courses: string) =>
      `With the grades in force whole courses from single piles leave ${courses} unfilled.`,
    better: (thresholds: string, gain: string, slates: string) =>
      `The spread as it is known now asks for boundaries at ${thresholds}. Moving there would save ${gain} kickers per 100 joints; ${slates} must change pile.`,
    fine: 'The boundaries in force are within half a kicker per 100 joints of the best for the spread as it is known now.',
    showBetter: 'Show these boundaries'
  },
  sideBySide: {
    title: 'The four ways side by side',
    figure: 'Figure',
    boundaries: 'Boundaries',
    kickers: 'Kickers per 100 joints',
    heldOut: 'On slates held out',
    sortedBy: { gauge: 'Sorted by gauge', assumed: 'Sorted by a hand not known yet' },
    byHand: (name: string) => `Sorted by the hand of ${name}`,
    sharp: 'Kickers per 100 joints: if every slate lies on its right pile, as in the table above.',
    heldOutMeans:
      'On slates held out: boundaries do better on the very readings they were cut from than on the stock; this is what the way comes to, by the readings alone, when it is cut from four fifths of them and tried on the rest. Sorted by gauge or hand: with the slates that their straying puts on a wrong pile. No slate is held out from boundaries set by hand.',
    tooFewToHoldOut:
      'Boundaries do better on the very readings they were cut from than on the stock, and the fewer the readings the more so; from 150 readings on this is tried and shown here.',
    worst: 'Worst step',
    unsorted: 'Unsorted',
    perfect: 'Perfect order',
    between: (low: string, high: string) => `between ${low} and ${high}`,
    mean: (mean: string) => `mean ${mean}`,
    spread: (sd: string) => `spread ${sd}`,
    worstStep: (step: string) => `worst step ${step}`,
    per100: (kickers: string) => `${kickers} kickers per 100 joints`,
    empty: 'empty',
    coursesMissing: 'Courses not filled'
  },
  curve: {
    title: 'How many piles?',
    basis: 'The bars are by natural breaks at each number of piles.',
    piles: 'Piles',
    suited: 'To suit the roof',
    kickers: 'Kickers per 100 joints',
    best: (piles: number, kickers: string, way: string, shown: string) =>
      `${common.piles(piles)} at their best come to ${kickers} kickers per 100 joints (${way}); the boundaries shown above to ${shown}.`,
    saves: (next: number, to: string, way: string, onRoof: string) =>
      `A ${ordinal(next)} pile would bring the best down to ${to} (${way})${onRoof}.`,
    worth: 'It is worth its floor space if you have the room.',
    notWorth: 'It is hardly worth its floor space.',
    savesNone: (next: number) => `A ${ordinal(next)} pile would save nothing.`,
    natural: 'by natural breaks',
    roof: 'to suit the roof',
    onRoof: (kickers: string) => `, about ${kickers} fewer on this roof`,
    onRoofUnderOne: ', less than one kicker on this roof',
    most: 'Eight piles are the most that are offered.',
    unsorted: 'Unsorted'
  },
  asSorted: {
    title: 'As really sorted: gauge and hand',
    why: 'A gauge and a hand both stray, so slates near a boundary land on the wrong pile. These are the figures with that reckoned in, if all the stock were sorted so, beside the ideal ones. Straying: how far they usually err on one slate (standard deviation).',
    by: 'Sorted by',
    ideal: 'Without error',
    gauge: (sd: string) => `Gauge, straying ${sd}`,
    hand: (name: string, sd: string) => `Hand of ${name}, straying ${sd}`,
    assumed: (sd: string) => `A hand not known yet, ${sd} assumed`,
    kickers: 'Kickers per 100 joints',
    worst: 'Worst step',
    counts: 'Slates on the piles',
    unstudied:
      'This gauge was not studied; 0.05 mm is our starting value. The gauge study below replaces it.',
    borderline: (sd: string, reach: string) =>
      `A reading within ${reach} of a boundary (twice the ${sd} by which the gauge strays) is borderline: gauged again it might go to the other pile. Sorting marks it; either pile is right.`,
    biasCounted: 'with its own boundaries',
    spreadOnly: 'by its spread alone'
  },
  pallets: {
    title: 'Pallets compared, and how many more to gauge',
    pallet: 'Pallet',
    slates: 'Slates',
    gauged: 'Gauged',
    mean: 'Mean',
    sd: 'Spread',
    middleHalf: 'Middle half',
    taper: 'Taper',
    fromTo: (from: string, to: string) => `${from} to ${to}`,
    means:
      'Spread: how far a slate usually lies from the mean (standard deviation). Middle half: a quarter of the slates are thinner, a quarter thicker. Taper: thickest less thinnest point of one slate, on average, of those gauged at several points.',
    odd: 'odd',
    share: (percent: string) =>
      `${percent} of the variance of thickness lies between pallets (intraclass correlation); the rest is within each pallet.`,
    shareLow: 'The pallets are much alike: a few slates of any of them tell of all.',
    shareHigh:
      'The pallets differ: gauge some slates of every pallet, and draw courses from several together.',
    oddOne: (pallet: string, difference: string, thicker: boolean) =>
      `Pallet ${pallet} is odd: ${difference} ${thicker ? 'thicker' : 'thinner'} on average than the pallets that are not odd, which is more than slates of one pallet usually vary.`,
    noOdd:
      'No pallet stands out from the others by more than chance explains and more than slates of one pallet usually vary.',
    no: {
      'too-few-groups': 'Pallets cannot be compared: slates of one pallet only were gauged.',
      'one-value-a-group': 'Pallets cannot be compared: gauge two slates or more of some pallet.',
      'no-spread-within':
        'Pallets cannot be compared: the slates of each pallet are all of one thickness.'
    },
    adviceTitle: 'How many more slates?',
    within: 'Count of each pile within ±',
    unit: 'slates',
    wrong: 'Type a whole number of slates, 1 or more.',
    allGauged:
      'Every slate of the pallets, as large as they are known to be, was gauged. If a pallet holds more, enter on the Sort screen how many.',
    enough: (within: string) =>
      `The sample is enough: by the gauge alone, each pile's count is within ± ${within} at 90 %.`,
    more: (slates: string, within: string) =>
      `Gauge ${slates} more to know each pile's count within ± ${within} at 90 %, by the gauge alone:`,
    first: {
      'nothing-gauged': 'Nothing is gauged yet. Begin with:',
      'one-pallet-of-many':
        'One pallet of several was opened, so nothing tells how pallets differ. Gauge:',
      'one-slate-a-pallet':
        'No pallet has two gauged slates, so nothing tells how slates of a pallet differ. Gauge:'
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
