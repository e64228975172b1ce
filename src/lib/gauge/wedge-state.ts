import type { ReadingUnit, Reading } from './reading-grammar.ts';
import type { KeyPress } from './wedge-keys.ts';

/** How the gauge ends a reading. */
export type WedgeEnding =
  /** With Enter, Tab or both: a pause never ends a reading. */
  | { readonly kind: 'key' }
  /** With nothing: a pause ends it, once it has the gauge's fixed number of decimals. */
  | { readonly kind: 'pause'; readonly decimals: number };

/** What is known of the keyboard gauge in this session. */
export interface WedgeSettings {
  readonly unit: ReadingUnit;
  readonly ending: WedgeEnding;
}

/** What happens at the keyboard, each with its time in milliseconds on any steady clock. */
export type WedgeEvent = { readonly at: number } & (
  | ({ readonly kind: 'key'; readonly isOnControl?: boolean } & KeyPress)
  | { readonly kind: 'text'; readonly erased?: number; readonly inserted: string }
  | { readonly kind: 'tick' | 'blur' | 'focus' | 'accept' | 'clear' }
);

/** A reading torn apart: its text is shown, and the slate is to be gauged again. */
export interface TornReading {
  readonly ok: false;
  /** `cut-short`: its head or tail is missing. `interrupted`: a long pause lies inside it. */
  readonly reason: 'cut-short' | 'interrupted';
  readonly text: string;
}

/** One burst, brought to its end. */
export interface WedgeOutcome {
  readonly reading: Reading | TornReading;
  readonly endedBy: 'enter' | 'tab' | 'pause' | 'accept' | 'loss';
}

/** What has been typed so far. */
export interface WedgeState {
  /** The characters of the reading in progress; empty between readings. */
  readonly text: string;
  /** When the last key or text came; −∞ when the keyboard has been quiet or left the field. */
  readonly lastAt: number;
  /** Pauses inside the reading that are longer than a gauge leaves between characters. */
  readonly slowGaps: number;
  /** Whether a pause so long that two readings may have met lies inside. */
  readonly isInterrupted: boolean;
  /** Whether the reading began so soon after a loss of focus that its head may be missing. */
  readonly isHeadLost: boolean;
  /** Characters before this time may be the tail of a burst that went elsewhere. */
  readonly suspectUntil: number;
  /** Whether the last reading had its Enter: a later one is not the gauge's. */
  readonly hadEnter: boolean;
}

/** The result of one event. */
export interface WedgeStep {
  readonly state: WedgeState;
  /** Whether the event's default must be prevented: nothing else may act on this key. */
  readonly isSwallowed: boolean;
  /** Readings ended by the event, oldest first; nearly always none or one. */
  readonly outcomes: readonly WedgeOutcome[];
  /** When a `tick` is due, or null. */
  readonly wakeAt: number | null;
}

/** The state before the first key. */
export const IDLE_WEDGE: WedgeState = {
  text: '',
  lastAt: -Infinity,
  slowGaps: 0,
  isInterrupted: false,
  isHeadLost: false,
  suspectUntil: -Infinity,
  hadEnter: false
};
