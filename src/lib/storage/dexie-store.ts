import { Dexie, liveQuery } from 'dexie';
import {
  EMPTY_VIEW,
  type JobView,
  type NewEvent,
  type StoredEvent,
  VIEW_VERSION,
  createIdSource,
  current,
  eventVersion,
  partOf
} from '$lib/journal';
import { EvencourseDatabase, type JobRow } from './database.ts';
import { foldBatch } from './fold-batch.ts';
import { findConflict } from './merge-check.ts';
import { withReconnect } from './reconnect.ts';
import type {
  Appended,
  ImportResult,
  JobSummary,
  JournalStore,
  OpenJob,
  StoreSurroundings
} from './store.ts';

const BATCH = 5000;

/** The journal in IndexedDB. See {@link JournalStore} for what each method promises. */
export class DexieStore implements JournalStore {
  readonly database: EvencourseDatabase;
  readonly #surroundings: StoreSurroundings;
  readonly #views = new Map<string, { revision: number; view: JobView }>();
  #nextId: Promise<() => string> | undefined;
  #deviceId: Promise<string> | undefined;
  #queue: Promise<unknown> = Promise.resolve();

  constructor(surroundings: StoreSurroundings, name?: string) {
    this.#surroundings = surroundings;
    this.database = new EvencourseDatabase(name);
  }

  deviceId(): Promise<string> {
    this.#deviceId ??= this.#firstStart();
    return this.#deviceId;
  }

  async jobs(): Promise<JobSummary[]> {
    const rows = await this.#run(() => this.database.jobs.orderBy('lastAt').reverse().toArray());
    return rows.map(summaryOf);
  }

  async open(jobId: string): Promise<OpenJob | undefined> {
    const row = await this.#run(() => this.database.jobs.get(jobId));
    if (!row) return undefined;
    if (row.viewVersion !== VIEW_VERSION) return this.rebuild(jobId);
    return this.#run(() =>
      this.database.transaction('r', this.database.jobs, this.database.parts, async () => {
        const fresh = await this.database.jobs.get(jobId);
        return fresh && { view: await this.#viewAt(fresh), summary: summaryOf(fresh) };
      })
    );
  }

