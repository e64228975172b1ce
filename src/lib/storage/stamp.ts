import { EngineError } from '$lib/engine';
import {
  type NewEvent,
  type StoredEvent,
  canonicalJson,
  createIdSource,
  eventVersion,
  readEvent
} from '$lib/journal';
import type { JobRow } from './job-row.ts';
import type { StoreSurroundings } from './store.ts';

/**
 * Ids and time of one act, made before the first try to store it. Every try uses them, so that a
 * try that follows a committed one finds what is there.
 */
export interface Stamp {
  ids: string[];
  readonly at: string;
}

/** Makes stamps whose ids rise, whatever the clock does. */
export class Stamper {
  readonly #surroundings: StoreSurroundings;
  #nextId: () => string;

  constructor(surroundings: StoreSurroundings, lastId: string) {
    this.#surroundings = surroundings;
    this.#nextId = createIdSource(surroundings.now, surroundings.randomHex, lastId || undefined);
  }

  /** A stamp for an act of so many events. */
  stamp(events: number): Stamp {
    return {
      ids: Array.from({ length: events }, () => this.#nextId()),
      at: new Date(this.#surroundings.now()).toISOString()
    };
  }

  /**
   * Makes the ids of a stamp anew where another tab, or an import, has meanwhile gone beyond them.
   * Modifies the stamp, so that a further try knows the ids that this one stores.
   */
  raise(stamp: Stamp, lastId: string): void {
    if (stamp.ids[0] > lastId) return;
    const { now, randomHex } = this.#surroundings;
    this.#nextId = createIdSource(now, randomHex, lastId);
    stamp.ids = stamp.ids.map(() => this.#nextId());
  }
}

/**
 * The events of an act as they are stored: plain JSON, so that a backup gives back the same.
 *
 * @throws EngineError `inconsistent` for a body that could not be read back: an event that was
 * stored and then not counted would be a reading lost
 */
export function sealActs(
  acts: readonly NewEvent[],
  stamp: Stamp,
  row: JobRow,
  deviceId: string,
  sorter: string
): StoredEvent[] {
  const before = row.sequences[deviceId] ?? 0;
  return acts.map(({ type, body }, index) => {
    const event = {
      id: stamp.ids[index],
      jobId: row.jobId,
      deviceId,
      deviceSeq: before + index + 1,
      at: stamp.at,
      sorter,
      type,
      v: eventVersion(type),
      body
    };
    const read = readEvent(event);
    if (read.kind !== 'known')
      throw new EngineError('inconsistent', read.kind === 'broken' ? read.problem : type);
    return JSON.parse(canonicalJson({ ...event, body: read.event.body })) as StoredEvent;
  });
}

/** Throws unless there is an act to store. */
export function requireActs(acts: readonly NewEvent[]): void {
  if (acts.length === 0) throw new EngineError('empty', 'no act; give at least one event');
}
