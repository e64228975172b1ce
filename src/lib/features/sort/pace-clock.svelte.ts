import { type SetAsideReason, palletIds, partOf } from '$lib/journal';
import type { JobState } from '$lib/app';
import {
  type Pace,
  firstMinuteOfDay,
  jobPace,
  minutesOf,
  paceSince,
  sortedMinutesOf
} from '$lib/job';

/** How often the pace is told anew, ms. Not with every slate: its cost grows with the day. */
const EVERY_MS = 10_000;

/** What was sorted today, and the pace of the job, told anew every ten seconds. */
export class PaceClock {
  /** Slates gauged or sorted, and minutes of sorting, today; the pace is the whole job's. */
  today = $state.raw<Pace>({ slates: 0, minutes: 0, perHour: null });
  readonly #job: () => JobState;

  constructor(job: () => JobState) {
    this.#job = job;
  }

  /** Begins to tell the pace; the function returned ends it. */
  start(): () => void {
    this.refresh();
    const timer = setInterval(() => this.refresh(), EVERY_MS);
    return () => clearInterval(timer);
  }

  refresh(): void {
    const from = firstMinuteOfDay(Date.now());
    const { view } = this.#job();
    const { slates } = paceSince(minutesOf(view, from), from);
    const { minutes } = paceSince(sortedMinutesOf(view, from), from);
    this.today = { slates, minutes, perHour: jobPace(view).perHour };
  }

  /** Slates set aside by reason, the whole job. */
  setAside(): Partial<Record<SetAsideReason, number>> {
    const { view } = this.#job();
    const total: Partial<Record<SetAsideReason, number>> = {};
    for (const palletId of palletIds(view)) {
      const { setAside } = partOf(view, `pallet:${palletId}`);
      for (const key of Object.keys(setAside)) {
        const reason = key.split('|')[0] as SetAsideReason;
        total[reason] = (total[reason] ?? 0) + setAside[key];
      }
    }
    return total;
  }
}
