import type { JobView, NewEvent, StoredEvent } from '$lib/journal';

/**
 * By device, the last of its numbers. A device numbers its events 1, 2, 3 … in each job, and a job
 * file holds them from the first, so these tell which events are meant.
 */
export type DeviceNumbers = Record<string, number>;

/** A job as the list of jobs shows it. */
export interface JobSummary {
  jobId: string;
  name: string;
  /** Events of this job on this device. */
  events: number;
  /** Events in no job file that was written or read here. */
  unexported: number;
  lastAt: string;
  /** When such a file was last written or read. */
  exportedAt: string | null;
}

/**
 * Reads many events in batches, in order of id and each id once; called again, it begins again. So a
 * journal too large for the memory can be looked through more than once.
 */
export type EventBatches = () => AsyncIterable<readonly StoredEvent[]>;

/** A job's view and the revision it was folded at. */
export interface OpenJob {
  view: JobView;
  summary: JobSummary;
}

/** Why something of a job is not there: its row is gone, or what the row holds cannot be read. */
export type MissingReason = 'gone' | 'damaged';

/** A run of a device's numbers whose events are missing, both ends included. */
export interface MissingEntries {
  readonly device: string;
  readonly from: number;
  readonly to: number;
  readonly reason: MissingReason;
}

export interface MissingPhoto {
  readonly photo: string;
  readonly reason: MissingReason;
}

/** Something that a job had and that its file does not hold. */
export type Missing = MissingEntries | MissingPhoto;

/** A job worked out again from its events, and the events that could not be found. */
export interface RebuiltJob extends OpenJob {
  missing: readonly MissingEntries[];
}

/**
 * What becomes of a merge in which two acts claim one number, since a phone was copied or put back:
 * it is refused, or both are kept, those that come in under a device id of their own.
 */
export type Copies = 'refuse' | 'keep-both';

/** Where merged events come from: read from a job file, or made by the app itself. */
export type MergeSource = 'job-file' | 'made-here';

/** What came of removing a job: it is gone from here, or so many of its entries are nowhere else. */
export type Removal = { readonly ok: true } | { readonly ok: false; readonly onlyHere: number };

export interface Appended extends OpenJob {
  events: StoredEvent[];
}

export type ImportRefusal =
  | 'not-a-job-file'
  | 'too-new'
  | 'too-large'
  | 'torn'
  | 'wrong-count'
  | 'wrong-hash'
  | 'broken-line'
  | 'bad-photo'
  | 'mixed-jobs'
  | 'gap'
  | 'conflict'
  | 'undo-circle'
  /** Made of a damaged job: it can only be taken in as a job of its own. */
  | 'incomplete'
  /** Sent by hand without the whole job, of a phone that was copied. */
  | 'part';

export interface Refusal {
  ok: false;
  reason: ImportRefusal;
  /** Line of the job file, the header being line 1. */
  line?: number;
  detail?: string;
  /** The device id that two phones used at once: the merge succeeds with `keep-both`. */
  copiedDevice?: string;
  /** What an `incomplete` file says that it does not hold. */
  missing?: readonly Missing[];
}

/**
 * `added` and `already` count the events of the file that were new and that were here; `unknown`
 * counts the events in the job, after the import, that this release does not know; `branched` counts
 * those added that stand under an id of their own from now on, since a phone was copied.
 */
export type ImportResult =
  | {
      ok: true;
      jobId: string;
      added: number;
      already: number;
      unknown: number;
      branched: number;
    }
  | Refusal;

export const PHOTO_TYPES = ['image/jpeg', 'image/png', 'image/webp'] as const;
export type PhotoType = (typeof PHOTO_TYPES)[number];

/** A photo as it is kept. Bytes rather than a Blob, which some browsers lose. */
export interface StoredPhoto {
  photoId: string;
  type: PhotoType;
  bytes: ArrayBuffer;
}

/** A photo to add: re-encoded by the caller, so that it says nothing of where it was taken. */
export interface NewPhoto {
  palletId: string | null;
  caption: string;
  type: PhotoType;
  bytes: ArrayBuffer;
}

/** Whether a write comes back from the disk. */
export type ProbeResult =
  | { ok: true; tookMs: number }
  | { ok: false; reason: 'full' | 'unavailable' | 'wrong-answer'; detail: string };

/** What the browser says of its storage, passed in by the caller. */
export interface StorageEstimate {
  usage?: number;
  quota?: number;
}

