import { sha256Hex } from '$lib/storage';
import { fromBase64Url, joinBytes, toBase64Url } from './bytes.ts';

/**
 * A parcel of bytes as a run of small texts to show one after another as QR codes, over and over.
 * `E1.TAG.AT.OF.BODY`: the tag tells this run from any other, so that codes of two runs are never
 * mixed; a camera may see them in any order, some twice and some not at all in one round.
 */
const FORMAT = 'E1';
/** Bytes in one frame: with the rest about 848 signs, which a phone's camera still reads. */
export const FRAME_BYTES = 612;
const MOST_FRAMES = 4000;

/** The frames of bytes, at least one. @throws RangeError for more than 2.4 MB */
export function writeFrames(bytes: Uint8Array): string[] {
  const count = Math.max(1, Math.ceil(bytes.length / FRAME_BYTES));
  if (count > MOST_FRAMES) throw new RangeError('too much to show as codes');
  const tag = tagOf(bytes);
  return Array.from({ length: count }, (_, at) => {
    const body = bytes.subarray(at * FRAME_BYTES, (at + 1) * FRAME_BYTES);
    return `${FORMAT}.${tag}.${at + 1}.${count}.${toBase64Url(body)}`;
  });
}

export interface FrameProgress {
  readonly seen: number;
  readonly of: number;
  /** The numbers of frames not seen yet, from 1. */
  readonly missing: readonly number[];
}

/** Gathers frames as a camera sees them. */
export class FrameReader {
  #tag = '';
  #of = 0;
  readonly #bodies = new Map<number, Uint8Array>();

  /**
   * Takes what a code says.
   *
   * @returns `new`, `again` for one seen before, or `not-ours`; a frame of another run begins anew
   */
  take(text: string): 'new' | 'again' | 'not-ours' {
    const found = /^E1\.([0-9a-f]{12})\.(\d{1,4})\.(\d{1,4})\.([A-Za-z0-9_-]*)$/.exec(text);
    const body = found && fromBase64Url(found[4]);
    if (!found || !body || body.length > FRAME_BYTES) return 'not-ours';
    const [at, of] = [Number(found[2]), Number(found[3])];
    if (at < 1 || at > of || of > MOST_FRAMES) return 'not-ours';
    if (at < of && body.length !== FRAME_BYTES) return 'not-ours';
    if (found[1] !== this.#tag || of !== this.#of) {
      this.#tag = found[1];
      this.#of = of;
      this.#bodies.clear();
    }
    if (this.#bodies.has(at)) return 'again';
    this.#bodies.set(at, body);
    return 'new';
  }

  get progress(): FrameProgress {
    const missing = Array.from({ length: this.#of }, (_, at) => at + 1).filter(
      (at) => !this.#bodies.has(at)
    );
    return { seen: this.#bodies.size, of: this.#of, missing };
  }

  /** The bytes once all frames were seen; undefined before, and when they do not fit together. */
  get bytes(): Uint8Array<ArrayBuffer> | undefined {
    if (this.#of === 0 || this.#bodies.size < this.#of) return undefined;
    const bodies = Array.from(
      { length: this.#of },
      (_, at) => this.#bodies.get(at + 1) as Uint8Array
    );
    const bytes = joinBytes(...bodies);
    return tagOf(bytes) === this.#tag ? bytes : undefined;
  }

  /** Begins anew, as after frames that do not fit together. */
  clear(): void {
    this.#tag = '';
    this.#of = 0;
    this.#bodies.clear();
  }
}

function tagOf(bytes: Uint8Array): string {
  return sha256Hex(bytes).slice(0, 12);
}
