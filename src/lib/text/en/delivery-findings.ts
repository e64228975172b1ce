import { pluralizer } from '../plural.ts';

const many = pluralizer('en');
const SLATE = { one: 'slate', other: 'slates' };
const AND = new Intl.ListFormat('en', { type: 'conjunction' });
const pallets = (labels: readonly string[]): string =>
  `${labels.length === 1 ? 'pallet' : 'pallets'} ${AND.format(labels)}`;

/** Words of the three findings. */
export const findings = {
  title: 'Findings',
  none: {
    'no-order': 'Enter size, nominal thickness and count of the order first.',
    'no-pallets': 'Enter the pallets with their slates first.',
    'no-list':
      'Draw the sample list first: only slates drawn by chance before sorting judge a delivery.',
    'no-unsorted-sample': 'No slate of the unsorted sample is measured yet.',
    'sample-exceeds-lot':
      'The sample is larger than the delivery. Check the slates on the pallets, or draw the list again.',
    'size-missing': 'Enter length and width of the order first.',
    'thickness-missing': 'Enter the nominal thickness first.',
    'count-zero': 'The order or the delivery has no slates: enter the count.',
    'tolerance-over-100': 'The tolerance is over 100 %: mend it in the order.'
  } as Record<string, string>,
  /** While the list is unfinished: nothing of the whole delivery. */
  soFar: {
    title: 'What was found so far',
    measured: (done: string, of: string, isFirst: boolean) =>
      isFirst
        ? `The first ${done} of ${of} listed slates are measured`
        : `${done} of ${of} listed slates are measured`,
    onlyPallets: (head: string, labels: readonly string[]) => `${head}, all of ${pallets(labels)}`,
    unknownPallets: (labels: readonly string[]) => `nothing is known of ${pallets(labels)} yet`,
    lostPallets: (labels: readonly string[]) =>
      `nothing is known of ${pallets(labels)}, where sorting began before the listed slates were measured`,
    everyPallet: (head: string, open: number) =>
      `${head}; every pallet is reached, ${many(open, SLATE)} still to be measured.`,
    noWhole:
      'The list is walked pallet by pallet and layer by layer: before its end, what is measured is no chance sample of the delivery. So no range, no usable slates and no cost are given for the whole of it.',
    outside: (outside: number, judged: number) =>
      `${outside} of ${judged === 1 ? 'this one' : `these ${judged}`} ${outside === 1 ? 'is' : 'are'} outside the order.`,
    plan: {
      accepted: (listed: number, most: number, open: number) =>
        `The plan for all ${listed} accepts with at most ${most} outside: it accepts, whatever the other ${open} show.`,
      refused: (listed: number, most: number, open: number) =>
        `The plan for all ${listed} accepts with at most ${most} outside: it refuses, whatever the other ${open} show.`,
      unfinished: (listed: number, most: number) =>
        `The plan for all ${listed} accepts with at most ${most} outside: it is not decided yet.`
    },
    thickness: (n: number, thinnest: string, thickest: string, mean: string) =>
      `The ${many(n, SLATE)} gauged run from ${thinnest} to ${thickest}, mean ${mean}.`,
    finish: (open: readonly { readonly label: string; readonly slates: number }[]) =>
      `To finish it: measure ${AND.format(open.map(({ label, slates }) => `${many(slates, SLATE)} of pallet ${label}`))}.`,
    finishNothing:
      'It cannot be finished as drawn: what came on those pallets can no longer be judged by chance. Say so to the supplier, or look at every slate left on them.',
    says: 'Finish the list first. Nothing is holed or fixed before.',
    hub: (done: string, of: string) => `${done} of ${of} listed slates: not finished yet.`
  },
  interval: (low: string, high: string) => (low === high ? low : `${low} to ${high}`),
  /** A range of slates in a sentence. */
  between: (low: string, high: string, total: string) =>
    low === high
      ? `${low} of the ${total}`
      : `between ${low} and ${high} of the ${total}, sure 95 times in 100`,
  methods:
    'How the ranges are worked out: for this delivery the exact hypergeometric interval, for what the supplier makes the Clopper-Pearson interval, both at 95 %. A range so made holds the true figure at least 95 times in 100.',
  glance: 'The three findings in short',
  inDeliveryShort: (low: string, high: string, total: string) =>
    `In the delivery: ${low === high ? low : `${low} to ${high}`} of ${total}, sure 95 times in 100.`,
  usableShort: (range: string, total: string, wanted: string) =>
    `Usable: ${range} of ${total}${wanted ? `; wanted: ${wanted}` : ''}.`,
  costShort: (amount: string, isNeeded: boolean, isPaceInDoubt: boolean) =>
    `It ${isNeeded ? 'costs' : 'would cost'} ${amount}${isPaceInDoubt ? ' at the pace entered' : ''}.`,
  first: '1. Outside what was ordered',
  outside: (outside: number, judged: number) =>
    `${outside} of ${many(judged, { one: 'sampled slate', other: 'sampled slates' })} outside the order.`,
  inDelivery: (range: string) => `In the whole delivery: ${range}.`,
  shareAsProcess: (low: string, high: string) =>
    `Of what the supplier makes like this: between ${low} and ${high}.`,
  plan: (n: number, most: number) =>
    `Plan: ${many(n, SLATE)}, accepted with at most ${most} outside.`,
  planPoints: (good: string, goodPasses: string, poor: string, poorPasses: string) =>
    `It is chosen so that a delivery with ${good} outside passes at least ${goodPasses} times in 100, one with ${poor} at most ${poorPasses} times in 100.`,
  planStarting: (share: string) =>
    `The list named no plan: a delivery with ${share} outside is taken to be acceptable, ours as a starting value.`,
  states: {
    accepted: 'The plan accepts.',
    refused: 'The plan refuses.',
    unfinished: 'Not decided yet.'
  },
  toJudge: (n: number) => `${many(n, { one: 'slate', other: 'slates' })} still to be measured.`,
  variables: (mean: string, sd: string, share: string, allowed: string) =>
    `By the spread of thickness: mean ${mean}, spread (standard deviation) ${sd}, so an estimated ${share} outside; ${allowed} is allowed.`,
  variablesYes: 'The variables plan accepts.',
  variablesNo: 'The variables plan refuses.',
  columns: {
    check: 'Check, and what it rests on',
    outside: 'Outside',
    slates: 'In the whole delivery'
  },
  notMeasured: 'not measured',
  outOf: (outside: string, measured: string) => `${outside} of ${measured}`,
  fewMeasured: (measured: number, high: string) =>
    `A range is only as narrow as what was measured: ${many(measured, SLATE)} with none outside still leave up to ${high} possible.`,
  band: (low: string, high: string, percent: string) =>
    `Thickness ordered: ${low} to ${high} (${percent} either way)`,
  count: (ordered: string, delivered: string) => `Ordered ${ordered}, on the pallets ${delivered}.`,
  countShort: (n: number) => `${many(n, SLATE)} short.`,
  countOver: (n: number) => `${many(n, SLATE)} over.`,
  countRight: 'The count is right.',
  stack: (measured: string, label: string, percent: string) =>
    `Stack of 100: ${measured} against ${label} on the label, ${percent}.`,
  stackStates: {
    pass: 'Within what the order allows.',
    fail: 'Beyond what the order allows.',
    'no limit set': 'The order sets no limit.'
  },
  stackAir:
    'Packed thickness includes the air between the slates, so it is not compared with the mean of the sample.',
  stackFrom: (pallets: readonly string[]) =>
    `Measured on ${pallets.length === 1 ? 'pallet' : 'pallets'} ${pallets.join(', ')}.`,
  stackPalletUnknown: 'not noted',
  stackMissing: 'The label with the packed thickness of 100 slates is missing.',
  stackNotMeasured: 'No stack was measured.',
  second: '2. Inside the order, but needs sorting',
  needed: {
    yes: 'Sorting is needed.',
    no: 'It can be laid without sorting.',
    unknown: 'Whether sorting is needed is not decided: the order names no accepted kickers.'
  },
  neededTooFew: 'Too few unlike slates are gauged to foretell whether sorting is needed.',
  inside: (range: string) => `Slates inside the order: ${range}.`,
  spread: (thinnest: string, thickest: string, mean: string, sd: string) =>
    `Those inside run from ${thinnest} to ${thickest}: mean ${mean}, spread (standard deviation) ${sd}.`,
  evenness: (unsorted: string, sorted: string, piles: string) =>
    `Kickers per 100 joints, foretold: ${unsorted} unsorted; ${sorted} sorted into ${piles}, if every slate lies on its right pile.`,
  evennessShort: (unsorted: string, sorted: string, piles: string) =>
    `Kickers per 100 joints: ${unsorted} unsorted, ${sorted} in ${piles} if every slate lies on its right pile.`,
  sampleAlone: (slates: number) =>
    `These figures rest on the ${many(slates, { one: 'gauged slate', other: 'gauged slates' })} of the sample alone. Grades and Courses use every reading and tap of the job, and what lies on a wrong pile, so theirs differ.`,
  hours: (interval: string, isNeeded: boolean, pace: string) =>
    `Hours of sorting${isNeeded ? '' : ', if it is sorted'}: ${interval}${pace}.`,
  paceEntered: (n: string) => `, at ${n} an hour as entered`,
  paceMeasured: (n: string) => `, at ${n} an hour as measured on this job`,
  paceBoth: (entered: string, measured: string, hours: string) =>
    `, at ${entered} an hour as entered; measured on this job ${measured} an hour: ${hours} h`,
  hoursUnknown: 'Hours of sorting: open, no sorting pace is entered.',
  cost: (interval: string, isNeeded: boolean, measured: string) =>
    `Cost of sorting${isNeeded ? '' : ', if it is sorted'}: ${interval}${measured}.`,
  costMeasured: (interval: string) => `; at the measured pace ${interval}`,
  costUnknown: {
    pace: 'Cost of sorting: open, no sorting pace is entered.',
    rate: 'Cost of sorting: open, no cost of an hour is entered.',
    both: 'Cost of sorting: open, neither sorting pace nor cost of an hour is entered.'
  },
  third: '3. Fit for this roof',
  noRoof: 'Whether the delivery makes the roof is open: no roof is entered.',
  roof: {
    enough: 'Enough for the roof and its reserve.',
    'reserve short': 'Enough for the roof, not for its reserve.',
    short: 'Too few for the roof.',
    uncertain: 'The sample does not tell: the roof may run short.'
  },
  usable: (range: string) => `Usable slates: ${range}.`,
  usableMeans: 'Usable: sound and of the size ordered, whatever its thickness.',
  need: (need: string) => `The roof takes ${need}.`,
  reserve: (reserve: string, percent: string, least: string) =>
    `With ${percent} kept back for breakage and repairs at least ${least} are wanted: ${reserve} of them are the reserve.`,
  reserveElsewhere: (percent: string) =>
    `Courses keeps back ${percent} of all that stands on the piles: more, where there are more slates than that.`,
  missingSlates: (interval: string) => `Missing: ${interval} slates.`,
  outOfMarked: (outside: string, measured: string, judged: string) =>
    `${outside}, marked on ${measured} of ${judged}`,
  markedHint: (checks: readonly string[]) =>
    `Not marked on every slate: ${AND.format(checks)}. No range is given for that: where only the bad ones are marked, the marked ones tell no share.`,
  usableUnmarked: (checks: readonly string[]) =>
    `Not marked on every slate: ${AND.format(checks)}. A slate not marked counts as sound here, so there may be fewer.`,
  pallets: 'Pallets compared',
  palletColumns: {
    pallet: 'Pallet',
    outside: 'Outside',
    mean: 'Mean',
    sd: 'Spread',
    chart: 'Against the others'
  },
  position: { inside: 'like the others', below: 'thinner', above: 'thicker' },
  chart: 'Pallet means with limits',
  chartText: (centre: string, odd: string) =>
    odd
      ? `Mean of the sample ${centre}. Outside the limits: pallet ${odd}. Look at it; it need not be outside the order.`
      : `Mean of the sample ${centre}. No pallet differs from the others by more than chance explains.`,
  chartBasis: (sd: string) =>
    `Between its limits a pallet’s mean may lie by chance alone: three standard errors either side of the mean of all, from the spread within pallets of ${sd}.`,
  palletsHint:
    'From the sample alone. Spread: how far its slates typically lie from the mean (standard deviation).',
  chartNone: 'Too few slates to compare pallets.',
  histogram: 'Thickness of the sample',
  histogramText: (n: number, thinnest: string, thickest: string) =>
    `${many(n, SLATE)} from ${thinnest} to ${thickest}; lines mark what was ordered.`,
  low: 'least ordered',
  high: 'most ordered',
  nominal: 'nominal',
  apart: 'Listed apart: these judge nothing',
  apartNone: 'Nothing is listed apart.',
  apartSorting: (n: number) =>
    `${many(n, SLATE)} gauged while sorting: whoever sorts picks what is measured.`,
  apartReasons: {
    'drawn-late': 'offered as sample, but the list was drawn after sorting had begun on the pallet',
    'measured-late': 'offered as sample, but measured after sorting had begun on the pallet',
    'list-unknown': 'offered as sample, but from a list that is not in this job',
    'not-on-list': 'offered as sample, but not on the list',
    'measured-again': 'measured twice: the later reading counts'
  } as Record<string, string>,
  apartLine: (n: number, reason: string) => `${many(n, SLATE)} ${reason}.`
};
