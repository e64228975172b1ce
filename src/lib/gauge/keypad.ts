import { type LikelyRange, findLostPoint } from './lost-point.ts';
import { type ReadingUnit, type Reading, parseReading } from './reading-grammar.ts';

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
  /** The key that took it: the last digit, or Enter; else null. */
  readonly takenBy: KeypadKey | null;
  /** When that key was let go, on the caller's clock in ms. */
  readonly takenAt: number;
  /** Whether the number was refused: the next digit replaces it. */
  readonly isRefused: boolean;
}

/** One touch of a key, on any steady clock in ms. */
export interface KeyTouch {
  /** When the key was pressed. */
  readonly downAt: number;
  /** When it was let go. */
  readonly upAt: number;
}

export interface KeypadSettings {
  readonly unit: ReadingUnit;
  /** Decimals after which a number is taken without Enter; null to wait for Enter always. */
  readonly takesAfterDecimals: number | null;
  /** What the job's readings say a slate may measure; undefined while there are too few. */
  readonly likely?: LikelyRange;
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
export const EMPTY_KEYPAD: KeypadState = {
  text: '',
  taken: null,
  takenBy: null,
  takenAt: -Infinity,
  isRefused: false
};

/** The decimals after which a number is taken: the resolution of a reading. */
export const USUAL_TAKING: Readonly<Record<ReadingUnit, number>> = { mm: 2, inch: 3 };

/**
 * A key pressed again this soon after it was let go is the same tap that bounced, ms. From memory,
 * no source: a finger that means a second tap is off the key for longer.
 */
const BOUNCE_MS = 50;
const LONGEST_TEXT = 8;

/**
 * Presses one key of the on-screen keypad. The number goes through the same grammar as a gauge's.
 *
 * With `takesAfterDecimals` the last decimal takes the number without Enter. This can always be
 * taken back: Back, pressed before anything else, returns the number without its last digit and
 * reports `reopened`. Enter after it does nothing. A number that is refused stays in the keypad:
 * Back corrects it, the next digit replaces it. When an entry came from elsewhere since, start
 * again from `EMPTY_KEYPAD`, so that Back cannot reach an older one.
 *
 * Only the key that took the last number can bounce; a different key is never dropped.
 *
 * @param touch when the key was pressed and let go, ms
 * @example 6 decimal 4 2 with takesAfterDecimals 2 → reading 6.42 mm on the last key
 */
export function pressKeypad(
  state: KeypadState,
  key: KeypadKey,
  touch: KeyTouch,
  settings: KeypadSettings
): KeypadStep {
  const { text } = state;
  const kept = state.isRefused ? '' : text;
  const ignored: KeypadStep = { state, effect: { kind: 'ignored' } };
  const edited = (changed: string): KeypadStep => ({
    state: { ...EMPTY_KEYPAD, text: changed },
    effect: { kind: 'edited' }
  });

  if (key === state.takenBy && touch.downAt - state.takenAt < BOUNCE_MS) return ignored;
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
      return text === '' ? ignored : endNumber(text, key, touch, settings);
    case 'decimal':
      if (kept.includes('.') || kept.length >= LONGEST_TEXT) return ignored;
      return edited(kept === '' ? '0.' : `${kept}.`);
    default: {
      if (kept.length >= LONGEST_TEXT || hasAllDecimals(kept, settings)) return ignored;
      const longer = kept + key;
      if (!hasAllDecimals(longer, settings)) return edited(longer);
      return endNumber(longer, key, touch, settings);
    }
  }
}

/** Whether the number has the decimals after which it is taken. */
function hasAllDecimals(text: string, { takesAfterDecimals }: KeypadSettings): boolean {
  const mark = text.indexOf('.');
  return takesAfterDecimals !== null && mark >= 0 && text.length - mark - 1 >= takesAfterDecimals;
}

function endNumber(
  text: string,
  key: KeypadKey,
  touch: KeyTouch,
  settings: KeypadSettings
): KeypadStep {
  const reading = findLostPoint(parseReading(text, settings.unit), settings.likely);
  const state: KeypadState = reading.ok
    ? { text: '', taken: text, takenBy: key, takenAt: touch.upAt, isRefused: false }
    : { ...EMPTY_KEYPAD, text, isRefused: true };
  return { state, effect: { kind: 'reading', reading } };
}
