import { pluralizer } from '../plural.ts';
import { common } from './common.ts';

const many = pluralizer('en');

export const wides = (n: number): string =>
  many(n, { one: 'slate-and-a-half', other: 'slate-and-a-halves' });

/** Slates and slate-and-a-halves together, leaving out what is none. */
export function pieces(slates: number, wide: number): string {
  if (wide === 0) return common.slates(slates);
  if (slates === 0) return wides(wide);
  return `${common.slates(slates)} and ${wides(wide)}`;
}
