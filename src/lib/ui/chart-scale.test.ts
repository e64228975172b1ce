import { describe, expect, it } from 'vitest';
import { linearScale, stepFor, ticksBetween } from './chart-scale.ts';

describe('a straight scale', () => {
  it('draws its ends where it is told, and everything else in proportion', () => {
    const x = linearScale(4, 9, 40, 540);
    expect([4, 9, 6.5, 3].map(x)).toEqual([40, 540, 290, -60]);
  });

  it('runs upwards where the drawing counts downwards', () => {
    expect(linearScale(0, 10, 200, 0)(4)).toBe(120);
  });
});

describe('ticks', () => {
  it('are the multiples of the step, its ends included', () => {
    expect(ticksBetween(3, 6, 1)).toEqual([3, 4, 5, 6]);
    expect(ticksBetween(3.1, 5.9, 1)).toEqual([4, 5]);
    expect(ticksBetween(0, 0.04, 0.05)).toEqual([0]);
  });

  it('keep an end that binary decimals put a hair outside', () => {
    expect(ticksBetween(5.2, 7, 0.2)).toHaveLength(10);
    expect(ticksBetween(0, 0.3, 0.1)).toHaveLength(4);
    expect(ticksBetween(0.1 + 0.2, 0.6, 0.3)).toHaveLength(2);
  });

  it('stand no closer than asked: the first step that is wide enough, else the last', () => {
    expect(stepFor(1.8, 9, [0.2, 0.5, 1], 5)).toBe(0.2);
    expect(stepFor(1.8, 8, [0.2, 0.5, 1], 5)).toBe(0.5);
    expect(stepFor(100, 8, [0.2, 0.5, 1], 5)).toBe(5);
  });
});
