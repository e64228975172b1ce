import { type Table, liveQuery } from 'dexie';
import {
  type JobView,
  type NewEvent,
  type StoredEvent,
  VIEW_VERSION,
  createIdSource
} from '$lib/journal';
import { EvencourseDatabase, type PhotoRow } from './database.ts';
import { DexieJournal, type JobRecord } from './dexie-journal.ts';
import { DEVICE_ID, FORMER_IDS, copyNote, requireJobLeft, requireSameDevice } from './identity.ts';
import { isSoundRow, summaryOf, withBackup } from './job-row.ts';
import { isReadable } from './missing.ts';
import { photoAct, photoOfRow } from './photo.ts';
import { probeWith } from './probe.ts';
import { withReconnect } from './reconnect.ts';
import { Stamper, requireActs, sealActs } from './stamp.ts';
import type {
  Appended,
  Copies,
  DeviceNumbers,
  EventBatches,
  ImportResult,
  JobSummary,
  JournalStore,
  MergeSource,
  NewPhoto,
  OpenJob,
  ProbeResult,
  RebuiltJob,
  Removal,
  StorageEstimate,
  StoreHealth,
  StoreSurroundings,
  StoredPhoto
} from './store.ts';

/** The journal in IndexedDB. See {@link JournalStore} for what each method promises. */
export class DexieStore implements JournalStore {
  readonly database: EvencourseDatabase;
  readonly #surroundings: StoreSurroundings;
  readonly #journal: DexieJournal;
  readonly #views = new Map<string, { revision: number; view: JobView }>();
  #stamper: Promise<Stamper> | undefined;
  #deviceId: Promise<string> | undefined;
  /** The id once it is known: inside a transaction nothing else may be waited for. */
  #knownId: string | undefined;
  #queue: Promise<unknown> = Promise.resolve();

