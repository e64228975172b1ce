import { pluralizer } from '../plural.ts';

const many = pluralizer('en');
const SLATE = { one: 'slate', other: 'slates' };

/** Words of the claim that goes to the supplier. */
export const claim = {
  papers: {
    label: 'Which paper',
    claim: 'Claim for the supplier',
    own: 'Sheet for yourself'
  },
  title: 'Claim about a delivery of roofing slates',
  buyer: 'Buyer',
  supplier: 'Supplier',
  order: 'Order',
  product: 'Product',
  deliveryNote: 'Delivery note',
  batches: 'Batches',
  arrived: 'Arrived',
  ordered: 'Ordered',
  delivered: 'Delivered',
  agreed: 'What was agreed',
  columns: { limit: 'Limit', figure: 'Figure', where: 'Where it is written' },
  range: (low: string, high: string) => `${low} to ${high}`,
  most: (mm: string) => `at most ${mm}`,
  below: (mm: string) => `below ${mm}`,
  queriedLimits: (limits: readonly string[]) =>
    `Not confirmed from the order, so asked about and no ground for refusing: ${limits.join('; ')}.`,
  limitWithSource: (name: string, figure: string, source: string) =>
    `${name.toLocaleLowerCase('en')} ${figure} (${source})`,
  sample: 'How the sample was drawn and measured',
  gauge: (gauge: string, checked: string, who: string) =>
    `Measured${gauge ? ` with ${gauge}` : ''}${checked ? `, last checked on ${checked}` : ''}${who ? `, by ${who}` : ''}.`,
  findings: 'What was found',
  certain: (outside: number, judged: number) =>
    `${outside} of ${many(judged, SLATE)} of the sample ${outside === 1 ? 'is' : 'are'} outside a limit of the order:`,
  certainNone: (judged: number) =>
    `None of ${many(judged, SLATE)} of the sample is outside a limit of the order.`,
  queried: 'Asked about, since the limit is not confirmed from the order:',
  fault: (check: string, failed: string, measured: string, limit: string, source: string) =>
    `${check}: ${failed} of ${measured} measured${limit ? ` not ${limit}` : ''}; ${source}.`,
  defect: (defect: string, slates: number, source: string) =>
    `${defect}: ${many(slates, SLATE)}; ${source}.`,
  asked: (name: string) => `${name} (asked)`,
  asks: 'What we ask for',
  ask: { credit: 'a credit', replacement: 'replacement', collection: 'collection of the slates' },
  asksBy: (asks: string, by: string) => `We ask for ${asks}${by ? `, by ${by}` : ''}.`,
  asksNothing: (by: string) => `We ask for your answer${by ? ` by ${by}` : ''}.`,
  hold: 'Until then we hole and fix none of these slates, and keep them as they came.',
  holdLaid: (courses: number) =>
    `${many(courses, { one: 'course was', other: 'courses were' })} laid before; we claim for the slates not laid and keep those as they came.`,
  annex: 'Annex: method, limits and readings',
  outside: 'Outside: why',
  undone: (entries: number) =>
    entries === 0
      ? 'No entry of the job was taken back.'
      : `${many(entries, { one: 'entry', other: 'entries' })} of the job ${entries === 1 ? 'was' : 'were'} taken back; the job file keeps them with the rest.`
};
