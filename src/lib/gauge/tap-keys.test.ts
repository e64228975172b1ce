import { describe, expect, it } from 'vitest';
import { ManualTimer } from '../../../tests/support/manual-timer.ts';
import { type LearntKey, type TapKeyAct, TapKeys, nameOfKey } from './tap-keys.ts';

/** A finger stays so long on a key here, ms; a gauge does not. */
const FINGER_MS = 90;

/** A keyboard whose keys sort; `done` tells what they did so far. */
function keyboard(piles = 3, learnt: readonly LearntKey[] = []) {
  const timer = new ManualTimer();
  const done: TapKeyAct[] = [];
  let typed = { text: '', lastAt: -Infinity };
  const keys = new TapKeys(timer, {
    onAct: (does) => void done.push(does),
    onDropTyped: () => (typed = { text: '', lastAt: -Infinity })
  });
  keys.learn({ piles, learnt });
  timer.pass(10_000);
  const codeOf = (key: string) => (/^\d$/.test(key) ? `Digit${key}` : key);
  const down = (key: string, more: object = {}) => {
    const effect = keys.press({ key, code: codeOf(key), at: timer.now(), ...more }, typed);
    const head = effect.kind === 'reading' ? effect.text : '';
    if (effect.kind !== 'claimed' && /^[\d.,]$/.test(key))
      typed = { text: typed.text + head + key, lastAt: timer.now() };
    return effect.kind === 'reading' ? `${head}, ${effect.sorted} sorted` : effect.kind;
  };
  const up = (key: string) => keys.release({ key, code: codeOf(key) }, timer.now());
  /** Keys down and up, and the time to the next one. */
  const tap = (text: string, heldMs: number, gapMs: number) =>
    [...text].map((key) => {
      const claim = down(key);
      timer.pass(heldMs);
      up(key);
      timer.pass(gapMs);
      return claim;
    });
  return { down, up, tap, timer, done, typed: () => typed.text };
}

