import type { Browser, Page } from '@playwright/test';

/** One task of a page's main thread. */
export interface Task {
  /** From when the page was asked for, ms. */
  readonly startMs: number;
  /** As a clock on the wall tells it, ms: on a busy machine other programs are in it. */
  readonly ms: number;
  /** What of it the processor worked for the page, slowed as it is, ms. */
  readonly processorMs: number;
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Microseconds. */
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
}

const TASK = 'RunTask';
const CATEGORIES = ['devtools.timeline', 'disabled-by-default-devtools.timeline'];

/** Begins to record what a page's main thread does; the function returned ends it and tells its tasks. */
export async function recordTasks(browser: Browser, page: Page): Promise<() => Promise<Task[]>> {
  await browser.startTracing(page, { categories: CATEGORIES });
  return async () => tasksOf(JSON.parse((await browser.stopTracing()).toString('utf8')));
}

/** The tasks of the page that did most, in the order they were run. */
function tasksOf({ traceEvents }: { traceEvents: readonly TraceEvent[] }): Task[] {
  const threads = new Map<string, TraceEvent[]>();
  const mainThreads = new Set(
    traceEvents
      .filter(({ name, ph }) => ph === 'X' && name === 'UpdateLayoutTree')
      .map(({ pid, tid }) => `${pid}|${tid}`)
  );
  for (const event of traceEvents) {
    const thread = `${event.pid}|${event.tid}`;
    if (event.ph !== 'X' || event.name !== TASK || !mainThreads.has(thread)) continue;
    threads.set(thread, [...(threads.get(thread) ?? []), event]);
  }
  const busy = (events: readonly TraceEvent[]): number =>
    events.reduce((sum, { dur = 0 }) => sum + dur, 0);
  const own = [...threads.values()].reduce<TraceEvent[]>(
    (most, events) => (busy(events) > busy(most) ? events : most),
    []
  );
  const first = own.reduce((least, { ts }) => Math.min(least, ts), Infinity);
  return own
    .map(({ ts, dur = 0, tdur = dur }) => ({
      startMs: (ts - first) / 1000,
      ms: dur / 1000,
      processorMs: tdur / 1000
    }))
    .sort((one, other) => one.startMs - other.startMs);
}
