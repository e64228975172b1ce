import { type StoredEvent, canonicalJson } from '$lib/journal';
import type { JobRow } from './job-row.ts';
import { NumberRun } from './number-run.ts';
import type { DeviceNumbers, EventBatches, ImportRefusal, Refusal } from './store.ts';

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
 * Checks the events that a merge brings against those that are here: same id, same bytes; ids that
 * rise; each device's numbers without a gap and each given once; one job.
 */
export class MergeCheck {
  readonly #row: JobRow;
  /** By device, the numbers of its new events. */
  readonly #fresh = new Map<string, NumberRun>();
  /** By device, the numbers of all its events, here already or not. */
  readonly #brought = new Map<string, NumberRun>();
  #photoActs = 0;
  #lastId = '';
  #line = 1;
  added = 0;
  already = 0;

  constructor(row: JobRow) {
    this.#row = row;
  }

  /**
   * Gives the events of a batch that are not here yet.
   *
   * @param here the stored events that have an id of the batch, by id
   * @throws MergeRefused
   */
  sort(
    batch: readonly StoredEvent[],
    here: ReadonlyMap<string, StoredEvent>
  ): readonly StoredEvent[] {
    return batch.filter((event) => {
      this.#line++;
      if (event.id <= this.#lastId) this.#refuse('conflict', event.id);
      this.#lastId = event.id;
      this.#noteBrought(event);
      const known = here.get(event.id);
      if (known) {
        if (canonicalJson(known) !== canonicalJson(event)) this.#refuse('conflict', event.id);
        this.already++;
        return false;
      }
      if (event.jobId !== this.#row.jobId) this.#refuse('mixed-jobs', event.jobId);
      this.#note(event);
      this.added++;
      return true;
    });
  }

  /** @throws MergeRefused when a device's numbers have a gap */
  finish(): void {
    for (const [deviceId, { missing }] of this.#fresh)
      if (missing !== undefined) throw new MergeRefused('gap', undefined, `${deviceId} ${missing}`);
  }

  /**
   * What a file of just these events and so many photos backs up: of each device, the events from
   * its first up to the first that is missing; nothing when a photo is missing.
   */
  backedUp(photos: number): DeviceNumbers {
    if (photos < this.#photoActs) return {};
    return Object.fromEntries([...this.#brought].map(([deviceId, { upTo }]) => [deviceId, upTo]));
  }

  #noteBrought({ type, deviceId, deviceSeq }: StoredEvent): void {
    if (type === 'photoAdded') this.#photoActs++;
    const numbers = this.#brought.get(deviceId) ?? new NumberRun();
    this.#brought.set(deviceId, numbers);
    numbers.note(deviceSeq);
  }

  #note({ deviceId, deviceSeq }: StoredEvent): void {
    const numbers = this.#fresh.get(deviceId) ?? new NumberRun(this.#row.sequences[deviceId]);
    this.#fresh.set(deviceId, numbers);
    if (!numbers.note(deviceSeq)) this.#refuse('conflict', `${deviceId} ${deviceSeq}`);
  }

  #refuse(reason: ImportRefusal, detail: string): never {
    throw new MergeRefused(reason, this.#line, detail);
  }
}

/** What is given to a merge as a reading in batches; a few events may come in any order. */
export function batchesOf(events: Iterable<StoredEvent> | EventBatches): EventBatches {
  if (typeof events === 'function') return events;
  const inOrder = [...events].sort((one, other) => (one.id < other.id ? -1 : 1));
  return async function* () {
    if (inOrder.length > 0) yield inOrder;
  };
}
