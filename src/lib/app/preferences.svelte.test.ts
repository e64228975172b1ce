import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Preferences, STARTING_PREFERENCES } from './preferences.svelte.ts';

const KEY = 'evencourse.preferences';

function storageOf(kept: Record<string, string>): Pick<Storage, 'getItem' | 'setItem'> {
  return {
    getItem: (key) => kept[key] ?? null,
    setItem: (key, value) => void (kept[key] = value)
  };
}

describe('Preferences', () => {
  let kept: Record<string, string>;
  beforeEach(() => {
    kept = {};
    vi.stubGlobal('localStorage', storageOf(kept));
  });
  afterEach(() => vi.unstubAllGlobals());

  it('start with tone and vibration on and speech off', () => {
    expect(new Preferences().values).toEqual(STARTING_PREFERENCES);
  });

  it('are kept from one start to the next', () => {
    new Preferences().set({ isLeftHanded: true, locale: 'pl' });
    expect(new Preferences().values).toMatchObject({ isLeftHanded: true, locale: 'pl' });
  });

  it('ignore what is torn, of another kind or unknown', () => {
    for (const text of ['{"hasSound":', '7', 'null', '[]']) {
      kept[KEY] = text;
      expect(new Preferences().values).toEqual(STARTING_PREFERENCES);
    }
    kept[KEY] = JSON.stringify({
      hasSound: 'yes',
      nickname: 'Wren',
      __proto__x: 1,
      constructor: 2
    });
    expect(new Preferences().values).toEqual({ ...STARTING_PREFERENCES, nickname: 'Wren' });
  });

  it('last as long as the page where the browser keeps nothing', () => {
    const refuse = (): never => {
      throw new DOMException('private', 'SecurityError');
    };
    vi.stubGlobal('localStorage', { getItem: refuse, setItem: refuse });
    const preferences = new Preferences();
    preferences.set({ hasSound: false });
    expect(preferences.values.hasSound).toBe(false);
  });
});
