import { pluralizer } from '../plural.ts';

const many = pluralizer('en');
const number = (value: number) => value.toLocaleString('en', { maximumFractionDigits: 1 });

/** What the whole roof takes. */
export const totals = {
  title: 'Whole roof',
  slope: 'Slope',
  courses: 'Courses',
  area: (unit: string) => `Area, ${unit}`,
  slates: 'Slates',
  full: 'Full',
  cut: 'Cut',
  slateAndAHalf: 'Slate-and-a-half',
  undereave: 'Undereave',
  battens: (unit: string) => `Battens, ${unit}`,
  nails: 'Nails',
  all: 'Whole roof',
  incomplete: 'Fix the marked slope first; then the whole roof is added up.',
  note: 'Breakage, spares and batten waste come on top. Slates: full and cut pieces, one slate for each. Undereave pieces come from slates or from what was set aside.',
  sheet: 'Setting-out sheet'
};

/** Nails and mass. */
export const materials = {
  title: 'Nails and mass by pile',
  lead: 'Nails twice the thickness and 20 to 25 mm long, two to a piece. Mass is density times measured thickness.',
  none: 'Measure some slates first: nail lengths and masses need thickness.',
  pile: 'Pile',
  all: 'All slates',
  thickness: 'Mean thickness',
  nailLength: 'Nail length',
  nailLengthRange: (sold: string, least: string, most: string) => `${sold} (${least} to ${most})`,
  nails: 'Nails by the plan',
  noPlan: 'once planned',
  mass: 'Mass laid',
  massUnit: (mass: string) => `${mass} kg/m²`,
  carried: 'One person carries',
  stack: 'A stack for the hoist',
  stackOf: (slates: number, height: string, mass: string) =>
    `${many(slates, { one: 'slate', other: 'slates' })}, ${height}, ${mass} kg`,
  undereaveNails: (nails: number) =>
    `The undereave row takes ${number(nails)} nails more. They are in the whole roof, and in no pile of the plan.`,
  source: 'Nail length from a trade manual. Battens and nails are not in the mass.'
};

/** The slates under the first course. */
export const undereave = {
  title: 'Undereave slates',
  wants: (n: number, wide: number) =>
    wide > 0
      ? `The roof takes ${many(n, { one: 'undereave slate', other: 'undereave slates' })} and ${number(wide)} of the width of a slate-and-a-half.`
      : `The roof takes ${many(n, { one: 'undereave slate', other: 'undereave slates' })}.`,
  setAside: 'Of the slates set aside:',
  fromStock: (served: number, slates: number, wide: number) =>
    served === 0
      ? 'None of them is marked for the undereave and fit for it. All come from stock, on top of what the courses take.'
      : `At most ${number(served)} of them, marked for the undereave, can serve. ${restFromStock(slates, wide)}`,
  noneSetAside:
    'No slate is set aside yet. Only the tail edge of an undereave slate shows, so slates set aside for colour or size may do.',
  reasons: {
    broken: 'broken',
    dullRing: 'dull ring',
    twisted: 'twisted or bowed',
    tapered: 'tapered',
    wrongSize: 'wrong size',
    inclusion: 'inclusion',
    colour: 'colour',
    other: 'other reason'
  },
  line: (n: number, reason: string) => `${many(n, { one: 'slate', other: 'slates' })}, ${reason}`,
  yes: 'will do',
  because: {
    unsound: 'will not do: a dull ring is a hidden crack',
    bends: 'will not do: a twisted slate lifts the first course',
    'too-short': 'will not do: too short',
    'too-narrow': 'will not do: too narrow',
    measure: 'will do where the sound part measures at least the pattern',
    inclusion: 'look: will do where the inclusion is not at the tail and does not rust through',
    thickness: 'look: will do where the tail is no thicker than its neighbours',
    unknown: 'look at each'
  }
};

function restFromStock(slates: number, wide: number): string {
  const wides = many(wide, { one: 'slate-and-a-half', other: 'slate-and-a-halves' });
  const plain = many(slates, { one: 'slate', other: 'slates' });
  const parts = [...(slates > 0 ? [plain] : []), ...(wide > 0 ? [wides] : [])];
  return parts.length > 0
    ? `The rest comes from stock, on top of what the courses take: ${parts.join(' and ')}.`
    : 'No more is needed from stock.';
}
