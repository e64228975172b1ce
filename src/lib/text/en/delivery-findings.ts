import { pluralizer } from '../plural.ts';

const many = pluralizer('en');
const SLATE = { one: 'slate', other: 'slates' };

/** Words of the findings and the verdict. */
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
  interval: (low: string, high: string) => (low === high ? low : `${low} to ${high}`),
  level: 'Intervals hold with 95 % confidence.',
  first: '1. Outside what was ordered',
  outside: (outside: number, judged: number) =>
    `${outside} of ${many(judged, { one: 'sampled slate', other: 'sampled slates' })} outside the order.`,
  inDelivery: (interval: string, total: string) => `In the delivery: ${interval} of ${total}.`,
  shareAsProcess: (interval: string) => `As a share of what the supplier makes: ${interval}.`,
  plan: (n: number, most: number) =>
    `Plan: ${many(n, SLATE)}, accepted with at most ${most} outside.`,
  planStarting: (share: string) =>
    `The list named no plan: a delivery with ${share} outside is taken to be acceptable, ours as a starting value.`,
  states: {
    accepted: 'The plan accepts.',
    refused: 'The plan refuses.',
    unfinished: 'Not decided yet.'
  },
  toJudge: (n: number) => `${many(n, { one: 'slate', other: 'slates' })} still to be measured.`,
  variables: (mean: string, sd: string, share: string, allowed: string) =>
    `By the spread of thickness: mean ${mean}, SD ${sd}, estimated ${share} outside; ${allowed} is allowed.`,
  variablesYes: 'The variables plan accepts.',
  variablesNo: 'The variables plan refuses.',
  columns: {
    check: 'Check',
    measured: 'Measured',
    outside: 'Outside',
    share: 'Share of the delivery',
    slates: 'In the delivery'
  },
  notMeasured: 'not measured',
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
  stackMissing: 'The label with the packed thickness of 100 slates is missing.',
  stackNotMeasured: 'No stack was measured.',
  second: '2. Inside the order, but needs sorting',
  needed: {
    yes: 'Sorting is needed.',
    no: 'It can be laid without sorting.',
    unknown: 'Say in the order how many kickers you accept, to see whether sorting is needed.'
  },
  inside: (interval: string) => `Slates inside the order: ${interval}.`,
  spread: (thinnest: string, thickest: string, mean: string, sd: string) =>
    `Those inside run from ${thinnest} to ${thickest}, mean ${mean}, SD ${sd}.`,
  evenness: (unsorted: string, sorted: string, piles: string) =>
    `Kickers per 100 joints, foretold from the sample: ${unsorted} unsorted, ${sorted} with ${piles}.`,
  hours: (interval: string) => `Hours of sorting: ${interval}.`,
  hoursUnknown: 'Enter a sorting pace in the order to see the hours.',
  cost: (interval: string) => `Cost of sorting: ${interval}.`,
  costUnknown: 'Enter the cost of an hour to see the cost.',
  third: '3. Fit for this roof',
  noRoof: 'Enter the roof to see whether the delivery makes it.',
  roof: {
    enough: 'Enough for the roof and its reserve.',
    'reserve short': 'Enough for the roof, not for its reserve.',
    short: 'Too few for the roof.',
    uncertain: 'The sample does not tell: the roof may run short.'
  },
  usable: (interval: string) => `Usable slates: ${interval}.`,
  need: (need: string, reserve: string) => `The roof takes ${need}, and a reserve of ${reserve}.`,
  missingSlates: (interval: string) => `Missing: ${interval}.`,
  pallets: 'Pallets compared',
  palletColumns: {
    pallet: 'Pallet',
    judged: 'Sampled',
    outside: 'Outside',
    mean: 'Mean',
    sd: 'SD',
    chart: 'Against the others'
  },
  position: { inside: 'like the others', below: 'thinner', above: 'thicker' },
  chart: 'Pallet means with limits',
  chartText: (centre: string, odd: string) =>
    odd
      ? `Mean of all ${centre}. Outside the limits: pallet ${odd}. Look at it; it need not be outside the order.`
      : `Mean of all ${centre}. No pallet differs from the others by more than chance explains.`,
  chartBasis: (sd: string) =>
    `Limits: three standard errors either side, from the spread within pallets (SD ${sd}).`,
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

