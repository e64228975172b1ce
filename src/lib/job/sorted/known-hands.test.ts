import { describe, expect, it } from 'vitest';
import { totalCount } from '$lib/engine/thickness';
import {
  EMPTY_VIEW,
  type JobView,
  type NewEvent,
  type StoredEvent,
  eventVersion,
  foldAll,
  readEvent
} from '$lib/journal';
import { stockOf } from '../stock.ts';
import { knownHands, rememberKnownHands, toldByTap } from './known-hands.ts';

const OLD = '01900000-0000-7000-8000-000000000001';
const NEW = '01900000-0000-7000-8000-000000000002';
let place = 0;

function add(view: JobView, act: NewEvent, sorter = 'Finch'): JobView {
  const event: StoredEvent = {
    id: `01900000-0000-7000-8000-${String(++place).padStart(12, '0')}`,
    jobId: '01900000-0000-7000-8000-00000000ffff',
    deviceId: '01900000-0000-7000-8000-00000000fffe',
    deviceSeq: place,
    at: '2024-05-01T08:00:00.000Z',
    sorter,
    type: act.type,
    v: eventVersion(act.type),
    body: { ...act.body } as StoredEvent['body']
  };
  return foldAll([readEvent(event)], view);
}

const tap = (pile: number, gradesId: string): NewEvent => ({
  type: 'slateTapped',
  body: { palletId: 'a', pile, gradesId }
});
const check = (pile: number, hundredths: number): NewEvent => ({
  type: 'slateChecked',
  body: { palletId: 'a', of: 'tap', pile, gradesId: OLD, points: [hundredths] }
});
const grades = (mm: number): NewEvent => ({
  type: 'gradesSet',
  body: { method: 'byHand', thresholdsMm: [mm] }
});

/** One pallet, gauged from 5 to 7 mm; Finch is known under the older of two sets of grades. */
function job(): JobView {
  place = 0;
  const acts: NewEvent[] = [
    grades(6),
    grades(6.4),
    { type: 'palletAdded', body: { palletId: 'a', label: 'A', slates: 500 } },
    ...Array.from({ length: 21 }, (_, step): NewEvent => ({
      type: 'slateGauged',
      body: { palletId: 'a', points: [500 + 10 * step], gradesId: null, pile: null }
    })),
    ...[1, 1, 1, 2, 2, 2].map((pile) => tap(pile, OLD)),
    ...[580, 610, 620, 630, 650, 660, 680].map((mm) => check(1, mm)),
    ...[520, 540, 550, 570, 580, 590, 620].map((mm) => check(2, mm))
  ];
  return acts.reduce((view, act) => add(view, act), EMPTY_VIEW);
}

const meanOf = (bins: { hundredths: Int32Array; counts: Float64Array }) =>
  bins.hundredths.reduce((sum, mm, bin) => sum + mm * bins.counts[bin], 0) / totalCount(bins);

describe('toldByTap', () => {
  it('tells a thick tap thicker than a thin one, as chances that add up to one', () => {
    const view = job();
    const known = knownHands(view, stockOf(view));
    const told = [1, 2].map((pile) =>
      toldByTap(known, { palletId: 'a', gradesId: OLD, sorter: 'Finch', pile }, [6.4])
    );
    if (!told[0] || !told[1]) throw new Error('the hand is known');
    expect(totalCount(told[0])).toBeCloseTo(1, 12);
    expect(meanOf(told[0])).toBeGreaterThan(meanOf(told[1]));
  });

  it('takes a hand known under other grades to stray as widely about those in force', () => {
    const view = job();
    const known = knownHands(view, stockOf(view));
    const at = (gradesId: string) =>
      toldByTap(known, { palletId: 'a', gradesId, sorter: 'Finch', pile: 1 }, [6.4]);
    const [old, now] = [at(OLD), at(NEW)];
    if (!old || !now) throw new Error('the hand is known');
    expect(meanOf(now)).toBeGreaterThan(meanOf(old)); // cut at 6.4 mm instead of near 6 mm
  });

  it('tells nothing of a hand that no spot check tells, nor of a pallet that is not there', () => {
    const view = job();
    const known = knownHands(view, stockOf(view));
    const own = { palletId: 'a', gradesId: OLD, sorter: 'Finch', pile: 1 };
    expect(toldByTap(known, { ...own, sorter: 'Wren' }, [6.4])).toBeUndefined();
    expect(toldByTap(known, { ...own, palletId: 'b' }, [6.4])).toBeUndefined();
  });
});

describe('rememberKnownHands', () => {
  it('works the hands out anew after a tap, and not after a course is laid', () => {
    const known = rememberKnownHands();
    const view = job();
    const first = known(view, stockOf(view));
    const laid = add(view, {
      type: 'courseLaid',
      body: { slopeId: 's', course: 1, piles: [{ pile: 1, pieces: 3 }] }
    });
    expect(known(laid, stockOf(laid))).toBe(first);
    const tapped = add(laid, tap(1, NEW));
    expect(known(tapped, stockOf(tapped))).not.toBe(first);
  });
});
