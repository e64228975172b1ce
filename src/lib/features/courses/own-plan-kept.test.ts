import { describe, expect, it } from 'vitest';
import { keepOwnPlan, keptOwnPlan } from './own-plan-kept.ts';

/** A store of one tab. */
function aStore(room = Infinity) {
  const texts = new Map<string, string>();
  return {
    getItem: (key: string) => texts.get(key) ?? null,
    removeItem: (key: string) => void texts.delete(key),
    setItem: (key: string, text: string) => {
      if (text.length > room) throw new DOMException('full', 'QuotaExceededError');
      texts.set(key, text);
    }
  };
}

const PLAN = {
  numbers: [1, 2],
  leftOut: ['south|9'],
  parts: new Map([['south|1', [{ pile: 2, slates: 20, slateAndAHalves: 1 }]]]),
  begunAs: new Map([['south|1', [{ pile: 1, slates: 20, slateAndAHalves: 1 }]]])
};

describe('an own plan that is not in use', () => {
  it('is there again for its own job alone, until it is forgotten', () => {
    const store = aStore();
    keepOwnPlan('one', PLAN, store);
    expect(keptOwnPlan('one', store)).toEqual(PLAN);
    expect(keptOwnPlan('other', store)).toBeUndefined();
    keepOwnPlan('one', undefined, store);
    expect(keptOwnPlan('one', store)).toBeUndefined();
  });

  it('is none where there is no room, no store, or something else was kept', () => {
    const full = aStore(10);
    keepOwnPlan('one', PLAN, full);
    expect(keptOwnPlan('one', full)).toBeUndefined();
    // Nothing of the kind outside a browser.
    keepOwnPlan('one', PLAN);
    expect(keptOwnPlan('one')).toBeUndefined();
    for (const text of [
      '',
      'null',
      '{}',
      '{"numbers":[1],"leftOut":[],"parts":[[1,2]],"begunAs":[]}'
    ]) {
      const store = { ...aStore(), getItem: () => text };
      expect(keptOwnPlan('one', store)).toBeUndefined();
    }
  });
});
