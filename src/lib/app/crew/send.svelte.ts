import type { Handover } from '$lib/sync';
import { type ReadyFile, readyFile } from '../file-saving.ts';
import { journalStore } from '../store.ts';

/** Sending a job from hand to hand, without a hub: as a file, or as codes for a camera. */
export class SendState {
  readonly #jobId: string;
  /** What this device has of the job, to be read out to whoever sends it. */
  ownCode = $state('');
  fault = $state<'bad-code' | 'too-much'>();
  hand = $state.raw<Handover>();
  file = $state.raw<ReadyFile>();
  /** The codes, while they are shown. */
  frames = $state.raw<readonly string[]>([]);
  #asked = 0;

  constructor(jobId: string) {
    this.#jobId = jobId;
  }

  /** Looks what this device has. */
  async look(): Promise<void> {
    const { writeLacksCode } = await import('$lib/sync');
    this.ownCode = writeLacksCode(this.#jobId, await journalStore().numbers(this.#jobId));
  }

  /**
   * Makes what is sent ready: the share sheet wants its file before the tap.
   *
   * @param code what the receiver says that he has; empty for all
   * @param name of the file
   * @param sentence tells the receiver what to do with it
   */
  async prepare(code: string, name: string, sentence: string): Promise<void> {
    const asked = ++this.#asked;
    this.stop();
    this.hand = this.file = this.fault = undefined;
    const { handoverFor, readLacksCode, writeMateText } = await import('$lib/sync');
    const store = journalStore();
    const own = await store.numbers(this.#jobId);
    const have = code.trim() === '' ? {} : readLacksCode(this.#jobId, own, code);
    if (asked !== this.#asked) return;
    if (!have) {
      this.fault = 'bad-code';
      return;
    }
    const hand = await handoverFor(store, this.#jobId, have);
    const text = await writeMateText(hand, sentence);
    if (asked !== this.#asked) return;
    this.hand = hand;
    this.file = readyFile(new Blob([text], { type: 'text/plain' }), name);
  }

  /** Shows it as codes, one after another; photos stay out. */
  async show(): Promise<void> {
    const { hand } = this;
    if (!hand) return;
    const { packHandover, writeFrames } = await import('$lib/sync');
    try {
      this.frames = writeFrames(await packHandover(hand, false));
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      this.fault = 'too-much';
    }
  }

  stop(): void {
    this.frames = [];
  }
}
