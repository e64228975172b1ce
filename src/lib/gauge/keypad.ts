import { type LengthUnit, type Reading, parseReading } from './reading-grammar.ts';

/** The keys of the on-screen keypad. */
export type KeypadKey =
  | '0'
  | '1'
  | '2'
  | '3'
  | '4'
  | '5'
  | '6'
  | '7'
  | '8'
  | '9'
  | 'decimal'
  | 'back'
  | 'clear'
  | 'enter';

/** What the keypad holds. */
export interface KeypadState {
  /** The number typed so far, with a point as decimal mark. */
  readonly text: string;
  /** The number last taken, while the back key can still bring it back; else null. */
  readonly taken: string | null;
  /** When the last number was taken, on the caller's clock in ms. */
  readonly takenAt: number;
}

export interface KeypadSettings {
  readonly unit: LengthUnit;
  /** Decimals after which a number is taken without Enter; null to wait for Enter always. */
  readonly takesAfterDecimals: number | null;
}

/**
 * What a key did.
 * - `edited`: the text changed; `ignored`: the key does nothing here;
 * - `reading`: a number was ended; taken if the reading is ok, else it stays to be corrected;
 * - `reopened`: the number just taken is back in the keypad: void the entry it made.
 */
export type KeypadEffect =
  | { readonly kind: 'edited' | 'ignored' }
  | { readonly kind: 'reading'; readonly reading: Reading }
  | { readonly kind: 'reopened'; readonly text: string };

export interface KeypadStep {
  readonly state: KeypadState;
  readonly effect: KeypadEffect;
}

/** An empty keypad. */
export const EMPTY_KEYPAD: KeypadState = { text: '', taken: null, takenAt: -Infinity };

/** The decimals after which a number is taken: the resolution of a reading. */
export const USUAL_TAKING: Readonly<Record<LengthUnit, number>> = { mm: 2, inch: 3 };

/** A finger that bounces on the key that took a number must not begin the next one. */
const BOUNCE_MS = 250;
const LONGEST_TEXT = 8;

/**
 * Presses one key of the on-screen keypad. The number goes through the same grammar as a gauge's.
 *
 * With `takesAfterDecimals` the last decimal takes the number without Enter. This can always be
 * taken back: Back, pressed before anything else, returns the number without its last digit and
 * reports `reopened`. A number that is refused stays in the keypad. When an entry came from
 * elsewhere since, start again from `EMPTY_KEYPAD`, so that Back cannot reach an older one.
 *
 * @param at time of the press in ms, on any steady clock
 * @example 6 decimal 4 2 with takesAfterDecimals 2 → reading 6.42 mm on the last key
 */
export function pressKeypad(
  state: KeypadState,
  key: KeypadKey,
  at: number,
  settings: KeypadSettings
): KeypadStep {
  const { text } = state;
  const ignored: KeypadStep = { state, effect: { kind: 'ignored' } };
  const edited = (changed: string): KeypadStep => ({
    state: { ...EMPTY_KEYPAD, text: changed },
    effect: { kind: 'edited' }
  });

  switch (key) {
    case 'clear':
      return text === '' && state.taken === null ? ignored : edited('');
    case 'back': {
      if (text !== '') return edited(text.slice(0, -1));
      if (state.taken === null) return ignored;
      const reopened = state.taken.slice(0, -1);
      return {
        state: { ...EMPTY_KEYPAD, text: reopened },
        effect: { kind: 'reopened', text: reopened }
      };
    }
    case 'enter':
      return text === '' ? ignored : endNumber(text, at, settings);
    case 'decimal':
      if (text.includes('.') || text.length >= LONGEST_TEXT) return ignored;
      return edited(text === '' ? '0.' : `${text}.`);
    default: {
      const isBounce = text === '' && state.taken?.endsWith(key) && at - state.takenAt < BOUNCE_MS;
      const isFull = text.length >= LONGEST_TEXT || hasAllDecimals(text, settings);
      if (isBounce || isFull) return ignored;
      const longer = text + key;
      return hasAllDecimals(longer, settings) ? endNumber(longer, at, settings) : edited(longer);
    }
  }
}

/** Whether the number has the decimals after which it is taken. */
function hasAllDecimals(text: string, { takesAfterDecimals }: KeypadSettings): boolean {
  const mark = text.indexOf('.');
  return takesAfterDecimals !== null && mark >= 0 && text.length - mark - 1 >= takesAfterDecimals;
}

function endNumber(text: string, at: number, settings: KeypadSettings): KeypadStep {
  const reading = parseReading(text, settings.unit);
  const state = reading.ok ? { text: '', taken: text, takenAt: at } : { ...EMPTY_KEYPAD, text };
  return { state, effect: { kind: 'reading', reading } };
}
