import { pluralizer } from '../plural.ts';
import { common } from './common.ts';
import { gone } from './gone.ts';
import { waiting } from './waiting.ts';

const many = pluralizer('en');
const count = (n: number): string => n.toLocaleString('en');

/** Words of what a job's page shows one tap deeper: its piles and its counts. */
export const jobFolds = {
  waiting,
  /** A delivery that was refused, in place of the next step. */
  refused: {
    title: 'Refused: do not sort, hole or fix',
    why: 'Keep the slates as they came until the supplier answers.',
    claim: 'Open the claim'
  },
  facts: {
    stock: 'Stock',
    sample: 'Sample list',
    beforeGrades: 'Sample slates measured',
    sorted: 'Sorted',
    gauged: 'of these measured',
    tapped: 'of these sorted by eye',
    counted: 'of these found when the piles were counted',
    setAside: 'of these set aside',
    thickness: 'Thickness measured'
  },
  onPile: (n: number) => `${count(n)} of them piled`,
  pilesLeft: 'What is left of each pile now, laid and lost slates taken off, as on Lay.',
  pilesBefore: (laid: number) =>
    `The piles as they were sorted: ${laid > 0 ? `what ${common.courses(laid)} took` : 'what was lost'} since is not taken off, because the slate or the roof is not entered in full.`,
  leftOfPile: (left: number, standing: number) =>
    `${common.slates(left)} left, ${count(standing)} of them piled`,
  laidOfPile: (n: number) => `${count(n)} laid`,
  lostOfPile: (n: number) => `${count(n)} lost`,
  noPallets: 'No pallets entered',
  uncounted: (n: number, all: number) =>
    n === all ? 'slates not counted' : `slates not counted on ${n} of them`,
  sampleStays: (slates: string) => `${slates} measured and put back on their pallets`,
  noSample: 'None yet',
  noneSorted: 'None yet',
  noReadings: 'No readings yet',
  usable: (usable: string, delivered: string, others: readonly string[]) =>
    `${usable} usable of ${delivered}: the others are ${others.join('; ')}.`,
  usableAside: 'set aside, or are expected to be',
  gone,
  spread: (readings: number, mean: string, low: string, high: string) =>
    `${many(readings, { one: 'reading averages', other: 'readings average' })} ${mean}, from ${low} to ${high}`
};
