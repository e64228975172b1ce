import { describe, expect, it } from 'vitest';
import {
  EMPTY_KEYPAD,
  type KeypadEffect,
  type KeypadKey,
  type KeypadSettings,
  pressKeypad
} from './keypad.ts';

const AUTO: KeypadSettings = { unit: 'mm', takesAfterDecimals: 2 };
const BY_HAND: KeypadSettings = { unit: 'mm', takesAfterDecimals: null };
const NAMES: Readonly<Record<string, KeypadKey>> = {
  ',': 'decimal',
  '<': 'back',
  C: 'clear',
  '⏎': 'enter'
};

/** Presses keys a second apart; , is the decimal key, < back, C clear. */
function press(text: string, settings = AUTO, gapMs = 1000) {
  let state = EMPTY_KEYPAD;
  const effects: KeypadEffect[] = [];
  [...text].forEach((sign, index) => {
    const step = pressKeypad(state, NAMES[sign] ?? (sign as KeypadKey), index * gapMs, settings);
    state = step.state;
    effects.push(step.effect);
  });
  const told = effects.flatMap((effect): (string | number)[] =>
    effect.kind === 'reading'
      ? [effect.reading.ok ? effect.reading.valueMm : effect.reading.reason]
      : effect.kind === 'reopened'
        ? [`reopened ${effect.text}`]
        : []
  );
  return { text: state.text, told, last: effects.at(-1)?.kind };
}

describe('pressKeypad', () => {
  it.each(['<', 'C', '⏎'])('ignores %s when empty', (key) => {
    expect(press(key)).toEqual({ text: '', told: [], last: 'ignored' });
  });

  it('takes a number at its second decimal', () => {
    expect(press('6,42')).toMatchObject({ text: '', told: [6.42] });
    expect(press('6,426,42')).toMatchObject({ told: [6.42, 6.42] });
  });

  it('waits for Enter where it is told to, or where decimals are fewer', () => {
    expect(press('6,42', BY_HAND)).toMatchObject({ text: '6.42', told: [] });
    expect(press('6,42⏎', BY_HAND).told).toEqual([6.42]);
    expect(press('6,4⏎').told).toEqual([6.4]);
    expect(press('6⏎').told).toEqual([6]);
  });

  it('brings the number just taken back with Back, and nothing older', () => {
    expect(press('6,42<')).toMatchObject({ text: '6.4', told: [6.42, 'reopened 6.4'] });
    expect(press('6,42<5').told).toEqual([6.42, 'reopened 6.4', 6.45]);
    expect(press('6,427<<')).toMatchObject({ text: '', told: [6.42], last: 'ignored' });
    expect(press('6,42C<')).toMatchObject({ told: [6.42], last: 'ignored' });
  });

  it('does not begin a number with the bounce of the key that took the last', () => {
    expect(press('6,422', AUTO, 100)).toMatchObject({ text: '', told: [6.42], last: 'ignored' });
    expect(press('6,422', AUTO, 300)).toMatchObject({ text: '2', told: [6.42] });
    expect(press('6,425', AUTO, 100)).toMatchObject({ text: '5' });
  });

  it('keeps a refused number to be corrected', () => {
    expect(press('0,25')).toMatchObject({ text: '0.25', told: ['looks-like-inches'] });
    expect(press('0,255')).toMatchObject({ text: '0.25', last: 'ignored' });
    expect(press('64⏎')).toMatchObject({ text: '64', told: ['missing-decimal'] });
    expect(press('6,⏎')).toMatchObject({ text: '6.', told: ['unfinished'] });
  });

  it('has one decimal mark and eight signs', () => {
    expect(press('6,,4', BY_HAND).text).toBe('6.4');
    expect(press(',4', BY_HAND).text).toBe('0.4');
    expect(press('1234567890', BY_HAND)).toMatchObject({ text: '12345678', last: 'ignored' });
  });
});
