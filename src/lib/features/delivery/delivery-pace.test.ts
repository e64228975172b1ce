import { describe, expect, it } from 'vitest';
import { sortingPace } from './delivery-pace.ts';

describe('the pace that hours of sorting rest on', () => {
  it('is unknown without either', () => {
    expect(sortingPace(null, null)).toBeUndefined();
    expect(sortingPace(0, null)).toBeUndefined();
  });

  it('is the measured one while none is entered', () => {
    expect(sortingPace(null, 356)).toEqual({ perHour: 356, isEntered: false });
  });

  it('is the entered one; a measured one is told beside it from more than a tenth off', () => {
    expect(sortingPace(600, null)).toEqual({ perHour: 600, isEntered: true });
    expect(sortingPace(600, 356)).toEqual({ perHour: 600, isEntered: true, measuredPerHour: 356 });
    expect(sortingPace(600, 540)).toEqual({ perHour: 600, isEntered: true });
    expect(sortingPace(600, 539)).toMatchObject({ measuredPerHour: 539 });
    expect(sortingPace(600, 660)).not.toHaveProperty('measuredPerHour');
    expect(sortingPace(600, 661)).toMatchObject({ measuredPerHour: 661 });
  });
});
