import { describe, expect, it } from 'vitest';
import { totalCount } from '$lib/engine/thickness';
import { fusePallets } from '$lib/engine/statistics';
import type { JobView, NewEvent } from '$lib/journal';
import { stockOf } from '../stock.ts';
import { tallyPallets } from '../queries.ts';
import { MemoryStore } from '../../../../tests/support/memory-store.ts';
import { fusedSpread, toFuse } from './grades-fused.ts';
import { samplesOf } from './grades-ground.ts';
import { handsOf } from './grades-hands.ts';
import { sampleAndSince, sortedUnder } from './grades-sorted.ts';

const JOB = '01998f00-0000-7000-8000-0000000000aa';

/** A job made of acts, each with who did it; `$` in a gradesId stands for the grades set last. */
async function jobOf(steps: readonly (readonly [string, NewEvent[]])[]): Promise<{
  view: JobView;
  gradesId: string;
}> {
  let clock = Date.UTC(2026, 4, 1, 8);
  let digits = 0;
  const randomHex = () => (digits++).toString(16).padStart(16, '0');
  const store = new MemoryStore({ now: () => (clock += 1000), randomHex });
  let gradesId = '';
  let view: JobView = new Map();
  for (const [sorter, acts] of steps) {
    const filled = JSON.parse(JSON.stringify(acts).replaceAll('"$"', `"${gradesId}"`));
    const appended = await store.append(JOB, filled as NewEvent[], sorter);
    view = appended.view;
    gradesId = appended.events.findLast(({ type }) => type === 'gradesSet')?.id ?? gradesId;
  }
  return { view, gradesId };
}

const pallet = (palletId: string, slates: number): NewEvent => ({
  type: 'palletAdded',
  body: { palletId, label: palletId.toUpperCase(), slates }
});
const gauged = (palletId: string, hundredths: number, pile: number | null = null): NewEvent => ({
  type: 'slateGauged',
  body: { palletId, points: [hundredths], gradesId: pile ? '$' : null, pile }
});
const tapped = (palletId: string, pile: number): NewEvent => ({
  type: 'slateTapped',
  body: { palletId, pile, gradesId: '$' }
});
const checked = (pile: number, hundredths: number, of: 'tap' | 'pile' = 'tap'): NewEvent => ({
  type: 'slateChecked',
  body: { palletId: 'a', of, pile, gradesId: '$', points: [hundredths] }
});
const grades: NewEvent = {
  type: 'gradesSet',
  body: { method: 'byHand', thresholdsMm: [6], sampleSlates: 4 }
};
const opened: NewEvent = { type: 'jobOpened', body: { name: 'Job' } };

/** Checks in which a hand errs now and then near its boundary: enough to know it. */
const SOME = [
  checked(1, 700),
  checked(1, 650),
  checked(1, 620),
  checked(1, 590),
  checked(1, 610),
  checked(2, 600),
  checked(2, 580),
  checked(2, 550),
  checked(2, 520),
  checked(2, 615),
  checked(1, 640),
  checked(2, 500)
];
const LEARNT = [...SOME, ...SOME];

describe('hands', () => {
  it('are none before anybody taps', async () => {
    const { view } = await jobOf([['', [opened, pallet('a', 100)]]]);
    expect(handsOf(view)).toEqual([]);
  });

  it('are kept apart by sorter and by grades, with what each tapped and checked', async () => {
    const { view, gradesId } = await jobOf([
      ['', [opened, pallet('a', 100)]],
      ['', [grades]],
      ['Finch', [tapped('a', 1), tapped('a', 1), tapped('a', 2), checked(1, 590)]],
      ['', [tapped('a', 2)]],
      ['', [grades]],
      ['Finch', [tapped('a', 1)]]
    ]);
    const hands = handsOf(view);
    expect(hands.map(({ sorter, taps }) => [sorter, taps])).toEqual([
      ['', [0, 1]],
      ['Finch', [2, 1]],
      ['Finch', [1, 0]]
    ]);
    expect(hands[1].table).toEqual([
      [0, 1],
      [0, 0]
    ]);
    expect(hands[1].hand).toEqual({ ok: false, reason: 'too-few-checks', missing: [2, 3] });
    expect(hands[2].gradesId).toBe(gradesId);
  });

  it('do not learn from checks of slates that were picked off a pile', async () => {
    const { view } = await jobOf([
      ['', [opened, pallet('a', 100)]],
      ['', [grades]],
      ['Finch', [tapped('a', 1), checked(1, 700, 'pile')]]
    ]);
    expect(handsOf(view)[0].checks).toEqual([]);
  });
});

