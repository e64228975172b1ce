import { EvencourseDatabase } from '../../../src/lib/storage/database.ts';
import { MemoryDatabase } from '../memory-store.ts';

/** Copies a device's database under another name, as a phone set up from another's copy has it. */
export async function copyDatabase(name: string, copyName: string): Promise<void> {
  const [from, to] = [new EvencourseDatabase(name), new EvencourseDatabase(copyName)];
  try {
    for (const table of from.tables) await to.table(table.name).bulkAdd(await table.toArray());
  } finally {
    from.close();
    to.close();
  }
}

/** The same in memory. */
export function copyMemory(from: MemoryDatabase): MemoryDatabase {
  const to = new MemoryDatabase();
  for (const [jobId, job] of from.jobs) to.jobs.set(jobId, { ...job, events: new Map(job.events) });
  for (const [photoId, photo] of from.photos) to.photos.set(photoId, photo);
  for (const [name, value] of from.device) to.device.set(name, value);
  return to;
}
