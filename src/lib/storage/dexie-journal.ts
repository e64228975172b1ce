import { Dexie } from 'dexie';
import { EngineError } from '$lib/engine';
import {
  EMPTY_VIEW,
  type AnyPart,
  type JobView,
  type KeptBranch,
  type StoredEvent,
  VIEW_VERSION,
  isEmptyPart,
  partOf
} from '$lib/journal';
import type { EvencourseDatabase } from './database.ts';
import { EventTables } from './event-tables.ts';
import { foldBatch } from './fold-batch.ts';
import { type JobRow, emptiedRow, newRow, withEvents, withFileRead, withView } from './job-row.ts';
import { MergeCheck, MergeRefused } from './merge-check.ts';
import type { Copies, EventBatches, ImportResult, StoredPhoto } from './store.ts';

/** A job's row and the view folded at its revision. */
export interface JobState {
  readonly row: JobRow;
  readonly view: JobView;
}

/** What a merge came to, and the branches of copied phones that it carried over. */
export interface Merged {
  readonly result: ImportResult & { ok: true };
  readonly branches: readonly KeptBranch[];
  readonly isDecidedHere: boolean;
}

/**
 * What is done to the tables inside one transaction. Nothing here opens a transaction or touches
 * memory that outlives one, and nothing but the database is awaited.
 */
export class DexieJournal {
  readonly #database: EvencourseDatabase;
  readonly events: EventTables;
  /** The view at a revision if it is in memory. */
  readonly #remembered: (jobId: string, revision: number) => JobView | undefined;

  constructor(
    database: EvencourseDatabase,
    remembered: (jobId: string, revision: number) => JobView | undefined
  ) {
    this.#database = database;
    this.events = new EventTables(database);
    this.#remembered = remembered;
  }

  /** The state of a job as stored, or undefined when its view was folded by another release. */
  async stored(row: JobRow): Promise<JobState | undefined> {
    if (row.revision === 0) return { row, view: EMPTY_VIEW };
    if (row.viewVersion !== VIEW_VERSION) return undefined;
    const remembered = this.#remembered(row.jobId, row.revision);
    if (remembered) return { row, view: remembered };
    const rows = await this.#partsOf(row.jobId).toArray();
    return { row, view: new Map(rows.map(({ part, value }) => [part, value])) };
  }

