/** How a serial gauge ends its lines. */
export type LineEnding =
  /** With CR, LF or both. */
  | { readonly kind: 'line' }
  /** With nothing: a pause ends a line that `isComplete`, or any line where it is left out. */
  | { readonly kind: 'pause'; readonly isComplete?: (text: string) => boolean };

/** A line in the making. */
export interface LineState {
  readonly text: string;
  /** When the last bytes came; ms on the caller's clock. */
  readonly lastAt: number;
  /** A line that begins before this time may have lost its head. */
  readonly suspectUntil: number;
  /** Whether bytes at its beginning may be missing. */
  readonly isHeadLost: boolean;
  /** Whether a pause so long that two lines may have met lies inside. */
  readonly isInterrupted: boolean;
}

/** One line as the gauge sent it, without its end. */
export interface RawLine {
  readonly text: string;
  /** Whether it is whole: neither its head nor its tail can be missing. */
  readonly isWhole: boolean;
}

/** The lines ended by a step, oldest first. */
export interface LineStep {
  readonly state: LineState;
  readonly lines: readonly RawLine[];
  /** When `passTime` is due, or null. */
  readonly wakeAt: number | null;
}

/** A pause that ends a line of a gauge without line ends. */
export const PAUSE_ENDS_LINE_MS = 200;
/** A line is not torn for longer than this; beyond it two lines may have met. */
const INTERRUPTED_MS = 2_500;
/** A line left without an end for so long is given up and reported. */
const ABANDONED_MS = 10_000;
/** A line grown so long is noise at the wrong speed: it is reported in pieces. */
const LONGEST_LINE = 256;

/** After opening or a loss, bytes that come so soon may be the rest of a line begun before. */
const SUSPECT_MS = 250;

/**
 * The state after opening a port, or after bytes were lost: what comes at once may be the rest of a
 * line begun before, and is reported but not read.
 */
export function startLines(at: number): LineState {
  return { ...freshLine(at), suspectUntil: at + SUSPECT_MS };
}

function freshLine(at: number): LineState {
  return { text: '', lastAt: at, suspectUntil: -Infinity, isHeadLost: false, isInterrupted: false };
}

/**
 * Cuts bytes into lines, however the port cut them into chunks. CR, LF and CR LF each end a line;
 * empty lines are dropped, so CR LF ends one. Other control characters are dropped; a byte above 127
 * becomes one character, so that noise stays visible.
 *
 * @param state not modified
 * @param bytes one chunk, of any length, not modified
 * @param at time of the chunk, ms
 */
export function takeBytes(
  state: LineState,
  bytes: Uint8Array,
  at: number,
  ending: LineEnding
): LineStep {
  const lines: RawLine[] = [];
  let next = endIfDue(state, at, ending, lines);
  for (const byte of bytes) {
    if (byte === 10 || byte === 13) next = endLine(next, at, true, lines);
    else if (byte >= 32 && byte !== 127) {
      next = append(next, String.fromCharCode(byte), at);
      if (next.text.length >= LONGEST_LINE)
        next = { ...endLine(next, at, false, lines), isHeadLost: true };
    }
  }
  return { state: next, lines, wakeAt: dueAt(next, ending) };
}

/** Ends the line in the making if the pause has lasted long enough. */
export function passTime(state: LineState, at: number, ending: LineEnding): LineStep {
  const lines: RawLine[] = [];
  const next = endIfDue(state, at, ending, lines);
  return { state: next, lines, wakeAt: dueAt(next, ending) };
}

function append(state: LineState, character: string, at: number): LineState {
  const isFirst = state.text === '';
  return {
    ...state,
    text: state.text + character,
    lastAt: at,
    isHeadLost: state.isHeadLost || (isFirst && at < state.suspectUntil),
    isInterrupted: state.isInterrupted || (!isFirst && at - state.lastAt > INTERRUPTED_MS)
  };
}

function endsByPause(text: string, ending: LineEnding): boolean {
  return ending.kind === 'pause' && (ending.isComplete?.(text) ?? true);
}

function dueAt(state: LineState, ending: LineEnding): number | null {
  if (state.text === '') return null;
  return state.lastAt + (endsByPause(state.text, ending) ? PAUSE_ENDS_LINE_MS : ABANDONED_MS);
}

function endIfDue(state: LineState, at: number, ending: LineEnding, lines: RawLine[]): LineState {
  const due = dueAt(state, ending);
  if (due === null || at < due) return state;
  return endLine(state, state.lastAt, endsByPause(state.text, ending), lines);
}

function endLine(state: LineState, at: number, hasTail: boolean, lines: RawLine[]): LineState {
  const text = state.text.trim();
  const isWhole = hasTail && !state.isHeadLost && !state.isInterrupted;
  if (text !== '') lines.push({ text, isWhole });
  return freshLine(at);
}
