import { describe, expect, it } from 'vitest';
import { productLimits } from './product-tolerances.ts';
import {
  SLATE_CHECKS,
  checkSlate,
  isUsable,
  slateOutcome,
  slateThicknessMm,
  type MeasuredSlate
} from './slate-conformity.ts';

const result = productLimits({
  lengthMm: 500,
  widthMm: 250,
  nominalThicknessMm: 5,
  thicknessTolerancePercent: 35,
  texture: 'smooth',
  slatesOrdered: 1000
});
if (!result.ok) throw new Error(result.reason);
const { limits } = result;

const slate = (more: Partial<MeasuredSlate>): MeasuredSlate => ({
  palletId: 'P1',
  drawnAs: 'unsorted sample',
  pointsMm: [],
  ...more
});
const outcomeOf = (check: string, more: Partial<MeasuredSlate>) =>
  checkSlate(slate(more), limits).find((each) => each.check === check)?.outcome;

describe('checkSlate', () => {
  it('nothing measured: every check says so, and the slate is neither in nor out', () => {
    const checks = checkSlate(slate({}), limits);
    expect(checks.map(({ check }) => check)).toEqual(SLATE_CHECKS);
    expect(checks.every(({ outcome }) => outcome === 'not measured')).toBe(true);
    expect(slateOutcome(checks)).toBe('not measured');
  });

  it.each<[string, Partial<MeasuredSlate>, string]>([
    ['thickness', { pointsMm: [3.25] }, 'pass'],
    ['thickness', { pointsMm: [3.24] }, 'fail'],
    ['thickness', { pointsMm: [6.75, 6.75, 6.75] }, 'pass'],
    ['thickness', { pointsMm: [6.76] }, 'fail'],
    ['thickness', { pointsMm: [2.5, 4.0] }, 'pass'],
    ['length', { lengthMm: 495 }, 'pass'],
    ['length', { lengthMm: 494.9 }, 'fail'],
    ['length', { lengthMm: 505 }, 'pass'],
    ['width', { widthMm: 255.1 }, 'fail'],
    ['squareness', { squarenessMm: 5 }, 'pass'],
    ['squareness', { squarenessMm: 5.1 }, 'fail'],
    ['edge', { edgeMm: 5 }, 'pass'],
    ['edge', { edgeMm: 5.1 }, 'fail'],
    ['flatness', { bowMm: 4.99 }, 'pass'],
    ['flatness', { bowMm: 5 }, 'fail'],
    ['ring', { ring: 'clear' }, 'pass'],
    ['ring', { ring: 'dull' }, 'fail'],
    ['defects', { defects: [] }, 'pass'],
    ['defects', { defects: ['inclusion'] }, 'fail']
  ])('%s of %o: %s', (check, more, outcome) => {
    expect(outcomeOf(check, more)).toBe(outcome);
  });

  it('refuses a measurement that is none', () => {
    expect(() => checkSlate(slate({ lengthMm: Number.NaN }), limits)).toThrow(/finite/);
    expect(() => checkSlate(slate({ bowMm: -1 }), limits)).toThrow(/0 or more/);
  });

  it('the thickness of a slate is the mean of its points', () => {
    expect(slateThicknessMm(slate({ pointsMm: [5, 6, 7, 6] }))).toBe(6);
    expect(slateThicknessMm(slate({}))).toBeUndefined();
  });

  it('thickness alone does not make a slate unusable; a dull ring does', () => {
    expect(isUsable(checkSlate(slate({ pointsMm: [9] }), limits))).toBe(true);
    expect(isUsable(checkSlate(slate({ pointsMm: [5], ring: 'dull' }), limits))).toBe(false);
  });
});
