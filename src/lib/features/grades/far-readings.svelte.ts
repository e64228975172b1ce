import { type JobState, journalStore } from '$lib/app';
import { type FarReading, farReadings } from '$lib/job';
import { eventOfReading } from './reading-event.ts';

/** The readings that look like slips, and what is done about the worst of them. */
export class FarReadings {
  readonly #job: () => JobState;
  isBusy = $state(false);
  hasFailed = $state(false);
  /** The one left out last, with the undo that took it out. */
  leftOut = $state.raw<FarReading & { readonly undo: string }>();

  readonly all = $derived.by(() => farReadings(this.#job().view));
  readonly slates = $derived(this.all.reduce((sum, { slates }) => sum + slates, 0));

  constructor(job: () => JobState) {
    this.#job = job;
  }

  /** Takes a reading back, by the undo that any entry has. */
  async leaveOut(reading: FarReading): Promise<void> {
    const job = this.#job();
    await this.#act(async () => {
      const entry = await eventOfReading(journalStore(), job.jobId, job.view, reading);
      const undone = entry && (await job.undo(entry));
      if (undone) this.leftOut = { ...reading, undo: undone[0].id };
      return undone !== undefined;
    });
  }

  /** It counts again. */
  async bringBack(undo: string): Promise<void> {
    await this.#act(async () => {
      const undone = await this.#job().undo(undo);
      if (undone) this.leftOut = undefined;
      return undone !== undefined;
    });
  }

  async #act(act: () => Promise<boolean>): Promise<void> {
    if (this.isBusy) return;
    this.isBusy = true;
    this.hasFailed = !(await act().catch(() => false));
    this.isBusy = false;
  }
}
