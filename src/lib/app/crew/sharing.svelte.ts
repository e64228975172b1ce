import type { StoredEvent } from '$lib/journal';
import type {
  CrewOutcome,
  CrewReport,
  CrewRecord,
  CrewWarning,
  Exchange,
  LiveLine
} from '$lib/sync';
import { forgetCrew, keepCrew, recallCrew } from './crew-memory.ts';
import { preferences } from '../preferences.svelte.ts';
import { journalStore } from '../store.ts';
import { fetchNow } from './fetch-now.ts';

/** Acts are gathered so long before they are sent. */
const GATHER_MS = 1_000;
/** A hub that is full or asks to wait is asked again after this. */
const AGAIN_MS = 30_000;

/** What came in from others since the page was opened. */
export interface CrewNews {
  /** By device, slates that it put on a pile, by pallet. */
  readonly sorted: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly entries: number;
}

/** What one page tells the others of the same job. */
interface Told {
  readonly outcome: CrewOutcome;
  readonly notShared: number;
  readonly warnings: readonly CrewWarning[];
  readonly sharedAt: number;
}

/**
 * How a job is shared with the crew: it gives the hub what is new here and takes what is new there,
 * as long as the job is open. Of several pages of one device, one does the work and tells the rest.
 * A job without a crew makes no request and loads none of it.
 */
export class SharingState {
  readonly jobId: string;
  status = $state<'unknown' | 'alone' | 'linked'>('unknown');
  outcome = $state<CrewOutcome>();
  /** Entries of this device that the hub does not have. */
  notShared = $state(0);
  warnings = $state.raw<readonly CrewWarning[]>([]);
  /** When hub and device last agreed, ms since 1970; 0 for never. */
  sharedAt = $state(0);
  state = $state.raw<CrewRecord>();
  news = $state.raw<CrewNews>({ sorted: {}, entries: 0 });

  #stop = new AbortController();
  #line: LiveLine | undefined;
  #exchange: Exchange | undefined;
  #running: Promise<void> | undefined;
  #isAgain = false;
  #gathering: ReturnType<typeof setTimeout> | undefined;
  #channel: BroadcastChannel | undefined;

  constructor(jobId: string) {
    this.jobId = jobId;
  }

