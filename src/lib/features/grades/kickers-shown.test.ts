import { describe, expect, it } from 'vitest';
import { grades } from '$lib/text/en/grades.ts';
import { kickersShown } from './kickers-shown.ts';

describe('kickersShown', () => {
  it('tells the figure from slates left out where readings are few', () => {
    const known = { inSample: 0.12, heldOut: 1.9, isFlattered: true } as const;
    expect(kickersShown(known)).toEqual({ per100: 1.9, atBest: false });
    expect(kickersShown({ ...known, isFlattered: false })).toEqual({ per100: 0.12, atBest: false });
  });

  it('tells nothing while that is tried, and a figure at best where it cannot be', () => {
    const known = { inSample: 0, isFlattered: true };
    expect(kickersShown({ ...known, heldOut: 'trying' })).toBeUndefined();
    expect(kickersShown({ ...known, heldOut: 'none' })).toEqual({ per100: 0, atBest: true });
  });

  it('tells next to none as at best', () => {
    const known = { inSample: 0, heldOut: 0.05, isFlattered: true };
    expect(kickersShown(known)).toEqual({ per100: 0.05, atBest: true });
  });

  it('never falls below the figure in the sample', () => {
    expect(kickersShown({ inSample: 3, heldOut: 2, isFlattered: true })?.per100).toBe(3);
  });
});

describe('the answer in words', () => {
  const { answer } = grades.verdict;

  it('says from how few readings', () => {
    expect(answer({ per100: 1.9, atBest: false }, 20, '40 readings')).toBe(
      'About 2 joints in 100 will show if sorted right, from 40 readings; unsorted it would be 20.'
    );
    expect(answer({ per100: 3, atBest: false }, 20, '')).toBe(
      'About 3 joints in 100 will show if sorted right; unsorted it would be 20.'
    );
  });

  it('says at best where no slate could be left out, and never none at all', () => {
    expect(answer({ per100: 0, atBest: true }, 20, '40 readings')).toBe(
      'Less than 1 joint in 1,000 will show at best if sorted right, from 40 readings; unsorted it would be 20.'
    );
  });
});
