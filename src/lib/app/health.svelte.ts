import type { JobSummary, ProbeResult, StoreHealth } from '$lib/storage';
import { version } from '../../../package.json';
import { type ReadyBackup, makeBackup, noteBackup, sayWhatIsMissing } from './backup.ts';
import { download, share } from './file-saving.ts';
import { journalStore } from './store.ts';

/** Whether the browser promised to keep the data; undefined when it does not say. */
export type Persistence = 'kept' | 'not-kept' | 'refused' | 'unknown';

/** How this device and its journals are. */
export class HealthState {
  probe = $state.raw<ProbeResult>();
  health = $state.raw<StoreHealth>();
  persistence = $state<Persistence>('unknown');
  jobs = $state.raw<JobSummary[]>([]);
  backups = $state.raw<ReadyBackup[]>([]);
  /** Of a backup that left this device, by its job: whether the device noted it. */
  noted = $state.raw<Readonly<Record<string, boolean>>>({});
  isBusy = $state(false);
  rebuilt = $state.raw<JobSummary>();
  /** What of the rebuilt job is missing, in sentences. */
  missing = $state.raw<readonly string[]>([]);
  /** Jobs of which no backup could be made: why, in sentences. */
  notBackedUp = $state.raw<
    readonly { jobId: string; name: string; sentences: readonly string[] }[]
  >([]);
  problem = $state('');
  readonly version = version;

  /** Checks everything that the page shows. */
  async check(): Promise<void> {
    await this.#work(async () => {
      const store = journalStore();
      this.probe = await store.probe();
      this.persistence = await persistence();
      await store.repair();
      this.health = await store.health(await navigator.storage?.estimate?.());
      this.jobs = await store.jobs();
    });
  }

  /** Asks the browser to keep the data, and shows its answer. */
  async askToPersist(): Promise<void> {
    const isKept = await navigator.storage?.persist?.();
    this.persistence = isKept === undefined ? 'unknown' : isKept ? 'kept' : 'refused';
  }

  async rebuild(jobId: string): Promise<void> {
    await this.#work(async () => {
      const rebuilt = await journalStore().rebuild(jobId);
      this.missing = await sayWhatIsMissing(rebuilt?.missing ?? []);
      this.rebuilt = rebuilt?.summary;
    });
  }

  async exportEverything(): Promise<void> {
    await this.#work(async () => {
      const made: ReadyBackup[] = [];
      const notMade: { jobId: string; name: string; sentences: readonly string[] }[] = [];
      for (const { jobId, name } of this.jobs) {
        const backup = await makeBackup(jobId);
        if (backup?.ok) made.push(backup.backup);
        else if (backup) notMade.push({ jobId, name, sentences: backup.sentences });
      }
      this.backups = made;
      this.noted = {};
      this.notBackedUp = notMade;
    });
  }

  /** Saves or shares a backup, and notes it once it left. */
  async save(backup: ReadyBackup, way: 'download' | 'share'): Promise<void> {
    if (way === 'download') download(backup);
    else if (!(await share(backup))) return;
    const isNoted = await noteBackup(backup);
    this.noted = { ...this.noted, [backup.jobId]: isNoted };
    this.health = await journalStore().health(await navigator.storage?.estimate?.());
  }

  /** Versions and counts for whoever helps; no names, no readings, nothing of a person. */
  diagnostic(): string {
    const lines = {
      version: this.version,
      browser: navigator.userAgent,
      screen: `${screen.width}x${screen.height} at ${devicePixelRatio}`,
      installed: matchMedia('(display-mode: standalone)').matches,
      serviceWorker: !!navigator.serviceWorker?.controller,
      persistence: this.persistence,
      write: this.probe,
      ...this.health
    };
    return JSON.stringify(lines, null, 1);
  }

  async #work(work: () => Promise<void>): Promise<void> {
    this.isBusy = true;
    this.problem = '';
    try {
      await work();
    } catch (error) {
      this.problem = String(error);
    } finally {
      this.isBusy = false;
    }
  }
}

async function persistence(): Promise<Persistence> {
  const isKept = await navigator.storage?.persisted?.();
  return isKept === undefined ? 'unknown' : isKept ? 'kept' : 'not-kept';
}
