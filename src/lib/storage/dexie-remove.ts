import { Dexie } from 'dexie';
import { partOf } from '$lib/journal';
import type { EvencourseDatabase } from './database.ts';
import type { DexieJournal } from './dexie-journal.ts';
import { onlyHere } from './job-row.ts';
import { noteOfRemoved, removedName } from './removed.ts';
import type { DeviceNumbers, Removal } from './store.ts';

/** Removes a job's rows, inside one transaction on every table: see {@link JournalStore.remove}. */
export async function removeJob(
  database: EvencourseDatabase,
  journal: DexieJournal,
  jobId: string,
  elsewhere: DeviceNumbers,
  deviceId: string
): Promise<Removal> {
  const { row, view } = await journal.ready(jobId);
  if (row.revision === 0) return { ok: true };
  const left = onlyHere(row, elsewhere);
  if (left > 0) return { ok: false, onlyHere: left };
  const { events, bundles, parts, jobs, photos, device } = database;
  const named = partOf(view, 'job').photos.map(({ value }) => value.photoId);
  // The photos whose entry was taken back are the job's as well.
  const photoIds = new Set([
    ...named,
    ...(await photos.where('jobId').equals(jobId).primaryKeys())
  ]);
  for (const photoId of await photosOfOthers(database, jobId)) photoIds.delete(photoId);
  await device.put({
    name: `preference:${removedName(jobId)}`,
    value: noteOfRemoved(row, deviceId)
  });
  await database.removing({ jobId, photoIds }, async () => {
    const ids = [Dexie.minKey, Dexie.maxKey].map((id): [string, unknown] => [jobId, id]);
    const [from, to] = ids;
    await events.bulkDelete(
      (await events.where('[jobId+id]').between(from, to).primaryKeys()) as [string, string][]
    );
    await bundles.bulkDelete(
      await bundles.where('[jobId+last+first]').between(from, to).primaryKeys()
    );
    await photos.bulkDelete([...photoIds]);
    await parts.where('[jobId+part]').between(from, to).delete();
    await jobs.delete(jobId);
  });
  return { ok: true };
}

/** The photos that other jobs on the device show: a rescued job shares those of the damaged one. */
async function photosOfOthers(database: EvencourseDatabase, jobId: string): Promise<string[]> {
  const others = (await database.jobs.toCollection().primaryKeys()).filter((id) => id !== jobId);
  const rows = await database.parts.bulkGet(others.map((id): [string, string] => [id, 'job']));
  return rows.flatMap((row) => {
    const photos = (row?.value as { photos?: unknown } | undefined)?.photos;
    if (!Array.isArray(photos)) return [];
    return (photos as { value: { photoId: string } }[]).map(({ value }) => value.photoId);
  });
}
