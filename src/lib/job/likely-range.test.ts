import { describe, expect, it } from 'vitest';
import { EMPTY_VIEW } from '$lib/journal';
import { TestJournal } from '../../../tests/support/test-journal.ts';
import { likelyRangeOf } from './likely-range.ts';

const job = (hundredths: readonly number[]) =>
  new TestJournal().add(
    ...hundredths.map((reading, index) => ({
      type: 'slateGauged' as const,
      body: { palletId: index % 2 ? 'a' : 'b', points: [reading], gradesId: null, pile: null }
    }))
  ).view;

describe('likelyRangeOf', () => {
  it('is not known before five slates were measured', () => {
    expect(likelyRangeOf(EMPTY_VIEW)).toBeUndefined();
    expect(likelyRangeOf(job([600, 610, 620, 630]))).toBeUndefined();
  });

  it('has room beyond the slates measured on all pallets, and one slip does not widen it much', () => {
    const steps = Array.from({ length: 51 }, (_, step) => 400 + 10 * step);
    // 4.25 and 8.75 mm are the 5th and 95th percentile of 4.00, 4.10 … 9.00 mm.
    const { lowMm, highMm } = likelyRangeOf(job(steps)) ?? { lowMm: 0, highMm: 0 };
    expect(lowMm).toBeCloseTo(4.25 / 1.5, 9);
    expect(highMm).toBeCloseTo(8.75 * 1.5, 9);
    expect(likelyRangeOf(job([...steps, 3900]))?.highMm).toBeLessThan(14);
  });
});
