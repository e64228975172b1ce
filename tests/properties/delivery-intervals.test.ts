import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  binomial,
  clopperPearson,
  countInLot,
  hypergeometric,
  noncentralTAbove,
  noncentralTCdf,
  noncentralTQuantile
} from '$lib/engine/delivery';
import { createRandom } from '$lib/engine';

describe('intervals cover at their level', () => {
  it('Clopper–Pearson: exact coverage is never below the level', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 120 }),
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        fc.constantFrom(0.8, 0.9, 0.95, 0.99),
        (sampled, share, level) => {
          const { first, probabilities } = binomial(sampled, share);
          let covered = 0;
          for (const [index, probability] of probabilities.entries()) {
            const { low, high } = clopperPearson(first + index, sampled, level);
            if (low <= share && share <= high) covered += probability;
          }
          expect(covered).toBeGreaterThan(level - 1e-9);
        }
      ),
      { seed: 21, numRuns: 150 }
    );
  });

  it('finite lot: exact coverage is never below the level', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 150 }),
        fc.nat(150),
        fc.nat(150),
        fc.constantFrom(0.8, 0.95),
        (lotSize, wishSample, wishBad, level) => {
          const sampled = 1 + (wishSample % lotSize);
          const bad = wishBad % (lotSize + 1);
          const { first, probabilities } = hypergeometric(lotSize, bad, sampled);
          let covered = 0;
          for (const [index, probability] of probabilities.entries()) {
            const result = countInLot({ found: first + index, sampled, lotSize }, level);
            if (!result.ok) throw new Error(result.reason);
            if (result.count.low <= bad && bad <= result.count.high) covered += probability;
          }
          expect(covered).toBeGreaterThan(level - 1e-9);
        }
      ),
      { seed: 22, numRuns: 120 }
    );
  });

  it('finite lot: 4,000 seeded draws of 60 from 600 with 45 bad are covered at 95 % or more', () => {
    const random = createRandom(23);
    let covered = 0;
    for (let run = 0; run < 4000; run++) {
      let found = 0;
      for (let drawn = 0; drawn < 60; drawn++) if (random() * (600 - drawn) < 45 - found) found++;
      const result = countInLot({ found, sampled: 60, lotSize: 600 }, 0.95);
      if (result.ok && result.count.low <= 45 && 45 <= result.count.high) covered++;
    }
    // Four standard errors below the level; the exact interval covers a little more.
    expect(covered / 4000).toBeGreaterThan(0.95 - 4 * Math.sqrt((0.95 * 0.05) / 4000));
  });
});

describe('shape of the intervals', () => {
  const counts = fc
    .record({ sampled: fc.integer({ min: 1, max: 300 }), found: fc.nat(300) })
    .map(({ sampled, found }) => ({ sampled, found: found % (sampled + 1) }));

  it('hold the share seen, and mirror when good and bad change places', () => {
    fc.assert(
      fc.property(counts, ({ sampled, found }) => {
        const { low, high } = clopperPearson(found, sampled, 0.95);
        const mirrored = clopperPearson(sampled - found, sampled, 0.95);
        expect(low).toBeLessThanOrEqual(found / sampled);
        expect(high).toBeGreaterThanOrEqual(found / sampled);
        expect(mirrored.low).toBeCloseTo(1 - high, 9);
        expect(mirrored.high).toBeCloseTo(1 - low, 9);
      }),
      { seed: 25, numRuns: 300 }
    );
  });

  it('a finite lot is never looser than an endless one, rounded out to whole slates', () => {
    fc.assert(
      fc.property(counts, fc.nat(2000), ({ sampled, found }, beyond) => {
        const lotSize = sampled + beyond;
        const finite = countInLot({ found, sampled, lotSize }, 0.95);
        if (!finite.ok) throw new Error(finite.reason);
        const endless = clopperPearson(found, sampled, 0.95);
        expect(finite.count.low).toBeGreaterThanOrEqual(Math.floor(endless.low * lotSize));
        expect(finite.count.high).toBeLessThanOrEqual(Math.ceil(endless.high * lotSize));
        if (beyond === 0) expect(finite.count).toEqual({ low: found, high: found, level: 0.95 });
      }),
      { seed: 26, numRuns: 200 }
    );
  });
});

describe('noncentral t', () => {
  const shape = {
    freedom: fc.integer({ min: 1, max: 200 }),
    noncentrality: fc.double({ min: -20, max: 20, noNaN: true }),
    t: fc.double({ min: -40, max: 40, noNaN: true })
  };

  it('rises with t, mirrors with its sign, and its two tails add up', () => {
    fc.assert(
      fc.property(fc.record(shape), ({ freedom, noncentrality, t }) => {
        const below = noncentralTCdf(t, freedom, noncentrality);
        expect(below + noncentralTAbove(t, freedom, noncentrality)).toBeCloseTo(1, 13);
        expect(below).toBeCloseTo(noncentralTAbove(-t, freedom, -noncentrality), 13);
        expect(noncentralTCdf(t + 0.5, freedom, noncentrality)).toBeGreaterThanOrEqual(below);
      }),
      { seed: 27, numRuns: 100 }
    );
  });

  it('its quantile is the way back', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 100 }),
        shape.noncentrality,
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (freedom, noncentrality, probability) => {
          const t = noncentralTQuantile(probability, freedom, noncentrality);
          expect(noncentralTCdf(t, freedom, noncentrality)).toBeCloseTo(probability, 12);
        }
      ),
      { seed: 28, numRuns: 20 }
    );
  });
});
