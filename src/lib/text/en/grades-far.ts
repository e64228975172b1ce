import { pluralizer } from '../plural.ts';

const many = pluralizer('en');
const READING = { one: 'reading', other: 'readings' };

/** Readings far from all others, which look like slips. */
export const far = {
  one: (reading: string, pallet: string) =>
    `${reading} on pallet ${pallet} is far from all the others.`,
  several: (n: number, worst: string, pallet: string) =>
    `${many(n, READING)} are far from all the others, first ${worst} on pallet ${pallet}.`,
  leaveOut: 'Leave it out',
  leaveWorstOut: (worst: string) => `Leave ${worst} out`,
  leftOut: (reading: string, pallet: string) => `${reading} on pallet ${pallet} is left out.`,
  ofSample: 'It was measured for the delivery: look there',
  failed: 'Not saved. Try again.'
};
