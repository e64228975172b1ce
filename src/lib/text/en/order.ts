import { pluralizer } from '../plural.ts';

const many = pluralizer('en');

/** Words of the page of what to order. */
export const order = {
  title: 'Order',
  answer: (slates: number, wide: number) =>
    `Order ${many(slates, { one: 'slate', other: 'slates' })}${wide > 0 ? ` and ${many(wide, { one: 'slate-and-a-half', other: 'slate-and-a-halves' })}` : ''}.`,
  item: 'Item',
  size: 'Size',
  takes: 'Roof takes',
  breakage: 'Breakage',
  spares: 'Spares',
  toOrder: 'Order',
  kinds: {
    slate: 'Slates',
    undereave: 'Slates to cut for the undereave',
    'slate-and-a-half': 'Slate-and-a-halves'
  },
  nails: 'Nails',
  battens: 'Battens',
  anyLength: 'length once slates are measured',
  hours: 'Laying',
  hoursOf: (hours: string) => `about ${hours} hours`,
  noPace: 'Enter a pace to see the hours.',
  price: 'Slates cost',
  /** Behind an amount whose currency nobody entered. */
  noCurrency: '(currency?)',
  battensOf: (length: string) => `Battens of ${length}`,
  battenWaste: 'Batten lost in cutting',
  battenLength: 'Battens come in lengths of',
  refusedLength: (least: string, most: string) => `Give a length from ${least} to ${most}.`,
  pace: 'Slates laid an hour, whole gang',
  use: 'Use these',
  refusedWaste: 'Give a share from 0 to 50 %.',
  refusedPace: 'Give 1 to 1,000 slates an hour, or leave it empty.',
  csv: 'Save as CSV',
  spreadsheet: 'CSV with decimal commas',
  send: 'Send the file',
  basis: (breakage: string, spares: string) =>
    `Breakage ${breakage} and spares ${spares} are set on Grades. Batten waste is common practice, no source. Nail lengths follow the thickness of the piles.`
};
