import { Alarm, type Timer } from './timer.ts';
import { BURST_GAP_MS } from './wedge.ts';
import type { KeyPress } from './wedge-keys.ts';

/** What a key does while slates are sorted by hand: its pile, or the last one taken back. */
export type TapKeyAct = number | 'undo';

/** A key of a clicker, as it was learnt. */
export interface LearntKey {
  readonly name: string;
  readonly does: TapKeyAct;
}

export interface TapKeysSettings {
  /** Piles in use: the digits 1 to this one are their keys. */
  readonly piles: number;
  readonly learnt: readonly LearntKey[];
}

/** A key going down. */
export interface TapKeyPress extends KeyPress {
  /** When, on any steady clock, ms. */
  readonly at: number;
  readonly keyCode?: number;
}

/** The reading of a gauge that is under way. */
export interface TypedSoFar {
  readonly text: string;
  /** When its last character came, ms. */
  readonly lastAt: number;
}

/**
 * Whom a key is for.
 * - `leave`: it is no tap; the gauge's listener may have it;
 * - `claimed`: it was a tap, a held or bouncing key, or the Enter of a clicker;
 * - `reading`: a gauge is typing: its listener has `text`, the head of the number, and then this key.
 *   `sorted` of its digits had sorted already and are to be taken back.
 */
export type TapKeyEffect =
  | { readonly kind: 'leave' | 'claimed' }
  | { readonly kind: 'reading'; readonly text: string; readonly sorted: number };

/** Whom the keys tell. */
export interface TapKeyAudience {
  /** A key sorts, or takes back. */
  readonly onAct: (does: TapKeyAct) => void;
  /** A digit of no pile stands in the box; a tap comes after it. */
  readonly onDropTyped: () => void;
}

/** A finger stays on a key so long, ms; a gauge does not. From memory, no source. */
const FINGER_MS = 70;
/** A digit let go sooner waits so long for the rest of a reading, ms. */
const WAIT_MS = 400;
/** The same once a gauge has typed: no finger lets go so fast, and a busy phone hears keys late. */
const WAIT_FOR_GAUGE_MS = 1_500;
/** A decimal mark so soon after a digit belongs to it, ms: a burst torn by a pause. */
const TORN_MS = 2_500;
/** A key down again so soon after it came up has bounced, ms. From memory, no source. */
const BOUNCE_MS = 50;
/** A key that stays down without a sign of it repeats at least so often, ms. From memory, no source. */
const REPEATS_WITHIN_MS = 700;
/** An Enter or Tab so soon after a tap belongs to it, ms. */
const TAIL_MS = 400;

/** How a key is known: by its place, else by its sign, else by its number. */
export function nameOfKey({
  key,
  code,
  keyCode
}: KeyPress & { readonly keyCode?: number }): string {
  if (code !== '' && code !== 'Unidentified') return code;
  if (key !== '' && key !== 'Unidentified') return key;
  return `key ${keyCode ?? 0}`;
}

/**
 * Keys that sort by hand: 1 for the first pile and so on, and whatever a clicker was learnt to send.
 * Each counts once, however long it is held.
 *
 * A gauge types digits too. A finger stays on its key, and the key sorts as it comes up; a digit let
 * go faster waits a quarter of a second for the rest of a number. Where a decimal mark follows all
 * the same, the digits before it are given back as the head of the reading.
 */
export class TapKeys {
  #settings: TapKeysSettings = { piles: 0, learnt: [] };
  readonly #audience: TapKeyAudience;
  readonly #alarm: Alarm;
  readonly #timer: Timer;
  readonly #down = new Map<string, { first: number; last: number }>();
  readonly #up = new Map<string, number>();
  /** Digits with no pause between them: those that have sorted, and those that wait. */
  #sorted = '';
  #waiting: { readonly digit: string; readonly isBounce: boolean }[] = [];
  #lastAt = -Infinity;
  #hasGaugeTyped = false;

  constructor(timer: Timer, audience: TapKeyAudience) {
    this.#timer = timer;
    this.#audience = audience;
    this.#alarm = new Alarm(timer, () => this.flush());
  }

  learn(settings: TapKeysSettings): void {
    this.#settings = settings;
  }