  constructor(surroundings: StoreSurroundings, name?: string) {
    this.#surroundings = surroundings;
    this.database = new EvencourseDatabase(name);
    this.#journal = new DexieJournal(this.database, (jobId, revision) => {
      const remembered = this.#views.get(jobId);
      return remembered?.revision === revision ? remembered.view : undefined;
    });
  }

  deviceId(): Promise<string> {
    this.#deviceId ??= this.#firstStart().then(
      (id) => (this.#knownId = id),
      (error: unknown) => {
        this.#deviceId = undefined; // the next call tries again
        throw error;
      }
    );
    return this.#deviceId;
  }

  async jobs(): Promise<JobSummary[]> {
    const rows = await this.#run(() => this.database.jobs.orderBy('lastAt').reverse().toArray());
    return rows.filter(isSoundRow).map(summaryOf);
  }

  async repair(): Promise<string[]> {
    const { events, bundles, jobs } = this.database;
    const lost = await this.#run(() =>
      this.database.transaction('r', [events, bundles, jobs], async () => {
        const sound = (await jobs.toArray()).filter(isSoundRow).map(({ jobId }) => jobId);
        return (await this.#journal.events.jobIds()).filter((jobId) => !sound.includes(jobId));
      })
    );
    for (const jobId of lost) await this.rebuild(jobId);
    return lost;
  }

  async open(jobId: string): Promise<OpenJob | undefined> {
    const { jobs, parts, events, bundles, device } = this.database;
    const state = await this.#run(() =>
      this.database.transaction('r', [jobs, parts, events, bundles, device], async () => {
        const row = await this.#journal.row(jobId);
        if (row) return (await this.#journal.stored(row)) ?? 'stale';
        if (await this.#journal.events.hasAny(jobId)) return 'stale';
        const { sequences } = await this.#journal.first(jobId);
        // Removed, on this page or another: when it comes back it is read anew.
        if (Object.keys(sequences).length > 0) this.#views.delete(jobId);
        return undefined;
      })
    );
    return state === 'stale' ? this.rebuild(jobId) : state && this.#remember(state);
  }

  append(jobId: string, acts: readonly NewEvent[], sorter = ''): Promise<Appended> {
    return this.#enqueue(jobId, acts, sorter);
  }

  async addPhoto(jobId: string, photo: NewPhoto, sorter = ''): Promise<Appended> {
    const { act, kept } = await photoAct(photo, this.#surroundings.randomHex);
    return this.#enqueue(jobId, [act], sorter, { jobId, ...kept });
  }

  async photo(photoId: string): Promise<StoredPhoto | undefined> {
    const row = await this.#run(() => this.database.photos.get(photoId));
    return row && photoOfRow(row);
  }

  async newest(jobId: string, limit: number): Promise<StoredEvent[]> {
    const events = await this.#read(() => this.#journal.events.newest(jobId, limit));
    return events.filter(isReadable);
  }

  async numbers(jobId: string): Promise<DeviceNumbers> {
    const row = await this.#run(() =>
      this.database.transaction('r', this.database.jobs, async () => this.#journal.row(jobId))
    );
    return { ...row?.sequences };
  }

  async *events(jobId: string): AsyncGenerator<readonly StoredEvent[]> {
    let above = '';
    for (;;) {
      const batch = await this.#read(() => this.#journal.events.next(jobId, above));
      if (batch.length === 0) return;
      yield batch;
      above = batch[batch.length - 1].id;
    }
  }

  async merge(
    events: Iterable<StoredEvent> | EventBatches,
    photos: readonly StoredPhoto[] = [],
    source: MergeSource = 'made-here',
    copies: Copies = 'refuse'
  ): Promise<ImportResult> {
    const { batchesOf, mergeEvents, orRefusal } = await import('./dexie-merge.ts');
    const batches = batchesOf(events);
    const readAt = source === 'job-file' ? new Date(this.#surroundings.now()).toISOString() : null;
    await this.deviceId();
    const stamper = await this.#stamps();
    const stamp = stamper.stamp(1);
    const newId = createIdSource(this.#surroundings.now, this.#surroundings.randomHex)();
    return orRefusal(() =>
      this.#write([this.database.photos, this.database.device], async () => {
        const deviceId = await this.#requireDevice();
        const merged = await mergeEvents(
          this.database,
          this.#journal,
          batches,
          photos,
          readAt,
          copies
        );
        const { result, branches, isDecidedHere } = merged;
        const isCopied = branches.some((branch) => branch.deviceId === deviceId);
        if (isCopied) await this.#takeNewId(deviceId, newId);
        if (isDecidedHere) {
          const before = await this.#journal.ready(result.jobId);
          stamper.raise(stamp, before.row.lastId);
          const note = copyNote(branches);
          const sealed = sealActs([note], stamp, before.row, isCopied ? newId : deviceId, '');
          await this.#journal.add(before, sealed);
        }
        return result;
      })
    );
  }

  async rebuild(jobId: string): Promise<RebuiltJob | undefined> {
    const state = await this.#write([this.database.device], async () => {
      const row = await this.#journal.row(jobId);
      if (!row && !(await this.#journal.events.hasAny(jobId))) return undefined;
      return this.#journal.foldAnew(row ?? (await this.#journal.first(jobId)));
    });
    if (!state) return undefined;
    this.#views.delete(jobId); // events may be fewer than a view in memory was folded from
    return { ...this.#remember(state), missing: state.missing };
  }

  async remove(jobId: string, elsewhere: DeviceNumbers = {}): Promise<Removal> {
    const { removeJob } = await import('./dexie-remove.ts');
    const { device, photos } = this.database;
    await this.deviceId();
    const removal = await this.#write([device, photos], async () =>
      removeJob(this.database, this.#journal, jobId, elsewhere, await this.#requireDevice())
    );
    if (removal.ok) this.#views.delete(jobId);
    return removal;
  }

  async markExported(jobId: string, events: DeviceNumbers, at: string): Promise<void> {
    await this.#run(() =>
      this.database.transaction('rw', this.database.jobs, this.database.device, async () => {
        await this.#requireDevice();
        const row = await this.#journal.row(jobId);
        if (row) await this.database.jobs.put(withBackup(row, events, at));
      })
    );
  }

  watch(jobId: string, changed: () => void, since?: number): () => void {
    let seen: string | undefined;
    const subscription = liveQuery(() => this.database.jobs.get(jobId)).subscribe({
      next: (row) => {
        const now = isSoundRow(row)
          ? [row.revision, row.viewVersion, row.exportedAt, summaryOf(row).unexported].join('|')
          : '';
        const wasMissed = seen === undefined && since !== undefined && row?.revision !== since;
        const isNews = seen !== undefined && seen !== now;
        seen = now;
        if (wasMissed || isNews) changed();
      },
      error: () => undefined // a lost connection shows itself at the next append
    });
    return () => subscription.unsubscribe();
  }

  async readDevice(name: string): Promise<unknown> {
    return (await this.#run(() => this.database.device.get(`preference:${name}`)))?.value;
  }

  async writeDevice(name: string, value: unknown): Promise<void> {
    await this.#run(() => this.database.device.put({ name: `preference:${name}`, value }));
  }

  probe(): Promise<ProbeResult> {
    const { device } = this.database;
    return probeWith(this.#surroundings, {
      write: (name, value) => this.#run(() => device.put({ name, value })),
      read: async (name) => (await this.#run(() => device.get(name)))?.value,
      remove: (name) => this.#run(() => device.delete(name))
    });
  }

  async health(estimate: StorageEstimate = {}): Promise<StoreHealth> {
    const { database } = this;
    const [rows, events, photos] = await this.#run(() =>
      database.transaction(
        'r',
        [database.jobs, database.events, database.bundles, database.photos],
        async () =>
          Promise.all([
            database.jobs.toArray().then((all) => all.filter(isSoundRow)),
            this.#journal.events.count(),
            database.photos.count()
          ])
      )
    );
    return {
      jobs: rows.length,
      events,
      photos,
      staleViews: rows.filter(({ viewVersion }) => viewVersion !== VIEW_VERSION).length,
      unexported: rows.reduce((sum, row) => sum + summaryOf(row).unexported, 0),
      usageBytes: estimate.usage ?? null,
      quotaBytes: estimate.quota ?? null
    };
  }

  /** Stores one act after another, each with ids made before its first try. */
  #enqueue(
    jobId: string,
    acts: readonly NewEvent[],
    sorter: string,
    photo?: PhotoRow
  ): Promise<Appended> {
    const appended = this.#queue.then(async () => {
      requireActs(acts);
      await this.deviceId();
      const stamper = await this.#stamps();
      const stamp = stamper.stamp(acts.length);
      let tries = 0;
      const { device, photos } = this.database;
      const { state, events } = await this.#write(photo ? [device, photos] : [device], async () => {
        const [deviceId, before] = await Promise.all([
          this.#requireDevice(),
          this.#journal.ready(jobId)
        ]);
        requireJobLeft(before.row, this.#views.get(jobId)?.revision ?? 0);
        if (tries++ > 0) {
          const already = await this.#journal.events.ownWith(jobId, stamp.ids);
          // The try before was committed, but its connection was lost before the answer came.
          if (already[0]) return { state: before, events: already.filter((event) => !!event) };
        }
        stamper.raise(stamp, before.row.lastId);
        const sealed = sealActs(acts, stamp, before.row, deviceId, sorter);
        if (photo) await photos.add(photo);
        return { state: await this.#journal.add(before, sealed), events: sealed };
      });
      // Memory moves only after the commit.
      return { ...this.#remember(state), events };
    });
    this.#queue = appended.catch(() => undefined);
    return appended;
  }

  /**
   * The id of this device, inside a transaction that writes: a browser may have cleared the data
   * under the open page, and the next connection finds an empty database or another device's.
   *
   * @throws DeviceChanged
   */
  async #requireDevice(): Promise<string> {
    const [stored, former] = await this.database.device.bulkGet([DEVICE_ID, FORMER_IDS]);
    const mine = this.#knownId ?? (stored?.value as string);
    const id = requireSameDevice(mine, stored?.value, former?.value);
    if (id !== this.#knownId) {
      this.#knownId = id;
      this.#deviceId = Promise.resolve(id);
    }
    return id;
  }

  /** Takes a new id, inside a transaction; the other open pages follow at their next act. */
  async #takeNewId(before: string, id: string): Promise<void> {
    const { device } = this.database;
    const former = (await device.get(FORMER_IDS))?.value;
    await device.bulkPut([
      { name: DEVICE_ID, value: id },
      { name: FORMER_IDS, value: [...(Array.isArray(former) ? (former as string[]) : []), before] }
    ]);
  }

  #remember({ row, view }: JobRecord): OpenJob {
    const before = this.#views.get(row.jobId)?.revision ?? 0;
    if (row.revision >= before) this.#views.set(row.jobId, { revision: row.revision, view });
    return { view, summary: summaryOf(row) };
  }

  /**
   * Does some work in one transaction on the journal and further tables. Dexie keeps a transaction
   * open over native awaits only if the function it is handed is itself an async one.
   */
  #write<T>(more: Table[], work: () => Promise<T>): Promise<T> {
    const { events, bundles, parts, jobs } = this.database;
    return this.#run(() =>
      this.database.transaction('rw', [events, bundles, parts, jobs, ...more], async () => work())
    );
  }

  /** Reads events in one transaction, so that all of them are of one moment. */
  #read<T>(work: () => Promise<T>): Promise<T> {
    const { events, bundles } = this.database;
    return this.#run(() => this.database.transaction('r', [events, bundles], async () => work()));
  }

  #stamps(): Promise<Stamper> {
    this.#stamper ??= this.#run(() => this.database.jobs.toArray())
      .then((rows) => {
        const lastId = rows
          .filter(isSoundRow)
          .reduce((last, row) => (row.lastId > last ? row.lastId : last), '');
        return new Stamper(this.#surroundings, lastId);
      })
      .catch((error: unknown) => {
        this.#stamper = undefined; // the next act tries again
        throw error;
      });
    return this.#stamper;
  }

  #firstStart(): Promise<string> {
    const { now, randomHex } = this.#surroundings;
    const { device } = this.database;
    const made = createIdSource(now, randomHex)();
    return this.#run(() =>
      this.database.transaction('rw', device, async () => {
        const row = await device.get(DEVICE_ID);
        if (row) return row.value as string;
        await device.put({ name: DEVICE_ID, value: made });
        return made;
      })
    );
  }

  #run<T>(work: () => PromiseLike<T>): Promise<T> {
    return withReconnect(this.database, work);
  }
}
