import { describe, expect, it } from 'vitest';
import type { Hand } from './hand.ts';
import { tapsBetweenChecks } from './spot-checks.ts';

const known = (...errors: number[]): Hand => ({
  ok: true,
  thresholdsMm: errors.map((_, k) => 6 - k),
  thresholdStandardErrorsMm: Object.freeze(errors),
  sdMm: 0.4,
  sdStandardErrorMm: 0.1,
  logLikelihood: -10,
  checks: 30
});

describe('tapsBetweenChecks', () => {
  it('asks every fifth tap while the hand is not known', () => {
    expect(tapsBetweenChecks({ ok: false, reason: 'too-few-checks', missing: [3, 3] })).toBe(5);
  });

  it('asks every tenth while one threshold is rough and every twentieth afterwards', () => {
    expect(tapsBetweenChecks(known(0.05, 0.11))).toBe(10);
    expect(tapsBetweenChecks(known(0.05, 0.1))).toBe(20);
    expect(tapsBetweenChecks(known(0.05, 0.1), 0.02)).toBe(10);
  });

  it('refuses to be content with nothing', () => {
    expect(() => tapsBetweenChecks(known(0.1), 0)).toThrow(/out-of-range/);
  });
});
