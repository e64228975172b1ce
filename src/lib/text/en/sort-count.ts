import { pluralizer } from '../plural.ts';

const many = pluralizer('en');
const SLATE = { one: 'slate', other: 'slates' };

/** Words of counting the piles: whole or pallet by pallet, by number or by height. */
export const sortCount = {
  title: 'Count piles',
  what: { label: 'What do you count?', piles: 'Whole piles', pallets: 'From each pallet' },
  by: { label: 'What do you type?', slates: 'Slates', height: 'Height' },
  lead: {
    piles: 'How many stand there now? Leave empty what you did not count.',
    pallets: 'From a tally sheet, or counted pallet by pallet. They are added to what is entered.'
  },
  book: (n: string) => `Entered so far: ${n}`,
  unit: { slates: 'slates', mm: 'mm', in: 'in' },
  severalStacks: 'Several stacks: add them up, 420 + 380.',
  about: (slates: string, low: string, high: string) => `About ${slates} slates, ${low} to ${high}`,
  pallet: (label: string) => `Pallet ${label}`,
  cell: (pallet: string, pile: string) => `Pallet ${pallet}, ${pile}`,
  setAside: 'Set aside',
  asideFor: 'Set aside for',
  inCount: {
    label: 'When were these sorted?',
    since: 'Since the piles were counted',
    before: 'Before: they are in that count'
  },
  wide: {
    title: 'Slate-and-a-halves',
    of: (pile: string) => `Slate-and-a-halves, ${pile}`
  },
  stack: {
    title: 'A stack you counted',
    lead: 'Count one stack of a pile and measure it as it stands: heights are then enough.',
    none: 'First count one stack and measure it as it stands. Then heights are enough.',
    pile: 'Pile',
    slates: 'Slates in it',
    slatesWrong: 'Type how many slates you counted, 1 to 1,000.',
    height: 'Its height',
    add: 'Keep this stack',
    line: (pile: string, slates: number, height: string) =>
      `${pile}: ${many(slates, SLATE)}, ${height} high`,
    remove: 'Remove'
  },
  problems: {
    notWhole: 'Type a whole number, or leave it empty.',
    tooMany: 'That is too many for one field. Count again.',
    notAHeight: 'Type the height, for example 640, or 420 + 380.',
    heightZero: 'A stack of 0 holds no slate. Measure it, or leave it empty.',
    tooHigh: 'No stack is that high. Measure it again.',
    noStack: 'Count one stack first, or type the number of slates.',
    noThickness: (pile: string) => `Count one stack of ${pile}, or type the number of slates.`,
    aboveCame: (most: string) =>
      `At most ${most} can stand here: no more came. Count again, or enter the missing pallet.`,
    aboveWithOthers: (sum: string, most: string) =>
      `With the other piles that is ${sum}, and only ${most} came. Count again.`,
    abovePallet: (left: number, label: string) =>
      `Pallet ${label} has ${many(left, { other: 'left' })}: this is more. Count again.`
  },
  nothing: 'Type at least one number.',
  save: 'Save the count',
  saving: 'Saving…',
  savedPiles: (n: number) => `${many(n, { one: 'pile', other: 'piles' })} counted.`,
  savedSlates: (n: number) => `${many(n, SLATE)} saved.`,
  undoAll: { piles: 'Undo this count', slates: 'Undo these slates' }
};
