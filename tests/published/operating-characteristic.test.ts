import { describe, expect, it } from 'vitest';
import {
  acceptance,
  acceptanceInLot,
  atMost,
  findAttributesPlan,
  hypergeometric
} from '$lib/engine/delivery';

describe('n = 52, c = 3: the plan of NIST/SEMATECH handbook 6.2.3.2', () => {
  const plan = { sampleSize: 52, acceptAtMost: 3 };

  // Computed at high precision. The handbook's three-digit figures are remembered only, and the
  // remembered ones at 4 and 5 % are .001 off, so the computed digits are asserted.
  it.each(
    [
      0.998153, 0.979765, 0.929537, 0.845989, 0.738317, 0.619594, 0.501847, 0.393763, 0.30028,
      0.223187, 0.162066, 0.115198
    ].map((expected, index) => [index + 1, expected] as const)
  )('accepts %i %% outside with probability %f', (percent, expected) => {
    expect(acceptance(plan, percent / 100)).toBeCloseTo(expected, 6);
  });
});

describe('plan from two risk points', () => {
  it('.05/.95 and .15/.075 give n = 80, c = 7 (CRAN AcceptanceSampling manual)', () => {
    const found = findAttributesPlan(
      { share: 0.05, acceptance: 0.95 },
      { share: 0.15, acceptance: 0.075 }
    );
    expect(found).toEqual({ ok: true, plan: { sampleSize: 80, acceptAtMost: 7 } });
    const plan = { sampleSize: 80, acceptAtMost: 7 };
    expect(acceptance(plan, 0.05)).toBeCloseTo(0.9534084725, 10); // computed
    expect(acceptance(plan, 0.15)).toBeCloseTo(0.0727174929, 10); // computed
  });

  it('.019296/.95 and .045884/.10 give n = 359 (same manual), c = 11 (computed)', () => {
    const found = findAttributesPlan(
      { share: 0.019296, acceptance: 0.95 },
      { share: 0.045884, acceptance: 0.1 }
    );
    expect(found).toEqual({ ok: true, plan: { sampleSize: 359, acceptAtMost: 11 } });
  });
});

// Computed at high precision from the definitions.
it.each([
  [2, 0.991837, 0.985242],
  [5, 0.928248, 0.91854],
  [10, 0.7419, 0.73728],
  [20, 0.325948, 0.33696]
])('n = 5, c = 1, %i bad in 50: hypergeometric, binomial', (bad, exact, large) => {
  const plan = { sampleSize: 5, acceptAtMost: 1 };
  expect(acceptanceInLot(plan, 50, bad)).toBeCloseTo(exact, 6);
  expect(acceptance(plan, bad / 50)).toBeCloseTo(large, 6);
});

it('n = 200, c = 7: .995001 at 1.3 % and .054189 at 6.4 % (computed)', () => {
  // A vignette prints .975 for the first; the exact value is .995001. Its .054 is right.
  const plan = { sampleSize: 200, acceptAtMost: 7 };
  expect(acceptance(plan, 0.013)).toBeCloseTo(0.995001, 6);
  expect(acceptance(plan, 0.064)).toBeCloseTo(0.054189, 6);
});

// Hypergeometric probabilities computed with 20 digits (mpmath), given to the nearest double: count, lot, bad, sample.
it.each([
  [1, 50, 5, 5, 0.9282476542883573],
  [2, 300, 18, 100, 0.028886953200539717],
  [45, 300, 160, 100, 0.027255629068967713],
  [1, 10000, 92, 500, 0.051401999141879415],
  [0, 2000, 20, 80, 0.4402446488554536],
  [3, 5000, 100, 200, 0.4275401892356314],
  [10, 20000, 1000, 315, 0.07925553863492306],
  [0, 20000, 1000, 315, 8.429444261525501e-8],
  [30, 100000, 5000, 500, 0.869719093040276]
])(
  'at most %i of the bad in a sample: lot %i, bad %i, sample %i',
  (count, lot, bad, n, expected) => {
    const probability = atMost(hypergeometric(lot, bad, n), count);
    expect(Math.abs(probability / expected - 1)).toBeLessThan(1e-14);
  }
);
