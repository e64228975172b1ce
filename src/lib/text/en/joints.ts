import { pluralizer } from '../plural.ts';

const many = pluralizer('en');

/** Joints that will show, from kickers per 100 joints: never a share below 1 in 100. */
export function joints(kickersPer100: number): string {
  if (kickersPer100 < 0.1) return 'Less than 1 joint in 1,000';
  if (kickersPer100 < 1) return 'Less than 1 joint in 100';
  const rounded = Math.round(kickersPer100);
  return `About ${many(rounded, { one: 'joint', other: 'joints' })} in 100`;
}

/** The same number where "in 100 joints" is said beside it. */
export function jointsOf100(kickersPer100: number): string {
  return kickersPer100 < 1 ? 'less than 1' : `about ${Math.round(kickersPer100)}`;
}
