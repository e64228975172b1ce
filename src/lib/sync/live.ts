import { type HubClient, HubRefused } from './hub-client.ts';

/** The hub says that it lives every 20 s; after this long without a word the line is dead. */
export const SILENT_MS = 45_000;
/** Waits between tries to connect: doubled from the first to the last, each drawn at random. */
const FIRST_WAIT_MS = 1_000;
const LAST_WAIT_MS = 60_000;

export interface LiveParts {
  readonly hub: Pick<HubClient, 'live'>;
  /** The hub has news, or a line to it stands again. */
  readonly onNews: () => void;
  /** The hub does not let this device in any more. */
  readonly onRemoved: () => void;
  /** Calls back after so many milliseconds; what it gives takes that back. */
  readonly after: (ms: number, done: () => void) => () => void;
  /** 0 to 1. */
  readonly random: () => number;
}

/**
 * Keeps a line to the hub open and hears of news on it. A line that is silent for 45 s is dropped,
 * and another is opened after a wait that grows with each try in vain.
 */
export class LiveLine {
  readonly #parts: LiveParts;
  #isStopped = false;
  #hangUp = new AbortController();
  #wake: (() => void) | undefined;
  #tries = 0;

  constructor(parts: LiveParts) {
    this.#parts = parts;
  }

  /** Resolves once the line was stopped, or this device was removed. */
  async run(): Promise<void> {
    while (!this.#isStopped) {
      try {
        await this.#listen();
      } catch (error) {
        if (error instanceof HubRefused && (error.status === 401 || error.reason === 'removed')) {
          this.#parts.onRemoved();
          return;
        }
      }
      if (!this.#isStopped) await this.#wait();
    }
  }

  /** Tries again at once instead of waiting, as when the signal is back. */
  hurry(): void {
    this.#tries = 0;
    this.#wake?.();
  }

  stop(): void {
    this.#isStopped = true;
    this.#hangUp.abort();
    this.#wake?.();
  }

  async #listen(): Promise<void> {
    const { hub, after, onNews } = this.#parts;
    this.#hangUp = new AbortController();
    const { signal } = this.#hangUp;
    let isHeard = after(SILENT_MS, () => this.#hangUp.abort());
    try {
      const reader = (await hub.live(signal)).getReader();
      const dropped = new Promise<never>((_, reject) =>
        signal.addEventListener('abort', () => reject(new Error('silent')))
      );
      dropped.catch(() => undefined);
      for (;;) {
        const { done, value } = await Promise.race([reader.read(), dropped]);
        if (done) return;
        this.#tries = 0;
        isHeard();
        isHeard = after(SILENT_MS, () => this.#hangUp.abort());
        // An empty line only says that the hub lives.
        if (value.some((byte) => byte !== 0x0a && byte !== 0x0d)) onNews();
      }
    } finally {
      isHeard();
      this.#hangUp.abort();
    }
  }

  #wait(): Promise<void> {
    const longest = Math.min(LAST_WAIT_MS, FIRST_WAIT_MS * 2 ** this.#tries++);
    return new Promise((resolve) => {
      const woken = (): void => {
        this.#wake = undefined;
        takeBack();
        resolve();
      };
      const takeBack = this.#parts.after(longest * (0.5 + this.#parts.random() / 2), woken);
      this.#wake = woken;
    });
  }
}
