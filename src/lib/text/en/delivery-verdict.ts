import { decidedBy } from './decided-by.ts';

/** Words of the verdict and of what each answer costs. */
export const verdict = {
  title: 'Verdict',
  names: { take: 'Take', query: 'Query', refuse: 'Refuse' },
  says: {
    take: 'Take the delivery.',
    query: 'Query the delivery with the supplier before anything is holed or fixed.',
    refuse: 'Refuse the delivery.'
  },
  byFindings: {
    take: 'By the findings alone this delivery would be taken',
    query: 'By the findings alone this delivery would be queried',
    refuse: 'By the findings alone this delivery would be refused'
  },
  byBuyer: {
    take: 'the buyer takes it',
    query: 'the buyer queries it',
    refuse: 'the buyer refuses it'
  },
  decided: (byFindings: string, byBuyer: string, reason: string) =>
    `${byFindings}; ${byBuyer}${reason ? `, because: ${reason}` : '.'}`,
  decidedBy,
  findingsAlone: (verdict: string) => `The findings alone say: ${verdict}.`,
  whyFindings: 'Why the findings say so',
  takes:
    'Taking it says that it may be holed and fixed, which can end the right to claim. The warning not to hole or fix goes.',
  rule: 'The rule is ours: refuse when the plan refuses on limits that do not rest on memory; query when count, label, roof or a remembered limit is in doubt or the sample is unfinished; else take.',
  why: 'Why',
  noReason: 'Nothing speaks against it.',
  reasons: {
    'outside-order': (f: Record<string, string>) =>
      `${f.outsideForCertain} of ${f.judged} sampled slates are outside the order; at most ${f.acceptAtMost} are accepted.`,
    'outside-order-by-memory': (f: Record<string, string>) =>
      `${f.outside} of ${f.judged} are outside by a tolerance from memory; at most ${f.acceptAtMost} are accepted. Check the order.`,
    'outside-order-already': (f: Record<string, string>) =>
      `${f.outsideForCertain} of the ${f.judged} slates measured so far are outside the order; at most ${f.acceptAtMost} of all ${f.listed} are accepted. The plan is decided, whatever the rest would show.`,
    'list-unfinished': (f: Record<string, string>) =>
      `The list is unfinished: ${f.measured} of ${f.places} places measured.`,
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
        ? `It needs sorting: foretold from the sample, ${f.unsortedKickersPer100} kickers per 100 joints as it comes, ${f.sortedKickersPer100} sorted into ${f.piles} if every slate lies on its right pile.`
        : 'It needs sorting.',
    'listed-apart': (f: Record<string, string>) =>
      `${f.slates} readings are listed apart and judge nothing.`
  } as Record<string, (figures: Record<string, string>) => string>,
  weights: { refuse: 'speaks for refusing', query: 'speaks for a query', note: 'to note' },
  change: 'What would change it',
  changes: {
    'places-measured': (now: string, limit: string) =>
      `Finishing the sample: ${now} of ${limit} are measured. Only the whole of it tells.`,
    'outside-in-sample-at-most': (now: string, limit: string) =>
      `Slates outside in the sample: ${now} now; the plan accepts up to ${limit}.`,
    'thickness-tolerance-percent-at-least': (now: string, limit: string) =>
      `Tolerance: ${now} % now; the plan accepts from ${limit} %.`,
    'thickness-sd-mm-at-most': (now: string, limit: string) =>
      `Spread of thickness (standard deviation): ${now} now; the variables plan accepts up to ${limit}.`,
    'slates-delivered-at-least': (now: string, limit: string) =>
      `Slates delivered: ${now} now; the order asks for ${limit}.`,
    'unusable-in-sample-at-most': (now: string, limit: string) =>
      `Unusable slates in the sample: ${now} now; the roof is sure with up to ${limit}.`
  } as Record<string, (now: string, limit: string) => string>,
  costs: 'What each answer costs',
  costParts: {
    sorting: 'sorting',
    shortage: 'slates to make up',
    credit: 'credit',
    delay: 'delay',
    return: 'sending back'
  } as Record<string, string>,
  /** Figures that a cost waits for. */
  costFigures: {
    thicknesses: 'more gauged slates',
    'accepted-kickers': 'accepted kickers',
    pace: 'slates sorted in an hour',
    rate: 'cost of an hour’s sorting',
    roof: 'the roof',
    price: 'price per thousand',
    credit: 'the credit offered',
    'query-days': 'days a query takes',
    'replacement-days': 'days until a replacement',
    'delay-cost': 'cost of a day’s delay',
    'return-cost': 'its cost'
  } as Record<string, string>,
  costPart: (part: string, amount: string) => `${part} ${amount}`,
  costLess: (part: string, amount: string) => `less ${part} ${amount}`,
  costIfNeeded: (part: string, amount: string, why: string) =>
    `${part} ${amount} if it is needed (${why})`,
  costUndecided: {
    'accepted-kickers': 'the order names no accepted kickers',
    thicknesses: 'too few slates are gauged to foretell it'
  } as Record<string, string>,
  costWaits: (part: string, figures: readonly string[], isDecided: boolean) =>
    `${part}${isDecided ? '' : ', if needed'}: enter ${figures.join(', ')}`,
  costSoFar: (sum: string) => `${sum} so far`,
  costNotKnown: 'not known yet',
  costNone: 'nothing on top of its price',
  costEnter: 'Enter what is missing: Order',
  /** Behind an amount in place of a currency that the order does not name. */
  noCurrency: '(currency?)',
  currencyMissing:
    'Amounts marked (currency?) are in the currency of the order, which is not entered.',
  costEnterCurrency: 'Enter the currency: Order',
  costEnterRoof: 'Enter what is missing: Roof',
  /** The pace that sorting is priced at; `measured` where it differs from the entered one. */
  costPace: {
    entered: (n: string) => `Sorting is priced at the pace entered: ${n} slates an hour.`,
    measured: (n: string) =>
      `Sorting is priced at the pace measured on this job: ${n} slates an hour.`,
    both: (entered: string, measured: string) =>
      `Sorting is priced at the pace entered: ${entered} slates an hour; measured on this job: ${measured}.`
  },
  costHint: 'The price of the delivery itself is in none of them.',
  sign: 'Sign the verdict',
  signHint:
    'Signing keeps the verdict with the fingerprint of every entry made so far. Later entries do not change it.',
  signedBy: 'Signed by',
  signedByMissing: 'Write who signs: a name or nickname.',
  note: 'Note',
  choice: 'Your verdict',
  differs: (advised: string) =>
    `The findings alone say: ${advised}. Write why you decide otherwise: the message to the supplier and the sheet give it as your reason.`,
  reason: 'Why you decide otherwise',
  reasonMissing: 'Write why: the findings alone do not say so.',
  signButton: 'Sign',
  signing: 'Working the fingerprint out…',
  signed: (verdict: string, who: string, when: string) => `${verdict}: signed by ${who}, ${when}`,
  signAgain: 'Sign another verdict'
};