  append(jobId: string, acts: readonly NewEvent[], sorter = ''): Promise<Appended> {
    const appended = this.#queue.then(async () => {
      const { deviceId, nextId } = await this.#identity();
      const at = new Date(this.#surroundings.now()).toISOString();
      const drafts = acts.map((act) => ({ ...act, id: nextId(), at }));
      return this.#run(() => this.#commit(jobId, deviceId, sorter, drafts));
    });
    this.#queue = appended.catch(() => undefined);
    return appended;
  }

  newest(jobId: string, limit: number): Promise<StoredEvent[]> {
    return this.#run(() => this.#ofJob(jobId).reverse().limit(limit).toArray());
  }

  async *events(jobId: string): AsyncGenerator<StoredEvent[]> {
    let after: string = '';
    for (;;) {
      const batch = await this.#run(() =>
        this.database.events
          .where('[jobId+id]')
          .between([jobId, after], [jobId, Dexie.maxKey], after === '', false)
          .limit(BATCH)
          .toArray()
      );
      if (batch.length === 0) return;
      yield batch;
      after = batch[batch.length - 1].id;
    }
  }

  async merge(events: readonly StoredEvent[]): Promise<ImportResult> {
    const jobId = events[0].jobId;
    const result = await this.#run(() =>
      this.database.transaction('rw', this.#journalTables(), () => this.#merge(jobId, events))
    );
    this.#nextId = undefined;
    return result;
  }

  async rebuild(jobId: string): Promise<OpenJob | undefined> {
    return this.#run(() =>
      this.database.transaction('rw', this.#journalTables(), async () => {
        const row = await this.database.jobs.get(jobId);
        if (!row) return undefined;
        let view = EMPTY_VIEW;
        let after = '';
        for (;;) {
          const batch = await this.database.events
            .where('[jobId+id]')
            .between([jobId, after], [jobId, Dexie.maxKey], after === '', false)
            .limit(BATCH)
            .toArray();
          if (batch.length === 0) break;
          view = (await foldBatch(view, batch, (ids) => this.#fetch(jobId, ids))).finish();
          after = batch[batch.length - 1].id;
        }
        await this.database.parts
          .where('[jobId+part]')
          .between([jobId, Dexie.minKey], [jobId, Dexie.maxKey])
          .delete();
        await this.#storeParts(jobId, view);
        const next = { ...row, viewVersion: VIEW_VERSION, name: nameIn(view) };
        await this.database.jobs.put(next);
        this.#views.set(jobId, { revision: next.revision, view });
        return { view, summary: summaryOf(next) };
      })
    );
  }

  async markExported(jobId: string, events: number, at: string): Promise<void> {
    await this.#run(() => this.database.jobs.update(jobId, { exported: events, exportedAt: at }));
  }

  watch(jobId: string, changed: () => void): () => void {
    let seen: string | undefined;
    const subscription = liveQuery(() => this.database.jobs.get(jobId)).subscribe({
      next: (row) => {
        const now = row && `${row.revision}|${row.exported}|${row.viewVersion}`;
        if (seen !== undefined && now !== seen) changed();
        seen = now ?? '';
      },
      error: () => undefined // a lost connection shows itself at the next append
    });
    return () => subscription.unsubscribe();
  }

  async #commit(
    jobId: string,
    deviceId: string,
    sorter: string,
    drafts: readonly (NewEvent & { id: string; at: string })[]
  ): Promise<Appended> {
    const database = this.database;
    return database
      .transaction('rw', this.#journalTables(), async () => {
        const row = (await database.jobs.get(jobId)) ?? newRow(jobId);
        const already = await database.events.get([jobId, drafts[0].id]);
        if (already) {
          // The act was committed, but the connection was lost before the answer came.
          const events = await this.#fetch(
            jobId,
            drafts.map(({ id }) => id)
          );
          const view = await this.#viewAt(row);
          return { view, summary: summaryOf(row), events: events.filter((event) => !!event) };
        }
        const sequence = row.sequences[deviceId] ?? 0;
        const events: StoredEvent[] = drafts.map(({ id, at, type, body }, index) => ({
          id,
          jobId,
          deviceId,
          deviceSeq: sequence + index + 1,
          at,
          sorter,
          type,
          v: eventVersion(type),
          body: { ...body }
        }));
        const base = row.revision === 0 ? EMPTY_VIEW : await this.#viewAt(row);
        const draft = await foldBatch(base, events, (ids) => this.#fetch(jobId, ids));
        const view = draft.finish();
        const last = events[events.length - 1];
        const next: JobRow = {
          ...row,
          name: nameIn(view),
          revision: row.revision + events.length,
          lastId: last.id > row.lastId ? last.id : row.lastId,
          lastAt: last.at,
          sequences: { ...row.sequences, [deviceId]: sequence + events.length }
        };
        await database.events.bulkAdd(events);
        await this.#storeParts(jobId, draft.touched);
        await database.jobs.put(next);
        return { view, summary: summaryOf(next), events };
      })
      .then((appended) => {
        // Memory moves only after the commit.
        this.#views.set(jobId, { revision: appended.summary.events, view: appended.view });
        return appended;
      });
  }

  async #merge(jobId: string, events: readonly StoredEvent[]): Promise<ImportResult> {
    const database = this.database;
    const row = (await database.jobs.get(jobId)) ?? newRow(jobId);
    const here = await this.#fetch(
      jobId,
      events.map(({ id }) => id)
    );
    const fresh: StoredEvent[] = [];
    for (const [index, event] of events.entries()) {
      const known = here[index];
      if (!known) fresh.push(event);
      else if (findConflict(known, event))
        return { ok: false, reason: 'conflict', line: index + 2, detail: event.id };
    }
    const sequences = { ...row.sequences };
    for (const { deviceId, deviceSeq } of [...fresh].sort((a, b) => a.deviceSeq - b.deviceSeq)) {
      if (deviceSeq !== (sequences[deviceId] ?? 0) + 1)
        return { ok: false, reason: 'gap', detail: `${deviceId} ${deviceSeq}` };
      sequences[deviceId] = deviceSeq;
    }
    let unknown = 0;
    if (fresh.length > 0) {
      const base = row.revision === 0 ? EMPTY_VIEW : await this.#viewAt(row);
      const draft = await foldBatch(base, fresh, (ids) => this.#fetch(jobId, ids));
      const view = draft.finish();
      const counts = partOf(view, 'voids').unknown;
      for (const type of Object.keys(counts)) unknown += counts[type];
      await database.events.bulkAdd(fresh);
      await this.#storeParts(jobId, draft.touched);
      const newest = fresh.reduce((best, event) => (event.id > best.id ? event : best));
      await database.jobs.put({
        ...row,
        name: nameIn(view),
        revision: row.revision + fresh.length,
        lastId: newest.id > row.lastId ? newest.id : row.lastId,
        lastAt: newest.at > row.lastAt ? newest.at : row.lastAt,
        sequences
      });
    }
    return { ok: true, jobId, added: fresh.length, already: events.length - fresh.length, unknown };
  }

  /** The view at a row's revision: from memory if no other tab moved on, else from the parts. */
  async #viewAt(row: JobRow): Promise<JobView> {
    const cached = this.#views.get(row.jobId);
    if (cached?.revision === row.revision) return cached.view;
    const rows = await this.database.parts
      .where('[jobId+part]')
      .between([row.jobId, Dexie.minKey], [row.jobId, Dexie.maxKey])
      .toArray();
    const view: JobView = new Map(rows.map(({ part, value }) => [part, value]));
    this.#views.set(row.jobId, { revision: row.revision, view });
    return view;
  }

  async #storeParts(jobId: string, parts: JobView): Promise<void> {
    await this.database.parts.bulkPut([...parts].map(([part, value]) => ({ jobId, part, value })));
  }

  #fetch(jobId: string, ids: string[]): Promise<(StoredEvent | undefined)[]> {
    return this.database.events.bulkGet(ids.map((id): [string, string] => [jobId, id]));
  }

  #ofJob(jobId: string) {
    return this.database.events
      .where('[jobId+id]')
      .between([jobId, Dexie.minKey], [jobId, Dexie.maxKey]);
  }

  #journalTables() {
    return [this.database.events, this.database.parts, this.database.jobs];
  }

  async #identity(): Promise<{ deviceId: string; nextId: () => string }> {
    const deviceId = await this.deviceId();
    this.#nextId ??= this.#idSource();
    return { deviceId, nextId: await this.#nextId };
  }

  async #idSource(): Promise<() => string> {
    const rows = await this.#run(() => this.database.jobs.toArray());
    const lastId = rows.reduce((last, row) => (row.lastId > last ? row.lastId : last), '');
    const { now, randomHex } = this.#surroundings;
    return createIdSource(now, randomHex, lastId || undefined);
  }

  async #firstStart(): Promise<string> {
    const { now, randomHex } = this.#surroundings;
    return this.#run(() =>
      this.database.transaction('rw', this.database.device, async () => {
        const row = await this.database.device.get('deviceId');
        if (row) return row.value as string;
        const made = createIdSource(now, randomHex)();
        await this.database.device.put({ name: 'deviceId', value: made });
        return made;
      })
    );
  }

  #run<T>(work: () => PromiseLike<T>): Promise<T> {
    return withReconnect(this.database, work);
  }
}

function newRow(jobId: string): JobRow {
  return {
    jobId,
    name: '',
    revision: 0,
    lastId: '',
    lastAt: '',
    viewVersion: VIEW_VERSION,
    exported: 0,
    exportedAt: null,
    sequences: {}
  };
}

function nameIn(view: JobView): string {
  return current(partOf(view, 'job').opened)?.name ?? '';
}

function summaryOf(row: JobRow): JobSummary {
  return {
    jobId: row.jobId,
    name: row.name,
    events: row.revision,
    unexported: Math.max(0, row.revision - row.exported),
    lastAt: row.lastAt,
    exportedAt: row.exportedAt
  };
}
