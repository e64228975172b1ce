import { pluralizer } from '../plural.ts';
import { common } from './common.ts';

const many = pluralizer('en');

/** What is told of the shape of slates, apart from how thick they are. */
export const shape = {
  taperMeasured: (sd: string, slates: number) =>
    `Taper from left to right: ${sd}, from ${common.slates(slates)} measured on both sides. It is allowed for.`,
  taperAssumed: (sd: string, slates: number, least: number) =>
    `Taper from left to right is taken as ${sd}, our figure: ${slates} of at least ${many(least, { one: 'slate', other: 'slates' })} measured on both sides.`,
  twist: (rocking: number, tried: number, low: string, high: string, step: string) =>
    `${rocking} of ${common.slates(tried)} tried rock by over ${step} on a flat board: ${low} to ${high} of all (95 % sure).`,
  looksTwisted: (twisted: number, lookedOver: number) =>
    `${twisted} of ${common.slates(lookedOver)} looked over and not tried ${twisted === 1 ? 'is' : 'are'} marked twisted or bowed.`,
  aside: (slates: number) => `${common.slates(slates)} set aside as twisted or bowed.`,
  noCure: 'Sorting by thickness does not cure twist.'
};
