import { describe, expect, it } from 'vitest';
import { clopperPearson, countInLot, shareStandardError } from '$lib/engine/delivery';

// Computed at high precision.
it.each([
  [81, 263, 0.2527367456, 0.3676219226],
  [15, 148, 0.0578440101, 0.1616504903],
  [0, 20, 0, 0.1684334709830853],
  [1, 29, 0.0008726469, 0.1776442955],
  [0, 10, 0, 0.3084971078],
  [2, 10, 0.0252107263, 0.5560954623]
])('%i of %i, 95 %%: Clopper–Pearson', (found, sampled, low, high) => {
  const exact = clopperPearson(found, sampled, 0.95);
  expect(exact.low).toBeCloseTo(low, 9);
  expect(exact.high).toBeCloseTo(high, 9);
});

it('0 of 20 is 1 − .025^(1/20), to the last digits', () => {
  const { high } = clopperPearson(0, 20, 0.95);
  expect(Math.abs(high / (1 - 0.025 ** (1 / 20)) - 1)).toBeLessThan(1e-14);
});

// Clopper–Pearson to three places, quoted in several texts.
it.each([
  [57, 60, 0.861, 0.99],
  [5, 5, 0.478, 1],
  [4, 5, 0.284, 0.995],
  [90, 100, 0.824, 0.951]
])('%i of %i: Clopper–Pearson as quoted', (found, sampled, low, high) => {
  const exact = clopperPearson(found, sampled, 0.95);
  expect(exact.low).toBeCloseTo(low, 3);
  expect(exact.high).toBeCloseTo(high, 3);
});

describe('finite lot: hypergeometric limits and standard error', () => {
  // Inputs from CRAN samplingbook, Sprop; limits and errors computed. In the fourth row the lower
  // tail at one bad slate equals half the risk exactly; it is kept, to the safe side.
  it.each([
    [45, 100, 300, 0.95, 111, 160, 0.04082483],
    [2, 100, 300, 0.95, 2, 18, 0.01148854],
    [5, 13, 200, 0.95, 29, 135, 0.13580064],
    [1, 500, 10000, 0.9, 1, 92, 0.00194936],
    [0, 20, 100, 0.95, 0, 15, 0]
  ])('%i of %i in a lot of %i at %f: %i to %i', (found, sampled, lotSize, level, ...expected) => {
    const [low, high, error] = expected;
    const sample = { found, sampled, lotSize };
    expect(countInLot(sample, level)).toEqual({ ok: true, count: { low, high, level } });
    const standard = shareStandardError(sample);
    expect(standard.ok && standard.standardError).toBeCloseTo(error, 8);
  });
});
