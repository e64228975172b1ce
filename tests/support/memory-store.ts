import { EngineError } from '$lib/engine';
import {
  EMPTY_VIEW,
  type JobView,
  type NewEvent,
  type StoredEvent,
  createIdSource,
  partOf
} from '$lib/journal';
import { foldBatch } from '../../src/lib/storage/fold-batch.ts';
import {
  DEVICE_ID,
  FORMER_IDS,
  copyNote,
  requireJobLeft,
  requireSameDevice
} from '../../src/lib/storage/identity.ts';
import {
  type JobRow,
  emptiedRow,
  isWholeView,
  newRow,
  onlyHere,
  summaryOf,
  withBackup,
  withEvents,
  withFileRead,
  withView
} from '../../src/lib/storage/job-row.ts';
import {
  MergeCheck,
  MergeRefused,
  batchesOf,
  orRefusal
} from '../../src/lib/storage/merge-check.ts';
import { EventsAudit, isReadable } from '../../src/lib/storage/missing.ts';
import { photoAct } from '../../src/lib/storage/photo.ts';
import { probeWith } from '../../src/lib/storage/probe.ts';
import { firstRow, noteOfRemoved, removedName } from '../../src/lib/storage/removed.ts';
import { Stamper, requireActs, sealActs } from '../../src/lib/storage/stamp.ts';
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
} from '../../src/lib/storage/store.ts';

/** What lies in memory of one job; a test may take any of it away. */
export interface MemoryJob {
  row: JobRow;
  view: JobView;
  events: Map<string, StoredEvent>;
}

/** What several stores on one device share, as tabs share a database. */
export class MemoryDatabase {
  readonly jobs = new Map<string, MemoryJob>();
  /** Ids of jobs whose row was taken away by a test. */
  readonly rowless = new Set<string>();
  readonly photos = new Map<string, StoredPhoto>();
  readonly device = new Map<string, unknown>();
  readonly watchers = new Set<(jobId: string) => void>();
  /** One piece of writing at a time, over all stores. */
  queue: Promise<unknown> = Promise.resolve();
}

/** The journal in memory, for tests and for looking into a file. Keeps nothing. */
export class MemoryStore implements JournalStore {
  readonly #surroundings: StoreSurroundings;
  readonly #database: MemoryDatabase;
  #stamper: Stamper | undefined;
  #knownId: string | undefined;
  /** Events of each job when this store last saw it. */
  readonly #seen = new Map<string, number>();

  constructor(surroundings: StoreSurroundings, database = new MemoryDatabase()) {
    this.#surroundings = surroundings;
    this.#database = database;
  }

