import { EMPTY_VIEW, type JobView, type NewEvent, type StoredEvent, palletIds } from '$lib/journal';
import {
  gradesOf,
  jobName,
  pileNumbersOf,
  pilesOf,
  settingsOf,
  sizesOf,
  slopesOf,
  specOf,
  tallyPallet,
  tallyPallets,
  deliveryOf
} from '$lib/job';
import {
  type Appended,
  type JobSummary,
  type JournalStore,
  isDeviceChanged,
  isQuotaExceeded,
  removedName
} from '$lib/storage';
import { inTurn } from './in-turn.ts';
import { keepData } from './keep-data.ts';
import { journalStore } from './store.ts';

type Several = typeof import('$lib/job/sizes');

/** Newest events kept at hand for undo and for "last saved". */
const NEWEST = 40;

/** One act: an event or several that belong together. */
export type Act = NewEvent | readonly NewEvent[];

interface UnsavedAct {
  readonly act: Act;
  readonly sorter: string;
}

/** Why acts were not saved, and the acts, oldest first, so that they can be tried again. */
export interface SaveFailure {
  kind: 'disk-full' | 'data-cleared' | 'other';
  detail: string;
  unsaved: readonly UnsavedAct[];
}

/**
 * One open job: its view, and the commands that append to its journal. What `view` shows is
 * committed; a failed append leaves the view as it was and `failure` set until a retry succeeds.
 */
export class JobState {
  readonly jobId: string;
  readonly #store: JournalStore;
  #stopWatching: (() => void) | undefined;
  #isRetrying = false;

  status = $state<'opening' | 'open' | 'missing' | 'broken'>('opening');
  /** The job as it is stored; `view` is what a screen works on. */
  whole = $state.raw<JobView>(EMPTY_VIEW);
  /** What several sizes need; loaded for a job that has them, before it is shown. */
  #several = $state.raw<Several>();
  /** The size chosen last on this device. */
  chosenSize = $state<string>();
  summary = $state.raw<JobSummary>();
  /** Newest first. */
  newest = $state.raw<StoredEvent[]>([]);
  failure = $state.raw<SaveFailure>();
  problem = $state('');