  /** The state of a job to write upon: as stored, or else folded anew; empty for a new job. */
  async ready(jobId: string): Promise<JobState> {
    const row = (await this.#database.jobs.get(jobId)) ?? newRow(jobId);
    return (await this.stored(row)) ?? (await this.foldAnew(row));
  }

  /** Adds sealed events, the parts that they touch, and the row. */
  async add({ row, view }: JobState, events: readonly StoredEvent[]): Promise<JobState> {
    const fetch = (ids: string[]) => this.events.with(row.jobId, ids);
    const { draft, undoFault } = await foldBatch(view, events, fetch);
    if (undoFault) throw new EngineError('inconsistent', `${undoFault} undoes too many undos`);
    const next = draft.finish();
    const nextRow = withView(withEvents(row, events), next);
    // Handed over together: one wait for the database instead of three.
    await Promise.all([
      this.events.add(events),
      this.#storeParts(row.jobId, draft.touched),
      this.#database.jobs.put(nextRow)
    ]);
    return { row: nextRow, view: next };
  }

  /**
   * Takes a reading of events in, a batch at a time.
   *
   * @param readAt when they were read from a job file; null when they come from none
   * @throws MergeRefused, so that the transaction leaves nothing behind
   */
  async merge(
    events: EventBatches,
    photos: readonly StoredPhoto[],
    readAt: string | null,
    copies: Copies
  ): Promise<Merged> {
    let before: JobState | undefined;
    let state: JobState | undefined;
    let check: MergeCheck | undefined;
    const touched = new Map<string, AnyPart>();
    const reading = events()[Symbol.asyncIterator]();
    for (;;) {
      // Read from outside the database; the transaction is kept open meanwhile.
      const { done, value: batch } = await Dexie.waitFor(
        Dexie.ignoreTransaction(() => reading.next())
      );
      if (done) break;
      if (batch.length === 0) continue;
      before ??= await this.ready(batch[0].jobId);
      state ??= before;
      check ??= new MergeCheck(before.row, copies);
      const { jobId } = state.row;
      const fresh = check.sort(batch, await this.#alreadyHere(before.row, batch));
      if (fresh.length === 0) continue;
      const fetch = (ids: string[]) => this.events.with(jobId, ids);
      const { draft, undoFault, broken } = await foldBatch(state.view, fresh, fetch);
      if (broken) throw new MergeRefused('broken-line', undefined, broken);
      if (undoFault) throw new MergeRefused('undo-circle', undefined, undoFault);
      await this.events.addBundles(jobId, fresh);
      for (const [key, part] of draft.touched) touched.set(key, part);
      state = { row: withEvents(state.row, fresh), view: draft.finish() };
    }
    if (!state || !check) throw new MergeRefused('not-a-job-file');
    check.finish();
    const { view } = state;
    const row =
      readAt === null ? state.row : withFileRead(state.row, check.backedUp(photos.length), readAt);
    await this.#storeParts(row.jobId, touched);
    await this.#database.jobs.put(withView(row, view));
    for (const photo of photos)
      if (!(await this.#database.photos.get(photo.photoId)))
        await this.#database.photos.add({ jobId: row.jobId, ...photo });
    const unknown = Object.values(partOf(view, 'voids').unknown);
    const { branches, isDecidedHere } = check;
    return {
      result: {
        ok: true,
        jobId: row.jobId,
        added: check.added,
        already: check.already,
        unknown: unknown.reduce((sum, count) => sum + count, 0),
        branched: branches.reduce((sum, { events }) => sum + events, 0)
      },
      branches,
      isDecidedHere
    };
  }

  /** Folds and counts all events of a job anew. */
  async foldAnew(before: JobRow): Promise<JobState> {
    let view = EMPTY_VIEW;
    const { jobId } = before;
    let row = emptiedRow(before);
    const fetch = (ids: string[]) => this.events.with(jobId, ids);
    let above = '';
    for (;;) {
      const batch = await this.events.next(jobId, above);
      if (batch.length === 0) break;
      view = (await foldBatch(view, batch, fetch)).draft.finish();
      row = withEvents(row, batch);
      above = batch[batch.length - 1].id;
    }
    row = withView(row, view);
    await this.#partsOf(jobId).delete();
    await this.#storeParts(jobId, view);
    await this.#database.jobs.put(row);
    return { row, view };
  }

  /** The stored events that have an id of a batch, by id; the batch is in order of id. */
  async #alreadyHere(
    { jobId, revision }: JobRow,
    batch: readonly StoredEvent[]
  ): Promise<ReadonlyMap<string, StoredEvent>> {
    const here = new Map<string, StoredEvent>();
    if (revision === 0) return here;
    const wanted = new Set(batch.map(({ id }) => id));
    const last = batch[batch.length - 1].id;
    // A beginning of the first id stands just before it.
    let above = batch[0].id.slice(0, -1);
    for (;;) {
      const stored = await this.events.next(jobId, above, last);
      if (stored.length === 0) return here;
      for (const event of stored) if (wanted.has(event.id)) here.set(event.id, event);
      above = stored[stored.length - 1].id;
    }
  }

  async #storeParts(jobId: string, parts: ReadonlyMap<string, AnyPart>): Promise<void> {
    const { parts: table } = this.#database;
    const empty = [...parts].filter(([, value]) => isEmptyPart(value));
    const full = [...parts].filter(([, value]) => !isEmptyPart(value));
    await Promise.all([
      empty.length > 0 && table.bulkDelete(empty.map(([part]): [string, string] => [jobId, part])),
      full.length > 0 && table.bulkPut(full.map(([part, value]) => ({ jobId, part, value })))
    ]);
  }

  #partsOf(jobId: string) {
    return this.#database.parts
      .where('[jobId+part]')
      .between([jobId, Dexie.minKey], [jobId, Dexie.maxKey]);
  }
}
