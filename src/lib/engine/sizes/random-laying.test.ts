import { describe, expect, it } from 'vitest';
import { createRandom } from '$lib/engine';
import { EngineError } from '../errors.ts';
import { evenWidthsMm, layRandomWidths } from './random-laying.ts';

const request = {
  widthsMm: evenWidthsMm(150, 300),
  courseWidthMm: 60_000,
  jointMm: 4,
  sideLapMm: 75,
  courses: 300
};

describe('courses of random widths', () => {
  it('laid as they come, joints clear as often as renewal theory says', () => {
    // A joint falls anywhere over the course below: it clears both its joints by s in the share
    // E[(X − 2s − j)+] / E[X] of places, X a slate with its joint, s edge to edge.
    const { cutOrSwapShare, standardError, joints } = layRandomWidths(
      { ...request, inReach: 1 },
      createRandom(3)
    );
    const modules = request.widthsMm.map((width) => width + request.jointMm);
    const free = modules.map((module) =>
      Math.max(0, module - 2 * (request.sideLapMm + request.jointMm))
    );
    const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
    const expected = 1 - sum(free) / sum(modules);
    expect(joints).toBeGreaterThan(50_000);
    expect(Math.abs(cutOrSwapShare - expected)).toBeLessThan(4 * standardError);
  });

  it('the best of five needs a cut or a swap far more seldom than laying as they come', () => {
    const five = layRandomWidths(request, createRandom(4));
    const one = layRandomWidths({ ...request, inReach: 1 }, createRandom(4));
    expect(five.cutOrSwapShare).toBeLessThan(0.5 * one.cutOrSwapShare);
    expect(five.ninetyPercentMm).toBeGreaterThan(one.ninetyPercentMm);
  });

  it('one width in half bond never clears by more than half a slate', () => {
    const { ninetyPercentMm } = layRandomWidths({ ...request, widthsMm: [200] }, createRandom(1));
    expect(ninetyPercentMm).toBeLessThanOrEqual(102);
  });

  it('slates a course are the width by the mean with its joint', () => {
    const { meanSlatesPerCourse } = layRandomWidths({ ...request, inReach: 1 }, createRandom(9));
    expect(Math.abs(meanSlatesPerCourse - 60_000 / 229)).toBeLessThan(1.5);
  });

  it('refuses no widths, a width of nothing and a range turned round', () => {
    expect(() => layRandomWidths({ ...request, widthsMm: [] }, createRandom(1))).toThrow(
      EngineError
    );
    expect(() => layRandomWidths({ ...request, widthsMm: [0] }, createRandom(1))).toThrow(
      EngineError
    );
    expect(() => evenWidthsMm(300, 150)).toThrow(EngineError);
  });
});
