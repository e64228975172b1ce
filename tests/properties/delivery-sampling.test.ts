import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ATTRIBUTES_AQLS,
  CODE_LETTERS,
  acceptance,
  acceptanceInLot,
  atLeast,
  atMost,
  attributesPlan,
  codeLetter,
  drawSamplingList,
  findAttributesPlan,
  hypergeometric,
  sampleSizeOf,
  variablesAcceptance
} from '$lib/engine/delivery';
import { createRandom } from '$lib/engine';

function choose(from: bigint, taken: bigint): bigint {
  if (taken < 0n || taken > from) return 0n;
  let product = 1n;
  for (let step = 1n; step <= taken; step++) product = (product * (from - taken + step)) / step;
  return product;
}

/** The exact rational, turned to a double at the very end with 25 digits to spare. */
function exactAtMost(lot: number, bad: number, sample: number, count: number): number {
  let ways = 0n;
  for (let k = 0; k <= count; k++)
    ways += choose(BigInt(bad), BigInt(k)) * choose(BigInt(lot - bad), BigInt(sample - k));
  const all = choose(BigInt(lot), BigInt(sample));
  return Number((ways * 10n ** 40n) / all) / 1e40;
}

const lots = fc
  .record({ lot: fc.integer({ min: 1, max: 300 }), bad: fc.nat(300), sample: fc.nat(300) })
  .map(({ lot, bad, sample }) => ({ lot, bad: bad % (lot + 1), sample: sample % (lot + 1) }));

describe('hypergeometric probabilities', () => {
  it('equal exact sums of whole numbers to 2e-14, and the tails add up', () => {
    fc.assert(
      fc.property(lots, fc.nat(300), ({ lot, bad, sample }, seed) => {
        const count = seed % (sample + 1);
        const distribution = hypergeometric(lot, bad, sample);
        const exact = exactAtMost(lot, bad, sample, count);
        const got = atMost(distribution, count);
        if (exact > 1e-20) expect(Math.abs(got / exact - 1)).toBeLessThan(2e-14);
        expect(got + atLeast(distribution, count + 1)).toBeCloseTo(1, 13);
      }),
      { seed: 11, numRuns: 300 }
    );
  });
});

describe('operating characteristics', () => {
  const plans = fc
    .record({ sampleSize: fc.integer({ min: 1, max: 400 }), acceptAtMost: fc.nat(400) })
    .map((plan) => ({ ...plan, acceptAtMost: plan.acceptAtMost % plan.sampleSize }));
  const share = fc.double({ min: 0.0001, max: 0.9999, noNaN: true });

  it('fall as quality worsens, by attributes', () => {
    fc.assert(
      fc.property(plans, share, share, (plan, one, other) => {
        const [better, worse] = one < other ? [one, other] : [other, one];
        expect(acceptance(plan, worse)).toBeLessThanOrEqual(acceptance(plan, better) + 1e-13);
      }),
      { seed: 12, numRuns: 300 }
    );
  });

  it('fall slate by slate in a finite lot', () => {
    fc.assert(
      fc.property(plans, fc.integer({ min: 0, max: 200 }), (plan, beyond) => {
        const lot = plan.sampleSize + beyond;
        const curve = Array.from({ length: lot + 1 }, (_, bad) => acceptanceInLot(plan, lot, bad));
        for (let bad = 1; bad <= lot; bad++)
          expect(curve[bad]).toBeLessThanOrEqual(curve[bad - 1] + 1e-13);
        expect(curve[0]).toBe(1);
      }),
      { seed: 13, numRuns: 60 }
    );
  });

  it('fall as quality worsens, by variables', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 100 }),
        fc.double({ min: -1, max: 3, noNaN: true }),
        share,
        share,
        (sampleSize, acceptability, one, other) => {
          const [better, worse] = one < other ? [one, other] : [other, one];
          const plan = { sampleSize, acceptability };
          expect(variablesAcceptance(plan, worse)).toBeLessThanOrEqual(
            variablesAcceptance(plan, better) + 1e-12
          );
        }
      ),
      { seed: 14, numRuns: 60 }
    );
  });
});

