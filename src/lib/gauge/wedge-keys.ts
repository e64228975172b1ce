/** What is needed of a keydown event. A DOM `KeyboardEvent` fits. */
export interface KeyPress {
  readonly key: string;
  readonly code: string;
  readonly shiftKey?: boolean;
  readonly ctrlKey?: boolean;
  readonly altKey?: boolean;
  readonly metaKey?: boolean;
  readonly repeat?: boolean;
}

/**
 * What a key press means to a gauge.
 * - `character`: it writes one character;
 * - `end`: Enter or Tab, which end a reading;
 * - `erase`, `cancel`: Backspace, Escape;
 * - `repeat`: a held key repeating itself, which a gauge never does on purpose;
 * - `nothing`: a modifier, a shortcut, a navigation key, or a key whose text follows as an `input`
 *   event (Android's key 229, a character composed with Alt and the numeric pad).
 */
export type KeyMeaning =
  | { readonly kind: 'character'; readonly character: string }
  | { readonly kind: 'end'; readonly key: 'enter' | 'tab' }
  | { readonly kind: 'erase' | 'cancel' | 'repeat' | 'nothing' };

const NOTHING: KeyMeaning = { kind: 'nothing' };

/** Stands for an accent without its letter, so that the reading is refused and not cut silently. */
const UNKNOWN_SIGN = '\uFFFD';

/** Keys other than digits that a gauge's keyboard presses without Shift, by their place. */
const UNSHIFTED_PLACES: Readonly<Record<string, string>> = {
  Period: '.',
  Comma: ',',
  Minus: '-',
  NumpadDecimal: '.',
  NumpadComma: ',',
  NumpadSubtract: '-',
  NumpadAdd: '+'
};

/**
 * Reads a key press the way the gauge meant it, whatever the layout of the phone or computer.
 *
 * A keyboard gauge presses keys by their place. Where the digit row gives symbols (French, Czech),
 * the place `Digit6` without Shift is still a 6; where a gauge set to that country presses Shift, the
 * key itself is the digit. Digits of the numeric pad count whether Num Lock is on or off. Period,
 * comma and minus are taken as the layout gives them, and by their place where it gives another
 * sign there.
 *
 * @example meaningOfKey({ key: '-', code: 'Digit6' }) // French digit row: the character 6
 * @example meaningOfKey({ key: 'Unidentified', code: '' }) // nothing: its text follows
 */
export function meaningOfKey(press: KeyPress): KeyMeaning {
  const { key } = press;
  if (key === 'Unidentified' || key === 'Process') return NOTHING;
  if (press.ctrlKey || press.altKey || press.metaKey) return NOTHING;
  if (press.repeat) return { kind: 'repeat' };
  if (key === 'Enter') return { kind: 'end', key: 'enter' };
  if (key === 'Tab') return press.shiftKey ? NOTHING : { kind: 'end', key: 'tab' };
  if (key === 'Backspace') return { kind: 'erase' };
  if (key === 'Escape') return { kind: 'cancel' };

  const character = characterOf(press);
  return character === undefined ? NOTHING : { kind: 'character', character };
}

function characterOf({ key, code, shiftKey }: KeyPress): string | undefined {
  const padDigit = /^Numpad(\d)$/.exec(code);
  if (padDigit) return padDigit[1];
  const rowDigit = /^Digit(\d)$/.exec(code);
  if (rowDigit) {
    if (/^\d$/.test(key)) return key;
    return shiftKey ? key : rowDigit[1];
  }
  if (/^[\d.,+\-−]$/.test(key)) return key;
  if (!shiftKey && code in UNSHIFTED_PLACES) return UNSHIFTED_PLACES[code];
  if (key === 'Dead') return UNKNOWN_SIGN;
  return [...key].length === 1 ? key : undefined;
}