  /** A key goes down. */
  press(press: TapKeyPress, typed: TypedSoFar): TapKeyEffect {
    if (press.ctrlKey || press.altKey || press.metaKey) return { kind: 'leave' };
    const { at } = press;
    const name = nameOfKey(press);
    const learnt = this.#settings.learnt.find((known) => known.name === name);
    const digit = learnt ? undefined : this.#digitOf(press);
    if (!learnt && digit === undefined) return this.#other(press);
    if (digit !== undefined && isNumber(typed, at)) return { kind: 'leave' };
    if (this.#isHeld(name, press)) return { kind: 'claimed' };
    const isBounce = at - (this.#up.get(name) ?? -Infinity) < BOUNCE_MS;

    if (typed.text !== '') this.#audience.onDropTyped();
    if (learnt || at - this.#lastAt > BURST_GAP_MS) this.flush();
    if (learnt || at - this.#lastAt > BURST_GAP_MS) this.#sorted = '';
    this.#lastAt = at;
    if (learnt && !isBounce) this.#audience.onAct(learnt.does);
    if (digit !== undefined) {
      this.#waiting.push({ digit, isBounce });
      const waitMs = this.#hasGaugeTyped ? WAIT_FOR_GAUGE_MS : WAIT_MS;
      this.#alarm.setFor(this.#timer.now() + waitMs);
    }
    return { kind: 'claimed' };
  }

  /** A key comes up: one that a finger held sorts now. */
  release(press: KeyPress & { readonly keyCode?: number }, at: number): void {
    const name = nameOfKey(press);
    const down = this.#down.get(name);
    if (!down) return;
    this.#down.delete(name);
    this.#up.set(name, at);
    if (at - down.first >= FINGER_MS) this.flush();
  }

  /** Sorts what waits. */
  flush(): void {
    this.#alarm.setFor(null);
    const digits = this.#waiting.filter(({ isBounce }) => !isBounce).map(({ digit }) => digit);
    this.#waiting = [];
    this.#sorted += digits.join('');
    for (const digit of digits) this.#audience.onAct(Number(digit));
  }

  /** The digit of a pile. A shifted digit of the row is a sign. */
  #digitOf({ key, code, shiftKey }: TapKeyPress): string | undefined {
    const place = /^(?:Digit|Numpad)(\d)$/.exec(code)?.[1];
    const isSign = shiftKey && code.startsWith('Digit') && !/^\d$/.test(key);
    const digit = isSign ? undefined : (place ?? (/^\d$/.test(key) ? key : undefined));
    const pile = Number(digit);
    return digit !== undefined && pile >= 1 && pile <= this.#settings.piles ? digit : undefined;
  }

  #isHeld(name: string, { at, repeat }: TapKeyPress): boolean {
    const down = this.#down.get(name);
    const isDown = down !== undefined && at - down.last < REPEATS_WITHIN_MS;
    this.#down.set(name, { first: isDown ? down.first : at, last: at });
    return !!repeat || isDown;
  }

  /** A key that is no tap: does a gauge go on with it? */
  #other({ key, at }: TapKeyPress): TapKeyEffect {
    const text = this.#sorted + this.#waiting.map(({ digit }) => digit).join('');
    const gapMs = at - this.#lastAt;
    const isEnd = key === 'Enter' || key === 'Tab';
    const isWhole = isEnd && text.length > 1 && gapMs <= BURST_GAP_MS;
    if (isEnd && !isWhole) {
      this.flush();
      return { kind: gapMs <= TAIL_MS ? 'claimed' : 'leave' };
    }
    const isSign = [...key].length === 1 && key !== ' ';
    const isPoint = key === '.' || key === ',';
    this.#hasGaugeTyped ||= isPoint;
    const isHead = gapMs <= (isPoint ? TORN_MS : BURST_GAP_MS);
    if (!isWhole && (text === '' || !isSign || !isHead)) return { kind: 'leave' };
    const sorted = this.#sorted.length;
    this.#alarm.setFor(null);
    this.#sorted = '';
    this.#waiting = [];
    this.#lastAt = -Infinity;
    return { kind: 'reading', text, sorted };
  }
}

/** Whether what stands in the box is a number that a digit goes on with. */
function isNumber({ text, lastAt }: TypedSoFar, at: number): boolean {
  return text !== '' && (at - lastAt <= BURST_GAP_MS || /\D/.test(text));
}
