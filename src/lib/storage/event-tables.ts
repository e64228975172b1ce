import { Dexie } from 'dexie';
import type { StoredEvent } from '$lib/journal';
import type { EvencourseDatabase } from './database.ts';
import { isReadable } from './missing.ts';

/** How many events lie and are read together. */
export interface EventSizes {
  /** Events held in memory at once where all of a job's are read. */
  readonly batch: number;
  /** Events of one bundle: few enough to read one event of it at once. */
  readonly bundle: number;
  /** Fewer than these lie in rows of their own: many small bundles are slow to look through. */
  readonly leastBundle: number;
}

const SIZES: EventSizes = { batch: 5000, bundle: 500, leastBundle: 50 };

/** The ids that a bundle lies between, by which it is found. */
interface Span {
  readonly first: string;
  readonly last: string;
}

/**
 * The events of all jobs as they lie in the database: those of this device's acts, and a few that a
 * merge brought, in rows of their own, many that a merge brought in bundles. Whoever reads sees one run of events in order of id.
 * Each method must be called inside a transaction.
 */
export class EventTables {
  readonly #database: EvencourseDatabase;
  readonly #sizes: EventSizes;

  constructor(database: EvencourseDatabase, sizes = SIZES) {
    this.#database = database;
    this.#sizes = sizes;
  }

  /** Adds the events of an act. */
  async add(events: readonly StoredEvent[]): Promise<void> {
    await this.#database.events.bulkAdd([...events]);
  }

