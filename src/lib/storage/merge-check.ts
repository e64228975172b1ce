import {
  BranchMap,
  type EventStamp,
  type KeptBranch,
  type StoredEvent,
  isSameAct
} from '$lib/journal';
import type { JobRow } from './job-row.ts';
import { isReadable } from './missing.ts';
import { NumberRun } from './number-run.ts';
import type {
  Copies,
  DeviceNumbers,
  EventBatches,
  ImportRefusal,
  MissingEntries,
  Refusal
} from './store.ts';

/** Thrown inside a transaction, so that it leaves nothing behind; caught where merge answers. */
export class MergeRefused extends Error {
  readonly refusal: Refusal;

  constructor(reason: ImportRefusal, line?: number, detail?: string, copiedDevice?: string) {
    super(`${reason} ${detail ?? ''}`);
    this.name = 'MergeRefused';
    this.refusal = { ok: false, reason, line, detail, copiedDevice };
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
 * Checks the events that a merge brings against those that are here: same id, same act; ids that
 * rise; each device's numbers without a gap and each given once; one job. Where a phone was copied,
 * two acts claim one number: then the merge is refused, unless both are to be kept or the events
 * brought hold both already.
 */
export class MergeCheck {
  readonly #row: JobRow;
  readonly #copies: Copies;
  readonly #map: BranchMap;
  /** By device, the numbers of its new events. */
  readonly #fresh = new Map<string, NumberRun>();
  /** By device, the numbers of all its events, here already or not. */
  readonly #brought = new Map<string, NumberRun>();
  #photoActs = 0;
  /** By device, the numbers of events that are lost or damaged here and come back. */
  readonly #lost = new Map<string, readonly MissingEntries[]>();
  readonly #healed = new Set<string>();
  /** Whether the event looked at now is here, but can no longer be read. */
  #isDamagedHere = false;
  #lastId = '';
  #line = 1;
  added = 0;
  already = 0;

  constructor(row: JobRow, copies: Copies = 'refuse') {
    this.#row = row;
    this.#copies = copies;
    this.#map = new BranchMap(row.sequences, (place) => this.#isLost(place));
  }

  /** Whether a batch brings events that are not here, under numbers that were given before. */
  bringsBack(batch: readonly StoredEvent[], here: ReadonlyMap<string, StoredEvent>): boolean {
    const { sequences } = this.#row;
    return batch.some(
      ({ id, deviceId, deviceSeq }) => !here.has(id) && deviceSeq <= (sequences[deviceId] ?? 0)
    );
  }

  /** Says which events are lost or damaged here: what is brought may take their places. */
  noteLost(missing: readonly MissingEntries[]): void {
    for (const one of missing)
      this.#lost.set(one.device, [...(this.#lost.get(one.device) ?? []), one]);
  }

  /** How many events came back that were lost or damaged here. */
  get healed(): number {
    return this.#healed.size;
  }

  /**
   * Gives the events of a batch that are not here yet, each under the number that it gets here.
   *
   * @param here the stored events that have an id of the batch, by id
   * @throws MergeRefused
   */
  sort(
    batch: readonly StoredEvent[],
    here: ReadonlyMap<string, StoredEvent>
  ): readonly StoredEvent[] {
    const fresh: StoredEvent[] = [];
    for (const event of batch) {
      this.#line++;
      if (event.id <= this.#lastId) this.#refuse('conflict', event.id);
      this.#lastId = event.id;
      const known = here.get(event.id);
      if (known && (isSameAct(known, event) || isReadable(known))) {
        if (!isSameAct(known, event) || !this.#map.meet(event, known))
          this.#refuse('conflict', event.id);
        this.#noteBrought(known);
        this.already++;
        continue;
      }
      if (event.jobId !== this.#row.jobId) this.#refuse('mixed-jobs', event.jobId);
      this.#isDamagedHere = known !== undefined;
      const placed = this.#map.place(event, this.#line);
      this.#noteBrought(placed);
      if (this.#isLost(placed)) this.#healed.add(placeOf(placed));
      else this.#note(placed);
      this.added++;
      fresh.push(placed);
    }
    return fresh;
  }

  /** @throws MergeRefused when a device's numbers have a gap, or a phone was copied */
  finish(): void {
    const copied = this.#copies === 'refuse' ? this.#map.undecided : undefined;
    if (copied) {
      const { deviceId, after, line } = copied;
      throw new MergeRefused('conflict', line, `${deviceId} ${after + 1}`, deviceId);
    }
    for (const [deviceId, { missing }] of this.#fresh)
      if (missing !== undefined) throw new MergeRefused('gap', undefined, `${deviceId} ${missing}`);
  }

  /** The branches of copied phones that were carried over. */
  get branches(): readonly KeptBranch[] {
    return this.#map.branches;
  }

  /** Whether nobody had decided before that all of them are to be kept. */
  get isDecidedHere(): boolean {
    return this.#map.undecided !== undefined;
  }

  /**
   * What a file of just these events and so many photos backs up: of each device, the events from
   * its first up to the first that is missing; nothing when a photo is missing.
   */
  backedUp(photos: number): DeviceNumbers {
    if (photos < this.#photoActs) return {};
    return Object.fromEntries([...this.#brought].map(([deviceId, { upTo }]) => [deviceId, upTo]));
  }

  #isLost({ deviceId, deviceSeq }: EventStamp): boolean {
    const isMissing = this.#lost
      .get(deviceId)
      ?.some(({ from, to }) => from <= deviceSeq && deviceSeq <= to);
    return (
      (this.#isDamagedHere || !!isMissing) && !this.#healed.has(placeOf({ deviceId, deviceSeq }))
    );
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

function placeOf({ deviceId, deviceSeq }: EventStamp): string {
  return `${deviceId} ${deviceSeq}`;
}

/** What is given to a merge as a reading in batches; a few events may come in any order. */
export function batchesOf(events: Iterable<StoredEvent> | EventBatches): EventBatches {
  if (typeof events === 'function') return events;
  const inOrder = [...events].sort((one, other) => (one.id < other.id ? -1 : 1));
  return async function* () {
    if (inOrder.length > 0) yield inOrder;
  };
}