  /** Looks whether the job is shared, and goes on sharing it. */
  async open(): Promise<void> {
    const state = await recallCrew(this.jobId).catch(() => undefined);
    if (this.#stop.signal.aborted) return;
    this.state = state;
    this.status = state ? 'linked' : 'alone';
    if (!state) return;
    this.#channel = new BroadcastChannel(`evencourse crew ${this.jobId}`);
    this.#channel.onmessage = ({ data }: MessageEvent<Told | 'how'>) => {
      if (data !== 'how') this.#show(data);
      else if (this.#exchange && this.outcome) this.#tell();
    };
    this.#channel.postMessage('how');
    const { signal } = this.#stop;
    // One page a device; another takes over when this one goes.
    await navigator.locks
      .request(`evencourse crew ${this.jobId}`, { signal }, () => this.#share(state))
      .catch(() => undefined);
  }

  close(): void {
    this.#stop.abort();
    this.#line?.stop();
    this.#channel?.close();
    clearTimeout(this.#gathering);
  }

  /** Begins to share a job that was just linked. */
  async link(state: CrewRecord): Promise<void> {
    await keepCrew(state);
    this.close();
    this.#stop = new AbortController();
    this.#exchange = undefined;
    void this.open();
  }

  /** Stops sharing; the job stays here as it is. */
  async leave(): Promise<void> {
    this.close();
    await forgetCrew(this.jobId);
    this.state = undefined;
    this.status = 'alone';
  }

  /** Gives and takes now. */
  async shareNow(): Promise<void> {
    this.#line?.hurry();
    this.#isAgain = true;
    this.#running ??= this.#runAll().finally(() => (this.#running = undefined));
    await this.#running;
  }

  async #share(kept: CrewRecord): Promise<void> {
    const { LiveLine, HubClient } = await import('$lib/sync');
    const { signal } = this.#stop;
    if (signal.aborted) return;
    this.state = (await recallCrew(this.jobId)) ?? kept;
    const store = journalStore();
    const soon = (): void => {
      this.#gathering ??= setTimeout(() => {
        this.#gathering = undefined;
        void this.shareNow();
      }, GATHER_MS);
    };
    const unwatch = store.watch(this.jobId, soon);
    for (const type of ['online', 'pageshow'] as const)
      addEventListener(type, () => void this.shareNow(), { signal });
    const onShown = (): void => {
      if (document.visibilityState === 'visible') void this.shareNow();
    };
    document.addEventListener('visibilitychange', onShown, { signal });
    await this.shareNow();
    // Whoever left the job meanwhile must not leave a line behind that keeps the lock.
    if (signal.aborted) return unwatch();
    this.#line = new LiveLine({
      hub: new HubClient(fetchNow, this.state.link),
      onNews: () => void this.shareNow(),
      onRemoved: () => (this.outcome = 'removed'),
      after: (ms, done) => {
        const timer = setTimeout(done, ms);
        return () => clearTimeout(timer);
      },
      random: Math.random
    });
    await this.#line.run();
    unwatch();
  }

  async #runAll(): Promise<void> {
    while (this.#isAgain && !this.#stop.signal.aborted) {
      this.#isAgain = false;
      try {
        const exchange = (this.#exchange ??= await this.#newExchange());
        if (!exchange) return;
        this.#take(await exchange.run());
        this.state = exchange.state;
      } catch (error) {
        if (!isOfHub(error)) throw error;
        this.outcome = 'no-answer';
      }
    }
  }

  async #newExchange(): Promise<Exchange | undefined> {
    if (!this.state) return undefined;
    const { Exchange, HubClient, deriveKeys, moveIn } = await import('$lib/sync');
    const store = journalStore();
    let state = this.state;
    const device = await store.deviceId();
    if (device !== state.link.device) {
      // The phone was copied and took an id of its own: it is let in under that.
      state = await moveIn(fetchNow, state, { device, name: preferences.values.nickname });
      await keepCrew(state);
    }
    const { link } = state;
    return new Exchange(state, {
      journal: {
        numbers: (jobId) => store.numbers(jobId),
        newest: (jobId, limit) => store.newest(jobId, limit),
        events: (jobId) => store.events(jobId),
        photo: (photoId) => store.photo(photoId),
        merge: async (events, photos) => {
          const all = [...events];
          const result = await store.merge(all, photos);
          if (result.ok && result.added > 0) this.#note(all, device);
          return result;
        }
      },
      hub: new HubClient(fetchNow, link),
      keys: await deriveKeys(link.jobKey, link.space),
      now: () => Date.now(),
      save: keepCrew
    });
  }

  #take({ outcome, notShared, warnings }: CrewReport): void {
    const sharedAt = outcome === 'shared' ? Date.now() : this.sharedAt;
    this.#show({ outcome, notShared, warnings, sharedAt });
    this.#tell();
    if (['wait', 'hub-full', 'device-full'].includes(outcome))
      setTimeout(() => void this.shareNow(), AGAIN_MS);
  }

  /** Tells the other pages of this device how the sharing stands. */
  #tell(): void {
    const { outcome, notShared, sharedAt } = this;
    const told = { outcome, notShared, sharedAt, warnings: [...this.warnings] };
    if (outcome) this.#channel?.postMessage(told);
  }

  #show({ outcome, notShared, warnings, sharedAt }: Told): void {
    this.outcome = outcome;
    this.notShared = notShared;
    this.warnings = warnings;
    this.sharedAt = sharedAt;
  }

  /** Notes who sorted how many from which pallet. */
  #note(events: readonly StoredEvent[], own: string): void {
    const sorted: Record<string, Record<string, number>> = { ...this.news.sorted };
    let entries = 0;
    for (const { type, deviceId, body } of events) {
      if (deviceId === own) continue;
      entries++;
      const { palletId, pile } = body as { palletId?: unknown; pile?: unknown };
      const isSorted = type === 'slateTapped' || (type === 'slateGauged' && pile !== null);
      if (!isSorted || typeof palletId !== 'string') continue;
      const ofDevice = { ...sorted[deviceId] };
      ofDevice[palletId] = (ofDevice[palletId] ?? 0) + 1;
      sorted[deviceId] = ofDevice;
    }
    this.news = { sorted, entries: this.news.entries + entries };
  }
}

/** Whether a hub gave no answer, or said no. */
function isOfHub(error: unknown): boolean {
  return error instanceof Error && (error.name === 'HubSilent' || error.name === 'HubRefused');
}
