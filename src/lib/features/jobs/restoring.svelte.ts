import type { RestoredJobs } from '$lib/app';
import type { ImportResult } from '$lib/storage';
import { words } from '$lib/text';
import { journalStore } from '$lib/app';

/** What became of a file that was taken in. */
export interface RestoreAnswer {
  readonly isGood: boolean;
  readonly jobId?: string;
  readonly sentences: readonly string[];
}

type TakingIn = typeof import('./take-in.ts');

/** Takes job files in, and asks where a phone was copied. */
export class RestoringState {
  #asked: File | undefined;
  isBusy = $state(false);
  answer = $state.raw<RestoreAnswer>();
  /** Which phone was copied, while the person is asked whether both are to be kept. */
  asksWhich = $state<'' | 'this' | 'other'>('');
  /** Says what the file lacks, while the person is asked whether to make it a job of its own. */
  asksRescue = $state.raw<readonly string[]>();

  /** Takes a file in, or says why not. */
  takeIn(file: File): Promise<void> {
    return this.#work(file, ({ restore }) => restore(file, 'refuse'), true);
  }

  /** Takes the file in once more, beside the entries here that carry the same numbers. */
  async keepBoth(): Promise<void> {
    const file = this.#asked;
    if (file) await this.#work(file, ({ restore }) => restore(file, 'keep-both'));
  }

  /** Takes the file of a damaged job in as a job of its own. */
  async takeAsOwnJob(): Promise<void> {
    const file = this.#asked;
    if (file) await this.#work(file, ({ rescue }) => rescue(file));
  }

  async #work(
    file: File,
    take: (how: TakingIn) => Promise<ImportResult>,
    maySeveral = false
  ): Promise<void> {
    this.answer = undefined;
    this.#asked = undefined;
    this.asksWhich = '';
    this.asksRescue = undefined;
    try {
      await words.load('files'); // the list of jobs opens without them
      this.isBusy = true;
      const how = await import('./take-in.ts');
      const several = maySeveral ? await how.restoreEach(file) : undefined;
      if (several) {
        this.answer = sayRestored(several);
        return;
      }
      const result = await take(how);
      const jobId = result.ok ? result.jobId : undefined;
      await this.#ask(file, result, how);
      this.answer = { isGood: result.ok, jobId, sentences: how.sayRestore(result) };
    } catch (error) {
      this.answer = { isGood: false, sentences: [words.text.common.saveFailed(String(error))] };
    } finally {
      this.isBusy = false;
    }
  }

  /** Asks what is to become of a file that was refused and can be taken in another way. */
  async #ask(file: File, result: ImportResult, { sayWhatIsMissing }: TakingIn): Promise<void> {
    if (result.ok) return;
    if (result.missing) {
      this.#asked = file;
      this.asksRescue = await sayWhatIsMissing(result.missing);
    }
    if (result.copiedDevice === undefined) return;
    this.#asked = file;
    const isThis = result.copiedDevice === (await journalStore().deviceId());
    this.asksWhich = isThis ? 'this' : 'other';
  }
}

/** The most jobs of a file that are told one by one. */
const TOLD = 20;

/** What became of a file of several jobs, in sentences. */
function sayRestored({ taken, added, refused }: RestoredJobs): RestoreAnswer {
  const { files, jobs } = words.text;
  const reasons = refused.slice(0, TOLD).map(({ name, result }, at) => {
    const reason = result.ok ? '' : files.restoreReasons[result.reason];
    return `${name || jobs.jobInFile(at + 1)}: ${reason}`;
  });
  const more = refused.length - reasons.length;
  return {
    isGood: refused.length === 0,
    sentences: [
      jobs.restoredJobs(taken, added),
      ...(refused.length > 0 ? [jobs.notRestored(refused.length)] : []),
      ...new Set(reasons),
      ...(more > 0 ? [jobs.moreJobs(more)] : [])
    ]
  };
}