/** Counts for the health page; nothing of what was measured, and no names. */
export interface StoreHealth {
  jobs: number;
  events: number;
  photos: number;
  /** Jobs whose view was folded by another release and is rebuilt when opened. */
  staleViews: number;
  unexported: number;
  usageBytes: number | null;
  quotaBytes: number | null;
}

/**
 * Where a device keeps its journals. Memory and IndexedDB fulfil the same contract, and one suite
 * of tests holds both to it. Every promise settles only when the data is committed. Nothing that
 * was appended is ever deleted, but with its whole job.
 */
export interface JournalStore {
  /** This device's id, made at its first start. */
  deviceId(): Promise<string>;
  jobs(): Promise<JobSummary[]>;
  /**
   * The view of a job; rebuilt first when it was folded by another release, or when a part of it or
   * the job's row is lost. Undefined: no job.
   */
  open(jobId: string): Promise<OpenJob | undefined>;
  /**
   * Appends events of one act to a job in one transaction: events, the touched parts of the view
   * and the counters, or nothing at all. Ids are made before the first try, so that a retry after
   * a lost connection cannot double them.
   *
   * @throws EngineError `empty` for no act, `inconsistent` for a body that could not be read back
   */
  append(jobId: string, acts: readonly NewEvent[], sorter?: string): Promise<Appended>;
  /** Appends photoAdded and keeps the photo, in one transaction. */
  addPhoto(jobId: string, photo: NewPhoto, sorter?: string): Promise<Appended>;
  /** A photo, or undefined when this device does not have it. */
  photo(photoId: string): Promise<StoredPhoto | undefined>;
  /** The newest events of a job, newest first. */
  newest(jobId: string, limit: number): Promise<StoredEvent[]>;
  /** By device, the last of its numbers that is here; empty for no job. */
  numbers(jobId: string): Promise<DeviceNumbers>;
  /** All events of a job in order of id, in batches. */
  events(jobId: string): AsyncGenerator<readonly StoredEvent[]>;
  /**
   * Adds the events and photos of a checked job file that are not here yet, in one transaction. It
   * checks once more what only the two journals together can tell, and refuses whole.
   *
   * @param events a few, in any order, or a reading of many
   * @param source events of a `job-file` count as backed up, so far as it holds a device's events
   * from the first on and all photos of them
   * @param copies with `keep-both`, a copied phone's events are taken in beside those here, with a
   * note of whence; where the id is this device's, it takes a new one for what it does from now on
   */
  merge(
    events: Iterable<StoredEvent> | EventBatches,
    photos?: readonly StoredPhoto[],
    source?: MergeSource,
    copies?: Copies
  ): Promise<ImportResult>;
  /**
   * Folds the view anew from all events, and counts them anew; finds a job of which only the events
   * are left. A device's last number never becomes lower, so none is given twice.
   */
  rebuild(jobId: string): Promise<RebuiltJob | undefined>;
  /** Rebuilds the jobs of which only the events are left, and gives their ids. */
  repair(): Promise<string[]>;
  /**
   * Removes a job from this device, whole: entries, view and the photos that no other job here shows.
   * Only where all of it is in job files that were written or read here, or elsewhere; else nothing
   * is touched. The journals of other devices, and of other jobs, stay as they are; a job file brings
   * the job back.
   *
   * @param elsewhere by device, the last of its numbers that others are known to hold
   */
  remove(jobId: string, elsewhere?: DeviceNumbers): Promise<Removal>;
  /** Notes that a backup with these events of the job left the device. */
  markExported(jobId: string, events: DeviceNumbers, at: string): Promise<void>;
  /**
   * Calls back after any commit to the job, in this tab or another; returns how to stop.
   *
   * @param since events of the job as the caller last saw it (`summary.events`): a commit that came
   * in between is told of as well
   */
  watch(jobId: string, changed: () => void, since?: number): () => void;
  /** A small preference of this device, such as the nickname last used; not part of any job. */
  readDevice(name: string): Promise<unknown>;
  writeDevice(name: string, value: unknown): Promise<void>;
  /** Writes a little, reads it back, and says whether that went well. Never throws. */
  probe(): Promise<ProbeResult>;
  health(estimate?: StorageEstimate): Promise<StoreHealth>;
}

/** What a store takes from outside, so that tests decide clock and chance. */
export interface StoreSurroundings {
  now: () => number;
  /** Sixteen random hexadecimal digits. */
  randomHex: () => string;
}