  /** Sizes of slate where there are several, or random widths; a job of one size has none. */
  readonly sizes = $derived(sizesOf(this.whole));
  /** The size in hand: what is sorted, graded, planned and laid now. */
  readonly sizeId = $derived(
    this.sizes.find(({ sizeId }) => sizeId === this.chosenSize)?.sizeId ?? this.sizes[0]?.sizeId
  );
  /** The job; of several sizes, seen for the one in hand. */
  readonly view: JobView = $derived.by(() => this.viewOf(this.sizeId));
  readonly name = $derived(jobName(this.view));
  readonly settings = $derived(settingsOf(this.view));
  readonly spec = $derived(specOf(this.view));
  readonly delivery = $derived(deliveryOf(this.view));
  readonly grades = $derived(gradesOf(this.view));
  readonly piles = $derived(pilesOf(this.view));
  /** The numbers of the piles that slates are sorted on to, thickest first. */
  readonly pileNumbers = $derived(pileNumbersOf(this.view));
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
      const seen = this.summary?.events;
      this.#stopWatching = this.#store.watch(this.jobId, () => void this.#loadIfBehind(), seen);
    } catch (error) {
      this.status = 'broken';
      this.problem = String(error);
    }
  }

  close(): void {
    this.#stopWatching?.();
  }

  /** The job seen for a size; whole where it has none. */
  viewOf(sizeId: string | undefined): JobView {
    const { whole } = this;
    return sizeId === undefined || !this.#several ? whole : this.#several.viewOfSize(whole, sizeId);
  }

  /** What several sizes ask, loaded with them; undefined in a job of one size. */
  get several(): Several | undefined {
    return this.sizes.length > 0 ? this.#several : undefined;
  }

  /**
   * Appends one act, one event or several that belong together. Resolves to the stored events once
   * they are committed, or to undefined when they were not saved (see `failure`).
   */
  act(act: Act, sorter = ''): Promise<StoredEvent[] | undefined> {
    return this.#save({ act, sorter });
  }

  /** Tries the acts that were not saved once more, oldest first, until one fails again. */
  async retry(): Promise<StoredEvent[] | undefined> {
    if (this.#isRetrying) return undefined;
    this.#isRetrying = true;
    try {
      let events: StoredEvent[] | undefined;
      for (const unsaved of this.failure?.unsaved ?? []) {
        events = await this.#save(unsaved);
        if (!events) return undefined;
      }
      return events;
    } finally {
      this.#isRetrying = false;
    }
  }

  /** Whether an act was handed over and is not saved. */
  isUnsaved(act: Act): boolean {
    return this.failure?.unsaved.some((unsaved) => unsaved.act === act) ?? false;
  }

  /** Takes an event back by a new event that names it. */
  undo(eventId: string): Promise<StoredEvent[] | undefined> {
    return this.act({ type: 'entryVoided', body: { voids: eventId } });
  }

  async #save(unsaved: UnsavedAct): Promise<StoredEvent[] | undefined> {
    const given = [unsaved.act].flat() as readonly NewEvent[];
    const list =
      this.sizeId !== undefined && this.#several
        ? this.#several.actOfSize(this.whole, this.sizeId, given)
        : given;
    try {
      const appended = await this.#store.append(
        this.jobId,
        $state.snapshot(list) as NewEvent[],
        unsaved.sorter
      );
      const waits = this.#readyFor(appended.view);
      if (waits) await waits;
      this.#show(appended);
      void keepData();
      const rest = this.failure?.unsaved.filter((other) => other !== unsaved) ?? [];
      this.failure =
        this.failure && rest.length > 0 ? { ...this.failure, unsaved: rest } : undefined;
      return appended.events;
    } catch (error) {
      const waiting = this.failure?.unsaved ?? [];
      const isWaiting = waiting.includes(unsaved); // tried in vain once more: it keeps its place
      this.failure = {
        kind: kindOf(error),
        detail: String(error),
        unsaved: isWaiting ? waiting : [...waiting, unsaved]
      };
      return undefined;
    }
  }

  /** Loads what several sizes need, where a view has them. */
  #readyFor(view: JobView): Promise<void> | undefined {
    if (this.#several || sizesOf(view).length === 0) return undefined;
    return import('$lib/job/sizes').then((several) => void (this.#several = several));
  }

  /** Takes over what an act came to, unless another tab's later state is shown already. */
  #show({ view, summary, events }: Appended): void {
    if (summary.events >= (this.summary?.events ?? 0)) {
      this.whole = view;
      this.summary = summary;
    }
    const fresh = events.filter(({ id }) => !this.newest.some((known) => known.id === id));
    this.newest = [...fresh].reverse().concat(this.newest).slice(0, NEWEST);
    this.status = 'open';
  }

  async #load(): Promise<void> {
    const opened = await this.#store.open(this.jobId);
    if (!opened) {
      this.status = 'missing';
      return;
    }
    this.newest = await this.#store.newest(this.jobId, NEWEST);
    await this.#readyFor(opened.view);
    await addUp(opened.view);
    this.whole = opened.view;
    this.summary = opened.summary;
    this.status = 'open';
  }

  async #loadIfBehind(): Promise<void> {
    const opened = await this.#store.open(this.jobId);
    if (!opened) {
      const isRemoved = await this.#store.readDevice(removedName(this.jobId));
      if (isRemoved && !this.failure) this.status = 'missing';
      else this.#noteCleared();
      return;
    }
    const isBehind = opened.summary.events > (this.summary?.events ?? 0);
    this.summary = opened.summary;
    if (!isBehind) return;
    await this.#readyFor(opened.view);
    this.whole = opened.view;
    this.newest = await this.#store.newest(this.jobId, NEWEST);
  }

  /** The job is gone from under the page: what it shows stays, and nothing is saved from here on. */
  #noteCleared(): void {
    if (this.status !== 'open') return;
    const unsaved = this.failure?.unsaved ?? [];
    this.failure = { kind: 'data-cleared', detail: '', unsaved };
  }
}

/** Pallets added up in one task. */
const PALLETS_A_TASK = 20;

/** Adds up the pallets of a view part by part, so that no screen has to do it all at once. */
async function addUp(view: JobView): Promise<void> {
  const ids = palletIds(view);
  const starts = ids.map((_, at) => at).filter((at) => at % PALLETS_A_TASK === 0);
  await inTurn(
    ...starts.map((from) => () => {
      for (const id of ids.slice(from, from + PALLETS_A_TASK)) tallyPallet(view, id);
    })
  );
}

function kindOf(error: unknown): SaveFailure['kind'] {
  if (isQuotaExceeded(error)) return 'disk-full';
  return isDeviceChanged(error) ? 'data-cleared' : 'other';
}
