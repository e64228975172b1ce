import { pluralizer } from '../plural.ts';

const many = pluralizer('en');
const WAITS = { one: 'reading waits', other: 'readings wait' };

/** Readings that Sort asks about: they count nowhere before somebody answers. */
export const waiting = {
  here: (n: number) =>
    `${many(n, WAITS)} for an answer on Sort and ${n === 1 ? 'counts' : 'count'} nowhere yet.`,
  elsewhere: (n: number) =>
    `${many(n, WAITS)} for an answer on the device that took ${n === 1 ? 'it and counts' : 'them and count'} nowhere yet.`,
  toSort: 'Answer on Sort'
};
