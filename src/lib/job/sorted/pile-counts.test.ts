import { describe, expect, it } from 'vitest';
import { createRandom, shuffled } from '$lib/engine/random';
import { estimateGrade } from '$lib/engine/statistics';
import { binsFromPairs, totalCount } from '$lib/engine/thickness';
import type { Grades, PalletTally } from '../queries.ts';
import type { PlanGround } from '../plan-request.ts';
import { pileCounts } from './pile-counts.ts';

/** Deliveries invented for each case. */
const ROUNDS = 400;

const GRADES = { thresholdsMm: [6] } as unknown as Grades;

/** A pallet of 1000 slates: some gauged and put back, some on the two piles by gauge or by taps. */
function pallet(
  palletId: string,
  readings: [number, number][],
  { isPiled = false, tapped = [0, 0] } = {}
): PalletTally {
  const bins = binsFromPairs(readings);
  const none = binsFromPairs([]);
  const thick = readings.reduce((sum, [at, slates]) => sum + (at >= 600 ? slates : 0), 0);
  const gaugedOn = isPiled ? [thick, totalCount(bins) - thick] : [0, 0];
  const onPile = tapped.map((slates, pile) => slates + gaugedOn[pile]);
  return {
    palletId,
    label: palletId,
    slates: 1000,
    gaugedBins: bins,
    putBackBins: isPiled ? none : bins,
    piledBins: isPiled ? bins : none,
    gauged: totalCount(bins),
    sampled: 0,
    tapped: tapped[0] + tapped[1],
    setAside: 0,
    onPile: new Map(onPile.map((slates, index) => [index + 1, slates])),
    sorted: onPile[0] + onPile[1]
  };
}

function groundOf(pallets: readonly PalletTally[], toCome: readonly number[]): PlanGround {
  return {
    left: [{ slates: 400 }, { slates: 600 }],
    undereave: [],
    stock: {
      piles: toCome.map((slates, index) => ({ grade: index + 1, toCome: slates, countSd: 0 })),
      pallets: pallets.map(({ palletId, label }) => ({
        palletId,
        label,
        usable: 1000,
        slatesOfPile: []
      }))
    }
  } as unknown as PlanGround;
}

const sdOf = (pallets: readonly PalletTally[], toCome = [400, 600]): number[] | undefined =>
  pileCounts(groundOf(pallets, toCome), pallets, GRADES)?.map(({ sdSlates }) => sdSlates);

