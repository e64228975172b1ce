import { pluralizer } from '../plural.ts';

const many = pluralizer('en');

const wides = (n: number): string =>
  many(n, { one: 'slate-and-a-half', other: 'slate-and-a-halves' });
const slatesAndWides = (slates: number, wide: number): string =>
  `${many(slates, { one: 'slate', other: 'slates' })}${wide > 0 ? ` and ${wides(wide)}` : ''}`;

/** Words of the page of what to order. */
export const order = {
  title: 'Order',
  answer: (slates: number, wide: number) => `Order ${slatesAndWides(slates, wide)}.`,
  /** Of a job with a stock. */
  answerWith: (slates: number, wide: number, there: number) =>
    slates + wide === 0
      ? `No slate to order: the ${there.toLocaleString('en')} there are enough.`
      : slates === 0
        ? `Order ${wides(wide)}. The ${there.toLocaleString('en')} slates there are enough.`
        : `Order ${slatesAndWides(slates, wide)}. ${there.toLocaleString('en')} slates are there.`,
  item: 'Item',
  size: 'Size',
  takes: 'Roof takes',
  breakage: 'Breakage',
  spares: 'Spares',
  sparesKept: 'Spares kept for repairs',
  needed: 'Needed',
  there: 'There',
  toOrder: 'Order',
  kinds: {
    slate: 'Slates',
    undereave: 'Slates to cut for the undereave',
    'slate-and-a-half': 'Slate-and-a-halves'
  },
  undereaveReady: 'Undereave slates, ready cut',
  nails: 'Nails',
  battens: 'Battens',
  anyLength: 'length once slates are measured',
  lengthByPlan: 'lengths once a plan is in use',
  hours: 'Laying',
  hoursOf: (hours: string) => `about ${hours} hours`,
  noPace: 'enter a pace below to see the hours.',
  price: 'Slates cost',
  /** Behind an amount whose currency nobody entered. */
  noCurrency: '(currency?)',
  battensOf: (length: string) => `Battens of ${length}`,
  settings: 'Breakage, battens and pace',
  battenWaste: 'Batten lost in cutting',
  battenLength: 'Battens come in lengths of',
  refusedLength: (least: string, most: string) => `Give a length from ${least} to ${most}.`,
  pace: 'Slates laid an hour, whole gang',
  use: 'Use these',
  refusedShare: (most: number) => `Give a share from 0 to ${most} %.`,
  refusedPace: 'Give 1 to 1,000 slates an hour, or leave it empty.',
  csv: 'Save as CSV',
  spreadsheet: 'CSV with decimal commas',
  send: 'Send the file',
  basisThere:
    'There: slates of all pallets and piles that will do, laid ones too. Slates count for the courses first, what is left over for the undereave.',
  basis: (breakage: string, spares: string) =>
    `Breakage ${breakage} and spares ${spares} of the slates that come, as every plan keeps them back. Batten waste is common practice, no source. Nail lengths follow the thickness of the piles.`
};
