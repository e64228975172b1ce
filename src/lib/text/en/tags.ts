import { pluralizer } from '../plural.ts';

const many = pluralizer('en');
const SLATE = { one: 'slate', other: 'slates' };

/** Words of the tags, the tally sheet and the card: sorting without a phone. */
export const tags = {
  title: 'Without a phone',
  lead: 'Print these, sort with pencil and card, and type the strokes back in.',
  toSort: 'Sort',
  sheets: {
    label: 'What to print',
    piles: 'Pile tags',
    pallets: 'Pallet tags',
    tally: 'Tally sheet',
    card: 'Go/no-go card'
  },
  print: 'Print this sheet',
  perPage: (tags: number, perPage: number, pages: number) =>
    `${many(perPage, { one: 'tag', other: 'tags' })} to a page: ${many(tags, { one: 'tag takes', other: 'tags take' })} ${many(pages, { one: 'page', other: 'pages' })}.`,
  noGrades: 'Set the grades first: tags and card need the limits of the piles.',
  toGrades: 'Set the grades',
  noPallets: 'Enter the pallets first, on the Sort screen.',
  thickest: (limit: string) => `${limit} and thicker`,
  between: (low: string, high: string) => `from ${low} to under ${high}`,
  thinnest: (limit: string) => `under ${limit}`,
  pallet: 'Pallet',
  slates: (n: number) => many(n, SLATE),
  slatesUnknown: 'Slates: ________',
  drawnFrom: 'Take from several pallets together.',
  date: 'Date',
  sorter: 'Sorter (may stay empty)',
  strokes:
    'One stroke for each slate: four upright, the fifth across them. One gate of five to a box.',
  palletsOn: (labels: readonly string[]) =>
    `${labels.length === 1 ? 'Pallet' : 'Pallets'} ${labels.join(', ')}`,
  boxes: (pile: string, strokes: number) =>
    `${pile}: boxes for ${many(strokes, { one: 'stroke', other: 'strokes' })}`,
  setAside: 'Set aside',
  sum: 'Sum',
  cardTitle: 'Go/no-go card',
  cardHow:
    'Print at 100 %. Measure the check line: it must be 100 mm. Glue the card to stiff plastic and cut the slots out along the inside of their lines. Try each slot with a gauge before use.',
  cardCare:
    'Cut away from yourself, on a firm board, cutting-resistant glove on the other hand. Local safety rules apply.',
  checkLine: 'Check line: 100 mm',
  stops: (limit: string, pile: string) => `Does not enter ${limit}: ${pile}`,
  enters: (limit: string, next: string, pile: string) => `Enters ${limit}, not ${next}: ${pile}`,
  entersLast: (limit: string, pile: string) => `Enters ${limit}: ${pile}`,
  tailThird: 'Measure in the tail third, away from the dressed edge.',
  backTitle: 'Type the tally sheet in',
  backHint: 'On Sort, under Count piles: pallet by pallet, what was set aside included.'
};
