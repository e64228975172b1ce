import { changeOfText } from './field-text.ts';
import type { TapKeyPress, TypedSoFar } from './tap-keys.ts';
import { Alarm, type Timer } from './timer.ts';
import type { KeyPress } from './wedge-keys.ts';
import { wedgeStep } from './wedge.ts';
import {
  IDLE_WEDGE,
  type WedgeEvent,
  type WedgeOutcome,
  type WedgeSettings,
  type WedgeState
} from './wedge-state.ts';

/** What is needed of the capture field: an `<input inputmode="none">` fits. */
export interface CaptureField extends EventTarget {
  value: string;
}

/** Whom the listener tells. */
export interface WedgeAudience {
  /** A reading, taken or refused. */
  readonly onOutcome: (outcome: WedgeOutcome) => void;
  /** The text in progress changed. */
  readonly onProgress?: (state: WedgeState) => void;
  /** A key that may mean something else than a reading has the first look. */
  readonly onKey?: (press: TapKeyPress, typed: TypedSoFar) => KeyClaim;
  readonly onKeyUp?: (press: KeyPress, at: number) => void;
}

/**
 * Who a key is for: the listener, somebody else (`claimed`), or the listener together with what was
 * claimed before it (`with`), which was the head of a reading.
 */
export type KeyClaim =
  { readonly kind: 'leave' | 'claimed' } | { readonly kind: 'with'; readonly text: string };

/** The field is emptied between readings once it holds more. */
const LONGEST_FIELD = 200;

/**
 * Listens to a page for a keyboard gauge: keys anywhere on the page, and on Android the text that
 * appears in the capture field. Keys typed into any other field are left alone.
 *
 * Keys are heard before the page hears them, and those the gauge's burst uses go no further.
 *
 * @example
 * const stop = new WedgeListener(settings, timer, { onOutcome }).listen(window, field);
 */
export class WedgeListener {
  #state: WedgeState = IDLE_WEDGE;
  #fieldText = '';
  readonly #swallowed = new Set<string>();
  readonly #alarm: Alarm;

  constructor(
    private settings: WedgeSettings,
    private readonly timer: Timer,
    private readonly audience: WedgeAudience
  ) {
    this.#alarm = new Alarm(timer, () => this.#take({ kind: 'tick', at: timer.now() }));
  }

  /** The text in progress. */
  get state(): WedgeState {
    return this.#state;
  }

  /** Changes what is known of the gauge, as when the set-up has learnt its ending. */
  learn(settings: WedgeSettings): void {
    this.settings = settings;
  }

  /** Takes the number in progress as it stands: the sorter's tap. */
  accept(): void {
    this.#take({ kind: 'accept', at: this.timer.now() });
  }

  /** Drops the number in progress: the sorter's tap. */
  clear(): void {
    this.#take({ kind: 'clear', at: this.timer.now() });
  }

  /**
   * Begins to listen; the function returned ends it, and reports a reading in progress as cut short.
   *
   * @param page the window
   * @param field the capture field, kept focused between taps
   */
  listen(page: EventTarget, field: CaptureField): () => void {
    this.#fieldText = field.value;
    const key = (event: Event) => this.#takeKey(event as KeyboardEvent, field);
    const keyUp = (event: Event) => this.#takeKeyUp(event as KeyboardEvent);
    const input = (event: Event) => this.#takeText(event as InputEvent, field);
    const lineBreak = (event: Event) => this.#takeLineBreak(event as InputEvent);
    const blur = () => this.#take({ kind: 'blur', at: this.timer.now() });
    const focus = () => this.#take({ kind: 'focus', at: this.timer.now() });
    page.addEventListener('keydown', key, { capture: true });
    page.addEventListener('keyup', keyUp, { capture: true });
    field.addEventListener('beforeinput', lineBreak);
    field.addEventListener('input', input);
    page.addEventListener('blur', blur);
    page.addEventListener('focus', focus);
    return () => {
      page.removeEventListener('keydown', key, { capture: true });
      page.removeEventListener('keyup', keyUp, { capture: true });
      field.removeEventListener('beforeinput', lineBreak);
      field.removeEventListener('input', input);
      page.removeEventListener('blur', blur);
      page.removeEventListener('focus', focus);
      blur();
      this.#alarm.setFor(null);
    };
  }

