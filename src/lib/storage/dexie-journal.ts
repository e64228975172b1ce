import { Dexie } from 'dexie';
import { EngineError } from '$lib/engine';
import {
  EMPTY_VIEW,
  type AnyPart,
  type JobView,
  type StoredEvent,
  VIEW_VERSION,
  isEmptyPart,
  partOf
} from '$lib/journal';
import type { EvencourseDatabase } from './database.ts';
import { foldBatch } from './fold-batch.ts';
import { type JobRow, newRow, withEvents, withView } from './job-row.ts';
import { MergeCheck, MergeRefused, inBatches } from './merge-check.ts';
import type { ImportResult, StoredPhoto } from './store.ts';

/** Events held in memory at once where all of a job's are read. */
export const BATCH = 5000;

/** A job's row and the view folded at its revision. */
export interface JobState {
  readonly row: JobRow;
  readonly view: JobView;
}

/**
 * What is done to the tables inside one transaction. Nothing here opens a transaction or touches
 * memory that outlives one, and nothing but the database is awaited.
 */
export class DexieJournal {
  readonly #database: EvencourseDatabase;
  /** The view at a revision if it is in memory. */
  readonly #remembered: (jobId: string, revision: number) => JobView | undefined;

  constructor(
    database: EvencourseDatabase,
    remembered: (jobId: string, revision: number) => JobView | undefined
  ) {
    this.#database = database;
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
    const fetch = (ids: string[]) => this.fetch(row.jobId, ids);
    const { draft, undoFault } = await foldBatch(view, events, fetch);
    if (undoFault) throw new EngineError('inconsistent', `${undoFault} undoes too many undos`);
    const next = draft.finish();
    const nextRow = withView(withEvents(row, events), next);
    await this.#database.events.bulkAdd([...events]);
    await this.#storeParts(row.jobId, draft.touched);
    await this.#database.jobs.put(nextRow);
    return { row: nextRow, view: next };
  }

  /** @throws MergeRefused, so that the transaction leaves nothing behind */
  async merge(
    events: Iterable<StoredEvent>,
    photos: readonly StoredPhoto[]
  ): Promise<ImportResult> {
    let state: JobState | undefined;
    let check: MergeCheck | undefined;
    const touched = new Map<string, AnyPart>();
    for (const batch of inBatches(events, BATCH)) {
      state ??= await this.ready(batch[0].jobId);
      const { jobId } = state.row;
      check ??= new MergeCheck(state.row);
      const here = await this.fetch(
        jobId,
        batch.map(({ id }) => id)
      );
      const fresh = check.sort(batch, here);
      const fetch = (ids: string[]) => this.fetch(jobId, ids);
      const { draft, undoFault } = await foldBatch(state.view, fresh, fetch);
      if (undoFault) throw new MergeRefused('undo-circle', undefined, undoFault);
      await this.#database.events.bulkAdd(fresh);
      for (const [key, part] of draft.touched) touched.set(key, part);
      state = { row: withEvents(state.row, fresh), view: draft.finish() };
    }
    if (!state || !check) throw new MergeRefused('not-a-job-file');
    check.finish();
    const { row, view } = state;
    await this.#storeParts(row.jobId, touched);
    await this.#database.jobs.put(withView(row, view));
    for (const photo of photos)
      if (!(await this.#database.photos.get(photo.photoId)))
        await this.#database.photos.add({ jobId: row.jobId, ...photo });
    const unknown = Object.values(partOf(view, 'voids').unknown);
    return {
      ok: true,
      jobId: row.jobId,
      added: check.added,
      already: check.already,
      unknown: unknown.reduce((sum, count) => sum + count, 0)
    };
  }

  /** Folds and counts all events of a job anew. */
  async foldAnew({ jobId, exported, exportedAt }: JobRow): Promise<JobState> {
    let view = EMPTY_VIEW;
    let row: JobRow = { ...newRow(jobId), exported, exportedAt };
    let after = '';
    for (;;) {
      const batch = await this.after(jobId, after).limit(BATCH).toArray();
      if (batch.length === 0) break;
      view = (await foldBatch(view, batch, (ids) => this.fetch(jobId, ids))).draft.finish();
      row = withEvents(row, batch);
      after = batch[batch.length - 1].id;
    }
    row = withView(row, view);
    await this.#partsOf(jobId).delete();
    await this.#storeParts(jobId, view);
    await this.#database.jobs.put(row);
    return { row, view };
  }

  /** The stored events with the given ids, each in its place. */
  fetch(jobId: string, ids: readonly string[]): Promise<(StoredEvent | undefined)[]> {
    return this.#database.events.bulkGet(ids.map((id): [string, string] => [jobId, id]));
  }

  /** The events of a job with an id above the given one, in order of id. */
  after(jobId: string, id: string) {
    return this.#database.events
      .where('[jobId+id]')
      .between([jobId, id], [jobId, Dexie.maxKey], id === '', false);
  }

  async #storeParts(jobId: string, parts: ReadonlyMap<string, AnyPart>): Promise<void> {
    const { parts: table } = this.#database;
    const empty = [...parts].filter(([, value]) => isEmptyPart(value));
    const full = [...parts].filter(([, value]) => !isEmptyPart(value));
    if (empty.length > 0)
      await table.bulkDelete(empty.map(([part]): [string, string] => [jobId, part]));
    await table.bulkPut(full.map(([part, value]) => ({ jobId, part, value })));
  }

  #partsOf(jobId: string) {
    return this.#database.parts
      .where('[jobId+part]')
      .between([jobId, Dexie.minKey], [jobId, Dexie.maxKey]);
  }
}
