import { describe, expect, it } from 'vitest';
import type { NewEvent } from '$lib/journal';
import { MemoryStore } from '../../../../tests/support/memory-store.ts';
import { testSurroundings } from '../../../../tests/support/store-contract/test-surroundings.ts';
import { farReadings } from '$lib/job';
import { eventOfReading } from './reading-event.ts';

const JOB = '01900000-0000-7000-8000-000000000001';
const read = (hundredths: number, more: object = {}): NewEvent => ({
  type: 'slateGauged',
  body: { palletId: 'a', points: [hundredths], pile: null, gradesId: null, ...more }
});

describe('the entry of a reading', () => {
  it('J8 is found, left out by the undo of any entry, and comes back by one', async () => {
    const store = new MemoryStore(testSurroundings(1));
    const usual = Array.from({ length: 30 }, (_, at) => read(600 + at));
    const pallet: NewEvent = {
      type: 'palletAdded',
      body: { palletId: 'a', label: 'A', slates: 99 }
    };
    const { view, events } = await store.append(JOB, [pallet, read(1520), ...usual], '');
    const [far] = farReadings(view);
    const id = await eventOfReading(store, JOB, view, far);
    expect(id).toBe(events[1].id);
    const voids = (voids: string): NewEvent => ({ type: 'entryVoided', body: { voids } });
    const without = await store.append(JOB, [voids(id ?? '')], '');
    expect(farReadings(without.view)).toEqual([]);
    expect(await eventOfReading(store, JOB, without.view, far)).toBeUndefined();
    const again = await store.append(JOB, [voids(without.events[0].id)], '');
    expect(farReadings(again.view)).toEqual([far]);
  });

  it('is never one of the sample of a delivery, nor of another pallet', async () => {
    const store = new MemoryStore(testSurroundings(1));
    const sample = { drawId: 'd' };
    const { view } = await store.append(
      JOB,
      [read(1520, { sample }), read(1520, { palletId: 'b' })],
      ''
    );
    const of = { palletId: 'a', hundredths: 1520 };
    expect(await eventOfReading(store, JOB, view, of)).toBeUndefined();
  });
});
