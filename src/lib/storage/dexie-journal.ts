import { Dexie } from 'dexie';
import { EngineError } from '$lib/engine';
import {
  EMPTY_VIEW,
  type AnyPart,
  type JobView,
  type StoredEvent,
  VIEW_VERSION,
  isEmptyPart
} from '$lib/journal';
import type { EvencourseDatabase } from './database.ts';
import { EventTables } from './event-tables.ts';
import { foldBatch } from './fold-batch.ts';
import {
  type JobRow,
  emptiedRow,
  isSoundRow,
  isWholeView,
  withEvents,
  withView
} from './job-row.ts';
import { EventsAudit, isReadable } from './missing.ts';
import { firstRow, removedName } from './removed.ts';
import type { MissingEntries } from './store.ts';

/** A job's row and the view folded at its revision. */
export interface JobRecord {
  readonly row: JobRow;
  readonly view: JobView;
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

  /** The state of a job as stored, or undefined when its view must be folded anew. */
  async stored(row: JobRow): Promise<JobRecord | undefined> {
    if (row.revision === 0) return { row, view: EMPTY_VIEW };
    if (row.viewVersion !== VIEW_VERSION) return undefined;
    const remembered = this.#remembered(row.jobId, row.revision);
    if (remembered) return { row, view: remembered };
    const rows = await this.#partsOf(row.jobId).toArray();
    const view = new Map(rows.map(({ part, value }) => [part, value]));
    return isWholeView(row, view) ? { row, view } : undefined;
  }

  /** The row of a job; undefined when there is none, or it is damaged. */
  async row(jobId: string): Promise<JobRow | undefined> {
    const row = await this.#database.jobs.get(jobId);
    return isSoundRow(row) ? row : undefined;
  }

  /** The row that a job begins with. The transaction holds the device's table too. */
  async first(jobId: string): Promise<JobRow> {
    const kept = await this.#database.device.get(`preference:${removedName(jobId)}`);
    return firstRow(jobId, kept?.value);
  }

  /** The state of a job to write upon: as stored, or else folded anew; empty for a new job. */
  async ready(jobId: string): Promise<JobRecord> {
    const row = await this.row(jobId);
    if (row) return (await this.stored(row)) ?? (await this.foldAnew(row));
    const fresh = await this.first(jobId);
    // A job whose row is lost is found by its events, and written on after the last of them.
    if (await this.events.hasAny(jobId)) return this.foldAnew(fresh);
    return { row: fresh, view: EMPTY_VIEW };
  }

  /** Adds sealed events, the parts that they touch, and the row. */
  async add({ row, view }: JobRecord, events: readonly StoredEvent[]): Promise<JobRecord> {
    const fetch = (ids: string[]) => this.events.with(row.jobId, ids);
    const { draft, undoFault } = await foldBatch(view, events, fetch);
    if (undoFault) throw new EngineError('inconsistent', `${undoFault} undoes too many undos`);
    const next = draft.finish();
    const nextRow = withView(withEvents(row, events), next);
    // Handed over together: one wait for the database instead of three.
    await Promise.all([
      this.events.add(events),
      this.storeParts(row.jobId, draft.touched),
      this.#database.jobs.put(nextRow)
    ]);
    return { row: nextRow, view: next };
  }

  /** Folds and counts all events of a job anew, and tells which are missing. */
  async foldAnew(before: JobRow): Promise<JobRecord & { missing: MissingEntries[] }> {
    let view = EMPTY_VIEW;
    const { jobId } = before;
    let row = emptiedRow(before);
    const audit = new EventsAudit();
    const fetch = (ids: string[]) => this.events.with(jobId, ids);
    let above = '';
    for (;;) {
      const batch = await this.events.next(jobId, above);
      if (batch.length === 0) break;
      const { draft, readable, damaged } = await foldBatch(view, batch, fetch);
      view = draft.finish();
      row = withEvents(row, readable);
      for (const event of readable) audit.note(event);
      for (const event of damaged) audit.noteDamaged(event);
      above = batch[batch.length - 1].id;
    }
    row = withView(row, view);
    await this.#partsOf(jobId).delete();
    await this.storeParts(jobId, view);
    await this.#database.jobs.put(row);
    return { row, view, missing: audit.missing(row.sequences) };
  }

  /** By device and number, the events that are missing among those of a job. */
  async missing({ jobId, sequences }: JobRow): Promise<MissingEntries[]> {
    const audit = new EventsAudit();
    for (let above = ''; ;) {
      const batch = await this.events.next(jobId, above);
      if (batch.length === 0) return audit.missing(sequences);
      for (const event of batch) if (isReadable(event)) audit.note(event);
      above = batch[batch.length - 1].id;
    }
  }

  /** Stores parts of a view; a part that is empty is not kept. */
  async storeParts(jobId: string, parts: ReadonlyMap<string, AnyPart>): Promise<void> {
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
