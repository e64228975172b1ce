import {
  type AcceptedReading,
  type CaptureField,
  EMPTY_KEYPAD,
  type KeyClaim,
  type KeyTouch,
  type KeypadKey,
  type KeypadState,
  type ReadingUnit,
  type LikelyRange,
  type KeyPress,
  type Reading,
  type RefusedText,
  type TapKeyPress,
  type TornReading,
  type TypedSoFar,
  USUAL_TAKING,
  type UnitTrial,
  type WedgeEnding,
  WedgeListener,
  type WedgeOutcome,
  addToUnitTrial,
  findLostPoint,
  isUnitInDoubt,
  learnWedgeEnding,
  looksUnended,
  pressKeypad,
  startUnitTrial
} from '$lib/gauge';
import { pageTimer } from './page-timer.ts';

/** How a reading came in. */
export type InputSource = 'keypad' | 'wedge' | 'serial' | 'choice';

/** A text that was not taken as a reading, as it stands on the screen. */
export type InputRefusal = RefusedText | TornReading;

/** Whom the input tells. */
export interface InputAudience {
  onReading: (reading: AcceptedReading, source: InputSource) => void;
  onRefused: (refusal: InputRefusal) => void;
  /** Back was pressed on the keypad: the entry made by the number just taken is to be voided. */
  onReopened: () => void;
  /** Clear was pressed: what was said of a refused number no longer holds. */
  onCleared: () => void;
  /** This gauge was learnt to end its readings so. */
  onEndingLearnt: (ending: WedgeEnding) => void;
  /** What the job's readings say a slate may measure; undefined while there are too few. */
  likely?: () => LikelyRange | undefined;
  /** A key that may mean something else than a reading has the first look here. */
  onKey?: (press: TapKeyPress, typed: TypedSoFar) => KeyClaim;
  onKeyUp?: (press: KeyPress, at: number) => void;
}

/** A burst that stands so long without an end asks whether to take it, ms. */
const UNENDED_LOOK_MS = 1100;
/** Trial readings looked at to learn how a gauge ends them. */
const TRIALS = 3;

/**
 * One number at a time, from the on-screen keypad, a keyboard or a gauge that types: one text, one
 * grammar, one way out. What is refused stays, to be corrected.
 */
export class GaugeInput {
  unit = $state<ReadingUnit>('mm');
  /** A burst stands without an end: ask whether to take it. */
  isUnended = $state(false);
  #keypad = $state.raw<KeypadState>(EMPTY_KEYPAD);
  #typed = $state('');
  /** Refused text that came by keyboard. */
  #held = $state('');
  #trial = $state.raw<UnitTrial>(startUnitTrial('mm'));
  #ending: WedgeEnding;
  #outcomes: WedgeOutcome[] = [];
  #field: (CaptureField & { focus?: () => void }) | undefined;
  #stopLook: (() => void) | undefined;
  readonly #audience: InputAudience;
  readonly #wedge: WedgeListener;

