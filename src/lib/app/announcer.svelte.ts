/** Time between two announcements, ms: faster ones would talk over each other. */
const PACE_MS = 1500;

/**
 * What a screen reader is told, politely: what happened within a second and a half is summed up in
 * one sentence.
 */
export class Announcer {
  /** How many things happened, and the last of them in words. */
  message = $state.raw<{ n: number; last: string }>({ n: 0, last: '' });
  #waiting = 0;
  #last = '';
  #timer: ReturnType<typeof setTimeout> | undefined;

  say(last: string): void {
    this.#last = last;
    this.#waiting++;
    this.#timer ??= setTimeout(() => {
      this.message = { n: this.#waiting, last: this.#last };
      this.#waiting = 0;
      this.#timer = undefined;
    }, PACE_MS);
  }

  close(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
  }
}
