import { describe, expect, it } from 'vitest';
import { type Random, createRandom, randomNormal } from '$lib/engine';
import { naturalBreaks } from '$lib/engine/grading';
import { binsFromPairs } from '$lib/engine/thickness';
import { type JudgingGround, UsualRange, isWildReading, judgeSlate, likelyRangeOf } from '$lib/job';
import { EMPTY_VIEW, type JobView, type NewEvent, foldAll, readEvent } from '$lib/journal';
import { rounds } from '../support/rounds.ts';

const SEED = 65;
const ROUNDS = rounds(12, 200);
const SLATES_A_PALLET = 60;
const KICK_MM = 1.5;

interface Reading {
  readonly palletId: string;
  readonly hundredths: number;
  /** What the slate measures in truth. */
  readonly true: number;
}

/** Slates read pallet by pallet; of some the digits slip: a half, a double, or a neighbour's key. */
function readingsOf(meansMm: readonly number[], slips: number, random: Random): Reading[] {
  return meansMm.flatMap((meanMm, pallet) =>
    Array.from({ length: SLATES_A_PALLET }, () => {
      const measured = Math.max(250, Math.round(100 * (meanMm + 0.5 * randomNormal(random))));
      const isSlip = random() < slips;
      const hundredths = isSlip ? Math.round(measured * (random() < 0.5 ? 2.1 : 0.45)) : measured;
      return { palletId: `p${pallet}`, hundredths, true: measured };
    })
  );
}

/** What counts of readings that nobody answers, taken one after the other as Sort takes them. */
function counted(readings: readonly Reading[], isHeld: Rule): Reading[] {
  let view: JobView = EMPTY_VIEW;
  const usual = new UsualRange();
  return readings.filter((reading, at) => {
    const { palletId, hundredths } = reading;
    const ground = { ...GROUND, usualRange: usual.at(view, at + 1) };
    if (isHeld(hundredths / 100, ground, view)) return false;
    const body = { palletId, points: [hundredths], gradesId: null, pile: null };
    view = foldAll([readEvent(stored({ type: 'slateGauged', body }, at))], view);
    return true;
  });
}

type Rule = (thicknessMm: number, ground: JudgingGround, view: JobView) => boolean;
const asBuilt: Rule = (thicknessMm, ground, view) =>
  judgeSlate(thicknessMm, ground).rogue !== null && isWildReading(thicknessMm, likelyRangeOf(view));
/** The simplest rivals: nothing is held, or whatever fits no neighbour. */
const nothing: Rule = () => false;
const everyRogue: Rule = (thicknessMm, ground) => judgeSlate(thicknessMm, ground).rogue !== null;

const GROUND: JudgingGround = {
  ...{ thresholdsMm: undefined, gaugeSdMm: null, orderBand: undefined, usualRange: undefined },
  kickAllowanceMm: KICK_MM
};

function stored(event: NewEvent, at: number) {
  const id = (n: number) => `01900000-0000-7000-8000-${String(n).padStart(12, '0')}`;
  return {
    ...event,
    ...{ id: id(at), jobId: id(999_999), deviceId: id(999_998), deviceSeq: at + 1 },
    ...{ at: '2024-05-01T08:00:00.000Z', sorter: '', v: 1 }
  };
}

/** How far the boundaries of three piles lie from those of what the slates measure in truth, mm. */
function boundariesOff(taken: readonly number[], truth: readonly number[]): number {
  const [own, right] = [taken, truth].map((all) => {
    const cut = naturalBreaks(binsFromPairs(all.map((one) => [one, 1])), 3);
    if (!cut.ok) throw new Error('no boundaries');
    return cut.thresholdsMm;
  });
  return Math.max(...own.map((mm, at) => Math.abs(mm - right[at])));
}

const mean = (numbers: readonly number[]) =>
  numbers.reduce((sum, one) => sum + one, 0) / numbers.length;

describe('J65 which readings wait', () => {
  it('where digits slip, boundaries are nearer the truth than if all counted at once', () => {
    const random = createRandom(SEED);
    const off = { asBuilt: [] as number[], nothing: [] as number[] };
    for (let round = 0; round < ROUNDS; round++) {
      const readings = readingsOf([5.6, 6.2, 6, 6.5, 5.8], 0.02, random);
      const truth = readings.map((one) => one.true);
      for (const [name, rule] of Object.entries({ asBuilt, nothing }))
        off[name as keyof typeof off].push(
          boundariesOff(
            counted(readings, rule).map(({ hundredths }) => hundredths),
            truth
          )
        );
    }
    expect(mean(off.asBuilt)).toBeLessThan(0.5 * mean(off.nothing));
  });

  it('thick pallets after thin ones count all the same, where a rule of the kick step loses them', () => {
    const random = createRandom(SEED + 1);
    const kept = { asBuilt: [] as number[], everyRogue: [] as number[] };
    for (let round = 0; round < ROUNDS; round++) {
      const readings = readingsOf([4.8, 5, 8, 8.2], 0, random);
      for (const [name, rule] of Object.entries({ asBuilt, everyRogue })) {
        const thick = counted(readings, rule).filter(({ palletId }) => palletId > 'p1');
        kept[name as keyof typeof kept].push(thick.length / (2 * SLATES_A_PALLET));
      }
    }
    const lost = { asBuilt: 1 - mean(kept.asBuilt), everyRogue: 1 - mean(kept.everyRogue) };
    expect(lost.asBuilt).toBeLessThan(0.02);
    expect(lost.everyRogue).toBeGreaterThan(10 * lost.asBuilt);
  });
});
