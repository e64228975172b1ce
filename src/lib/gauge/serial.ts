import { type LinePattern, type NoiseLine, readLine } from './line-pattern.ts';
import type { ReadingUnit, Reading } from './reading-grammar.ts';
import {
  type LineEnding,
  type LineState,
  type LineStep,
  passTime,
  startLines,
  takeBytes
} from './serial-lines.ts';
import { Alarm, type Timer } from './timer.ts';

/** What is needed of the reader of a serial port. */
export interface SerialReader {
  read(): Promise<{ done: boolean; value?: Uint8Array }>;
  cancel(): Promise<void>;
  releaseLock(): void;
}

/** How the port is opened. Gauges differ most in speed; the rest is 8 data bits, no parity. */
export interface SerialSpeed {
  readonly baudRate: number;
  readonly dataBits?: 7 | 8;
  readonly parity?: 'none' | 'even' | 'odd';
  readonly stopBits?: 1 | 2;
}

/** What is needed of a Web Serial port: the browser's fits, and so does an emulated one. */
export interface SerialPortLike {
  readonly readable: { getReader(): SerialReader } | null;
  open(speed: SerialSpeed): Promise<void>;
  close(): Promise<void>;
}

/** What is known of the serial gauge. */
export interface SerialSettings {
  readonly unit: ReadingUnit;
  /** Where the number stands, or null in the set-up: then lines are only shown. */
  readonly pattern: LinePattern | null;
  /** Whether lines end with CR or LF, or with a pause. */
  readonly ending: 'line' | 'pause';
}

/** What the gauge's line brought. */
export type SerialEvent =
  /** Every line as it came, before anything is made of it: for the set-up's view. */
  | { readonly kind: 'line'; readonly text: string; readonly isWhole: boolean }
  | { readonly kind: 'reading'; readonly reading: Reading; readonly text: string }
  | { readonly kind: 'noise'; readonly text: string; readonly reason: NoiseReason }
  /** The port lost bytes and goes on; a line torn by it was reported as noise. */
  | { readonly kind: 'bytes-lost'; readonly detail: string }
  | { readonly kind: 'unplugged' }
  | { readonly kind: 'closed' };

/** Why a line was not read: torn, or not of the pattern. */
export type NoiseReason = 'torn' | NoiseLine['reason'];

/** Faults in a row, without a byte between, after which the port counts as unplugged. */
const MOST_FAILURES = 10;

/**
 * One gauge at a serial port: bytes become lines, lines become readings, each reported once and in
 * order. A line that is torn or not of the pattern is reported as noise, never read.
 *
 * @example
 * const gauge = new SerialGauge(port, settings, timer, (event) => show(event));
 * await gauge.open({ baudRate: 9600 });
 */
export class SerialGauge {
  #lines: LineState;
  #reader: SerialReader | null = null;
  #isClosing = false;
  #finished: Promise<void> = Promise.resolve();
  readonly #alarm: Alarm;

  constructor(
    private readonly port: SerialPortLike,
    private settings: SerialSettings,
    private readonly timer: Timer,
    private readonly report: (event: SerialEvent) => void
  ) {
    this.#lines = startLines(timer.now());
    this.#alarm = new Alarm(timer, () =>
      this.#take(passTime(this.#lines, timer.now(), this.#ending()))
    );
  }

  /** Changes what is known of the gauge, as when the set-up has learnt its lines. */
  learn(settings: SerialSettings): void {
    this.settings = settings;
  }

  /** Opens the port and reads until it is closed or unplugged. Rejects if it cannot be opened. */
  async open(speed: SerialSpeed): Promise<void> {
    await this.port.open(speed);
    this.#isClosing = false;
    this.#lines = startLines(this.timer.now());
    this.#finished = this.#readAll();
  }

  /** Stops reading, reports what was left of a line, and closes the port. */
  async close(): Promise<void> {
    this.#isClosing = true;
    await this.#reader?.cancel().catch(() => undefined);
    await this.#finished;
  }

  /** Reads on over lost bytes, for which the browser gives the port a new stream. */
  async #readAll(): Promise<void> {
    let failures = 0;
    while (this.port.readable && !this.#isClosing && failures < MOST_FAILURES) {
      const reader = this.port.readable.getReader();
      this.#reader = reader;
      let failure: unknown = null;
      try {
        for (;;) {
          const { done, value } = await reader.read();
          if (done) break;
          failures = 0;
          if (value) this.#take(takeBytes(this.#lines, value, this.timer.now(), this.#ending()));
        }
      } catch (error) {
        failure = error;
      } finally {
        reader.releaseLock();
        this.#reader = null;
      }
      this.#tear();
      if (failure === null) break;
      failures++;
      if (this.port.readable) this.report({ kind: 'bytes-lost', detail: String(failure) });
    }
    this.#alarm.setFor(null);
    await this.port.close().catch(() => undefined);
    this.report({ kind: this.#isClosing ? 'closed' : 'unplugged' });
  }

  /** Reports the line in the making as torn, and distrusts what follows at once. */
  #tear(): void {
    const text = this.#lines.text.trim();
    this.#lines = startLines(this.timer.now());
    if (text !== '') this.#takeLine(text, false);
  }

  #ending(): LineEnding {
    const { ending, pattern, unit } = this.settings;
    if (ending === 'line') return { kind: 'line' };
    if (pattern === null) return { kind: 'pause' };
    return { kind: 'pause', isComplete: (text) => !isNoise(readLine(pattern, text, unit)) };
  }

  #take(step: LineStep): void {
    this.#lines = step.state;
    this.#alarm.setFor(step.wakeAt);
    for (const { text, isWhole } of step.lines) this.#takeLine(text, isWhole);
  }

  #takeLine(text: string, isWhole: boolean): void {
    this.report({ kind: 'line', text, isWhole });
    const { pattern, unit } = this.settings;
    if (pattern === null) return;
    if (!isWhole) {
      this.report({ kind: 'noise', text, reason: 'torn' });
      return;
    }
    const reading = readLine(pattern, text, unit);
    if (isNoise(reading)) this.report({ kind: 'noise', text, reason: reading.reason });
    else this.report({ kind: 'reading', reading, text });
  }
}

function isNoise(reading: Reading | NoiseLine): reading is NoiseLine {
  return !reading.ok && (reading.reason === 'other-line' || reading.reason === 'other-shape');
}
