import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  costOfChoices,
  findAll,
  judgeDelivery,
  type DeliveryEvidence,
  type MeasuredSlate
} from '$lib/engine/delivery';
import { createRandom, shuffled } from '$lib/engine';

const maybe = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> =>
  fc.option(value, { nil: undefined });
const hundredths = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: Math.round(min * 100), max: Math.round(max * 100) }).map((n) => n / 100);

const slate: fc.Arbitrary<MeasuredSlate> = fc.record({
  palletId: fc.constantFrom('P1', 'P2', 'P3'),
  drawnAs: fc.constantFrom('unsorted sample', 'unsorted sample', 'unsorted sample', 'other'),
  pointsMm: fc.array(hundredths(3.2, 6.9), { maxLength: 4 }),
  lengthMm: maybe(hundredths(494.9, 505.1)),
  bowMm: maybe(hundredths(0, 7.6)),
  ring: maybe(fc.constantFrom(...new Array<'clear'>(40).fill('clear'), 'dull' as const))
});

const evidence: fc.Arbitrary<DeliveryEvidence> = fc.record({
  order: fc.record({
    lengthMm: fc.constant(500),
    widthMm: fc.constant(250),
    nominalThicknessMm: fc.constant(5),
    thicknessTolerancePercent: fc.constantFrom(20, 35, 60, undefined),
    texture: fc.constant('normal' as const),
    slatesOrdered: fc.constantFrom(900, 1000)
  }),
  delivered: fc.integer({ min: 700, max: 1200 }),
  slates: fc.array(slate, { minLength: 1, maxLength: 60 }),
  plan: fc.record({
    sampleSize: fc.integer({ min: 10, max: 50 }),
    acceptAtMost: fc.nat(9),
    acceptableShare: fc.constant(0.04),
    basis: fc.constant([])
  }),
  variablesPlan: fc.constant({
    sampleSize: 35,
    allowedShare: 0.0811,
    acceptability: 1.388,
    letter: 'J' as const,
    everySlate: false,
    basis: { standing: 'published' as const, source: 'MIL-STD-414' }
  }),
  stacks: fc.array(fc.record({ slates: fc.constant(100), totalMm: hundredths(400, 700) }), {
    maxLength: 5
  }),
  labelMmPer100: maybe(fc.constant(540)),
  stackTolerancePercent: maybe(fc.constant(5)),
  need: fc.record({ slates: fc.nat(800), reserve: fc.nat(100) }),
  evenness: maybe(fc.constant({ unsortedKickersPer100: 22, sortedKickersPer100: 4, piles: 3 })),
  sorting: fc.constant({ slatesPerHour: 240, costPerHour: 31, acceptableKickersPer100: 8 }),
  level: fc.constantFrom(0.9, 0.95)
});

describe('the judgement of a delivery', () => {
  it('is the same to the last bit whatever the order of slates and stacks', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(evidence, fc.integer(), (given, seed) => {
        const random = createRandom(seed);
        const again = findAll({
          ...given,
          slates: shuffled(given.slates, random),
          stacks: shuffled(given.stacks, random)
        });
        const first = findAll(given);
        expect(again).toStrictEqual(first);
        if (!first.ok || !again.ok) return;
        const verdict = judgeDelivery(first.findings);
        seen.add(verdict.verdict);
        expect(judgeDelivery(again.findings)).toStrictEqual(verdict);
      }),
      { seed: 31, numRuns: 200 }
    );
    expect([...seen].sort()).toEqual(['query', 'refuse', 'take']); // not vacuous
  });

  it('never gives NaN, keeps intervals in order, and gives the verdict of its heaviest reason', () => {
    fc.assert(
      fc.property(evidence, (given) => {
        const result = findAll(given);
        if (!result.ok) return;
        const { findings } = result;
        const verdict = judgeDelivery(findings);
        const costs = costOfChoices(findings, { pricePerThousand: 1500, delayCostPerDay: 80 });
        const text = JSON.stringify([findings, verdict, costs], (_key, value) =>
          typeof value === 'number' && !Number.isFinite(value) ? 'not finite' : value
        );
        expect(text).not.toContain('not finite');
        const { outsideOrder, roof, sorting } = findings;
        for (const { low, high } of [
          outsideOrder.shareInterval,
          outsideOrder.countInterval,
          roof.usableInterval,
          roof.missingInterval,
          sorting.insideInterval
        ])
          expect(low).toBeLessThanOrEqual(high);
        const heaviest = verdict.reasons[0]?.weight ?? 'note';
        expect(verdict.verdict).toBe(heaviest === 'note' ? 'take' : heaviest);
      }),
      { seed: 32, numRuns: 200 }
    );
  });

  it('one more slate outside in the sample never makes the verdict milder', () => {
    const weight = { take: 0, query: 1, refuse: 2 };
    fc.assert(
      fc.property(evidence, fc.nat(), (given, pick) => {
        const sample = given.slates.flatMap((each, index) =>
          each.drawnAs === 'unsorted sample' && each.pointsMm.length > 0 ? [index] : []
        );
        if (sample.length === 0) return;
        const chosen = sample[pick % sample.length];
        const worse = given.slates.map((each, index) =>
          index === chosen ? { ...each, defects: ['broken'] } : each
        );
        const noVariables = { ...given, variablesPlan: undefined };
        const before = findAll(noVariables);
        const after = findAll({ ...noVariables, slates: worse });
        if (!before.ok || !after.ok) return;
        const milder = judgeDelivery(before.findings).verdict;
        const harder = judgeDelivery(after.findings).verdict;
        expect(weight[harder]).toBeGreaterThanOrEqual(weight[milder]);
      }),
      { seed: 33, numRuns: 200 }
    );
  });
});