describe('taps and gauge together', () => {
  const readings = [500, 540, 580, 600, 620, 660, 700].map((mm) => gauged('a', mm));

  it('do not count taps whose hand is unknown', async () => {
    const { view } = await jobOf([
      ['', [opened, pallet('a', 100), ...readings]],
      ['', [grades]],
      ['Finch', [tapped('a', 1), tapped('a', 2)]]
    ]);
    const hands = handsOf(view);
    const ground = toFuse(view, samplesOf(tallyPallets(view), stockOf(view)), hands);
    const found = fusePallets(ground.pallets, ground.sorters);
    expect(fusedSpread(view, ground, hands, found)).toEqual({
      ok: false,
      reason: 'no-spot-checks'
    });
  });

  it('count every slate once: gauged, or tapped by a known hand', async () => {
    const { view } = await jobOf([
      ['', [opened, pallet('a', 40), pallet('b', 40), ...readings]],
      ['', [grades]],
      ['Finch', [...Array<NewEvent>(20).fill(tapped('b', 1)), ...LEARNT]],
      ['', [tapped('b', 2)]]
    ]);
    const hands = handsOf(view);
    const finch = hands.find(({ sorter }) => sorter === 'Finch');
    expect(finch?.hand.ok).toBe(true);
    const ground = toFuse(view, samplesOf(tallyPallets(view), stockOf(view)), hands);
    expect(ground.pallets.map(({ taps }) => taps)).toEqual([
      [
        [0, 0],
        [0, 0]
      ],
      [
        [0, 1],
        [20, 0]
      ]
    ]);
    const found = fusePallets(ground.pallets, ground.sorters);
    const fused = fusedSpread(view, ground, hands, found);
    if (!fused.ok) throw new Error(fused.reason);
    expect(fused.tapsCounted).toBe(20);
    expect(fused.tapsLeftOut).toBe(1);
    expect(totalCount(fused.bins)).toBeCloseTo(27, 9);
    // Pallet B was only tapped, all thick: it must come out thicker than pallet A.
    const meanOf = (id: string) => {
      const own = fused.pallets.find(({ palletId }) => palletId === id)?.bins;
      if (!own) throw new Error(id);
      return own.counts.reduce((sum, n, bin) => sum + n * own.hundredths[bin], 0) / totalCount(own);
    };
    expect(meanOf('b')).toBeGreaterThan(meanOf('a'));
    const told = fused.told('b', 1, `${finch?.gradesId}|Finch`);
    expect(told && totalCount(told)).toBeCloseTo(1, 12);
    expect(fused.told('b', 3, `${finch?.gradesId}|Finch`)).toBeUndefined();
    expect(fused.told('b', 1, '|Nobody')).toBeUndefined();
  });
});

describe('slates on the piles', () => {
  it('stay under the grades they were sorted under', async () => {
    const { view, gradesId } = await jobOf([
      ['', [opened, pallet('a', 100), gauged('a', 610)]],
      ['', [grades]],
      ['', [gauged('a', 620, 1), tapped('a', 2)]],
      ['', [grades]],
      ['', [gauged('a', 630, 1), gauged('a', 520, 2)]]
    ]);
    const sorted = sortedUnder(view);
    expect(sorted.map(({ slates }) => slates)).toEqual([2, 2]);
    expect(sorted[1].gradesId).toBe(gradesId);
    expect(
      sorted[0].onPiles.map(({ pile, bins, tapped }) => [pile, [...bins.hundredths], tapped])
    ).toEqual([
      [1, [620], 0],
      [2, [], 1]
    ]);
  });

  it('are told apart from the sample of their own pallet', async () => {
    const { view, gradesId } = await jobOf([
      ['', [opened, pallet('a', 100), pallet('b', 100), pallet('c', 100), gauged('a', 610)]],
      ['', [gauged('b', 700)]],
      ['', [grades]],
      ['', [gauged('a', 620, 1), tapped('a', 2)]],
      ['', [grades]],
      ['', [gauged('a', 630, 1), gauged('a', 520, 2), gauged('c', 580, 2), gauged('c', 560)]]
    ]);
    expect(
      sampleAndSince(view, gradesId).map(({ sample, since }) => [
        [...sample.hundredths],
        [...since.hundredths]
      ])
    ).toEqual([
      [
        [610, 620],
        [520, 630]
      ],
      [[700], []],
      [[560], [580]]
    ]);
  });
});