  /**
   * Adds events that came in together, in order of id.
   *
   * @param isHealing some stand in the place of events that were lost or damaged here; what is left
   * of these keeps its row, and the key of its bundle, which is never written over
   */
  async addBundles(
    jobId: string,
    events: readonly StoredEvent[],
    isHealing = false
  ): Promise<void> {
    const { bundle, leastBundle } = this.#sizes;
    if (events.length < leastBundle && !isHealing) return this.add(events);
    const size = isHealing ? bundle - 1 : bundle;
    const bundles = Array.from({ length: Math.ceil(events.length / size) }, (_, at) =>
      events.slice(at * size, (at + 1) * size)
    );
    await this.#database.bundles.bulkAdd(
      bundles.map((bundle) => ({
        jobId,
        first: bundle[0].id,
        last: bundle[bundle.length - 1].id,
        size: bundle.length,
        events: bundle
      }))
    );
  }

  /** The events of this device's acts with the given ids, each in its place. */
  ownWith(jobId: string, ids: readonly string[]): Promise<(StoredEvent | undefined)[]> {
    return this.#database.events.bulkGet(ids.map((id): [string, string] => [jobId, id]));
  }

  /** The events with the given ids, each in its place. */
  async with(jobId: string, ids: readonly string[]): Promise<(StoredEvent | undefined)[]> {
    const found = new Map<string, StoredEvent>();
    for (const event of await this.ownWith(jobId, ids)) if (event) found.set(event.id, event);
    // One that is damaged may have come back in a bundle.
    const left = new Set(ids.filter((id) => !isReadable(found.get(id))));
    if (left.size > 0) {
      const inOrder = [...left].sort();
      const spans = await this.#spans(jobId, inOrder[0]);
      const holding = spans.filter(({ first, last }) => {
        const next = inOrder.find((id) => id >= first);
        return next !== undefined && next <= last;
      });
      const atOnce = this.#bundlesAtOnce;
      for (let at = 0; at < holding.length; at += atOnce)
        for (const event of await this.#inside(jobId, holding.slice(at, at + atOnce)))
          if (left.has(event.id) && (!found.has(event.id) || isReadable(event)))
            found.set(event.id, event);
    }
    return ids.map((id) => found.get(id));
  }

  /**
   * The next events of a job in order of id, above one id and up to another: at most about
   * a batch unless many bundles overlap, and none only when there are no more.
   */
  async next(jobId: string, above: string, upTo?: string): Promise<readonly StoredEvent[]> {
    const { batch } = this.#sizes;
    const spans = (await this.#spans(jobId, above))
      .filter(({ first, last }) => last > above && (upTo === undefined || first <= upTo))
      .sort((one, other) => (one.first < other.first ? -1 : 1));
    for (let taken = this.#bundlesAtOnce; ; taken *= 2) {
      // Where a bundle begins that is not read yet, what is read must end.
      const unread = spans.at(taken)?.first;
      const own = await this.#database.events
        .where('[jobId+id]')
        .between(
          [jobId, above],
          [jobId, unread ?? upTo ?? Dexie.maxKey],
          above === '',
          unread === undefined
        )
        .limit(batch)
        .toArray();
      if (spans.length === 0) return own;
      const lastOwn = own.length < batch ? undefined : own[own.length - 1].id;
      const bundled = (await this.#inside(jobId, spans.slice(0, taken))).filter(
        ({ id }) =>
          id > above &&
          (unread === undefined || id < unread) &&
          (upTo === undefined || id <= upTo) &&
          (lastOwn === undefined || id <= lastOwn)
      );
      const events = eachOnce([...own, ...bundled].sort(byId));
      if (events.length > 0 || unread === undefined) return events;
    }
  }

  /** The newest events of a job, newest first. */
  async newest(jobId: string, limit: number): Promise<StoredEvent[]> {
    let newest = await this.#database.events
      .where('[jobId+id]')
      .between([jobId, Dexie.minKey], [jobId, Dexie.maxKey])
      .reverse()
      .limit(limit)
      .toArray();
    const oldest = newest.length < limit ? '' : newest[newest.length - 1].id;
    const spans = (await this.#spans(jobId, oldest)).reverse();
    for (const span of spans) {
      if (newest.length === limit && newest[limit - 1].id > span.last) break;
      const bundled = await this.#inside(jobId, [span]);
      newest = eachOnce([...newest, ...bundled].sort(byId))
        .reverse()
        .slice(0, limit);
    }
    return newest;
  }

  /** The jobs of which there are events. */
  async jobIds(): Promise<string[]> {
    const found = new Set<string>();
    const { events, bundles } = this.#database;
    for (const index of [events.where('[jobId+id]'), bundles.where('[jobId+last+first]')])
      for (let above: unknown = Dexie.minKey; ;) {
        const [key] = await index.above([above, Dexie.maxKey]).limit(1).primaryKeys();
        if (!key) break;
        found.add(key[0]);
        above = key[0];
      }
    return [...found];
  }

  /** Whether there is any event of a job. */
  async hasAny(jobId: string): Promise<boolean> {
    const range = [
      [jobId, Dexie.minKey],
      [jobId, Dexie.maxKey]
    ] as const;
    const { events, bundles } = this.#database;
    return (
      (await events
        .where('[jobId+id]')
        .between(...range)
        .limit(1)
        .count()) > 0 ||
      (await bundles
        .where('[jobId+last+first]')
        .between(...range)
        .limit(1)
        .count()) > 0
    );
  }

  /** How many events there are, of all jobs. */
  async count(): Promise<number> {
    const sizes = await this.#database.bundles.orderBy('size').keys();
    const bundled = sizes.reduce<number>((sum, size) => sum + Number(size), 0);
    return (await this.#database.events.count()) + bundled;
  }

  get #bundlesAtOnce(): number {
    return this.#sizes.batch / this.#sizes.bundle;
  }

  /** The bundles of a job that end at an id or above it, in the order of their ends. */
  async #spans(jobId: string, from: string): Promise<Span[]> {
    const keys = await this.#database.bundles
      .where('[jobId+last+first]')
      .between([jobId, from], [jobId, Dexie.maxKey])
      .primaryKeys();
    return keys.map(([, last, first]) => ({ first, last }));
  }

  async #inside(jobId: string, spans: readonly Span[]): Promise<StoredEvent[]> {
    const rows = await this.#database.bundles.bulkGet(
      spans.map(({ first, last }): [string, string, string] => [jobId, last, first])
    );
    return rows.flatMap((row) => (Array.isArray(row?.events) ? row.events.filter(hasId) : []));
  }
}

/** Of events in order of id, each id once: where one is damaged, the other came to take its place. */
function eachOnce(events: StoredEvent[]): StoredEvent[] {
  if (!events.some(({ id }, at) => id === events[at + 1]?.id)) return events;
  const once = new Map<string, StoredEvent>();
  for (const event of events)
    if (!once.has(event.id) || isReadable(event)) once.set(event.id, event);
  return [...once.values()];
}

/** Whether what a damaged bundle holds can at least be put in order. */
function hasId(event: unknown): event is StoredEvent {
  return (
    typeof event === 'object' && event !== null && typeof (event as StoredEvent).id === 'string'
  );
}

function byId(one: StoredEvent, other: StoredEvent): number {
  return one.id < other.id ? -1 : 1;
}
