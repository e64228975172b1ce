import type { JobSummary } from '$lib/storage';
import type { NewEvent } from '$lib/journal';
import { settingsOf, slopesOf, specOf } from '$lib/job';
import { journalStore, newJobId } from '$lib/app';
import { words } from '$lib/text';
import type { JobsState } from './jobs.svelte.ts';

export type MenuTask = 'rename' | 'copyRoof' | 'remove';

/** What is done with one job of the list: its name, a copy of its roof, its removal. */
export class JobMenuState {
  readonly #list: JobsState;
  readonly #job: JobSummary;
  task = $state<MenuTask>();
  /** What stands in the field of the task. */
  typed = $state('');
  /** What is wrong with it and what to do. */
  problem = $state('');
  /** Why the job cannot be removed; it leads to the backup. */
  refusal = $state('');
  isBusy = $state(false);

  constructor(list: JobsState, job: JobSummary) {
    this.#list = list;
    this.#job = job;
  }

  begin(task: MenuTask): void {
    this.task = task;
    this.typed = '';
    this.problem = '';
    this.refusal = '';
    if (task === 'rename') this.typed = this.#job.name;
    if (task === 'copyRoof') this.typed = words.text.jobMenu.copyName(this.#job.name);
  }

  cancel(): void {
    this.task = undefined;
  }

  /** Gives the job another name, as an entry like any other; whether that was done. */
  async rename(): Promise<boolean> {
    const name = this.typed.trim();
    const { jobId } = this.#job;
    if (name !== this.#job.name && !this.#isNameFree(name, jobId)) return false;
    const isDone = await this.#try(async () => {
      if (name !== this.#job.name)
        await journalStore().append(jobId, [{ type: 'jobRenamed', body: { name } }]);
      await this.#list.tell(words.text.jobMenu.renamed(name));
      return true;
    });
    return isDone ?? false;
  }

  /** Makes a job with this one's slopes and slate size; gives its id. */
  async copyRoof(): Promise<string | undefined> {
    const name = this.typed.trim();
    if (!this.#isNameFree(name)) return undefined;
    return this.#try(async () => {
      const view = (await journalStore().open(this.#job.jobId))?.view;
      const spec = view && specOf(view);
      const slopes = view ? slopesOf(view) : [];
      if (!view || (!spec && slopes.length === 0)) {
        this.problem = words.text.jobMenu.nothingToCopy;
        return undefined;
      }
      const { lengthUnit } = settingsOf(view);
      const acts: NewEvent[] = [
        { type: 'jobOpened', body: { name } },
        { type: 'jobSettingsSet', body: { lengthUnit } },
        ...(spec ? [{ type: 'slateSpecSet', body: spec } as const] : []),
        ...slopes.map((body) => ({ type: 'slopeSet', body }) as const)
      ];
      const jobId = newJobId();
      await journalStore().append(jobId, acts);
      return jobId;
    });
  }

  /** Removes the job from this device, once its name was typed and nothing of it is only here. */
  async remove(): Promise<boolean> {
    const { name, jobId } = this.#job;
    this.refusal = '';
    if (!this.#list.isSameName(this.typed, name)) {
      this.problem = words.text.jobMenu.wrongName(name);
      return false;
    }
    const isGone = await this.#try(async () => {
      const text = words.text.jobMenu;
      const { removeFromDevice } = await import('./removing.ts');
      const answer = await removeFromDevice(jobId);
      if (answer.kind === 'only-here') this.refusal = text.onlyHere(answer.entries);
      else if (answer.kind === 'keeper') this.refusal = text.keeperOnly(answer.entries);
      else if (answer.kind === 'open-elsewhere') this.problem = text.openElsewhere;
      else {
        // One that comes back is not to come back out of sight.
        await this.#list.bringBack(jobId);
        await this.#list.tell(text.removed(name));
        return true;
      }
      return false;
    });
    return isGone ?? false;
  }

  #isNameFree(name: string, exceptFor?: string): boolean {
    this.problem = this.#list.nameProblem(name, exceptFor);
    return this.problem === '';
  }

  async #try<T>(work: () => Promise<T>): Promise<T | undefined> {
    if (this.isBusy) return undefined;
    this.isBusy = true;
    this.problem = '';
    try {
      return await work();
    } catch (error) {
      this.problem = words.text.jobMenu.failed(String(error));
      return undefined;
    } finally {
      this.isBusy = false;
    }
  }
}
