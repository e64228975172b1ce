import { describe, expect, it } from 'vitest';
import { type Random, createRandom, randomBelow, randomNormal, shuffled } from '$lib/engine';
import { misgradedPiles, splitIntoPiles } from '$lib/engine/grading';
import { normalMisgrading } from '$lib/engine/grading/misgrading';
import {
  type KnownStack,
  binsFromPairs,
  countByHeight,
  packedThickness
} from '$lib/engine/thickness';
import { ASSUMED_HAND_SD_MM } from '../../src/lib/job/slate-judgement.ts';
import { thicknessBetween } from '../../src/lib/job/sorted/thickness-of-piles.ts';
import { leastShare, report, rounds } from '../support/rounds.ts';

const FULL = 4000;
const JOBS = rounds(400, FULL);
const HIGHEST_STACK = 80;

interface Pack {
  /** Air beside a slate of mean thickness, mm. */
  readonly airMm: number;
  /** 0: the same for all slates; 1: as much more as the slate is thicker. */
  readonly growsWithThickness: number;
}

/** Height of a stack as it is read off a tape, to the millimetre; shares no code with the rule. */
function heightOf(slates: readonly number[], { airMm, growsWithThickness }: Pack, random: Random) {
  const tightness = 0.05 * randomNormal(random);
  const height = slates.reduce((sum, mm) => {
    const air = airMm * (1 + growsWithThickness * (mm / 6.2 - 1));
    return sum + mm + Math.max(0, air + 0.2 * randomNormal(random)) + tightness;
  }, 0);
  return Math.round(height + 2 * randomNormal(random));
}

interface Told {
  readonly truth: number;
  readonly slates: number;
  readonly low: number;
  readonly high: number;
  /** Height ÷ the mean of the pile, without packing. */
  readonly plain: number;
  /** Height ÷ the height of a slate in the one stack that was counted, whichever pile it is of. */
  readonly sameForAll: number;
  readonly isOwn: boolean;
}

/** One invented job: sampled, sorted by a hand, one stack counted, every pile measured by its stacks. */
function job(seed: number): Told[] {
  const random = createRandom(seed);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const sdMm = between(0.5, 1.1);
  const stock = Array.from({ length: 900 + randomBelow(random, 1500) }, () =>
    Math.max(3, 6.2 + sdMm * randomNormal(random))
  );
  const thresholdsMm = [6.2 + between(0.3, 0.6) * sdMm, 6.2 - between(0.3, 0.6) * sdMm];
  const sample = shuffled(stock, random).slice(0, 90 + randomBelow(random, 120));
  const bins = binsFromPairs(sample.map((mm) => [Math.round(mm * 100), 1] as const));
  const sharp = splitIntoPiles(bins, thresholdsMm);
  const byHand = misgradedPiles(bins, thresholdsMm, normalMisgrading(ASSUMED_HAND_SD_MM));
  const piles = sharp.map((own, at) => thicknessBetween(own, byHand[at]));

  const handSdMm = between(0, 0.6);
  const handBiasMm = 0.1 * randomNormal(random);
  const heaps: number[][] = [[], [], []];
  for (const mm of stock) {
    const felt = mm + handBiasMm + handSdMm * randomNormal(random);
    heaps[thresholdsMm.filter((threshold) => felt < threshold).length].push(mm);
  }
  const pack = { airMm: between(0.25, 0.9), growsWithThickness: random() };
  const counted = randomBelow(random, 3);
  const stack = shuffled(heaps[counted], random).slice(0, 25 + randomBelow(random, 40));
  const known: KnownStack[] = [
    { pile: counted + 1, slates: stack.length, totalMm: heightOf(stack, pack, random) }
  ];
  return heaps.flatMap((heap, index): Told[] => {
    const thickness = piles[index];
    const packed = packedThickness(index + 1, piles, known);
    if (!packed.ok || !thickness || heap.length < 30) return [];
    const stacks = Array.from({ length: Math.ceil(heap.length / HIGHEST_STACK) }, (_, at) =>
      heap.slice(at * HIGHEST_STACK, (at + 1) * HIGHEST_STACK)
    );
    const heightsMm = stacks.map((slates) => heightOf(slates, pack, random));
    const heightMm = heightsMm.reduce((sum, mm) => sum + mm, 0);
    return [
      {
        truth: heap.length,
        ...countByHeight(heightsMm, packed),
        plain: heightMm / thickness.meanMm,
        sameForAll: (heightMm * known[0].slates) / known[0].totalMm,
        isOwn: index === counted
      }
    ];
  });
}

const told = Array.from({ length: JOBS }, (_, seed) => job(seed + 1)).flat();
const own = told.filter(({ isOwn }) => isOwn);
const other = told.filter(({ isOwn }) => !isOwn);

const held = (of: readonly Told[]): number =>
  of.filter(({ truth, low, high }) => truth >= low && truth <= high).length / of.length;
const offBy = (of: readonly Told[], guess: (one: Told) => number): number =>
  Math.sqrt(of.reduce((sum, one) => sum + (guess(one) / one.truth - 1) ** 2, 0) / of.length);
const width = (of: readonly Told[]): number =>
  of.reduce((sum, { low, high, truth }) => sum + (high - low) / truth, 0) / of.length / 2;

describe('slates of a pile by its height', () => {
  it('its interval holds, of the pile whose stack was counted and of the others', () => {
    for (const [name, of] of [
      ['own stack', own],
      ['stack of another pile', other]
    ] as const) {
      report(`count by height, ${name}`, {
        piles: of.length,
        held: held(of).toFixed(3),
        'half width %': (100 * width(of)).toFixed(1),
        'off by %': (100 * offBy(of, ({ slates }) => slates)).toFixed(2),
        'without packing %': (100 * offBy(of, ({ plain }) => plain)).toFixed(2),
        'one packed thickness for all %': (100 * offBy(of, ({ sameForAll }) => sameForAll)).toFixed(
          2
        )
      });
      expect(held(of), name).toBeGreaterThan(leastShare(0.94, of.length, FULL));
      // and does not hold for being far too wide
      expect(width(of), name).toBeLessThan(3 * offBy(of, ({ slates }) => slates));
    }
  });

  it('it is nearer than height ÷ mean, and than one packed thickness for all piles', () => {
    const ours = ({ slates }: Told): number => slates;
    expect(offBy(told, ours)).toBeLessThan(0.5 * offBy(told, ({ plain }) => plain));
    expect(offBy(other, ours)).toBeLessThan(0.5 * offBy(other, ({ sameForAll }) => sameForAll));
  });
});
