import { pluralizer } from '../plural.ts';
import { decidedBy } from './decided-by.ts';

const many = pluralizer('en');
type Figures = Record<string, string>;

/** Words of the verdict and of what each answer costs. */
export const verdict = {
  title: 'Verdict',
  names: { take: 'Take', query: 'Query', refuse: 'Refuse' },
  says: {
    take: 'Take the delivery.',
    query: 'Ask the supplier before anything is holed or fixed.',
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
  takerAsks: {
    title: 'Take it, and ask for',
    names: { credit: 'A credit', replacement: 'Replacement of slates that are outside' },
    nothing: 'Nothing ticked: message and claim ask for nothing.'
  },
  takes: 'Taking it lets people hole and fix the slates, which can end your right to claim.',
  rule: 'We refuse only on limits that the order states or you confirmed from it. We query when the plan refuses on other limits, when count, label, tolerance or roof is in doubt, or the sample is unfinished. Else we take it.',
  why: 'Why',
  whyTitle: 'Why, and what would change it?',
  noReason: 'Nothing is against it.',
  noted: (reason: string) => `Note: ${reason}`,
  reasons: {
    'outside-order': (f: Figures) =>
      `${f.outsideForCertain} of ${f.judged} sampled slates are outside a limit of the order; ${f.acceptAtMost} may be.`,
    'outside-order-unconfirmed': (f: Figures) =>
      `${f.outside} of ${f.judged} sampled slates are outside, ${f.outsideForCertain === '0' ? 'none' : f.outsideForCertain} of them by a limit of the order; ${f.acceptAtMost} may be.`,
    'tolerance-not-agreed': () => 'No tolerance of thickness is agreed: ask which one holds.',
    'outside-order-already': (f: Figures) =>
      `${f.outsideForCertain} of the ${f.judged} slates measured so far are outside a limit of the order; of all ${f.listed}, ${f.acceptAtMost} may be. The rest cannot change that.`,
    'list-unfinished': (f: Figures) =>
      `The list is unfinished: ${f.measured} of ${f.places} places measured.`,
    'sample-unfinished': (f: Figures) =>
      `The sample is unfinished: ${f.toJudge} slates to go, ${f.outside} of ${f.judged} outside so far, those to ask about with them.`,
    'thickness-by-variables': (f: Figures) =>
      `Thickness varies too much: about ${f.shareOutside} outside, ${f.allowedShare} allowed.`,
    'count-short': (f: Figures) => `${f.short} slates fewer than ordered.`,
    'count-over': (f: Figures) => `${f.over} slates more than ordered.`,
    'label-missing': () => 'The label does not say how thick 100 slates pack.',
    'stack-not-measured': () => 'No stack was measured against the label.',
    'stack-off-label': (f: Figures) =>
      `100 slates measure ${f.measuredMmPer100}, the label says ${f.labelMmPer100}; the order allows ${f.allowedPercent} either way.`,
    'roof-short': (f: Figures) =>
      `Too few for the roof: ${f.usableLow} to ${f.usableHigh} usable, ${f.needed} needed.`,
    'roof-reserve-short': (f: Figures) =>
      `The reserve of ${f.reserve} is not covered: ${f.usableLow} to ${f.usableHigh} usable, ${f.needed} needed.`,
    'roof-reserve-uncertain': (f: Figures) =>
      `The roof is covered, the reserve may run short: ${f.usableLow} to ${f.usableHigh} usable, ${f.needed} needed and ${f.reserve} kept back.`,
    'roof-uncertain': (f: Figures) =>
      `The roof may run short: ${f.usableLow} to ${f.usableHigh} usable, ${f.needed} needed and ${f.reserve} kept back.`,
    'sorting-needed': (f: Figures) =>
      f.sortedKickersPer100
        ? `It needs sorting: of 100 joints, ${f.unsortedKickersPer100} would show unsorted, ${f.sortedKickersPer100} sorted into ${f.piles}. That is expected from the sample, if every slate lies on its right pile.`
        : 'It needs sorting.',
    'listed-apart': (f: Figures) => `${f.slates} readings are not used for the verdict.`
  } as Record<string, (figures: Figures) => string>,
  /** The same reasons where a finding beside them has the figures. */
  reasonsShort: {
    'roof-short': 'Too few for the roof.',
    'roof-reserve-short': 'Enough for the roof, not for its reserve.',
    'roof-reserve-uncertain': 'The reserve may run short.',
    'roof-uncertain': 'The roof may run short.',
    'sorting-needed': 'It needs sorting.'
  } as Record<string, string>,
  weights: { refuse: 'reason to refuse', query: 'reason to query', note: 'to note' },
  change: 'What would change it',
  changes: {
    'places-measured': (now: string, limit: string) =>
      `Finishing the list: ${now} of ${limit} are measured. Only the whole list counts.`,
    'outside-in-sample-at-most': (now: string, limit: string) =>
      `Slates of the sample outside a limit of the order: ${now} now; the plan accepts up to ${limit}.`,
    'outside-with-asked-at-most': (now: string, limit: string) =>
      `With those to ask about: ${now} now; the plan accepts up to ${limit}.`,
    'thickness-tolerance-percent-at-least': (now: string, limit: string) =>
      `Tolerance: ${now} % now; the plan accepts from ${limit} %.`,
    'thickness-sd-mm-at-most': (now: string, limit: string) =>
      `Usual variation of thickness (standard deviation): ${now} now; the thickness plan accepts up to ${limit}.`,
    'slates-delivered-at-least': (now: string, limit: string) =>
      `Slates delivered: ${now} now; the order asks for ${limit}.`,
    'unusable-in-sample-at-most': (now: string, limit: string) =>
      `Unusable slates in the sample: ${now} now; with up to ${limit} there is enough for the roof.`
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
    thicknesses: 'more measured slates',
    'accepted-kickers': 'joints that may show',
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
    'accepted-kickers': 'the order does not say how many joints may show',
    thicknesses: 'too few slates are measured to tell'
  } as Record<string, string>,
  costWaits: (part: string, figures: readonly string[], isDecided: boolean) =>
    `${part}${isDecided ? '' : ', if needed'}: enter ${figures.join(', ')}`,
  costSoFar: (sum: string) => `${sum} so far`,
  costNotKnown: 'not known yet',
  costNone: 'nothing on top of its price',
  costEnter: 'Enter what is missing in the order',
  /** Behind an amount in place of a currency that the order does not name. */
  noCurrency: '(currency?)',
  currencyMissing:
    'Amounts marked (currency?) are in the currency of the order, which is not entered.',
  costEnterCurrency: 'Enter the currency in the order',
  costEnterRoof: 'Enter the roof',
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
  signHint: (entries: number) =>
    `Your signature holds for the ${many(entries, { one: 'entry', other: 'entries' })} made so far. Later entries do not change it.`,
  signedBy: 'Signed by',
  signedByMissing: 'Write who signs: a name or nickname.',
  note: 'Note',
  choice: 'Your verdict',
  differs: (advised: string) =>
    `The findings alone say: ${advised}. Write why you decide otherwise; message and sheet give your reason.`,
  reason: 'Why you decide otherwise',
  reasonMissing: 'Write why: the findings alone do not say so.',
  signButton: 'Sign',
  signing: 'Signing…',
  signed: (verdict: string, who: string, when: string) => `${verdict}: signed by ${who}, ${when}`,
  signAgain: 'Sign another verdict',
  /** Order or readings are others than those signed. */
  stale: (verdict: string, who: string, when: string) =>
    `Not signed as it stands: order, pallets or readings changed after ${who} signed “${verdict}” on ${when}.`,
  signAfterChange: 'Sign again',
  notePrinted: 'Printed on the claim, under the signature.'
};
