import { Sha256 } from './sha256.ts';

/** Lines turned to bytes at once: each turn costs more than the bytes of one line. */
const LINES = 256;

/** The SHA-256 of lines, each with its line feed, as the header of a job file gives it. */
export class LinesHash {
  readonly #hash = new Sha256();
  readonly #encoder = new TextEncoder();
  #waiting: string[] = [];

  add(text: string): void {
    this.#waiting.push(text);
    if (this.#waiting.length === LINES) this.#take();
  }

  /** The hash in lower-case hexadecimal. Nothing may be added after it. */
  hex(): string {
    this.#take();
    return this.#hash.hex();
  }

  #take(): void {
    if (this.#waiting.length === 0) return;
    this.#hash.update(this.#encoder.encode(`${this.#waiting.join('\n')}\n`));
    this.#waiting = [];
  }
}