describe('pileCounts', () => {
  it('is sure of slates that lie on the piles, without any readings', () => {
    const none = pallet('a', []);
    expect(pileCounts(groundOf([none], [0, 0]), [none], undefined)).toEqual([
      { meanSlates: 400, takenFirst: 0, sdSlates: 0 },
      { meanSlates: 600, takenFirst: 0, sdSlates: 0 }
    ]);
  });

  it('is as unsure of a pile counted by its height as the height is', () => {
    const read = pallet('a', [
      [650, 40],
      [550, 60]
    ]);
    const withSd = (toCome: readonly number[]): PlanGround => {
      const ground = groundOf([read], toCome);
      const piles = ground.stock.piles.map((one, at) => ({ ...one, countSd: at === 0 ? 12 : 0 }));
      return { ...ground, stock: { ...ground.stock, piles } };
    };
    expect(pileCounts(withSd([0, 0]), [read], GRADES)?.map(({ sdSlates }) => sdSlates)).toEqual([
      12, 0
    ]);
    const [alone] = sdOf([read]) ?? [];
    const [both] = pileCounts(withSd([400, 600]), [read], GRADES) ?? [];
    expect(both.sdSlates).toBeCloseTo(Math.hypot(alone, 12), 9);
  });

  it('does not know without grades, and without readings', () => {
    const read = pallet('a', [[650, 9]]);
    expect(pileCounts(groundOf([read], [400, 600]), [read], undefined)).toBeUndefined();
    expect(sdOf([pallet('a', [])])).toBeUndefined();
  });

  it('is as unsure as the lower end of the interval that Grades shows', () => {
    const read = pallet('a', [
      [650, 40],
      [550, 60]
    ]);
    const shown = estimateGrade([{ palletId: 'a', slates: 1000, bins: read.gaugedBins }], {
      fromMm: 6,
      toMm: Infinity
    });
    const [thick] = sdOf([read]) ?? [];
    if (!shown.ok) throw new Error(shown.reason);
    expect(shown.count - 1.959964 * thick).toBeCloseTo(1000 * shown.shareLow, 9);
  });

  it('is unsure only of the slates still to come, once the piles are counted by hand', () => {
    const read = pallet('a', [
      [650, 40],
      [550, 60]
    ]);
    const [none] = sdOf([read]) ?? [];
    const [nearlyAll] = sdOf([read], [8, 12]) ?? [];
    const ofChance = Math.sqrt(0.4 * 0.6 * 20 * (1 - 20 / 1000));
    expect(nearlyAll).toBeCloseTo(Math.hypot((none * 20) / 1000, ofChance), 9);
  });

  // Against the simplest rivals: counts that change nothing, and counted piles taken to be certain.
  it.each([20, 200, 600])(
    'tells how far piles counted but for %i slates are off, where the rivals do not',
    (still) => {
      const random = createRandom(still);
      let [squares, told, ignoring] = [0, 0, 0];
      for (let round = 0; round < ROUNDS; round++) {
        // 1,000 slates, 4 in 10 of them thick; 100 were gauged and put back, some are still to come.
        const isThick = shuffled([...Array(1000).keys()], random).map((at) => at < 400);
        const gauged = isThick.slice(0, 100).filter(Boolean).length;
        const left = shuffled(isThick, random).slice(0, still).filter(Boolean).length;
        squares += (left - (still * gauged) / 100) ** 2;
        const read = pallet('a', [
          [650, gauged],
          [550, 100 - gauged]
        ]);
        const toCome = [Math.round(0.4 * still), still - Math.round(0.4 * still)];
        told += (sdOf([read], toCome) ?? [])[0] ** 2;
        ignoring += (sdOf([read]) ?? [])[0] ** 2;
      }
      const [off, says, rival] = [squares, told, ignoring].map((sum) => Math.sqrt(sum / ROUNDS));
      // The end of an interval that holds 95 in 100 asks for somewhat more than the plain error.
      expect(says / off).toBeGreaterThan(0.95);
      expect(says / off).toBeLessThan(1.35);
      expect(Math.abs(says - off), 'better than to ignore the counts').toBeLessThan(
        Math.abs(rival - off)
      );
      expect(off, 'and than to call counted piles certain').toBeGreaterThan(Math.abs(says - off));
    }
  );

  it('is no surer by the slates gauged on to piles than by as many put back', () => {
    const readings: [number, number][] = [
      [650, 100],
      [550, 100]
    ];
    const [putBack] = sdOf([pallet('a', readings)], [500, 500]) ?? [];
    const [piled] = sdOf([pallet('a', readings, { isPiled: true })], [400, 400]) ?? [];
    expect(piled).toBe(putBack);
    // 800 unseen slates, told by 200: SD 1000 √(0.25 · 0.8 / 200) = 31.6
    expect(piled).toBeGreaterThan(31.6);
    expect(piled).toBeLessThan(34);
  });

  it('is surer by the slates tapped on to piles: fewer are still to come', () => {
    const readings: [number, number][] = [
      [650, 20],
      [550, 20]
    ];
    const [before] = sdOf([pallet('a', readings)]) ?? [];
    const [after] = sdOf([pallet('a', readings, { tapped: [200, 300] })], [200, 300]) ?? [];
    expect(after / before).toBeGreaterThan(0.48);
    expect(after / before).toBeLessThan(0.52);
  });

  it('is not sure where few were gauged, even if all of them are of one pile', () => {
    const [thick] = sdOf([pallet('a', [[650, 12]])]) ?? [];
    expect(thick).toBeGreaterThan(100); // 0 of 12: up to a quarter may be of the other pile
  });

  it('is not surer by many readings of another pallet than the few of this one let it be', () => {
    const many: [number, number][] = [
      [650, 30],
      [550, 270]
    ];
    const [thick] = sdOf([pallet('a', many), pallet('b', [[550, 5]])], [800, 1200]) ?? [];
    // what the five alone leave open: by the plain formula the second pallet would add nothing
    const [alone] = sdOf([pallet('a', many)]) ?? [];
    expect(thick).toBeGreaterThan(2 * alone);
  });
});
