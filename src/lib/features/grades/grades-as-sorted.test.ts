import { describe, expect, it } from 'vitest';
import type { Hand } from '$lib/engine/statistics';
import { binsFromPairs } from '$lib/engine/thickness';
import { sortedByGauge, sortedByHands } from './grades-as-sorted.ts';

const CUTS = [6.5, 5.5];
const ground = Object.freeze({
  bins: binsFromPairs(Array.from({ length: 41 }, (_, step) => [400 + 10 * step, 1])),
  stockSlates: 410,
  courses: [],
  kickAllowanceMm: 1
});

const hand = (sdMm: number, thresholdsMm: readonly number[] = CUTS): Hand => ({
  ok: true,
  checks: 40,
  thresholdsMm,
  thresholdStandardErrorsMm: thresholdsMm.map(() => 0.1),
  sdMm,
  sdStandardErrorMm: 0.05,
  logLikelihood: -20
});
const unknown = { ok: false, reason: 'too-few-checks', missing: [1, 0, 0] } as const;

const kickersOf = ({ figures }: { figures: { expectedKickersPer100Joints: number } }): number =>
  figures.expectedKickersPer100Joints;

describe('the figures as really sorted', () => {
  it('are worse by a gauge that strays, and worse still by a hand', () => {
    const exact = sortedByGauge(ground, CUTS, 0.001);
    const gauge = sortedByGauge(ground, CUTS, 0.1);
    const [felt] = sortedByHands(ground, CUTS, [
      { sorter: 'Finch', hand: hand(0.4), thresholdsMm: CUTS }
    ]);
    expect(kickersOf(gauge)).toBeGreaterThan(kickersOf(exact));
    expect(kickersOf(felt)).toBeGreaterThan(kickersOf(gauge));
    expect(felt).toMatchObject({ by: 'hand', sorter: 'Finch', sdMm: 0.4, isBiasCounted: true });
  });

  it('take of each sorter what was learnt last, and assume an error for those not known', () => {
    const told = sortedByHands(ground, CUTS, [
      { sorter: 'Finch', hand: hand(0.4), thresholdsMm: [6.8, 5.2] },
      { sorter: 'Wren', hand: unknown, thresholdsMm: CUTS },
      { sorter: 'Finch', hand: hand(0.2), thresholdsMm: CUTS },
      { sorter: 'Finch', hand: unknown, thresholdsMm: undefined }
    ]);
    expect(told.map(({ by, sorter, sdMm }) => [by, sorter, sdMm])).toEqual([
      ['hand', 'Finch', 0.2],
      ['assumed', '', 0.5]
    ]);
  });

  it('reckon with a hand’s own boundaries only where it was learnt under those asked about', () => {
    const own = [6.9, 5.9];
    const [under, elsewhere] = [CUTS, [6.8, 5.2]].map(
      (thresholdsMm) =>
        sortedByHands(ground, CUTS, [{ sorter: 'Finch', hand: hand(0.2, own), thresholdsMm }])[0]
    );
    expect(under.isBiasCounted).toBe(true);
    expect(elsewhere.isBiasCounted).toBe(false);
    // it calls thick from 6.9 mm, so fewer slates land on the thick pile
    const thick = ({ figures }: typeof under): number => figures.piles[0].predictedSlates;
    expect(thick(under)).toBeLessThan(thick(elsewhere) - 20);
  });
});