/** Words of the findings and the verdict. */
export const verdict = {
  title: 'Verdict',
  names: { take: 'Take', query: 'Query', refuse: 'Refuse' },
  says: {
    take: 'Take the delivery.',
    query: 'Query the delivery with the supplier before anything is holed or fixed.',
    refuse: 'Refuse the delivery.'
  },
  rule: 'The rule is ours: refuse when the plan refuses on limits that do not rest on memory; query when count, label, roof or a remembered limit is in doubt or the sample is unfinished; else take.',
  why: 'Why',
  noReason: 'Nothing speaks against it.',
  reasons: {
    'outside-order': (f: Record<string, string>) =>
      `${f.outsideForCertain} of ${f.judged} sampled slates are outside the order; at most ${f.acceptAtMost} are accepted.`,
    'outside-order-by-memory': (f: Record<string, string>) =>
      `${f.outside} of ${f.judged} are outside by a tolerance from memory; at most ${f.acceptAtMost} are accepted. Check the order.`,
    'sample-unfinished': (f: Record<string, string>) =>
      `The sample is unfinished: ${f.toJudge} slates to go, ${f.outside} of ${f.judged} outside so far.`,
    'thickness-by-variables': (f: Record<string, string>) =>
      `Thickness spreads too far: an estimated ${f.shareOutside} outside, ${f.allowedShare} allowed.`,
    'count-short': (f: Record<string, string>) => `${f.short} slates short of the order.`,
    'count-over': (f: Record<string, string>) => `${f.over} slates more than ordered.`,
    'label-missing': () => 'The label does not give the packed thickness of 100 slates.',
    'stack-not-measured': () => 'No stack was measured against the label.',
    'stack-off-label': (f: Record<string, string>) =>
      `100 slates measure ${f.measuredMmPer100}, the label says ${f.labelMmPer100}.`,
    'roof-short': (f: Record<string, string>) =>
      `Between ${f.usableLow} and ${f.usableHigh} usable slates; the roof takes ${f.needed}.`,
    'roof-reserve-short': (f: Record<string, string>) =>
      `The reserve of ${f.reserve} is not covered: ${f.usableLow} to ${f.usableHigh} usable, ${f.needed} needed.`,
    'roof-uncertain': (f: Record<string, string>) =>
      `The roof may run short: ${f.usableLow} to ${f.usableHigh} usable, ${f.needed} needed and ${f.reserve} kept back.`,
    'sorting-needed': (f: Record<string, string>) =>
      f.sortedKickersPer100
        ? `It needs sorting: ${f.unsortedKickersPer100} kickers per 100 joints as it comes, ${f.sortedKickersPer100} sorted.`
        : 'It needs sorting.',
    'listed-apart': (f: Record<string, string>) =>
      `${f.slates} readings are listed apart and judge nothing.`
  } as Record<string, (figures: Record<string, string>) => string>,
  weights: { refuse: 'speaks for refusing', query: 'speaks for a query', note: 'to note' },
  change: 'What would change it',
  changes: {
    'outside-in-sample-at-most': (now: string, limit: string) =>
      `Slates outside in the sample: ${now} now; the plan accepts up to ${limit}.`,
    'thickness-tolerance-percent-at-least': (now: string, limit: string) =>
      `Tolerance: ${now} % now; the plan accepts from ${limit} %.`,
    'thickness-sd-mm-at-most': (now: string, limit: string) =>
      `Spread: SD ${now} now; the variables plan accepts up to ${limit}.`,
    'slates-delivered-at-least': (now: string, limit: string) =>
      `Slates delivered: ${now} now; the order asks for ${limit}.`,
    'unusable-in-sample-at-most': (now: string, limit: string) =>
      `Unusable slates in the sample: ${now} now; the roof is sure with up to ${limit}.`
  } as Record<string, (now: string, limit: string) => string>,
  costs: 'What each answer costs',
  costColumns: { choice: 'Answer', cost: 'Cost', parts: 'Made up of' },
  costParts: {
    sorting: 'sorting',
    shortage: 'slates to make up',
    credit: 'credit',
    delay: 'delay',
    return: 'sending back'
  } as Record<string, string>,
  costUnknown: (parts: string) => `not entered: ${parts}`,
  costNothing: 'nothing entered',
  costHint: 'The price of the delivery itself is in none of them.',
  sign: 'Sign the verdict',
  signHint:
    'Signing keeps the verdict with the fingerprint of every entry made so far. Later entries do not change it.',
  signedBy: 'Signed by',
  signedByMissing: 'Write who signs: a name or nickname.',
  note: 'Note',
  choice: 'Your verdict',
  differs: (advised: string) => `The figures say: ${advised}. Say in the note why you differ.`,
  signButton: 'Sign',
  signing: 'Working the fingerprint out…',
  signed: (verdict: string, who: string, when: string) => `${verdict}: signed by ${who}, ${when}`,
  signAgain: 'Sign another verdict'
};
