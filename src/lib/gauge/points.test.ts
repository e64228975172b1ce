import { describe, expect, it } from 'vitest';
import { addPoint, dropPoint, startPoints } from './points.ts';

function slatesOf(wanted: number, points: readonly number[]) {
  let state = startPoints(wanted);
  return points.flatMap((point) => {
    const step = addPoint(state, point);
    state = step.state;
    return step.slate ? [step.slate] : [];
  });
}

describe('points of a slate', () => {
  it.each([0, 5, 1.5, Number.NaN])('refuses %f points', (wanted) => {
    expect(() => startPoints(wanted)).toThrow(/points/);
  });

  it.each([Number.NaN, 1, 60])('refuses the value %f', (value) => {
    expect(() => addPoint(startPoints(1), value)).toThrow(/accepted/);
  });

  it('makes every reading a slate with one point', () => {
    expect(slatesOf(1, [6.4, 6.4])).toEqual([
      { pointsMm: [6.4], thicknessMm: 6.4, taperMm: 0 },
      { pointsMm: [6.4], thicknessMm: 6.4, taperMm: 0 }
    ]);
  });

  it('gives mean and taper of the points, and begins the next slate', () => {
    expect(slatesOf(2, [6.2, 6.6, 5, 5.01, 7])).toEqual([
      { pointsMm: [6.2, 6.6], thicknessMm: 6.4, taperMm: 0.4 },
      { pointsMm: [5, 5.01], thicknessMm: 5.01, taperMm: 0.01 }
    ]);
  });

  it('takes a point back', () => {
    const one = addPoint(startPoints(2), 6.2).state;
    expect(addPoint(dropPoint(one), 7).state.pointsMm).toEqual([7]);
    expect(dropPoint(startPoints(2))).toEqual(startPoints(2));
  });
});
