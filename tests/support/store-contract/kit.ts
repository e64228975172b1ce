import {
  type JobView,
  type NewEvent,
  type StoredEvent,
  canonicalJson,
  canonicalView
} from '$lib/journal';
import { readJobFile } from '../../../src/lib/storage/job-file.ts';
import { writeJobFile } from '../../../src/lib/storage/job-file-write.ts';
import type { Copies, JournalStore, StoreSurroundings } from '../../../src/lib/storage/store.ts';

/** Takes rows away past the store, or spoils them, as a failing disk or a curious hand may. */
export interface Damage {
  loseEvents(jobId: string, ids: readonly string[]): Promise<void>;
  /** Leaves the event's row without its body. */
  spoilEvent(jobId: string, id: string): Promise<void>;
  /** Loses one part of the view, or the row of the job. */
  lose(what: 'part' | 'row', jobId: string): Promise<void>;
}

/** One device: stores opened on it share their data, as tabs of one browser do. */
export interface ContractDevice {
  open(surroundings?: Partial<StoreSurroundings>): JournalStore;
  /** Clears all data under the open stores, as a browser does that needs the room. */
  clear(): Promise<void>;
  /** Another device set up from a copy of this one. */
  copy(): Promise<ContractDevice>;
  readonly damage: Damage;
}

/** One promise of the contract. Knows no test runner, so it runs in Node and on a page alike. */
export interface ContractCase {
  readonly title: string;
  /** Resolves when the promise is kept, throws when it is not. */
  run(newDevice: () => ContractDevice): Promise<void>;
}

export const JOB = '018f0000-0000-7000-8000-00000000000a';
export const opened: NewEvent = { type: 'jobOpened', body: { name: 'Barn' } };
export const gauged = (hundredths: number, palletId = 'p1'): NewEvent => ({
  type: 'slateGauged',
  body: { palletId, points: [hundredths], gradesId: null, pile: null }
});
export const undo = (voids: string): NewEvent => ({ type: 'entryVoided', body: { voids } });

/** Acts of many kinds, some undone. */
export async function aDayOfWork(store: JournalStore): Promise<void> {
  await store.append(JOB, [opened]);
  await store.append(JOB, [
    { type: 'palletAdded', body: { palletId: 'p1', label: 'A', slates: 700 } },
    { type: 'palletAdded', body: { palletId: 'p2', label: 'B', slates: 700 } }
  ]);
  for (let slate = 0; slate < 12; slate++) {
    const { events } = await store.append(JOB, [gauged(500 + slate * 7, 'p1')], 'Wren');
    if (slate % 4 === 0) await store.append(JOB, [undo(events[0].id)], 'Wren');
  }
  const grades = await store.append(JOB, [
    { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [5.4, 5.2] } }
  ]);
  const gradesId = grades.events[0].id;
  await store.append(
    JOB,
    [
      { type: 'slateTapped', body: { palletId: 'p2', pile: 1, gradesId } },
      {
        type: 'slateChecked',
        body: { palletId: 'p2', of: 'tap', pile: 1, gradesId, points: [560] }
      }
    ],
    'Finch'
  );
  const { events } = await store.append(JOB, [
    { type: 'palletAdded', body: { palletId: 'p3', label: 'mistake', slates: 1 } }
  ]);
  await store.append(JOB, [undo(events[0].id)]);
}

export async function give(from: JournalStore, to: JournalStore, copies?: Copies) {
  const file = await writeJobFile(from, JOB);
  if (!file) throw new Error('no job to give');
  return readJobFile(to, file.blob, copies);
}

export async function all(store: JournalStore, jobId = JOB): Promise<StoredEvent[]> {
  const events: StoredEvent[] = [];
  for await (const batch of store.events(jobId)) events.push(...batch);
  return events;
}

/** All of a job that anyone can see, as text. */
export async function pictureOf(store: JournalStore): Promise<string> {
  const job = await store.open(JOB);
  return `${bytesOf(job?.view)}${canonicalJson([job?.summary ?? null, await all(store)])}`;
}

/** The same without what a device notes of backups, in which devices differ. */
export async function jobIn(store: JournalStore): Promise<string> {
  const job = await store.open(JOB);
  const { events, lastAt, name } = job?.summary ?? {};
  return `${bytesOf(job?.view)}${canonicalJson([events ?? 0, lastAt ?? '', name ?? '', await all(store)])}`;
}

export function bytesOf(view: JobView | undefined): string {
  return view ? canonicalView(view) : 'no view';
}

export function summaryIn<T extends { jobId: string }>(jobs: readonly T[]): T {
  const summary = jobs.find(({ jobId }) => jobId === JOB);
  if (!summary) throw new Error('the job is not in the list');
  return summary;
}

export function equal(found: unknown, wanted: unknown, what: string): void {
  if (found !== wanted) throw new Error(`${what}: found ${String(found)}, not ${String(wanted)}`);
}

/** Like {@link equal} for long texts, of which it shows where they part. */
export function same(found: string, wanted: string, what: string): void {
  if (found === wanted) return;
  let at = 0;
  while (found[at] === wanted[at]) at++;
  const near = (text: string) => text.slice(Math.max(0, at - 40), at + 60);
  throw new Error(`${what}: found …${near(found)}…, not …${near(wanted)}…`);
}

export async function rejects(work: () => Promise<unknown>, what: string): Promise<void> {
  let isRefused = false;
  await work().catch(() => {
    isRefused = true;
  });
  if (!isRefused) throw new Error(`${what} was taken`);
}

export function pause(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}

/** Tries until it comes true, for at most five seconds. */
export async function until(isTrue: () => Promise<boolean>, what: string): Promise<void> {
  for (let tries = 0; tries < 100; tries++) {
    if (await isTrue()) return;
    await pause(50);
  }
  throw new Error(`waited in vain ${what}`);
}
