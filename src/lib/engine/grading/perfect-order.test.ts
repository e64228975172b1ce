import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '../thickness/index.ts';
import { perfectOrderKickers } from './perfect-order.ts';

const halves = binsFromPairs([
  [700, 1],
  [500, 1]
]);
const full = { slates: 10, joints: 9 };

describe('perfectOrderKickers', () => {
  it('is 0 for no slates and for no courses', () => {
    expect(perfectOrderKickers(binsFromPairs([]), [full], 1.5)).toBe(0);
    expect(perfectOrderKickers(halves, [], 1.5)).toBe(0);
  });

  it('is one kicker where a gap falls inside a course, none between courses', () => {
    expect(perfectOrderKickers(halves, [full], 1.5)).toBe(1);
    expect(perfectOrderKickers(halves, [full, full], 1.5)).toBe(0);
    expect(perfectOrderKickers(halves, [full, full, full], 1.5)).toBe(1);
  });

  it('does not kick at a step of exactly the allowance', () => {
    expect(perfectOrderKickers(halves, [full], 2)).toBe(0);
    expect(perfectOrderKickers(halves, [full], 1.99)).toBe(1);
  });

  it('shares the gap over the joints of a course broken by an opening', () => {
    expect(perfectOrderKickers(halves, [{ slates: 10, joints: 6 }], 1.5)).toBeCloseTo(6 / 9, 15);
  });

  it('steps over a thickness too rare to be laid', () => {
    const rare = binsFromPairs([
      [700, 1000],
      [600, 1],
      [500, 1000]
    ]);
    expect(perfectOrderKickers(rare, [full], 1.5)).toBe(1);
  });
});