  async deviceId(): Promise<string> {
    const { now, randomHex } = this.#surroundings;
    const { device } = this.#database;
    if (this.#knownId === undefined && !device.has(DEVICE_ID))
      device.set(DEVICE_ID, createIdSource(now, randomHex)());
    return (this.#knownId ??= device.get(DEVICE_ID) as string);
  }

  async jobs(): Promise<JobSummary[]> {
    return [...this.#database.jobs.values()]
      .filter(({ row }) => !this.#database.rowless.has(row.jobId))
      .map(({ row }) => summaryOf(row))
      .sort((one, other) => (one.lastAt < other.lastAt ? 1 : -1));
  }

  async repair(): Promise<string[]> {
    const lost = [...this.#database.rowless];
    for (const jobId of lost) await this.rebuild(jobId);
    return lost;
  }

  async open(jobId: string): Promise<OpenJob | undefined> {
    if (!this.#isSound(jobId)) await this.rebuild(jobId);
    const job = this.#database.jobs.get(jobId);
    if (job) this.#seen.set(jobId, job.row.revision);
    return job && { view: job.view, summary: summaryOf(job.row) };
  }

  append(jobId: string, acts: readonly NewEvent[], sorter = ''): Promise<Appended> {
    return this.#write(() => this.#append(jobId, acts, sorter));
  }

  async #append(jobId: string, acts: readonly NewEvent[], sorter: string): Promise<Appended> {
    requireActs(acts);
    await this.deviceId();
    const deviceId = this.#requireDevice();
    if (!this.#isSound(jobId)) await this.#rebuild(jobId);
    const { row, view, events: here } = this.#jobOf(jobId);
    requireJobLeft(row, this.#seen.get(jobId) ?? 0);
    this.#stamper ??= new Stamper(this.#surroundings, this.#lastId());
    const stamp = this.#stamper.stamp(acts.length);
    this.#stamper.raise(stamp, row.lastId);
    const events = sealActs(acts, stamp, row, deviceId, sorter);
    const { draft, undoFault } = await foldBatch(view, events, fetchFrom(here));
    if (undoFault) throw new EngineError('inconsistent', `${undoFault} undoes too many undos`);
    return { ...this.#keep(row, draft.finish(), here, events), events };
  }

  async addPhoto(jobId: string, photo: NewPhoto, sorter = ''): Promise<Appended> {
    const { act, kept } = await photoAct(photo, this.#surroundings.randomHex);
    const appended = await this.append(jobId, [act], sorter);
    this.#database.photos.set(kept.photoId, kept);
    return appended;
  }

  async photo(photoId: string): Promise<StoredPhoto | undefined> {
    return this.#database.photos.get(photoId);
  }

  async newest(jobId: string, limit: number): Promise<StoredEvent[]> {
    return this.#inOrder(jobId).filter(isReadable).reverse().slice(0, limit);
  }

  async numbers(jobId: string): Promise<DeviceNumbers> {
    return { ...this.#jobOf(jobId).row.sequences };
  }

  async *events(jobId: string): AsyncGenerator<readonly StoredEvent[]> {
    const events = this.#inOrder(jobId);
    if (events.length > 0) yield events;
  }

  merge(
    events: Iterable<StoredEvent> | EventBatches,
    photos: readonly StoredPhoto[] = [],
    source: MergeSource = 'made-here',
    copies: Copies = 'refuse'
  ): Promise<ImportResult> {
    const batches = batchesOf(events);
    return this.#write(() =>
      orRefusal(async () => {
        const all: StoredEvent[] = [];
        for await (const batch of batches()) all.push(...batch);
        this.#requireDevice();
        return this.#merge(all, photos, source, copies);
      })
    );
  }

  rebuild(jobId: string): Promise<RebuiltJob | undefined> {
    return this.#write(() => this.#rebuild(jobId));
  }

  async #rebuild(jobId: string): Promise<RebuiltJob | undefined> {
    const { jobs, rowless } = this.#database;
    const job = jobs.get(jobId);
    if (!job) return undefined;
    const before = rowless.delete(jobId) ? newRow(jobId) : job.row;
    const events = this.#inOrder(jobId);
    const { draft, readable, damaged } = await foldBatch(EMPTY_VIEW, events, fetchFrom(new Map()));
    const audit = new EventsAudit();
    for (const event of readable) audit.note(event);
    for (const event of damaged) audit.noteDamaged(event);
    const row = withView(withEvents(emptiedRow(before), readable), draft.finish());
    const view = draft.finish();
    this.#changed({ row, view, events: job.events });
    return { view, summary: summaryOf(row), missing: audit.missing(row.sequences) };
  }

  /** Whether what is kept beside the events is all there. */
  #isSound(jobId: string): boolean {
    const { jobs, rowless } = this.#database;
    const job = jobs.get(jobId);
    return !job || (!rowless.has(jobId) && isWholeView(job.row, job.view));
  }

  remove(jobId: string, elsewhere: DeviceNumbers = {}): Promise<Removal> {
    return this.#write(async () => {
      await this.deviceId();
      const deviceId = this.#requireDevice();
      if (!this.#isSound(jobId)) await this.#rebuild(jobId);
      const { jobs, photos, device, watchers } = this.#database;
      const { row, view } = this.#jobOf(jobId);
      if (row.revision === 0) return { ok: true };
      const left = onlyHere(row, elsewhere);
      if (left > 0) return { ok: false, onlyHere: left };
      device.set(`preference:${removedName(jobId)}`, noteOfRemoved(row, deviceId));
      jobs.delete(jobId);
      this.#seen.delete(jobId);
      const shown = [...jobs.values()].flatMap((job) => partOf(job.view, 'job').photos);
      for (const { value } of partOf(view, 'job').photos)
        if (!shown.some((other) => other.value.photoId === value.photoId))
          photos.delete(value.photoId);
      for (const watcher of watchers) watcher(jobId);
      return { ok: true };
    });
  }

  async markExported(jobId: string, events: DeviceNumbers, at: string): Promise<void> {
    this.#requireDevice();
    const job = this.#database.jobs.get(jobId);
    if (job) this.#changed({ ...job, row: withBackup(job.row, events, at) });
  }

  watch(jobId: string, changed: () => void, since?: number): () => void {
    const watcher = (id: string) => id === jobId && changed();
    this.#database.watchers.add(watcher);
    if (since !== undefined && this.#jobOf(jobId).row.revision !== since) changed();
    return () => this.#database.watchers.delete(watcher);
  }

  async readDevice(name: string): Promise<unknown> {
    return structuredClone(this.#database.device.get(`preference:${name}`));
  }

  async writeDevice(name: string, value: unknown): Promise<void> {
    this.#database.device.set(`preference:${name}`, structuredClone(value));
  }

  probe(): Promise<ProbeResult> {
    const { device } = this.#database;
    return probeWith(this.#surroundings, {
      write: async (name, value) => device.set(name, value),
      read: async (name) => device.get(name),
      remove: async (name) => device.delete(name)
    });
  }

  async health(estimate: StorageEstimate = {}): Promise<StoreHealth> {
    const jobs = [...this.#database.jobs.values()];
    return {
      jobs: jobs.length,
      events: jobs.reduce((sum, { events }) => sum + events.size, 0),
      photos: this.#database.photos.size,
      staleViews: 0,
      unexported: jobs.reduce((sum, { row }) => sum + summaryOf(row).unexported, 0),
      usageBytes: estimate.usage ?? null,
      quotaBytes: estimate.quota ?? null
    };
  }

  async #merge(
    events: readonly StoredEvent[],
    photos: readonly StoredPhoto[],
    source: MergeSource,
    copies: Copies
  ): Promise<ImportResult> {
    if (events.length === 0) throw new MergeRefused('not-a-job-file');
    if (!this.#isSound(events[0].jobId)) await this.#rebuild(events[0].jobId);
    const { row, view, events: here } = this.#jobOf(events[0].jobId);
    const check = new MergeCheck(row, copies);
    if (check.bringsBack(events, here)) {
      const audit = new EventsAudit();
      for (const event of here.values()) if (isReadable(event)) audit.note(event);
      check.noteLost(audit.missing(row.sequences));
    }
    const fresh = check.sort(events, here);
    check.finish();
    const { draft, undoFault, broken } = await foldBatch(view, fresh, fetchFrom(here));
    if (broken) throw new MergeRefused('broken-line', undefined, broken);
    if (undoFault) throw new MergeRefused('undo-circle', undefined, undoFault);
    const merged = draft.finish();
    const noted =
      source === 'job-file'
        ? withFileRead(
            row,
            check.backedUp(photos.length),
            new Date(this.#surroundings.now()).toISOString()
          )
        : row;
    this.#keep(noted, merged, here, structuredClone(fresh));
    const healed = check.healed > 0 ? await this.#rebuild(row.jobId) : undefined;
    const kept = this.#database.photos;
    for (const photo of photos) if (!kept.has(photo.photoId)) kept.set(photo.photoId, photo);
    const unknown = Object.values(partOf(healed?.view ?? merged, 'voids').unknown);
    if (check.branches.length > 0) await this.#noteCopies(row.jobId, check);
    return {
      ok: true,
      jobId: row.jobId,
      added: check.added,
      already: check.already,
      unknown: unknown.reduce((sum, count) => sum + count, 0),
      branched: check.branches.reduce((sum, { events: count }) => sum + count, 0)
    };
  }

  /** Takes a new id where this device was copied, and notes whence the branches came. */
  async #noteCopies(jobId: string, { branches, isDecidedHere }: MergeCheck): Promise<void> {
    const { now, randomHex } = this.#surroundings;
    const { device } = this.#database;
    await this.deviceId();
    const deviceId = this.#requireDevice();
    if (branches.some((branch) => branch.deviceId === deviceId)) {
      const former = (device.get(FORMER_IDS) as string[] | undefined) ?? [];
      device.set(FORMER_IDS, [...former, deviceId]);
      device.set(DEVICE_ID, createIdSource(now, randomHex)());
    }
    if (isDecidedHere) await this.#append(jobId, [copyNote(branches)], '');
  }

  #keep(
    row: JobRow,
    view: JobView,
    here: Map<string, StoredEvent>,
    events: readonly StoredEvent[]
  ): OpenJob {
    for (const event of events) here.set(event.id, event);
    const next = withView(withEvents(row, events), view);
    this.#changed({ row: next, view, events: here });
    return { view, summary: summaryOf(next) };
  }

  /** The id of this device. @throws DeviceChanged */
  #requireDevice(): string {
    const { device } = this.#database;
    const stored = device.get(DEVICE_ID);
    const mine = this.#knownId ?? (stored as string);
    return (this.#knownId = requireSameDevice(mine, stored, device.get(FORMER_IDS)));
  }

  #changed(job: MemoryJob): void {
    this.#seen.set(job.row.jobId, job.row.revision);
    this.#database.jobs.set(job.row.jobId, job);
    for (const watcher of this.#database.watchers) watcher(job.row.jobId);
  }

  #jobOf(jobId: string): MemoryJob {
    const job = this.#database.jobs.get(jobId);
    const note = this.#database.device.get(`preference:${removedName(jobId)}`);
    return job ?? { row: firstRow(jobId, note), view: EMPTY_VIEW, events: new Map() };
  }

  #inOrder(jobId: string): StoredEvent[] {
    return [...this.#jobOf(jobId).events.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
  }

  #lastId(): string {
    const ids = [...this.#database.jobs.values()].map(({ row }) => row.lastId);
    return ids.reduce((last, id) => (id > last ? id : last), '');
  }

  #write<T>(work: () => Promise<T>): Promise<T> {
    const done = this.#database.queue.then(work);
    this.#database.queue = done.catch(() => undefined);
    return done;
  }
}

function fetchFrom(events: ReadonlyMap<string, StoredEvent>) {
  return async (ids: string[]) => ids.map((id) => events.get(id));
}
