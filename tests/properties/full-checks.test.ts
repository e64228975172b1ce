import { describe, expect, it } from 'vitest';
import {
  type MeasuredSlate,
  countInLot,
  drawFullChecks,
  drawSamplingList,
  findAll
} from '$lib/engine/delivery';
import { type Random, createRandom } from '$lib/engine';
import { leastShare, report, rounds } from '../support/rounds.ts';

/**
 * Deliveries whose bowed slates are known, sampled as the app does it: a list by chance, some of its
 * places picked by chance for the full check, and beside them the slates that look bowed to the eye.
 */
const FULL = 1500;
const TRIED = rounds(150, FULL);
const LEVEL = 0.95;
const INSIDE_MM = 1;
const BOWED_MM = 30;

interface Design {
  readonly name: string;
  readonly pallets: number;
  readonly onPallet: number;
  readonly sampled: number;
  readonly picked: number;
  /** Chance that a slate of a pallet, by its number from the top, is bowed. */
  readonly bowed: (pallet: number, slate: number) => number;
}

const DESIGNS: readonly Design[] = [
  {
    name: 'a tenth bowed everywhere',
    pallets: 6,
    onPallet: 700,
    sampled: 100,
    picked: 25,
    bowed: () => 0.1
  },
  {
    name: 'one pallet of four is bad',
    pallets: 4,
    onPallet: 500,
    sampled: 60,
    picked: 15,
    bowed: (pallet) => (pallet === 0 ? 0.6 : 0.02)
  },
  {
    name: 'the top layers are bad',
    pallets: 3,
    onPallet: 300,
    sampled: 80,
    picked: 40,
    bowed: (_, slate) => (slate < 90 ? 0.5 : 0.01)
  },
  {
    name: 'one in a hundred',
    pallets: 5,
    onPallet: 1000,
    sampled: 40,
    picked: 10,
    bowed: () => 0.01
  }
];
const ORDER = {
  lengthMm: 500,
  widthMm: 250,
  nominalThicknessMm: 6,
  texture: 'normal',
  slatesOrdered: 1000
} as const;
/** How often the eye sees a bowed slate, and takes a flat one for bowed. */
const SEEN = 0.8;
const MISTAKEN = 0.02;

/** One delivery: how many of it are bowed, and its sample as it was measured. */
function measured(design: Design, random: Random): { bowed: number; slates: MeasuredSlate[] } {
  const { pallets, onPallet, sampled, picked } = design;
  const isBowed = Array.from({ length: pallets }, (_, pallet) =>
    Array.from({ length: onPallet }, (__, slate) => random() < design.bowed(pallet, slate))
  );
  const lots = isBowed.map((slates, at) => ({
    id: String(at),
    layers: onPallet / 50,
    perLayer: 50,
    count: slates.length
  }));
  const list = drawSamplingList(lots, sampled, random);
  if (!list.ok) throw new Error(list.reason);
  const full = drawFullChecks(list.places, picked, random);
  const slates = list.places.map(({ palletId, layer, place }, at): MeasuredSlate => {
    const isBad = isBowed[Number(palletId)][(layer - 1) * 50 + place - 1];
    const isTaken = full[at] || random() < (isBad ? SEEN : MISTAKEN);
    return {
      palletId,
      drawnAs: 'unsorted sample',
      isFullCheck: full[at],
      pointsMm: [6],
      ...(isTaken && { bowMm: isBad ? BOWED_MM : INSIDE_MM })
    };
  });
  return { bowed: isBowed.flat().filter(Boolean).length, slates };
}

describe('the range of a check that chance picked some slates for', () => {
  it.each(DESIGNS)('holds the truth 95 times in 100: $name', (design) => {
    const random = createRandom(design.sampled + design.pallets);
    const delivered = design.pallets * design.onPallet;
    let covered = 0;
    let byEye = 0;
    for (let round = 0; round < TRIED; round++) {
      const { bowed, slates } = measured(design, random);
      const result = findAll({
        order: ORDER,
        delivered,
        slates,
        plan: { sampleSize: design.sampled, acceptAtMost: 5, acceptableShare: 0.04, basis: [] },
        stacks: [],
        need: { slates: 0, reserve: 0 },
        sorting: {},
        level: LEVEL
      });
      if (!result.ok) throw new Error(result.reason);
      const found = result.findings.outsideOrder.byCheck.find(({ check }) => check === 'flatness');
      if (!found?.countInterval) throw new Error('no range');
      expect(found.drawn?.slates).toBe(design.picked);
      const { low, high } = found.countInterval;
      if (low <= bowed && bowed <= high) covered++;
      const { measured: sampled, failed } = found;
      const rival = countInLot({ found: failed, sampled, lotSize: delivered }, LEVEL);
      if (rival.ok && rival.count.low <= bowed && bowed <= rival.count.high) byEye++;
    }
    report(`full check, ${design.name}`, {
      'holds the truth': covered / TRIED,
      'with those picked by eye': byEye / TRIED
    });
    expect(covered / TRIED).toBeGreaterThan(leastShare(0.94, TRIED, FULL));
    // The simplest rival, all that were measured as if chance had picked them, is no range.
    expect(byEye).toBeLessThan(covered);
  });
});