describe('plans', () => {
  it('letters never fall as the lot grows, nor as the level rises', () => {
    const index = (lot: number, level: 'I' | 'II' | 'III'): number => {
      const result = codeLetter(lot, level);
      return result.ok ? CODE_LETTERS.indexOf(result.letter) : -1;
    };
    const lot = fc.integer({ min: 2, max: 1_000_000 });
    fc.assert(
      fc.property(lot, lot, (one, other) => {
        const [small, large] = one < other ? [one, other] : [other, one];
        for (const level of ['I', 'II', 'III'] as const)
          expect(index(small, level)).toBeLessThanOrEqual(index(large, level));
        expect(index(one, 'I')).toBeLessThanOrEqual(index(one, 'II'));
        expect(index(one, 'II')).toBeLessThanOrEqual(index(one, 'III'));
      }),
      { seed: 15, numRuns: 500 }
    );
  });

  it('every lot, level, AQL and severity gives a plan that fits the lot, or the one doubtful cell', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 600_000 }),
        fc.constantFrom('I', 'II', 'III' as const),
        fc.constantFrom(...ATTRIBUTES_AQLS),
        fc.constantFrom('normal', 'tightened' as const),
        (lot, level, aql, severity) => {
          const result = attributesPlan(lot, level, aql, severity);
          if (!result.ok) {
            expect(aql).toBe(10);
            expect(lot).toBeLessThanOrEqual(15);
            return;
          }
          const { plan } = result;
          expect(plan.sampleSize).toBe(Math.min(sampleSizeOf(plan.planLetter), lot));
          expect(plan.everySlate).toBe(plan.sampleSize === lot);
          expect(plan.acceptAtMost).toBeLessThan(sampleSizeOf(plan.planLetter));
        }
      ),
      { seed: 16, numRuns: 1000 }
    );
  });

  it('a found plan keeps both risks, and no smaller sample does', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 0.1, noNaN: true }),
        fc.double({ min: 2.5, max: 4, noNaN: true }),
        (goodShare, ratio) => {
          const good = { share: goodShare, acceptance: 0.95 };
          const poor = { share: goodShare * ratio, acceptance: 0.1 };
          const found = findAttributesPlan(good, poor);
          if (!found.ok) throw new Error(found.reason);
          const keeps = (plan: { sampleSize: number; acceptAtMost: number }): boolean =>
            acceptance(plan, good.share) >= 0.95 && acceptance(plan, poor.share) <= 0.1;
          expect(keeps(found.plan)).toBe(true);
          const sampleSize = found.plan.sampleSize - 1;
          for (let acceptAtMost = 0; acceptAtMost < Math.min(40, sampleSize); acceptAtMost++)
            expect(keeps({ sampleSize, acceptAtMost })).toBe(false);
        }
      ),
      { seed: 17, numRuns: 40 }
    );
  });
});

describe('sampling lists', () => {
  const pallets = fc.array(
    fc
      .record({
        layers: fc.integer({ min: 1, max: 6 }),
        perLayer: fc.integer({ min: 1, max: 30 }),
        missing: fc.nat(200)
      })
      .map(({ layers, perLayer, missing }) => ({
        layers,
        perLayer,
        count: layers * perLayer - (missing % (layers * perLayer + 1))
      })),
    { minLength: 1, maxLength: 6 }
  );

  it('are on the pallets, in walking order, without repeats, each pallet within one of its share', () => {
    fc.assert(
      fc.property(pallets, fc.integer(), fc.nat(), (given, seed, wish) => {
        const packed = given.map((pallet, index) => ({ ...pallet, id: `P${index}` }));
        const lot = packed.reduce((sum, { count }) => sum + count, 0);
        if (lot === 0) return;
        const size = 1 + (wish % lot);
        const list = drawSamplingList(packed, size, createRandom(seed));
        if (!list.ok) throw new Error(list.reason);
        expect(list).toEqual(drawSamplingList(packed, size, createRandom(seed)));
        expect(list.places).toHaveLength(size);
        const keys = list.places.map(
          ({ palletId, layer, place }) => Number(palletId.slice(1)) * 1e6 + layer * 1e3 + place
        );
        for (let index = 1; index < keys.length; index++)
          expect(keys[index]).toBeGreaterThan(keys[index - 1]);
        for (const [index, { count, perLayer }] of packed.entries()) {
          expect(Math.abs(list.perPallet[index] - (size * count) / lot)).toBeLessThan(1);
          const usedLayers = Math.ceil(count / perLayer);
          for (const place of list.places.filter(({ palletId }) => palletId === `P${index}`)) {
            const inLayer = place.layer === 1 ? count % perLayer || perLayer : perLayer;
            expect(place.layer).toBeLessThanOrEqual(usedLayers);
            expect(place.place).toBeLessThanOrEqual(inLayer);
          }
        }
      }),
      { seed: 18, numRuns: 300 }
    );
  });

  it('give each slate the same chance: 20,000 lists, chi-square below its 99.9 % point', () => {
    const random = createRandom(19);
    const hits = new Array<number>(20).fill(0);
    const pallet = { id: 'A', layers: 4, perLayer: 5, count: 20 };
    for (let run = 0; run < 20_000; run++) {
      const list = drawSamplingList([pallet], 6, random);
      if (!list.ok) throw new Error(list.reason);
      for (const { layer, place } of list.places) hits[(layer - 1) * 5 + place - 1]++;
    }
    const expected = 6000;
    const chiSquare = hits.reduce((sum, n) => sum + (n - expected) ** 2 / expected, 0);
    expect(chiSquare).toBeLessThan(43.82); // 19 degrees of freedom, from memory
  });
});
