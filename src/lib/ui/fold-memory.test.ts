import { afterEach, describe, expect, it, vi } from 'vitest';
import { foldMemory } from './fold-memory.ts';

function storage(start: Record<string, string> = {}) {
  const kept = new Map(Object.entries(start));
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value)
  };
}

describe('the memory of folds', () => {
  afterEach(() => void vi.unstubAllGlobals());

  it('knows nothing of a fold that nobody touched', () => {
    vi.stubGlobal('localStorage', storage());
    expect(foldMemory.recall('grades.sure')).toBeUndefined();
  });

  it('remembers each fold by its name, whatever the name', () => {
    vi.stubGlobal('localStorage', storage());
    foldMemory.keep('grades.sure', true);
    foldMemory.keep('constructor', false);
    expect(foldMemory.recall('grades.sure')).toBe(true);
    expect(foldMemory.recall('constructor')).toBe(false);
    expect(foldMemory.recall('toString')).toBeUndefined();
  });

  it.each(['no JSON', '{"a":true}', '[["a","yes"],7]'])(
    'takes a spoilt memory as none: %s',
    (bad) => {
      vi.stubGlobal('localStorage', storage({ 'evencourse.folds': bad }));
      expect(foldMemory.recall('a')).toBeUndefined();
    }
  );

  it('works where the browser keeps nothing', () => {
    const refuses = () => {
      throw new Error('storage is off');
    };
    vi.stubGlobal('localStorage', { getItem: refuses, setItem: refuses });
    expect(() => foldMemory.keep('a', true)).not.toThrow();
    expect(foldMemory.recall('a')).toBeUndefined();
  });
});
