import type { Timer } from '../../src/lib/gauge/timer.ts';

/** A timer moved by hand, for tests: its alarms go off, in order, as its time passes them. */
export class ManualTimer implements Timer {
  #time = 0;
  #alarms: { at: number; action: () => void }[] = [];

  readonly now = (): number => this.#time;

  readonly after = (ms: number, action: () => void): (() => void) => {
    const alarm = { at: this.#time + ms, action };
    this.#alarms.push(alarm);
    return () => {
      this.#alarms = this.#alarms.filter((other) => other !== alarm);
    };
  };

  /** Lets `ms` pass. */
  pass(ms: number): void {
    const end = this.#time + ms;
    for (;;) {
      const due = this.#alarms
        .filter(({ at }) => at <= end)
        .sort((one, other) => one.at - other.at)[0];
      if (!due) break;
      this.#alarms = this.#alarms.filter((other) => other !== due);
      this.#time = Math.max(this.#time, due.at);
      due.action();
    }
    this.#time = end;
  }
}
