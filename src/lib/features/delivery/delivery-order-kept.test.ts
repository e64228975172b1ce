import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { DEFAULT_SETTINGS } from '$lib/job';
import { keepOrder, keptOrder } from './delivery-order-kept.ts';
import { orderFormOf } from './delivery-order.svelte.ts';

const kept = new Map<string, string>();
const stored = orderFormOf({ supplier: 'Heron', nominalThicknessMm: 6 }, DEFAULT_SETTINGS);

beforeEach(() => {
  kept.clear();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key)
  });
});
afterEach(() => vi.unstubAllGlobals());

describe('an order kept on the device', () => {
  const typed = {
    ...stored,
    nominalThicknessMm: '6,5',
    asks: { ...stored.asks, credit: true },
    agreed: { ...stored.agreed, ring: { isAgreed: true, limitMm: '', where: 'terms' } }
  };

  it('comes back as it was typed, by job, until it is dropped', () => {
    keepOrder('one', typed);
    expect(keptOrder('one', stored)).toEqual(typed);
    expect(keptOrder('other', stored)).toBeUndefined();
    keepOrder('one', undefined);
    expect(kept.size).toBe(0);
  });

  it.each(['', 'null', '{', '[]', '3'])('counts as none where %s stands', (text) => {
    kept.set('evencourse.order-draft.one', text);
    expect(keptOrder('one', stored)).toBeUndefined();
  });

  it('reads as stored where a field is unknown or of another kind', () => {
    const odd = { supplier: 7, texture: 'odd', asks: [], agreed: { ring: 1 }, more: 'x' };
    kept.set('evencourse.order-draft.one', JSON.stringify({ ...odd, currency: 'EUR' }));
    expect(keptOrder('one', stored)).toEqual({ ...stored, currency: 'EUR' });
  });

  it('lasts as long as the page where the browser keeps nothing', () => {
    vi.stubGlobal('localStorage', undefined);
    expect(() => keepOrder('one', typed)).not.toThrow();
    expect(keptOrder('one', stored)).toBeUndefined();
  });
});
