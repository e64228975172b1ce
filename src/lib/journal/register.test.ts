import { describe, expect, it } from 'vitest';
import { type Register, addSetting, current, removeSetting } from './register.ts';

const setting = (id: string) => ({ id, at: '', value: id.toUpperCase() });

describe('a register', () => {
  it('has no value before it is set', () => {
    expect(current(undefined)).toBeUndefined();
    expect(current([])).toBeUndefined();
  });

  it('J7: holds its settings in order of id, however they come', () => {
    const register: Register<string> = [];
    for (const id of ['b', 'd', 'a', 'c']) addSetting(register, setting(id));
    expect(register.map(({ id }) => id).join('')).toBe('abcd');
    expect(current(register)).toBe('D');
  });

  it('J8: an undo of the last setting brings back the one before; of an earlier one, nothing', () => {
    const register = ['a', 'b', 'c'].map(setting);
    removeSetting(register, 'a');
    expect(current(register)).toBe('C');
    removeSetting(register, 'c');
    expect(current(register)).toBe('B');
    removeSetting(register, 'x');
    expect(current(register)).toBe('B');
  });

  it('the same setting twice is one', () => {
    const register = ['a', 'b'].map(setting);
    addSetting(register, setting('b'));
    addSetting(register, setting('a'));
    expect(register).toHaveLength(2);
  });
});
