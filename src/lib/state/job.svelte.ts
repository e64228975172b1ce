import {
  EMPTY_VIEW,
  type JobView,
  type NewEvent,
  type StoredEvent,
  gradesOf,
  jobName,
  pilesOf,
  settingsOf,
  slopesOf,
  specOf,
  tallyPallets,
  deliveryOf
} from '$lib/journal';
import { type JobSummary, type JournalStore, isQuotaExceeded } from '$lib/storage';
import { journalStore } from './store.ts';

/** Newest events kept at hand for undo and for "last saved". */
const NEWEST = 40;

/** Why an act was not saved, and the act, so that it can be tried again. */
export interface SaveFailure {
  kind: 'disk-full' | 'other';
  detail: string;
  acts: readonly NewEvent[];
  sorter: string;
}

/**
 * One open job: its view, and the commands that append to its journal. What `view` shows is
 * committed; a failed append leaves the view as it was and `failure` set until a retry succeeds.
 */
export class JobState {
  readonly jobId: string;
  readonly #store: JournalStore;
  #stopWatching: (() => void) | undefined;

  status = $state<'opening' | 'open' | 'missing' | 'broken'>('opening');
  view = $state.raw<JobView>(EMPTY_VIEW);
  summary = $state.raw<JobSummary>();
  /** Newest first. */
  newest = $state.raw<StoredEvent[]>([]);
  failure = $state.raw<SaveFailure>();
  problem = $state('');

  readonly name = $derived(jobName(this.view));
  readonly settings = $derived(settingsOf(this.view));
  readonly spec = $derived(specOf(this.view));
  readonly delivery = $derived(deliveryOf(this.view));
  readonly grades = $derived(gradesOf(this.view));
  readonly piles = $derived(pilesOf(this.view));
  readonly slopes = $derived(slopesOf(this.view));
  readonly pallets = $derived(tallyPallets(this.view));

  constructor(jobId: string, store: JournalStore = journalStore()) {
    this.jobId = jobId;
    this.#store = store;
  }

  /** Loads the view and follows other tabs; call once. */
  async open(): Promise<void> {
    try {
      await this.#load();
      this.#stopWatching = this.#store.watch(this.jobId, () => void this.#loadIfBehind());
    } catch (error) {
      this.status = 'broken';
      this.problem = String(error);
    }
  }

  close(): void {
    this.#stopWatching?.();
  }

  /**
   * Appends one act, one event or several that belong together. Resolves to the stored events once
   * they are committed, or to undefined when they were not saved (see `failure`).
   */
  async act(acts: NewEvent | readonly NewEvent[], sorter = ''): Promise<StoredEvent[] | undefined> {
    const list: readonly NewEvent[] = Array.isArray(acts) ? acts : [acts as NewEvent];
    try {
      const appended = await this.#store.append(
        this.jobId,
        $state.snapshot(list) as NewEvent[],
        sorter
      );
      this.view = appended.view;
      this.summary = appended.summary;
      this.newest = [...appended.events].reverse().concat(this.newest).slice(0, NEWEST);
      this.failure = undefined;
      this.status = 'open';
      return appended.events;
    } catch (error) {
      const kind = isQuotaExceeded(error) ? 'disk-full' : 'other';
      this.failure = { kind, detail: String(error), acts: list, sorter };
      return undefined;
    }
  }

  /** Tries the act that was not saved once more. */
  async retry(): Promise<StoredEvent[] | undefined> {
    const failed = this.failure;
    return failed && this.act(failed.acts, failed.sorter);
  }

  /** Takes an event back by a new event that names it. */
  undo(eventId: string): Promise<StoredEvent[] | undefined> {
    return this.act({ type: 'entryVoided', body: { voids: eventId } });
  }

  async #load(): Promise<void> {
    const opened = await this.#store.open(this.jobId);
    if (!opened) {
      this.status = 'missing';
      return;
    }
    this.newest = await this.#store.newest(this.jobId, NEWEST);
    this.view = opened.view;
    this.summary = opened.summary;
    this.status = 'open';
  }

  async #loadIfBehind(): Promise<void> {
    const opened = await this.#store.open(this.jobId);
    if (!opened) return;
    const isBehind = opened.summary.events > (this.summary?.events ?? 0);
    this.summary = opened.summary;
    if (!isBehind) return;
    this.view = opened.view;
    this.newest = await this.#store.newest(this.jobId, NEWEST);
  }
}
