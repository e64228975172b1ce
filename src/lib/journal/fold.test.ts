import { describe, expect, it } from 'vitest';
import { readEvent } from './events.ts';
import { EMPTY_VIEW, foldAll } from './fold.ts';
import { current } from './register.ts';
import { canonicalView, minutesOfPallet, palletIds, partOf, sorterNames } from './view.ts';

const JOB = '018f0000-0000-7000-8000-000000000001';
const idAt = (place: number) => `0000${String(place).padStart(4, '0')}-0000-7000-8000-000000000000`;

function eventAt(place: number, type: string, body: object, more: object = {}) {
  return readEvent({
    id: idAt(place),
    jobId: JOB,
    deviceId: JOB,
    deviceSeq: place,
    at: '2026-03-02T08:00:00.000Z',
    sorter: 'Wren',
    type,
    v: 1,
    body,
    ...more
  });
}

const gauged = (place: number, points: number[], more: object = {}) =>
  eventAt(place, 'slateGauged', { palletId: 'p1', points, gradesId: null, pile: null, ...more });
const undo = (place: number, voided: number) =>
  eventAt(place, 'entryVoided', { voids: idAt(voided) });

describe('foldAll', () => {
  it('of nothing is nothing', () => {
    expect(foldAll([])).toEqual(EMPTY_VIEW);
    expect(canonicalView(EMPTY_VIEW)).toBe('{}');
  });

  it('counts a gauged slate under its grades and pile, its taper and its minute', () => {
    const view = foldAll([gauged(1, [600, 621]), gauged(2, [611], { gradesId: 'g', pile: 2 })]);
    const pallet = partOf(view, 'pallet:p1');
    expect(pallet.piles).toEqual({
      '|0': { gauged: { 611: 1 }, tapped: {} },
      'g|2': { gauged: { 611: 1 }, tapped: {} }
    });
    expect(pallet.taper).toEqual({ 21: 1 });
    // The clocks in the two ids stand at 65,536 and 131,072 ms.
    expect(minutesOfPallet(view, 'p1')).toEqual({ 1: 1, 2: 1 });
    expect(partOf(view, 'hour:p1|0').minutes).toEqual({ 1: 1, 2: 1 });
  });

  it('keeps the minutes of each hour in a part of their own, so that no part grows with the hours', () => {
    const tapAt = (place: number) =>
      eventAt(place, 'slateTapped', { palletId: 'p1', pile: 1, gradesId: 'g' });
    // The clocks in the ids stand in minutes 1, 1,440 and 4,473: in three hours.
    const first = foldAll([tapAt(1)]);
    const view = foldAll([tapAt(527), tapAt(1000)], first);
    expect(partOf(view, 'hour:p1|0')).toBe(partOf(first, 'hour:p1|0'));
    expect(partOf(view, 'hour:p1|74').minutes).toEqual({ 4473: 1 });
    expect(Object.keys(minutesOfPallet(view, 'p1'))).toEqual(['1', '1440', '4473']);
    expect(minutesOfPallet(view, 'p1', 1499)).toEqual({ 1440: 1, 4473: 1 });
    expect(minutesOfPallet(view, 'p1', 1500)).toEqual({ 4473: 1 });
    expect(JSON.stringify(partOf(view, 'pallet:p1')).length).toBe(
      JSON.stringify(partOf(first, 'pallet:p1')).length
    );
  });

  it('counts the unsorted sample apart: on no pile and in no minute', () => {
    const view = foldAll([gauged(1, [600], { sample: { drawId: 'd' } })]);
    const pallet = partOf(view, 'pallet:p1');
    expect(pallet.sampled).toEqual({ 600: 1 });
    expect(pallet.piles).toEqual({});
    expect(minutesOfPallet(view, 'p1')).toEqual({});
    expect(partOf(view, 'sample').slates).toHaveLength(1);
  });

  it('counts taps by sorter and spot checks of taps, and no other checks', () => {
    const slate = { palletId: 'p1', pile: 3, gradesId: 'g' };
    const view = foldAll([
      eventAt(1, 'slateTapped', slate),
      eventAt(2, 'slateChecked', { ...slate, of: 'tap', points: [500] }),
      eventAt(3, 'slateChecked', { ...slate, of: 'pile', points: [510] })
    ]);
    expect(partOf(view, 'pallet:p1').piles['g|3'].tapped).toEqual({ Wren: 1 });
    expect(partOf(view, 'sorter:Wren').checks).toEqual({ 'g|3|500|p1': 1 });
    expect(sorterNames(view)).toEqual(['Wren']);
    expect(palletIds(view)).toEqual(['p1']);
  });

  it('J8: an undo of a pallet leaves no pallet, of a slope the one before', () => {
    const slope = (place: number, name: string) =>
      eventAt(place, 'slopeSet', {
        slopeId: 's',
        name,
        rafterLengthMm: 5000,
        eaveWidthMm: 8000,
        pitchDegrees: 35,
        eaveHeightMm: 0,
        left: { kind: 'verge' },
        right: { kind: 'verge' },
        openings: []
      });
    const events = [
      eventAt(1, 'palletAdded', { palletId: 'p1', label: 'A', slates: 700 }),
      undo(2, 1),
      slope(3, 'first'),
      slope(4, 'second'),
      eventAt(5, 'slopeRemoved', { slopeId: 's' }),
      undo(6, 5),
      undo(7, 4)
    ];
    expect(palletIds(foldAll(events))).toEqual([]);
    const nameAfter = (count: number) =>
      current(partOf(foldAll(events.slice(0, count)), 'job').slopes.s)?.name;
    expect([4, 5, 6, 7].map(nameAfter)).toEqual(['second', undefined, 'second', 'first']);
  });

  it('J7: an undo that comes before what it names takes effect when that comes', () => {
    const [act, out, back] = [gauged(1, [600]), undo(2, 1), undo(3, 2)];
    expect(partOf(foldAll([out, act]), 'pallet:p1').piles).toEqual({});
    expect(canonicalView(foldAll([back, out, act]))).toBe(canonicalView(foldAll([act, out, back])));
  });

  it('J10: counts what it does not know, by type, whatever the type is called', () => {
    const view = foldAll([
      eventAt(1, 'slateWashed', {}),
      eventAt(2, 'constructor', {}),
      eventAt(3, 'constructor', {}),
      eventAt(4, 'slateTapped', { anything: 1 }, { v: 2 })
    ]);
    expect(partOf(view, 'voids').unknown).toEqual({
      slateWashed: 1,
      constructor: 2,
      slateTapped: 1
    });
  });

  it('passes over what is broken', () => {
    expect(foldAll([eventAt(1, 'slateGauged', {})])).toEqual(EMPTY_VIEW);
  });
});
