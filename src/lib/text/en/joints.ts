import { pluralizer } from '../plural.ts';

const many = pluralizer('en');

/** Joints that will show, from kickers per 100 joints: never a share below 1 in 1,000. */
export function jointsThatShow(kickersPer100: number): string {
  if (kickersPer100 < 0.1) return 'Less than 1 joint in 1,000';
  if (kickersPer100 < 1) return 'Less than 1 joint in 100';
  const rounded = Math.round(kickersPer100);
  return `About ${many(rounded, { one: 'joint', other: 'joints' })} in 100`;
}