describe('keys that sort by hand', () => {
  it('sort as the finger leaves them, and never begin a number', () => {
    const { tap, done, typed } = keyboard();
    expect(tap('1233', FINGER_MS, 60)).toEqual(['claimed', 'claimed', 'claimed', 'claimed']);
    expect(done).toEqual([1, 2, 3, 3]);
    expect(typed()).toBe('');
  });

  it('count a key that bounces once, going down and coming up', () => {
    const { tap, done, timer } = keyboard();
    tap('2', 2, 3);
    tap('2', FINGER_MS, 3);
    tap('2', 2, 0);
    timer.pass(1000);
    expect(done).toEqual([2]);
  });

  it('sort a moment later where a clicker lets go at once', () => {
    const { tap, timer, done } = keyboard();
    tap('2', 0, 390);
    expect(done).toEqual([]);
    timer.pass(10);
    expect(done).toEqual([2]);
    tap('13', 0, 60);
    timer.pass(400);
    expect(done).toEqual([2, 1, 3]);
  });

  it('wait longer where a gauge has typed, whose keys a busy phone may hear late', () => {
    const { tap, timer, done, typed } = keyboard();
    tap('6.4', 0, 20);
    timer.pass(3000);
    expect(typed()).toBe('6.4');
    const gauge = keyboard();
    gauge.tap('.', 0, 3000);
    gauge.tap('3', 0, 1400);
    expect([...done, ...gauge.done]).toEqual([]);
  });

  it('count a held key once, whether or not it says that it repeats', () => {
    const { down, up, timer, done } = keyboard();
    down('2');
    for (let turn = 0; turn < 9; turn++) {
      timer.pass(turn === 0 ? 500 : 33);
      expect(down('2', { repeat: turn % 2 === 0 })).toBe('claimed');
    }
    up('2');
    expect(done).toEqual([2]);
    timer.pass(400);
    down('2');
    timer.pass(400);
    expect(done).toEqual([2, 2]);
  });

  it('count a second press whose first never came up', () => {
    const { down, timer, done } = keyboard();
    for (let turn = 0; turn < 2; turn++) {
      down('1');
      timer.pass(2000);
    }
    expect(done).toEqual([1, 1]);
  });

  it.each([0, 20, 60, 120])('leave a gauge all its digits, one each %i ms', (gapMs) => {
    for (const text of ['6.43', '3.43', '12,5', '33.3', '1.111']) {
      const { tap, timer, done, typed } = keyboard();
      tap(text, 0, gapMs);
      timer.pass(1000);
      expect(typed()).toBe(text);
      expect(done).toEqual([]);
    }
  });

  it('give back what had sorted where a pause tears a number, or its keys are held', () => {
    const torn = keyboard();
    torn.tap('3', 0, 900);
    expect(torn.done).toEqual([3]);
    expect(torn.tap('.4', 0, 20)).toEqual(['3, 1 sorted', 'leave']);
    expect(torn.typed()).toBe('3.4');
    const held = keyboard();
    expect(held.tap('12.', FINGER_MS, 30)).toEqual(['claimed', 'claimed', '12, 2 sorted']);
    const later = keyboard();
    later.tap('3', 0, 3000);
    expect(later.tap('.', 0, 0)).toEqual(['leave']);
  });

  it('leave a number alone that has a point, even where a pause tears it', () => {
    const { tap, typed, done } = keyboard();
    tap('6.', 0, 20);
    expect(tap('3', 0, 600)).toEqual(['leave']);
    expect(typed()).toBe('6.3');
    expect(done).toEqual([]);
  });

  it('sort after a digit of no pile, which is dropped', () => {
    const { tap, typed, done } = keyboard();
    expect(tap('62', FINGER_MS, 500)).toEqual(['leave', 'claimed']);
    expect(typed()).toBe('');
    expect(done).toEqual([2]);
  });

  it('take no Enter of a clicker for another key, and a whole number for a reading', () => {
    const { tap, timer, down, done } = keyboard();
    tap('1', 0, 20);
    expect(down('Enter')).toBe('claimed');
    expect(done).toEqual([1]);
    timer.pass(5000);
    expect(down('Enter')).toBe('leave');
    const gauge = keyboard();
    gauge.tap('32', 0, 20);
    expect(gauge.down('Enter')).toBe('32, 0 sorted');
    expect(gauge.done).toEqual([]);
  });

  it('are those a clicker was learnt to send: page, volume, media, letters', () => {
    const learnt: LearntKey[] = [
      { name: 'PageDown', does: 1 },
      { name: 'AudioVolumeUp', does: 2 },
      { name: 'MediaTrackNext', does: 3 },
      { name: 'Enter', does: 'undo' },
      { name: 'Digit3', does: 1 }
    ];
    const { down, timer, done } = keyboard(3, learnt);
    for (const key of ['PageDown', 'AudioVolumeUp', 'MediaTrackNext', '2', 'Enter', '3']) {
      expect(down(key)).toBe('claimed');
      timer.pass(60);
    }
    expect(done).toEqual([1, 2, 3, 2, 'undo', 1]);
    expect(down('PageUp')).toBe('leave');
  });

  it('leave shortcuts, signs and piles that are not there', () => {
    const { down, timer, done } = keyboard(2);
    expect(down('1', { ctrlKey: true })).toBe('leave');
    expect(down('!', { code: 'Digit1', shiftKey: true })).toBe('leave');
    expect(down('3')).toBe('leave');
    expect(down('0')).toBe('leave');
    timer.pass(1000);
    expect(down('End', { code: 'Numpad1' })).toBe('claimed'); // Num Lock off
    timer.pass(1000);
    expect(done).toEqual([1]);
  });

  it('are told by their place, else by their sign, else by their number', () => {
    expect(nameOfKey({ key: 'b', code: 'KeyB' })).toBe('KeyB');
    expect(nameOfKey({ key: 'AudioVolumeUp', code: '' })).toBe('AudioVolumeUp');
    expect(nameOfKey({ key: 'Unidentified', code: '', keyCode: 175 })).toBe('key 175');
  });
});
