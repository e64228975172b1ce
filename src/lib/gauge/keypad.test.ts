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

/** How long a finger stays on a key here, ms. */
const HELD_MS = 60;

/** Presses keys; , is the decimal key, < back, C clear. @param gapMs from one press to the next */
function press(text: string, settings = AUTO, gapMs = 1000) {
  let state = EMPTY_KEYPAD;
  const effects: KeypadEffect[] = [];
  [...text].forEach((sign, index) => {
    const touch = { downAt: index * gapMs, upAt: index * gapMs + HELD_MS };
    const step = pressKeypad(state, NAMES[sign] ?? (sign as KeypadKey), touch, settings);
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
    expect(press('6,422', AUTO, 80)).toMatchObject({ text: '', told: [6.42], last: 'ignored' });
    expect(press('6,425', AUTO, 80)).toMatchObject({ text: '5' });
    expect(press('6,4⏎⏎', AUTO, 80)).toMatchObject({ told: [6.4], last: 'ignored' });
  });

  it('tells a bounce by the time from release to press, not from press to press', () => {
    expect(press('6,422', AUTO, 180)).toMatchObject({ text: '2', told: [6.42] });
  });

  it.each([20, 70, 100, 180, 240])('drops no digit after Enter, a key each %i ms', (gapMs) => {
    expect(press('5,6⏎6,2⏎', AUTO, gapMs).told).toEqual([5.6, 6.2]);
    expect(press('5,6⏎62⏎', AUTO, gapMs).told).toEqual([5.6, 'missing-decimal']);
  });

  it('says nothing at Enter after a number that took itself, which Back still brings back', () => {
    expect(press('6,25⏎')).toEqual({ text: '', told: [6.25], last: 'ignored' });
    expect(press('6,25⏎<')).toMatchObject({ text: '6.2', told: [6.25, 'reopened 6.2'] });
  });

  it('keeps a refused number until the next digit replaces it', () => {
    expect(press('0,25')).toMatchObject({ text: '0.25', told: ['looks-like-inches'] });
    expect(press('0,256')).toMatchObject({ text: '6', last: 'edited' });
    expect(press('64⏎')).toMatchObject({ text: '64', told: ['missing-decimal'] });
    expect(press('64⏎6,4⏎')).toMatchObject({ text: '', told: ['missing-decimal', 6.4] });
    expect(press('64⏎,')).toMatchObject({ text: '0.' });
    expect(press('6,⏎')).toMatchObject({ text: '6.', told: ['unfinished'] });
  });

  it('takes 62 for 6.2 where the readings of the job say so, and Back still brings it back', () => {
    const settings = { ...AUTO, likely: { lowMm: 3, highMm: 13 } };
    expect(press('62⏎65⏎', settings)).toMatchObject({ text: '', told: [6.2, 6.5] });
    expect(press('62⏎<', settings)).toMatchObject({ text: '6', told: [6.2, 'reopened 6'] });
    expect(press('25⏎', settings)).toMatchObject({ text: '25', told: ['missing-decimal'] });
  });

  it('corrects a refused number with Back, and empties it with Clear', () => {
    expect(press('64⏎<,4⏎')).toMatchObject({ told: ['missing-decimal', 6.4] });
    expect(press('64⏎C')).toMatchObject({ text: '', last: 'edited' });
  });

  it('has one decimal mark and eight signs', () => {
    expect(press('6,,4', BY_HAND).text).toBe('6.4');
    expect(press(',4', BY_HAND).text).toBe('0.4');
    expect(press('1234567890', BY_HAND)).toMatchObject({ text: '12345678', last: 'ignored' });
  });
});
