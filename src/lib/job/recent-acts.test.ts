import { describe, expect, it } from 'vitest';
import { EMPTY_VIEW, type StoredEvent } from '$lib/journal';
import { MOST_UNDOABLE, undoableActs } from './recent-acts.ts';

const event = (type: string, id: string, deviceId = 'own'): StoredEvent => ({
  ...{ id, jobId: 'j', deviceId, deviceSeq: 1, at: '2026-05-01T08:00:00.000Z' },
  ...{ sorter: '', type, v: 1, body: {} }
});

describe('undoableActs', () => {
  it('gives slates of this device, and never the pallet they came from', () => {
    const newest = Object.freeze([
      event('slateTapped', 'd'),
      event('slateTapped', 'c', 'other'),
      event('slateSetAside', 'b'),
      event('palletAdded', 'a')
    ]);
    expect(undoableActs(newest, EMPTY_VIEW, 'own').map(({ id }) => id)).toEqual(['d', 'b']);
  });

  it('gives the last ten and no more', () => {
    const newest = Array.from({ length: 15 }, (_, index) => event('slateGauged', String(index)));
    expect(undoableActs(newest, EMPTY_VIEW, 'own')).toHaveLength(MOST_UNDOABLE);
  });
});