  /** The number as it stands on the screen. */
  readonly text = $derived(this.#typed || this.#keypad.text || this.#held);
  /** Whether a number is coming in by keyboard. */
  readonly isTyping = $derived(this.#typed !== '');
  /** Reading after reading speaks for the other unit. */
  readonly isUnitInDoubt = $derived(isUnitInDoubt(this.#trial));

  constructor(audience: InputAudience, ending: WedgeEnding) {
    this.#audience = audience;
    this.#ending = ending;
    this.#wedge = new WedgeListener({ unit: 'mm', ending }, pageTimer, {
      onOutcome: (outcome) => this.#takeOutcome(outcome),
      onProgress: ({ text }) => this.#showProgress(text),
      onKey: audience.onKey,
      onKeyUp: audience.onKeyUp
    });
  }

  /** Listens to the page; the function returned ends it. */
  listen(page: EventTarget, field: CaptureField & { focus?: () => void }): () => void {
    this.#field = field;
    const stop = this.#wedge.listen(page, field);
    return () => {
      stop();
      this.#stopLook?.();
    };
  }

  setUnit(unit: ReadingUnit): void {
    this.unit = unit;
    this.#trial = startUnitTrial(unit);
    this.#wedge.learn({ unit, ending: this.#ending });
  }

  setEnding(ending: WedgeEnding): void {
    this.#ending = ending;
    this.#outcomes = [];
    this.#wedge.learn({ unit: this.unit, ending });
  }

  /** A key of the on-screen keypad. A number begun on the keyboard goes on here. */
  press(key: KeypadKey, touch: KeyTouch = tapNow()): void {
    if (key === 'clear') this.#audience.onCleared();
    if (this.#typed !== '') {
      if (key === 'enter') return this.#wedge.accept();
      this.#keypad = { ...EMPTY_KEYPAD, text: this.#typed };
      this.#wedge.clear();
    } else if (this.#held !== '' && key === 'back') {
      this.#keypad = { ...EMPTY_KEYPAD, text: this.#held };
    }
    if (this.#held !== '' && key === 'clear') return this.clear();
    this.#held = '';
    const settings = {
      unit: this.unit,
      takesAfterDecimals: USUAL_TAKING[this.unit],
      likely: key === 'enter' ? this.#audience.likely?.() : undefined
    };
    const { text, taken } = this.#keypad;
    if (key === 'enter' && text === '' && taken === null) return this.refuseEmpty();
    const { state, effect } = pressKeypad(this.#keypad, key, touch, settings);
    this.#keypad = state;
    if (effect.kind === 'reading') this.#take(effect.reading, 'keypad');
    else if (effect.kind === 'reopened') this.#audience.onReopened();
  }

  /** Enter with nothing typed. */
  refuseEmpty(): void {
    this.#audience.onRefused({ ok: false, reason: 'empty', text: '' });
  }

  /** Takes a burst that stands without an end. */
  accept(): void {
    this.#wedge.accept();
  }

  /** Backspace on a refused number: it goes back into the field without its last character. */
  reopenHeld(): void {
    const field = this.#field;
    const text = this.#held.slice(0, -1);
    this.#held = '';
    if (text === '' || !field) return;
    field.value += text;
    field.dispatchEvent(new InputEvent('input', { data: text, inputType: 'insertText' }));
  }

  /** Empties the number. */
  clear(): void {
    this.drop();
    this.#wedge.clear();
  }

  /** Drops what stands refused or half typed on the keypad; a burst in progress goes on. */
  drop(): void {
    this.#held = '';
    this.#keypad = EMPTY_KEYPAD;
  }

  /** A reading that came another way: by cable, or chosen from what a number may have meant. */
  takeReading(reading: Reading, source: InputSource): void {
    this.drop();
    this.#take(reading, source);
  }

  /** Keeps a text on the screen that was read but could not be put anywhere. */
  hold(text: string): void {
    this.#keypad = EMPTY_KEYPAD;
    this.#held = text;
  }

  #takeOutcome(outcome: WedgeOutcome): void {
    this.drop();
    this.#learn(outcome);
    const { reading } = outcome;
    if (reading.ok || !isTorn(reading))
      this.#take(findLostPoint(reading, this.#audience.likely?.()), 'wedge');
    else {
      this.#held = reading.text;
      this.#audience.onRefused(reading);
    }
  }

  #take(reading: Reading, source: InputSource): void {
    this.#trial = addToUnitTrial(this.#trial, reading);
    if (reading.ok) return this.#audience.onReading(reading, source);
    if (source !== 'keypad') this.#held = reading.text;
    this.#audience.onRefused(reading);
  }

  /** After three readings taken by hand, a gauge without terminator is known for one. */
  #learn(outcome: WedgeOutcome): void {
    if (this.#ending.kind === 'pause') return;
    this.#outcomes = [...this.#outcomes, outcome].slice(-TRIALS);
    const lesson = learnWedgeEnding(this.#outcomes);
    if (!lesson.ok || lesson.ending.kind === 'key') return;
    this.setEnding(lesson.ending);
    this.#audience.onEndingLearnt(lesson.ending);
  }

  #showProgress(text: string): void {
    this.#typed = text;
    this.isUnended = false;
    this.#stopLook?.();
    this.#stopLook = undefined;
    if (text === '') return;
    this.#held = '';
    this.#stopLook = pageTimer.after(UNENDED_LOOK_MS, () => {
      const settings = { unit: this.unit, ending: this.#ending };
      this.isUnended = looksUnended(this.#wedge.state, pageTimer.now(), settings);
    });
  }
}

function tapNow(): KeyTouch {
  const at = pageTimer.now();
  return { downAt: at, upAt: at };
}

function isTorn(reading: InputRefusal): reading is TornReading {
  return reading.reason === 'cut-short' || reading.reason === 'interrupted';
}
