import { beforeEach, describe, expect, it } from 'vitest';
import type { StoredEvent } from '$lib/journal';
import { ManualTimer } from '../../../../tests/support/manual-timer.ts';
import { type CrewNews, NEWS_EVERY_MS, NewsDesk } from './crew-news.ts';

let timer: ManualTimer;
let said: (readonly CrewNews[])[];
let desk: NewsDesk;
let number: number;

beforeEach(() => {
  timer = new ManualTimer();
  said = [];
  number = 0;
  desk = new NewsDesk({ own: () => 'mine', timer, say: (news) => said.push(news) });
});

function event(type: string, body: object, from: Partial<StoredEvent> = {}): StoredEvent {
  const id = `event-${++number}`;
  const made = { id, type, body, deviceId: 'other', sorter: 'Robin', ...from };
  return made as unknown as StoredEvent;
}
const tap = (palletId: string, from: Partial<StoredEvent> = {}): StoredEvent =>
  event('slateTapped', { palletId, pile: 1 }, from);
const taps = (count: number, palletId: string, from: Partial<StoredEvent> = {}): StoredEvent[] =>
  Array.from({ length: count }, () => tap(palletId, from));

describe('news of the crew', () => {
  it('sums up who sorted how many from which pallet', () => {
    desk.take([...taps(39, 'b'), event('slateGauged', { palletId: 'b', pile: 2 }), tap('a')]);
    desk.take(taps(2, 'b', { sorter: 'Finch' }));
    timer.pass(1_000);
    expect(said).toEqual([
      [
        { kind: 'sorted', name: 'Robin', palletId: 'b', slates: 40 },
        { kind: 'sorted', name: 'Robin', palletId: 'a', slates: 1 },
        { kind: 'sorted', name: 'Finch', palletId: 'b', slates: 2 }
      ]
    ]);
  });

  it('speaks at most once a minute, and then of all that came since', () => {
    for (let second = 0; second < 180; second++) {
      desk.take([tap('b')]);
      timer.pass(1_000);
    }
    const told = said.flat().map((news) => (news.kind === 'sorted' ? news.slates : 0));
    expect(told.length).toBe(3);
    expect(told[0]).toBe(1);
    expect(told[1]).toBe(60);
  });

  it('takes the words away a minute after the last', () => {
    desk.take([tap('b')]);
    timer.pass(1_000);
    expect(said.length).toBe(1);
    timer.pass(NEWS_EVERY_MS);
    expect(said.at(-1)).toEqual([]);
    timer.pass(10 * NEWS_EVERY_MS);
    expect(said.length).toBe(2);
  });

  it('says nothing of own acts, of sample slates, and of what was taken back before it was told', () => {
    const slip = tap('b');
    desk.take([
      tap('b', { deviceId: 'mine' }),
      event('slateGauged', { palletId: 'b', pile: null }),
      event('palletAdded', { palletId: 'b', label: 'B' }),
      slip,
      event('entryVoided', { voids: slip.id })
    ]);
    timer.pass(10 * NEWS_EVERY_MS);
    expect(said.flat()).toEqual([]);
  });

  it('says that a course was entered twice', () => {
    const twice = { kind: 'laid-too', name: 'Robin', slopeId: 'south', course: 12 } as const;
    desk.take([], [twice]);
    timer.pass(1_000);
    expect(said).toEqual([[twice]]);
  });
});
