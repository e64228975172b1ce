import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { KeypadKey } from '$lib/gauge';
import { GaugeInput } from './gauge-input.svelte.ts';

const audience = {
  onReading: vi.fn(),
  onRefused: vi.fn(),
  onReopened: vi.fn(),
  onCleared: vi.fn(),
  onEndingLearnt: vi.fn()
};
let input: GaugeInput;

/** Presses keys of the on-screen keypad. */
const press = (...keys: KeypadKey[]): void => keys.forEach((key) => input.press(key));

beforeEach(() => {
  vi.clearAllMocks();
  input = new GaugeInput(audience, { kind: 'key' });
});

describe('the keypad', () => {
  it('clears the refusal with Clear, for a number from the keypad or from elsewhere', () => {
    press('6', '4', 'enter');
    expect(audience.onRefused).toHaveBeenCalledOnce();
    press('clear');
    expect(audience.onCleared).toHaveBeenCalledOnce();
    expect(input.text).toBe('');
    input.hold('6.40');
    press('clear');
    expect(audience.onCleared).toHaveBeenCalledTimes(2);
    expect(input.text).toBe('');
  });

  it('clears the refusal of an empty number too', () => {
    press('enter', 'clear');
    expect(audience.onRefused).toHaveBeenCalledOnce();
    expect(audience.onCleared).toHaveBeenCalledOnce();
  });

  it('replaces a refused number, from the keypad or from elsewhere, by the next digit', () => {
    press('6', '4', 'enter', '5');
    expect(input.text).toBe('5');
    input.hold('6.40');
    press('7');
    expect(input.text).toBe('7');
  });

  it('says nothing at Enter after a number that took itself', () => {
    press('6', 'decimal', '2', '5', 'enter');
    expect(audience.onReading).toHaveBeenCalledOnce();
    expect(audience.onRefused).not.toHaveBeenCalled();
  });

  it('asks for a number at Enter with nothing typed or taken', () => {
    press('enter');
    expect(audience.onRefused).toHaveBeenCalledWith({ ok: false, reason: 'empty', text: '' });
  });
});
