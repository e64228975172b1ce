import { type StoredEvent, canonicalJson, readEvent } from '$lib/journal';
import type { JobRow } from './job-row.ts';
import type { ImportRefusal, Refusal } from './store.ts';

/** Thrown inside a transaction, so that it leaves nothing behind; caught where merge answers. */
export class MergeRefused extends Error {
  readonly refusal: Refusal;

  constructor(reason: ImportRefusal, line?: number, detail?: string) {
    super(`${reason} ${detail ?? ''}`);
    this.name = 'MergeRefused';
    this.refusal = { ok: false, reason, line, detail };
  }
}

/** Runs a merge and answers with its refusal, if it is refused. */
export async function orRefusal<T>(work: () => Promise<T>): Promise<T | Refusal> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof MergeRefused) return error.refusal;
    throw error;
  }
}

/**
 * Checks the events that a merge brings against those that are here: same id, same bytes; each
 * device's numbers without a gap and each given once; one job; nothing unreadable.
 */
export class MergeCheck {
  readonly #jobId: string;
  readonly #sequences: Readonly<Record<string, number>>;
  /** By device, the numbers of its new events. */
  readonly #fresh = new Map<string, Set<number>>();
  #line = 1;
  added = 0;
  already = 0;

  constructor(row: JobRow) {
    this.#jobId = row.jobId;
    this.#sequences = row.sequences;
  }

  /**
   * Gives the events of a batch that are not here yet.
   *
   * @param here for each event of the batch, the stored one with its id
   * @throws MergeRefused
   */
  sort(batch: readonly StoredEvent[], here: readonly (StoredEvent | undefined)[]): StoredEvent[] {
    return batch.filter((event, index) => {
      this.#line++;
      const known = here[index];
      if (known) {
        if (canonicalJson(known) !== canonicalJson(event)) this.#refuse('conflict', event.id);
        this.already++;
        return false;
      }
      if (event.jobId !== this.#jobId) this.#refuse('mixed-jobs', event.jobId);
      const read = readEvent(event);
      if (read.kind === 'broken') this.#refuse('broken-line', read.problem);
      this.#note(event);
      this.added++;
      return true;
    });
  }

  /** @throws MergeRefused when a device's numbers have a gap */
  finish(): void {
    for (const [deviceId, numbers] of this.#fresh) {
      const first = (this.#sequences[deviceId] ?? 0) + 1;
      for (let number = first; number < first + numbers.size; number++)
        if (!numbers.has(number)) throw new MergeRefused('gap', undefined, `${deviceId} ${number}`);
    }
  }

  #note({ deviceId, deviceSeq }: StoredEvent): void {
    const numbers = this.#fresh.get(deviceId) ?? new Set();
    if (deviceSeq <= (this.#sequences[deviceId] ?? 0) || numbers.has(deviceSeq))
      this.#refuse('conflict', `${deviceId} ${deviceSeq}`);
    this.#fresh.set(deviceId, numbers.add(deviceSeq));
  }

  #refuse(reason: ImportRefusal, detail: string): never {
    throw new MergeRefused(reason, this.#line, detail);
  }
}

/** Cuts a run of events into batches, so that a large one is never all in memory as objects. */
export function* inBatches<T>(items: Iterable<T>, size: number): Generator<T[]> {
  let batch: T[] = [];
  for (const item of items) {
    batch.push(item);
    if (batch.length < size) continue;
    yield batch;
    batch = [];
  }
  if (batch.length > 0) yield batch;
}
