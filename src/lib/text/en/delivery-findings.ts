import { pluralizer } from '../plural.ts';
import { joints, jointsOf100 } from './joints.ts';
import { shape } from './shape.ts';

const many = pluralizer('en');
const SLATE = { one: 'slate', other: 'slates' };
const AND = new Intl.ListFormat('en', { type: 'conjunction' });
const pallets = (labels: readonly string[]): string =>
  `${labels.length === 1 ? 'pallet' : 'pallets'} ${AND.format(labels)}`;
const range = (low: string, high: string): string => (low === high ? low : `${low} to ${high}`);

/** Slates outside a limit of the order, and how many more are outside only by one to ask about. */
export const outOf = (certain: number, asked: number, judged: number): string =>
  `${certain} of ${judged} outside${asked > 0 ? `, ${asked} more to ask about` : ''}`;

/** Words of the three findings. */
export const findings = {
  title: 'Findings',
  none: {
    'no-order': 'Enter the order first: size, thickness and number of slates.',
    'no-pallets': 'Enter the pallets with their slates first.',
    'no-list':
      'Draw the sample list first. Only slates drawn by chance, before sorting, count for the verdict.',
    'no-unsorted-sample':
      'No slate that counts is measured yet. Measure the slates of the list, before sorting.',
    'sample-exceeds-lot':
      'The sample is larger than the delivery. Check the slates on the pallets, or draw the list again.',
    'plan-accepts-all':
      'The plan of this list lets every slate it draws be outside, so it would accept anything. Draw the list again.',
    'size-missing': 'Enter length and width of the order first.',
    'thickness-missing': 'Enter the thickness of the order first.',
    'count-zero': 'The order or the delivery has no slates. Enter how many.',
    'tolerance-over-100': 'The tolerance is over 100 %. Fix it in the order.'
  } as Record<string, string>,
  /** While the list is unfinished: nothing of the whole delivery. */
  soFar: {
    title: 'What was found so far',
    short: (done: string, of: string, outside: number, asked: number) =>
      `${done} of ${of} listed slates are measured; ${outside === 0 ? 'none' : outside} of them ${outside === 1 ? 'is' : 'are'} outside the order${asked > 0 ? `, ${asked} more to ask about` : ''}.`,
    measured: (done: string, of: string, isFirst: boolean) =>
      isFirst
        ? `The first ${done} of ${of} listed slates are measured`
        : `${done} of ${of} listed slates are measured`,
    onlyPallets: (head: string, labels: readonly string[]) => `${head}, all of ${pallets(labels)}`,
    unknownPallets: (labels: readonly string[]) => `nothing is known of ${pallets(labels)} yet`,
    lostPallets: (labels: readonly string[]) =>
      `nothing is known of ${pallets(labels)}, where sorting began before the listed slates were measured`,
    everyPallet: (head: string, open: number) =>
      `${head}, some of every pallet; ${many(open, SLATE)} still to be measured.`,
    noWhole:
      'The list goes pallet by pallet, layer by layer. Until its end it is no fair sample, so nothing is said of the whole delivery yet.',
    outside: (outside: number, judged: number) =>
      `${outside} of ${judged === 1 ? 'this one' : `these ${judged}`} ${outside === 1 ? 'is' : 'are'} outside a limit of the order.`,
    plan: {
      accepted: (listed: number, most: number, open: number) =>
        `Of all ${listed}, ${most} may be outside. The plan accepts, whatever the other ${open} show.`,
      refused: (listed: number, most: number, open: number) =>
        `Of all ${listed}, ${most} may be outside. The plan refuses, whatever the other ${open} show.`,
      unfinished: (listed: number, most: number) =>
        `Of all ${listed}, ${most} may be outside. The plan is not decided yet.`
    },
    thickness: (n: number, thinnest: string, thickest: string, mean: string) =>
      `The ${many(n, SLATE)} measured run from ${thinnest} to ${thickest}, ${mean} on average.`,
    finish: (open: readonly { readonly label: string; readonly slates: number }[]) =>
      `To finish it, measure ${AND.format(open.map(({ label, slates }) => `${many(slates, SLATE)} of pallet ${label}`))}.`,
    finishNothing:
      'This list cannot be finished: sorting took its slates. Tell the supplier so, or look at every slate left on those pallets.',
    says: 'Finish the list first. Hole and fix nothing before.',
    hub: (done: string, of: string) => `${done} of ${of} listed slates: not finished yet.`
  },
  interval: range,
  /** A range of slates in a sentence. */
  between: (low: string, high: string, total: string) =>
    low === high ? `${low} of the ${total}` : `${low} to ${high} of the ${total} (95 % confidence)`,
  methods:
    '95 % confidence: of 100 ranges made this way, at least 95 hold the true figure. Ranges of this delivery: exact hypergeometric interval. Ranges of what the supplier makes: Clopper-Pearson interval.',
  glance: 'The three findings in short',
  /** What each finding says in one line. */
  short: {
    outside: (certain: number, asked: number, judged: number, most: number) =>
      `${outOf(certain, asked, judged)}; the plan allows ${most}.`,
    needed: {
      yes: (unsorted: number | undefined) =>
        unsorted === undefined
          ? 'Needed.'
          : `Needed: unsorted, ${jointsOf100(unsorted)} of 100 joints would show.`,
      no: (unsorted: number | undefined) =>
        unsorted === undefined
          ? 'Not needed.'
          : `Not needed: unsorted, ${jointsOf100(unsorted)} of 100 joints would show.`,
      unknown: (unsorted: number | undefined) =>
        unsorted === undefined
          ? 'Not decided: too few slates measured.'
          : `Not decided: unsorted, ${jointsOf100(unsorted)} of 100 joints would show; the order sets no limit.`
    },
    roof: {
      enough: 'Enough',
      'reserve short': 'Short of the reserve',
      'reserve uncertain': 'The reserve may run short',
      short: 'Too few',
      uncertain: 'The roof may run short'
    },
    usable: (state: string, usable: string, wanted: string) =>
      `${state}: ${usable} usable, ${wanted} wanted.`,
    noRoof: (usable: string) => `${usable} usable; no roof is entered.`
  },
  inDeliveryShort: (low: string, high: string, total: string, isLeftOut: boolean) =>
    `In the delivery: ${range(low, high)} of ${total}${isLeftOut ? ', or more: some checks were left out' : ''}.`,
  usableShort: (usable: string, total: string, wanted: string) =>
    `Usable: ${usable} of ${total}${wanted ? `; wanted: ${wanted}` : ''}.`,
  costShort: (amount: string, isNeeded: boolean, isPaceInDoubt: boolean) =>
    `It ${isNeeded ? 'costs' : 'would cost'} ${amount}${isPaceInDoubt ? ' at the pace entered' : ''}.`,
  jointsOf100,
  first: '1. Outside the order',
  outside: (outside: number, judged: number) =>
    `${outside} of ${many(judged, { one: 'sampled slate', other: 'sampled slates' })} ${outside === 1 ? 'is' : 'are'} outside a limit of the order.`,
  /** The second count: those outside only by limits that the order does not confirm, with the first. */
  withAsked: (outside: number, certain: number, judged: number) =>
    `With those asked about, ${outside} of ${judged} ${outside === 1 ? 'is' : 'are'} outside: ${certain === 0 ? 'none' : certain} by a limit of the order, ${outside - certain} only by one that it does not confirm.`,
  /** What the plan says of the second count, by what it says of the first. */
  planWithAsked: {
    accepted: 'With them too the plan accepts.',
    refused: 'Only with them does the plan refuse.',
    unfinished: 'With them it is not decided yet.',
    refusedAnyway: 'The plan refuses without them already.'
  },
  inDelivery: (range: string) => `In the whole delivery: ${range}.`,
  shareAsProcess: (low: string, high: string) =>
    `Of all slates the supplier makes like this: ${low} to ${high}.`,
  planStarting: (share: string) =>
    `The list named no plan, so we take ${share} outside as still acceptable.`,
  states: {
    accepted: 'The plan accepts.',
    refused: 'The plan refuses.',
    unfinished: 'Not decided yet.'
  },
  /** The same in full, with how many the plan allows. */
  byPlan: {
    accepted: (most: number, of: number) => `${most} of ${of} may be outside: the plan accepts.`,
    refused: (most: number, of: number) => `${most} of ${of} may be outside: the plan refuses.`,
    unfinished: (most: number, of: number) => `${most} of ${of} may be outside: not decided yet.`
  },
  toJudge: (n: number) => `${many(n, { one: 'slate', other: 'slates' })} still to be measured.`,
  variables: (mean: string, sd: string, share: string, allowed: string) =>
    `By thickness alone: ${mean} on average, usual variation ${sd} (standard deviation), so about ${share} outside; ${allowed} is allowed.`,
  variablesYes: 'The thickness plan accepts.',
  variablesNo: 'The thickness plan refuses.',
  bandNotAgreed: 'No tolerance of thickness is agreed: thickness is shown, not judged.',
  onConfirmed: (slates: string) => `${slates} by a limit of the order`,
  columns: {
    check: 'Check, and where its limit comes from',
    outside: 'Outside',
    slates: 'In the whole delivery'
  },
  notMeasured: 'not measured',
  outOf: (outside: string, measured: string) => `${outside} of ${measured}`,
  fewMeasured: (measured: number, high: string) =>
    `Few measured, wide range: ${many(measured, SLATE)} with none outside still leave up to ${high} possible.`,
  band: (low: string, high: string, percent: string) =>
    `Thickness ordered: ${low} to ${high} (${percent} either way)`,
  count: (ordered: string, delivered: string) => `Ordered ${ordered}, on the pallets ${delivered}.`,
  countShort: (n: number) => `${many(n, SLATE)} short.`,
  countOver: (n: number) => `${many(n, SLATE)} over.`,
  countRight: 'The count is right.',
  stack: (measured: string, label: string, percent: string) =>
    `Stack of 100: ${measured}; the label says ${label}, ${percent}.`,
  stackStates: {
    pass: (allowed: string) => `Within the ${allowed} either way that the order allows.`,
    fail: (allowed: string) => `Beyond the ${allowed} either way that the order allows.`,
    'no limit set': () => 'The order sets no limit.'
  },
  stackAir:
    'A stack holds air between the slates, so it is not compared with the average of the sample.',
  stackFrom: (pallets: readonly string[]) =>
    `Measured on ${pallets.length === 1 ? 'pallet' : 'pallets'} ${pallets.join(', ')}.`,
  stackFromSeveral: 'Measured on slates of several pallets.',
  stackMissing: 'The label does not say how thick 100 slates pack.',
  stackNotMeasured: 'No stack was measured.',
  second: '2. Sorting',
  needed: {
    yes: 'It needs sorting.',
    no: 'It can be laid without sorting.',
    unknown: 'Not decided: the order does not say how many joints may show.'
  },
  neededTooFew: 'Too few different slates are measured to say whether it needs sorting.',
  inside: (range: string) => `Slates inside the order: ${range}.`,
  spread: (thinnest: string, thickest: string, mean: string, sd: string) =>
    `They run from ${thinnest} to ${thickest}: ${mean} on average, usual variation ${sd} (standard deviation).`,
  evenness: (unsorted: number, sorted: number, piles: string) =>
    `${joints(unsorted)} would show unsorted, ${jointsOf100(sorted)} sorted into ${piles}, if every slate lies on its right pile. A joint shows where a thick slate lies beside a thin one (a kicker).`,
  evennessShort: (unsorted: number, sorted: number, piles: string) =>
    `${joints(unsorted)} would show unsorted, ${jointsOf100(sorted)} in ${piles} if every slate lies on its right pile.`,
  shape,
  sampleAlone: (slates: number) =>
    `These figures are from the ${many(slates, { one: 'slate', other: 'slates' })} of the sample inside the order alone; joints sorted are told on slates held out. Grades and Courses use every slate of the job, so theirs differ.`,
  hours: (interval: string, isNeeded: boolean, pace: string) =>
    `Hours of sorting${isNeeded ? '' : ', if it is sorted'}: ${interval}${pace}.`,
  paceEntered: (n: string) => `, at ${n} an hour as entered`,
  paceMeasured: (n: string) => `, at ${n} an hour as measured on this job`,
  paceBoth: (entered: string, measured: string, hours: string) =>
    `, at ${entered} an hour as entered; measured on this job ${measured} an hour: ${hours} h`,
  hoursUnknown: 'Hours of sorting: not known, no sorting pace is entered.',
  cost: (interval: string, isNeeded: boolean, measured: string) =>
    `Cost of sorting${isNeeded ? '' : ', if it is sorted'}: ${interval}${measured}.`,
  costMeasured: (interval: string) => `; at the measured pace ${interval}`,
  costUnknown: {
    pace: 'Cost of sorting: not known, no sorting pace is entered.',
    rate: 'Cost of sorting: not known, no cost of an hour is entered.',
    both: 'Cost of sorting: not known, neither sorting pace nor cost of an hour is entered.'
  },
  third: '3. This roof',
  noRoof: 'No roof is entered, so nobody knows whether it makes the roof.',
  roof: {
    enough: 'Enough for the roof and its reserve.',
    'reserve short': 'Enough for the roof, not for its reserve.',
    'reserve uncertain': 'Enough for the roof; its reserve may run short.',
    short: 'Too few for the roof.',
    uncertain: 'The sample does not tell: the roof may run short.'
  },
  usable: (range: string) => `Usable slates: ${range}.`,
  usableMeans: 'Usable: sound and of the size ordered, however thick.',
  need: (need: string) => `The roof takes ${need}.`,
  reserve: (reserve: string, percent: string, least: string) =>
    `With ${percent} kept back for breakage and repairs at least ${least} are wanted: ${reserve} of them are the reserve.`,
  reserveElsewhere: (percent: string) =>
    `Courses keeps back ${percent} of all slates on the piles. Where there are more slates, that is more.`,
  missingSlates: (interval: string) => `Missing: ${interval} slates.`,
  outOfMarked: (outside: string, measured: string, judged: string) =>
    `${outside}, marked on ${measured} of ${judged}`,
  markedHint: (checks: readonly string[]) =>
    `Not looked at on every slate that chance picked for it: ${AND.format(checks)}. So no range is given: where the eye picks, nobody knows the share.`,
  fromDrawn: (outside: string, drawn: string) => `${outside} of the ${drawn} drawn for it`,
  leftOut: (checks: readonly string[]) =>
    `Not looked at on every slate: ${AND.format(checks)}. A slate not looked at counts as inside there, so there may be more.`,
  usableUnmarked: (checks: readonly string[]) =>
    `Not looked at on every slate: ${AND.format(checks)}. A slate not looked at counts as sound here, so there may be fewer.`,
  pallets: 'Pallets compared',
  palletColumns: {
    pallet: 'Pallet',
    outside: 'Outside',
    mean: 'Average',
    sd: 'Usual variation',
    chart: 'Against the others'
  },
  position: { inside: 'like the others', below: 'thinner', above: 'thicker' },
  chart: 'Average of each pallet, with its limits',
  chartText: (centre: string, odd: string) =>
    odd
      ? `Average of the sample ${centre}. Outside the limits: pallet ${odd}. Look at it; it need not be outside the order.`
      : `Average of the sample ${centre}. No pallet differs from the others by more than chance explains.`,
  chartBasis: (sd: string) =>
    `Between its limits a pallet’s average may lie by chance alone: three standard errors either side, from a usual variation of ${sd} within a pallet.`,
  palletsHint:
    'From the sample alone. Outside: by a limit of the order, or by one to ask about. Usual variation: how far its slates lie from the average (standard deviation).',
  chartNone: 'Too few slates to compare pallets.',
  histogram: 'Thickness of the sample',
  histogramText: (n: number, thinnest: string, thickest: string) =>
    `${many(n, SLATE)} from ${thinnest} to ${thickest}; lines mark what was ordered.`,
  low: 'least ordered',
  high: 'most ordered',
  nominal: 'nominal',
  apart: 'Not used for the verdict',
  apartNone: 'Every slate of the sample counts.',
  apartSorting: (n: number) =>
    `${many(n, SLATE)} measured while sorting: whoever sorts picks what is measured.`,
  apartReasons: {
    'drawn-late': 'from a list drawn after sorting had begun on the pallet',
    'measured-late': 'measured after sorting had begun on the pallet',
    'list-unknown': 'from a list that is not in this job',
    'not-on-list': 'not on the list',
    'measured-again': 'measured twice: the later reading counts'
  } as Record<string, string>,
  apartLine: (n: number, reason: string) => `${many(n, SLATE)} ${reason}.`
};
