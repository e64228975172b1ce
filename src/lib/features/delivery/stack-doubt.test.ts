import { describe, expect, it } from 'vitest';
import { doubtOf } from './stack-doubt.ts';

const labelled = { supplier: '', stackOf100Mm: 660, nominalThicknessMm: 6 };

describe('the height of a stack', () => {
  it('is asked about where a zero is lost or too many, with the likely height', () => {
    expect(doubtOf(100, 66, labelled)).toEqual({
      ...{ slates: 100, totalMm: 66, slateMm: 0.66, expectedMm: 6.6, isFromLabel: true },
      likelyMm: 660
    });
    expect(doubtOf(100, 6600, labelled)?.likelyMm).toBe(660);
    expect(doubtOf(10, 660, labelled)?.likelyMm).toBe(66);
  });

  it('is asked about without a likely one where none is', () => {
    expect(doubtOf(100, 1500, labelled)).not.toHaveProperty('likelyMm');
    expect(doubtOf(100, 1500, labelled)?.slateMm).toBe(15);
  });

  it.each([330, 600, 706, 1320])('of %i mm for 100 slates of a label of 660 mm stands', (mm) => {
    expect(doubtOf(100, mm, labelled)).toBeUndefined();
  });

  it('goes by the order where the label says nothing, and by nothing where neither does', () => {
    expect(doubtOf(100, 66, { supplier: '', nominalThicknessMm: 6.5 })).toMatchObject({
      ...{ expectedMm: 6.5, isFromLabel: false, likelyMm: 660 }
    });
    expect(doubtOf(100, 66, { supplier: '' })).toBeUndefined();
    expect(doubtOf(100, 66, undefined)).toBeUndefined();
  });
});
