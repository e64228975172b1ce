import { pluralizer } from '../plural.ts';

const many = pluralizer('en');

/** Words on what each hand is known by, on the grades screen. */
export const hands = {
  title: 'Sorted by eye: how good?',
  noTaps: 'No slate was sorted by eye yet.',
  counts: (taps: string) =>
    `${taps} sorted by eye count in the spread in millimetres: the measured slates of each pile say how thick they are.`,
  leftOut: (taps: string) =>
    `${taps} count on their piles only. Measure a few slates of that sorter, so that they count in millimetres too.`,
  none: 'Measure a few sorted slates when the app asks, so that the counts can be trusted.',
  nothingGauged: 'Nothing is measured yet. Measure a sample, so that the counts can be trusted.',
  working: 'Working out what taps say in millimetres…',
  use: 'Count taps in the spread above',
  noName: 'no name',
  sorter: (name: string) => `Sorter: ${name}`,
  earlier: (moment: string) => `Under the grades of ${moment}:`,
  before: 'Before there were grades:',
  taps: (taps: string, checks: string) =>
    `${taps} sorted by eye, ${checks} of them measured as a check.`,
  table: 'Sorted by eye (rows) and by gauge (columns), slates',
  told: 'By eye',
  agreement: (linear: string, linearError: string, quadratic: string, quadraticError: string) =>
    `Agreement with the gauge beyond chance: ${linear}, give or take ${linearError}, where 1 is full agreement and 0 is what chance alone gives (weighted kappa, linear weights, with its standard error; quadratic weights: ${quadratic}, give or take ${quadraticError}).`,
  noKappa: 'Kappa needs checked slates of more than one pile.',
  bias: (pile: string, hand: string, grade: string) =>
    `Calls ${pile} from ${hand}; the grade starts at ${grade}.`,
  spread: (sd: string, error: string) =>
    `Spread of the hand: it usually errs by ${sd} on one slate, give or take ${error} (standard deviation, with its standard error).`,
  missing: (list: string) => `Not known yet. Spot checks still missing: ${list}.`,
  missingOn: (checks: number, pile: string) => `${checks} on ${pile}`,
  separated:
    'In these checks no thinner slate went on a thicker pile than a thicker one did: the hand keeps to boundaries of its own without a miss, which need not be those of the grades. So its spread is small and cannot be put in millimetres yet. Checks of slates near a boundary would tell.',
  separatedAt: (pile: string, from: string, to: string) =>
    `It calls ${pile} from somewhere between ${from} and ${to}.`,
  notByThickness:
    'In these checks thicker slates did not go to thicker piles more often than by chance, so a tap says nothing in millimetres. Check that piles and gauge were not mixed up.',
  checks: (n: number) => many(n, { one: 'slate', other: 'slates' })
};

/** Words of the gauge study, on the grades screen. */
export const study = {
  title: 'Test the gauge',
  why: 'Ten slates, two or three people, two or three rounds each: shows how far the gauge itself can be off. Number the slates with chalk, mark where to gauge, and do not look at earlier readings.',
  parts: 'Slates',
  sorters: 'People',
  trials: 'Rounds',
  name: (person: number) => `Nickname of person ${person} (may stay empty)`,
  start: 'Begin the study',
  again: 'Begin a new study',
  person: (person: number, name: string) => (name ? name : `Person ${person}`),
  next: (who: string, slate: number, round: number) => `${who}: slate ${slate}, round ${round}`,
  entry: 'Reading',
  take: 'Take',
  back: (last: string) => `Take back ${last}`,
  progress: (done: string, total: string) => `${done} of ${total} readings`,
  refused: {
    empty: 'No number yet. Gauge the slate, or type the thickness.',
    outOfRange: 'A slate is between 1.5 and 40 mm thick. Gauge it again.',
    unreadable: 'This is not one number. Gauge the slate again, for example 6.42.'
  },
  method: 'Method',
  anova: 'Analysis of variance',
  ranges: 'Averages and ranges',
  repeatability: 'Repeatability, SD',
  reproducibility: 'Between people, SD',
  gauge: 'Gauge in all, SD',
  parts2: 'Between slates, SD',
  percent: 'Gauge, share of all spread',
  categories: 'Classes it can tell apart',
  endless: 'no limit seen',
  interaction: (p: string, pooled: boolean) =>
    `People and slates together: p = ${p}; ${pooled ? 'counted with the gauge’s own error' : 'kept as an error of its own'}.`,
  no: {
    'too-few-parts': 'Two slates at least.',
    'too-few-trials': 'Two rounds at least.',
    'no-spread': 'All readings are equal. A gauge that shows no difference at all may be stuck.',
    'no-constants': 'The pencil method has no constants for this size.'
  },
  keep: 'Keep this study',
  notKept: 'Not saved; the readings are still here. Do what the red strip says, then try again.',
  kept: (sd: string) => `Kept study: repeatability SD ${sd}. This job allows for it.`,
  cancel: 'Leave the study'
};
