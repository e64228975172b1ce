import { coursesLaidTwice } from '$lib/job';
import type { StoredEvent } from '$lib/journal';
import type {
  CrewOutcome,
  CrewReport,
  CrewRecord,
  CrewWarning,
  Exchange,
  LiveLine
} from '$lib/sync';
import { crewStanding } from './crew-holding.ts';
import { forgetCrew, keepCrew, recallCrew } from './crew-memory.ts';
import { preferences } from '../preferences.svelte.ts';
import { pageTimer } from '../page-timer.ts';
import { journalStore } from '../store.ts';
import { type CrewNews, NewsDesk } from './crew-news.ts';
import { fetchNow } from './fetch-now.ts';
import { sayNews, saySharing } from './say-sharing.ts';
import type { JobState } from '../job.svelte.ts';

/** Acts are gathered so long before they are sent. */
const GATHER_MS = 1_000;
/** A hub that is full or asks to wait is asked again after this. */
const AGAIN_MS = 30_000;

/** What one page tells the others of the same job. */
interface Told {
  readonly outcome: CrewOutcome;
  readonly notShared: number;
  readonly warnings: readonly CrewWarning[];
  readonly sharedAt: number;
}

/** What goes between the pages of one device. */
type BetweenPages =
  Told | { readonly news: readonly CrewNews[] } | { readonly keepBoth: string } | 'how';

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
  /** Whether the hub has other entries under this device's numbers. */
  readonly isCopied = $derived(
    this.warnings.some(
      (one) =>
        one.kind === 'held' && one.why === 'same-number' && one.device === this.state?.link.device
    )
  );
  /** Whether a hub holds the job: what is not there yet goes out by itself. */
  readonly isHeld = $derived(
    this.status === 'linked' &&
      this.outcome !== undefined &&
      this.outcome !== 'removed' &&
      !this.isCopied
  );
  /** When hub and device last agreed, ms since 1970; 0 for never. */
  sharedAt = $state(0);
  state = $state.raw<CrewRecord>();
  /** What the others did of late, for a minute. */
  news = $state.raw<readonly CrewNews[]>([]);

  #stop = new AbortController();
  #line: LiveLine | undefined;
  #exchange: Exchange | undefined;
  #running: Promise<void> | undefined;
  #isAgain = false;
  #gathering: ReturnType<typeof setTimeout> | undefined;
  #channel: BroadcastChannel | undefined;
  readonly #newsDesk = new NewsDesk({
    own: () => this.state?.link.device ?? '',
    timer: pageTimer,
    say: (news) => {
      this.news = news;
      this.#channel?.postMessage({ news });
    }
  });

  /** How it stands, in one line for every screen. */
  readonly line = $derived(saySharing(this));

  constructor(jobId: string) {
    this.jobId = jobId;
  }

  /** What the others did of late, in words. */
  sayNews(job: JobState): string {
    return sayNews(this.news, job);
  }

  /** Looks whether the job is shared, and goes on sharing it. */
  async open(): Promise<void> {
    const state = await recallCrew(this.jobId).catch(() => undefined);
    if (this.#stop.signal.aborted) return;
    this.state = state;
    this.status = state ? 'linked' : 'alone';
    if (!state) return;
    // What the hub acknowledged so far holds until it is asked.
    if (state.isRemoved) this.outcome = 'removed';
    const known = await crewStanding(this.jobId).catch(() => undefined);
    if (this.#stop.signal.aborted) return;
    this.notShared = known?.notShared ?? 0;
    this.#channel = new BroadcastChannel(`evencourse crew ${this.jobId}`);
    this.#channel.onmessage = ({ data }: MessageEvent<BetweenPages>) => {
      if (data !== 'how') {
        if ('news' in data) this.news = data.news;
        else if ('keepBoth' in data) void (this.#exchange && this.keepBoth(data.keepBoth));
        else this.#show(data);
      } else if (this.#exchange && this.outcome) this.#tell();
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
    this.#newsDesk.stop();
  }

  /** Begins to share a job that was just linked. */
  async link(state: CrewRecord): Promise<void> {
    await keepCrew(state);
    this.close();
    this.#stop = new AbortController();
    this.#exchange = undefined;
    void this.open();
  }

  /** Stops sharing; the job stays here as it is. The hub lets this device in no more, if it hears. */
  async leave(): Promise<void> {
    this.close();
    const link = this.state?.link;
    await forgetCrew(this.jobId);
    this.state = undefined;
    this.status = 'alone';
    if (!link) return;
    const { leaveCrew } = await import('$lib/sync');
    await leaveCrew(fetchNow, link);
  }

  /** Gives and takes now. */
  async shareNow(): Promise<void> {
    this.#line?.hurry();
    this.#isAgain = true;
    this.#running ??= this.#runAll().finally(() => (this.#running = undefined));
    await this.#running;
  }

  /** Keeps both histories of a device that was copied. Of several pages, the one at work does it. */
  async keepBoth(device: string): Promise<void> {
    if (!this.#exchange) {
      this.#channel?.postMessage({ keepBoth: device });
      return;
    }
    await this.#running;
    const { keepBothRuns } = await import('$lib/sync');
    try {
      const parts = { journal: journalStore(), fetch: fetchNow, name: preferences.values.nickname };
      const kept = await keepBothRuns(this.#exchange.state, device, parts);
      if (!kept) return;
      await keepCrew(kept);
      this.state = kept;
      this.#exchange = undefined;
    } catch (error) {
      if (!isOfHub(error)) throw error;
      this.outcome = 'no-answer';
    }
    await this.shareNow();
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
      onRemoved: () => {
        this.outcome = 'removed';
        if (this.state) void keepCrew({ ...this.state, isRemoved: true });
      },
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
        const exchange = this.#exchange ?? (await this.#newExchange());
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
    const { exchangeAs } = await import('$lib/sync');
    const store = journalStore();
    const device = await store.deviceId();
    const joiner = { device, name: preferences.values.nickname };
    const exchange = await exchangeAs(fetchNow, this.state, joiner, {
      journal: {
        numbers: (jobId) => store.numbers(jobId),
        newest: (jobId, limit) => store.newest(jobId, limit),
        events: (jobId) => store.events(jobId),
        photo: (photoId) => store.photo(photoId),
        merge: async (events, photos) => {
          const all = [...events];
          const result = await store.merge(all, photos);
          if (result.ok && result.added > 0) await this.#note(all);
          return result;
        }
      },
      now: () => Date.now(),
      save: keepCrew
    });
    // Under an id that is no longer this device's, it is tried again next time.
    if (exchange.state.link.device === device) this.#exchange = exchange;
    return exchange;
  }

  #take({ outcome, notShared, warnings }: CrewReport): void {
    const sharedAt = outcome === 'shared' ? Date.now() : this.sharedAt;
    this.#show({ outcome, notShared, warnings, sharedAt });
    this.#tell();
    // A photo may reach the hub after its entry.
    const isPhotoWanted = (this.#exchange?.state.photosWanted.length ?? 0) > 0;
    if (['wait', 'hub-full', 'device-full'].includes(outcome) || isPhotoWanted)
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

  /** Notes what came in, and whether a course was entered that is laid here already. */
  async #note(events: readonly StoredEvent[]): Promise<void> {
    const laid = events.filter(({ type }) => type === 'courseLaid');
    const view = laid.length > 0 ? (await journalStore().open(this.jobId))?.view : undefined;
    const twice = view ? coursesLaidTwice(view) : [];
    const laidToo = laid.flatMap(({ deviceId, sorter: name, body }) => {
      const { slopeId, course } = body as { slopeId: string; course: number };
      const isTwice = twice.some((one) => one.slopeId === slopeId && one.course === course);
      const isOwn = deviceId === this.state?.link.device;
      return isTwice && !isOwn ? [{ kind: 'laid-too', name, slopeId, course } as const] : [];
    });
    this.#newsDesk.take(events, laidToo);
  }
}

/** Whether a hub gave no answer, or said no. */
function isOfHub(error: unknown): boolean {
  return error instanceof Error && (error.name === 'HubSilent' || error.name === 'HubRefused');
}
