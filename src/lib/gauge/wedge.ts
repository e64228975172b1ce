import { type Reading, parseReading } from './reading-grammar.ts';
import { meaningOfKey } from './wedge-keys.ts';
import {
  IDLE_WEDGE,
  type TornReading,
  type WedgeEvent,
  type WedgeOutcome,
  type WedgeSettings,
  type WedgeState,
  type WedgeStep
} from './wedge-state.ts';

/** Longest gap between two characters of one burst. */
export const BURST_GAP_MS = 150;
/** A pause that ends a reading of a gauge without terminator. */
export const PAUSE_ENDS_MS = 350;
/** A second terminator within this time belongs to the first. */
const TAIL_MS = 400;
/** After a focus change, characters within this time may be the tail of a burst. */
const SUSPECT_MS = 250;
/** A burst is not torn for longer than this; beyond it two readings may have met. */
const INTERRUPTED_MS = 2_500;
/** A reading left without an end for so long is given up and reported. */
const ABANDONED_MS = 10_000;
/** A burst this long waiting for its end suggests a gauge without terminator. */
const UNENDED_MS = 1_000;
/** No reading is longer; what overflows is refused by the grammar as it stands. */
const LONGEST_TEXT = 64;

/**
 * Takes one keyboard event of a gauge that types, or of a person at the same keyboard, and tells
 * what to do with it. Typed and gauged numbers take the same path: the grammar and a terminator
 * decide, never the speed. Speed counts only where a pause ends a reading.
 *
 * Nothing is lost: a burst torn by a pause is put together; noise, a lost head or tail and two
 * readings run together come out as refusals that carry their text. Nothing is invented: Enter
 * after Tab ends no second reading, a repeating key writes nothing, and equal readings in a row
 * are as good as any.
 *
 * Enter and Tab are swallowed when they end a reading or follow one, so that a burst presses no
 * button; otherwise they are left to the page, so that the keyboard still works it. Space is left to
 * the page only between readings and on a control (`isOnControl`).
 *
 * @param state from the last step, or `IDLE_WEDGE`; not modified
 * @param event its time must not run backwards; a step back counts as no gap
 * @example keys 6 , 4 Enter → one outcome: 6.4 mm, ended by 'enter'
 */
export function wedgeStep(
  state: WedgeState,
  event: WedgeEvent,
  settings: WedgeSettings
): WedgeStep {
  const outcomes: WedgeOutcome[] = [];
  const due = dueAt(state, settings);
  let next = state;
  if (due !== null && event.at >= due) {
    next = finish(next, endsByPause(state, settings) ? 'pause' : 'loss', settings, outcomes);
  }
  const { state: after, isSwallowed } = takeEvent(next, event, settings, outcomes);
  return { state: after, isSwallowed, outcomes, wakeAt: dueAt(after, settings) };
}

/**
 * Whether a whole reading has waited for its terminator long enough to ask the sorter if the gauge
 * sends one.
 */
export function looksUnended(state: WedgeState, at: number, settings: WedgeSettings): boolean {
  return (
    state.text !== '' &&
    state.slowGaps === 0 &&
    at - state.lastAt >= UNENDED_MS &&
    parseReading(state.text, settings.unit).ok
  );
}

/** Whether silence ends the reading in progress: typed in one burst, or in one torn once. */
function endsByPause(state: WedgeState, { ending, unit }: WedgeSettings): boolean {
  if (ending.kind !== 'pause' || state.slowGaps > 1) return false;
  const reading = parseReading(state.text, unit);
  return 'decimals' in reading && reading.decimals === ending.decimals;
}

function dueAt(state: WedgeState, settings: WedgeSettings): number | null {
  if (state.text === '') return null;
  return state.lastAt + (endsByPause(state, settings) ? PAUSE_ENDS_MS : ABANDONED_MS);
}

interface Taken {
  readonly state: WedgeState;
  readonly isSwallowed: boolean;
}

function takeEvent(
  state: WedgeState,
  event: WedgeEvent,
  settings: WedgeSettings,
  outcomes: WedgeOutcome[]
): Taken {
  const left = (next: WedgeState): Taken => ({ state: next, isSwallowed: false });
  switch (event.kind) {
    case 'key':
      return takeKey(state, event, settings, outcomes);
    case 'text':
      return left(takeText(state, event, settings, outcomes));
    case 'accept':
      return left(state.text === '' ? state : finish(state, 'accept', settings, outcomes));
    case 'clear':
      return left({ ...IDLE_WEDGE, suspectUntil: state.suspectUntil });
    case 'blur': {
      // A burst may be under way though nothing of its number has come: a leading space is enough.
      if (state.text === '' && event.at - state.lastAt > TAIL_MS) return left(state);
      const torn = state.text === '' ? state : finish(state, 'loss', settings, outcomes);
      return left({ ...torn, suspectUntil: event.at + INTERRUPTED_MS });
    }
    case 'focus': {
      const suspectUntil = Math.max(state.suspectUntil, event.at + SUSPECT_MS);
      return left({ ...state, suspectUntil });
    }
    case 'tick':
      return left(state);
  }
}

