import { describe, expect, it } from 'vitest';
import { totalCount } from '$lib/engine/thickness';
import type { JobView, NewEvent } from '$lib/journal';
import { stockOf } from '../stock.ts';
import { tallyPallets } from '../queries.ts';
import { MemoryStore } from '../../../../tests/support/memory-store.ts';
import { samplesOf } from './grades-ground.ts';
import { handsOf } from './grades-hands.ts';
import { sampleAndSince, sortedUnder } from './grades-sorted.ts';
import { tapsAndGauge } from './taps-and-gauge.ts';

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

  const together = (view: JobView) =>
    tapsAndGauge(view, samplesOf(tallyPallets(view), stockOf(view)), handsOf(view));

  it('do not count taps of a hand that was never checked', async () => {
    const { view } = await jobOf([
      ['', [opened, pallet('a', 100), ...readings]],
      ['', [grades]],
      ['Finch', [tapped('a', 1), tapped('a', 2)]]
    ]);
    expect(together(view)).toEqual({ ok: false, reason: 'no-spot-checks' });
  });

  it('count every slate once: gauged, or tapped by a hand that was checked', async () => {
    const { view } = await jobOf([
      ['', [opened, pallet('a', 40), pallet('b', 40), ...readings]],
      ['', [grades]],
      ['Finch', [...Array<NewEvent>(20).fill(tapped('b', 1)), ...LEARNT]],
      ['', [tapped('b', 2)]]
    ]);
    const told = together(view);
    if (!told.ok) throw new Error(told.reason);
    expect(told.tapsCounted).toBe(20);
    expect(told.tapsLeftOut).toBe(1);
    expect(totalCount(told.bins)).toBeCloseTo(7 + 12, 9); // readings, and checks of the thick pile
    // Pallet B was only tapped, all thick: it must come out thicker than pallet A.
    const meanOf = (id: string) => {
      const own = told.sample.pallets.find(({ palletId }) => palletId === id)?.spread;
      if (!own) throw new Error(id);
      return own.counts.reduce((sum, n, bin) => sum + n * own.hundredths[bin], 0) / totalCount(own);
    };
    expect(meanOf('b')).toBeGreaterThan(meanOf('a'));
    const finch = handsOf(view).find(({ sorter }) => sorter === 'Finch');
    const thick = told.told(`${finch?.gradesId}|Finch`, 1, 'b');
    expect(thick && totalCount(thick)).toBeCloseTo(1, 12);
    expect(told.told(`${finch?.gradesId}|Finch`, 3, 'b')).toBeUndefined();
    expect(told.told(`${finch?.gradesId}|Finch`, 1, 'c')).toBeUndefined();
    expect(told.told('|Nobody', 1, 'b')).toBeUndefined();
  });

  it('keep a check with its pallet, and one of no pallet for all', async () => {
    const { view } = await jobOf([
      ['', [opened, pallet('a', 40), pallet('b', 40), ...readings]],
      ['', [grades]],
      ['Finch', [tapped('a', 1), tapped('b', 1), checked(1, 700)]],
      [
        'Finch',
        [
          {
            type: 'slateChecked',
            body: { palletId: null, of: 'tap', pile: 1, gradesId: '$', points: [500] }
          }
        ]
      ]
    ]);
    const told = together(view);
    if (!told.ok) throw new Error(told.reason);
    const key = `${handsOf(view)[0].gradesId}|Finch`;
    const [own, other] = ['a', 'b'].map((id) => told.told(key, 1, id));
    // 4 of both checks are mixed in with the pallet's own: (1 + 2) / 5 thick, and 2 / 4
    expect(own?.counts[1]).toBeCloseTo(3 / 5, 12);
    expect(other?.counts[1]).toBeCloseTo(2 / 4, 12);
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
