import { pluralizer } from '../plural.ts';

const many = pluralizer('en');
const AND = new Intl.ListFormat('en', { type: 'conjunction' });
const SLATE = { one: 'slate', other: 'slates' };

/** Words of the claim that goes to the supplier. */
export const claim = {
  papers: {
    label: 'Which paper',
    claim: 'Claim for the supplier',
    own: 'Sheet for yourself'
  },
  title: 'Claim about a delivery of roofing slates',
  /** At the head of each page. */
  short: 'Claim',
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
  counted: 'Counted and stacked',
  palletsCounted: (pallets: readonly string[], total: string) =>
    `Slates on the pallets: ${pallets.join('; ')}. Together ${total}.`,
  palletCounted: (label: string, slates: string, layers: string) =>
    `${label} ${slates}${layers && ` (${layers})`}`,
  layersOf: (layers: number, perLayer: string) =>
    `${many(layers, { one: 'layer', other: 'layers' })} of up to ${perLayer}`,
  stacksMeasured: (stacks: readonly string[]) => `Stacks measured: ${stacks.join('; ')}.`,
  stackMeasured: (slates: number, total: string, label: string) =>
    `${label ? `pallet ${label}` : 'several pallets'}, ${many(slates, SLATE)}, ${total}`,
  queriedLimits: (limits: readonly string[]) =>
    `Not confirmed from the order, so asked about and no ground for refusing: ${limits.join('; ')}.`,
  limitWithSource: (name: string, figure: string, source: string) =>
    `${name.toLocaleLowerCase('en')} ${figure} (${source})`,
  sample: 'How the sample was drawn and measured',
  planFrom: (basis: readonly string[]) => `The plan comes from: ${basis.join('; ')}.`,
  gauge: (gauge: string, checked: string, who: string) =>
    (gauge || checked || who) &&
    `Measured${gauge ? ` with ${gauge}` : ''}${checked ? `, last checked on ${checked}` : ''}${who ? `, by ${who}` : ''}.`,
  findings: 'What was found',
  certain: (outside: number, judged: number) =>
    `${outside} of ${many(judged, SLATE)} of the sample ${outside === 1 ? 'is' : 'are'} outside a limit of the order:`,
  certainNone: (judged: number) =>
    `None of ${many(judged, SLATE)} of the sample is outside a limit of the order.`,
  queried: 'Asked about, since the limit is not confirmed from the order:',
  queriedWithin: 'All these slates are outside a limit of the order too, and counted above.',
  fault: (check: string, failed: number, measured: number, limit: string, source: string) => {
    const found = limit
      ? `measured ${failed === 1 ? 'fails' : 'fail'}`
      : `tapped ${failed === 1 ? 'is' : 'are'} dull`;
    return `${check}${limit ? ` ${limit}` : ''}: ${failed} of ${many(measured, SLATE)} ${found}; ${source}.`;
  },
  defect: (defect: string, slates: number, source: string) =>
    `${defect}: ${many(slates, SLATE)}; ${source}.`,
  whichTolerance: 'No tolerance of thickness is agreed: tell us which one holds.',
  asked: (name: string) => `${name} (asked)`,
  asks: 'What we ask for',
  ask: { credit: 'a credit', replacement: 'replacement', collection: 'collection of the slates' },
  asksBy: (asks: readonly string[], by: string) =>
    `We ask for ${AND.format(asks)}${by ? `, by ${by}` : ''}.`,
  /** What a buyer who takes the delivery asks for. */
  askOfTaker: { credit: 'a credit', replacement: 'replacement of slates that are outside' },
  takesAndAsks: (asks: readonly string[], by: string) =>
    `We take it and ask for ${AND.format(asks)}${by ? `, by ${by}` : ''}.`,
  asksNothing: (by: string) => `We ask for your answer${by ? ` by ${by}` : ''}.`,
  hold: 'Until then we hole and fix none of these slates, and keep them as they came.',
  holdLaid: (courses: number) =>
    `${many(courses, { one: 'course was', other: 'courses were' })} laid before; we claim for the slates not laid and keep those as they came.`,
  annex: 'Annex: limits, readings and photos',
  outside: 'Outside: why',
  undone: {
    title: 'Entries taken back',
    none: 'No entry about the delivery was taken back.',
    others: (entries: number) =>
      `${many(entries, { one: 'other entry', other: 'other entries' })} of the job ${entries === 1 ? 'was' : 'were'} taken back too. The job file keeps them all.`
  },
  undoneLine: (when: string, what: string) => `${when}: ${what}.`
};