  #takeKey(event: KeyboardEvent, field: CaptureField): void {
    // Key 229 announces text that follows as an input event, and so does a key in composition.
    const isEnd = event.key === 'Enter' || event.key === 'Tab';
    if (event.keyCode === 229 || (event.isComposing && !isEnd)) return;
    if (event.target !== field && isTextField(event.target)) return;
    const { key, code, shiftKey, ctrlKey, altKey, metaKey, repeat } = event;
    const at = this.#momentOf(event);
    const press = { key, code, shiftKey, ctrlKey, altKey, metaKey, repeat };
    if (this.#isClaimed({ ...press, at, keyCode: event.keyCode })) {
      this.#swallowed.add(code);
      return stop(event);
    }
    const isSwallowed = this.#take({
      kind: 'key',
      at,
      ...press,
      isOnControl: event.target !== field && isControl(event.target)
    });
    if (!isSwallowed) return;
    this.#swallowed.add(code);
    stop(event);
  }

  /** Some browsers press a button when Space comes up: a key swallowed going down stays so. */
  #takeKeyUp(event: KeyboardEvent): void {
    this.audience.onKeyUp?.(event, this.#momentOf(event));
    if (this.#swallowed.delete(event.code)) stop(event);
  }

  #takeText(event: InputEvent, field: CaptureField): void {
    const { erased, inserted } = changeOfText(this.#fieldText, field.value);
    this.#fieldText = field.value;
    const at = this.#momentOf(event);
    if (erased > 0 || !this.audience.onKey) this.#take({ kind: 'text', at, erased, inserted });
    else
      for (const sign of inserted)
        if (!this.#isClaimed({ key: sign === '\n' ? 'Enter' : sign, code: '', at }))
          this.#take({ kind: 'text', at, inserted: sign });
    // Emptied only between readings and outside a composition, which would type its text again.
    const isIdle = this.#state.text === '' && !event.isComposing;
    if (isIdle && field.value.length > LONGEST_FIELD) this.#fieldText = field.value = '';
  }

  /** Android's Enter may come as a line break put into the field. */
  #takeLineBreak(event: InputEvent): void {
    if (event.inputType !== 'insertLineBreak' && event.inputType !== 'insertParagraph') return;
    event.preventDefault();
    const at = this.#momentOf(event);
    if (this.#isClaimed({ key: 'Enter', code: 'Enter', at })) return;
    this.#take({ kind: 'text', at, inserted: '\n' });
  }

  /** Whether a key is somebody else's; what turns out to be the head of a reading is taken first. */
  #isClaimed(press: TapKeyPress): boolean {
    const { text, lastAt } = this.#state;
    const claim = this.audience.onKey?.(press, { text, lastAt }) ?? { kind: 'leave' };
    if (claim.kind === 'with') this.#take({ kind: 'text', at: press.at, inserted: claim.text });
    return claim.kind === 'claimed';
  }

  /**
   * When a key was pressed, which a busy page hears of late: the gaps of a burst are those of the
   * gauge. An event without a time of its own happened now.
   */
  #momentOf({ timeStamp }: Event): number {
    const now = this.timer.now();
    return timeStamp > 0 ? Math.min(timeStamp, now) : now;
  }

  #take(event: WedgeEvent): boolean {
    const step = wedgeStep(this.#state, event, this.settings);
    this.#state = step.state;
    this.#alarm.setFor(step.wakeAt);
    for (const outcome of step.outcomes) this.audience.onOutcome(outcome);
    this.audience.onProgress?.(step.state);
    return step.isSwallowed;
  }
}

function stop(event: Event): void {
  event.preventDefault();
  event.stopImmediatePropagation();
}

/** Whether typing into this place is the page's business. */
function isTextField(target: EventTarget | null): boolean {
  const { tagName, type, isContentEditable } = (target ?? {}) as Partial<HTMLInputElement>;
  if (isContentEditable || tagName === 'TEXTAREA' || tagName === 'SELECT') return true;
  return (
    tagName === 'INPUT' && !['button', 'checkbox', 'radio', 'range', 'submit'].includes(type ?? '')
  );
}

/** Whether Space or Enter works this place. */
function isControl(target: EventTarget | null): boolean {
  const { tagName } = (target ?? {}) as Partial<HTMLElement>;
  return ['BUTTON', 'A', 'INPUT', 'SUMMARY'].includes(tagName ?? '');
}