function takeKey(
  state: WedgeState,
  event: Extract<WedgeEvent, { kind: 'key' }>,
  settings: WedgeSettings,
  outcomes: WedgeOutcome[]
): Taken {
  const { at } = event;
  const isBusy = state.text !== '';
  const isTail = at - state.lastAt <= TAIL_MS || at < state.suspectUntil;
  const meaning = meaningOfKey(event);
  switch (meaning.kind) {
    case 'character': {
      if (meaning.character === ' ' && !isBusy && !isTail && event.isOnControl)
        return { state, isSwallowed: false };
      return { state: append(state, meaning.character, at), isSwallowed: true };
    }
    case 'end': {
      if (isBusy)
        return {
          state: {
            ...finish(state, meaning.key, settings, outcomes),
            lastAt: at,
            hadEnter: meaning.key === 'enter'
          },
          isSwallowed: true
        };
      if (isTail) return { state: { ...state, lastAt: at }, isSwallowed: true };
      // A late Tab only moves the focus, but a late Enter would press what it moved to. Where the
      // reading had its Enter, another that comes after it is a person's.
      const isAfterReading = !state.hadEnter && at - state.lastAt <= INTERRUPTED_MS;
      const isLateEnter = meaning.key === 'enter' && isAfterReading;
      return { state: { ...state, lastAt: -Infinity }, isSwallowed: isLateEnter };
    }
    case 'erase':
      return { state: erase(state, 1, at), isSwallowed: isBusy };
    case 'cancel':
      return {
        state: isBusy ? { ...IDLE_WEDGE, suspectUntil: state.suspectUntil } : state,
        isSwallowed: isBusy
      };
    case 'repeat':
      return { state, isSwallowed: isBusy || isTail };
    case 'nothing':
      return { state, isSwallowed: false };
  }
}

function takeText(
  state: WedgeState,
  event: Extract<WedgeEvent, { kind: 'text' }>,
  settings: WedgeSettings,
  outcomes: WedgeOutcome[]
): WedgeState {
  const erased = event.erased ?? 0;
  if (erased > state.text.length && event.inserted !== '') {
    // The keyboard rewrote what was read already: which part is new cannot be told.
    const reading: TornReading = { ok: false, reason: 'cut-short', text: event.inserted };
    outcomes.push({ reading, endedBy: 'loss' });
    return { ...IDLE_WEDGE, lastAt: event.at, suspectUntil: state.suspectUntil };
  }
  let next = erased > 0 ? erase(state, erased, event.at) : state;
  for (const character of event.inserted) {
    if (!/[\r\n\t]/.test(character)) next = append(next, character, event.at);
    else if (next.text === '') next = { ...next, lastAt: event.at };
    else {
      const endedBy = character === '\t' ? 'tab' : 'enter';
      const hadEnter = endedBy === 'enter';
      next = { ...finish(next, endedBy, settings, outcomes), lastAt: event.at, hadEnter };
    }
  }
  return next;
}

function append(state: WedgeState, character: string, at: number): WedgeState {
  if (state.text === '') {
    const text = character.trim();
    return { ...state, text, lastAt: at, isHeadLost: at < state.suspectUntil };
  }
  const gap = at - state.lastAt;
  return {
    ...state,
    text: state.text.length < LONGEST_TEXT ? state.text + character : state.text,
    lastAt: at,
    slowGaps: state.slowGaps + Number(gap > BURST_GAP_MS),
    isInterrupted: state.isInterrupted || gap > INTERRUPTED_MS
  };
}

function erase(state: WedgeState, count: number, at: number): WedgeState {
  if (state.text === '') return state;
  const text = state.text.slice(0, -count);
  return text === ''
    ? { ...IDLE_WEDGE, suspectUntil: state.suspectUntil }
    : { ...state, text, lastAt: at };
}

/** Ends the reading in progress and empties the text; the time of the last key stays. */
function finish(
  state: WedgeState,
  endedBy: WedgeOutcome['endedBy'],
  { unit }: WedgeSettings,
  outcomes: WedgeOutcome[]
): WedgeState {
  const torn = (reason: TornReading['reason']): TornReading => ({
    ok: false,
    reason,
    text: state.text
  });
  let reading: Reading | TornReading;
  if (endedBy === 'loss' || state.isHeadLost) reading = torn('cut-short');
  else if (state.isInterrupted) reading = torn('interrupted');
  else reading = parseReading(state.text, unit);
  outcomes.push({ reading, endedBy });
  const { lastAt, suspectUntil } = state;
  return { ...IDLE_WEDGE, lastAt, suspectUntil };
}
