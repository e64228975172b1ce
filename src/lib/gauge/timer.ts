/**
 * The clock and the alarm of an adapter: an argument, so that tests need no waiting. In a page, `now`
 * is `performance.now()` and `after` wraps `setTimeout`.
 */
export interface Timer {
  /** Time in milliseconds on a clock that never runs backwards. */
  readonly now: () => number;
  /** Calls `action` once after `ms`; the function returned calls it off. */
  readonly after: (ms: number, action: () => void) => () => void;
}

/** One alarm that is set and set again; the last setting counts. */
export class Alarm {
  #callOff: (() => void) | null = null;

  constructor(
    private readonly timer: Timer,
    private readonly action: () => void
  ) {}

  /** Sets the alarm for a time of the timer's clock, or calls it off with null. */
  setFor(at: number | null): void {
    this.#callOff?.();
    this.#callOff =
      at === null ? null : this.timer.after(Math.max(0, at - this.timer.now()), this.action);
  }
}
