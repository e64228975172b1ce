import { Dexie } from 'dexie';
import { type AnyPart, type KeptBranch, type StoredEvent, partOf } from '$lib/journal';
import type { EvencourseDatabase } from './database.ts';
import type { DexieJournal, JobRecord } from './dexie-journal.ts';
import { foldBatch } from './fold-batch.ts';
import { type JobRow, withEvents, withFileRead, withView } from './job-row.ts';
import { MergeCheck, MergeRefused } from './merge-check.ts';
import type { Copies, EventBatches, ImportResult, StoredPhoto } from './store.ts';

// Fetched at the first merge: the first screen does without.
export { batchesOf, orRefusal } from './merge-check.ts';

/** What a merge came to, and the branches of copied phones that it carried over. */
export interface Merged {
  readonly result: ImportResult & { ok: true };
  readonly branches: readonly KeptBranch[];
  readonly isDecidedHere: boolean;
}

/**
 * Takes a reading of events in, a batch at a time.
 *
 * @param readAt when they were read from a job file; null when they come from none
 * @throws MergeRefused, so that the transaction leaves nothing behind
 */
export async function mergeEvents(
  database: EvencourseDatabase,
  journal: DexieJournal,
  events: EventBatches,
  photos: readonly StoredPhoto[],
  readAt: string | null,
  copies: Copies
): Promise<Merged> {
  let before: JobRecord | undefined;
  let state: JobRecord | undefined;
  let check: MergeCheck | undefined;
  let isLossKnown = false;
  const touched = new Map<string, AnyPart>();
  const reading = events()[Symbol.asyncIterator]();
  for (;;) {
    // Read from outside the database; the transaction is kept open meanwhile.
    const { done, value: batch } = await Dexie.waitFor(
      Dexie.ignoreTransaction(() => reading.next())
    );
    if (done) break;
    if (batch.length === 0) continue;
    before ??= await journal.ready(batch[0].jobId);
    state ??= before;
    check ??= new MergeCheck(before.row, copies);
    const { jobId } = state.row;
    const here = await alreadyHere(journal, before.row, batch);
    if (!isLossKnown && check.bringsBack(batch, here)) {
      isLossKnown = true;
      check.noteLost(await journal.missing(before.row));
    }
    const healedBefore = check.healed;
    const fresh = check.sort(batch, here);
    if (fresh.length === 0) continue;
    const fetch = (ids: string[]) => journal.events.with(jobId, ids);
    const { draft, undoFault, broken } = await foldBatch(state.view, fresh, fetch);
    if (broken) throw new MergeRefused('broken-line', undefined, broken);
    if (undoFault) throw new MergeRefused('undo-circle', undefined, undoFault);
    await journal.events.addBundles(jobId, fresh, check.healed > healedBefore);
    for (const [key, part] of draft.touched) touched.set(key, part);
    state = { row: withEvents(state.row, fresh), view: draft.finish() };
  }
  if (!state || !check) throw new MergeRefused('not-a-job-file');
  check.finish();
  // The view may still count what was lost, or have lost it too: it is worked out from all events.
  const { row: counted, view } = check.healed > 0 ? await journal.foldAnew(state.row) : state;
  const row =
    readAt === null ? counted : withFileRead(counted, check.backedUp(photos.length), readAt);
  if (check.healed === 0) await journal.storeParts(row.jobId, touched);
  await database.jobs.put(withView(row, view));
  for (const photo of photos)
    if (!(await database.photos.get(photo.photoId)))
      await database.photos.add({ jobId: row.jobId, ...photo });
  const unknown = Object.values(partOf(view, 'voids').unknown);
  const { branches, isDecidedHere } = check;
  return {
    result: {
      ok: true,
      jobId: row.jobId,
      added: check.added,
      already: check.already,
      unknown: unknown.reduce((sum, count) => sum + count, 0),
      branched: branches.reduce((sum, { events }) => sum + events, 0)
    },
    branches,
    isDecidedHere
  };
}

/** The stored events that have an id of a batch, by id; the batch is in order of id. */
async function alreadyHere(
  journal: DexieJournal,
  { jobId, revision }: JobRow,
  batch: readonly StoredEvent[]
): Promise<ReadonlyMap<string, StoredEvent>> {
  const here = new Map<string, StoredEvent>();
  if (revision === 0) return here;
  const wanted = new Set(batch.map(({ id }) => id));
  const last = batch[batch.length - 1].id;
  // A beginning of the first id stands just before it.
  let above = batch[0].id.slice(0, -1);
  for (;;) {
    const stored = await journal.events.next(jobId, above, last);
    if (stored.length === 0) return here;
    for (const event of stored) if (wanted.has(event.id)) here.set(event.id, event);
    above = stored[stored.length - 1].id;
  }
}
