import type { Page } from '@playwright/test';

/** An act to put into a job, as the journal stores it. */
export interface SeedAct {
  type: string;
  body: Record<string, unknown>;
  sorter?: string;
}

/** Stands in a body for the id of the grades that the seeded job has set last before. */
export const IN_FORCE = 'in force';

const DEVICE = '01900000-0000-7000-8000-0000000000aa';

/**
 * Writes a job of many acts straight into the device's database, seconds apart and in the past, and
 * leaves its view to be rebuilt when the job opens. Gives the job's id.
 *
 * @param secondsApart time between two acts; slates come about every four seconds
 * @param idOf the id of the act at an index, where another act names it
 */
export async function seedJob(
  page: Page,
  acts: readonly SeedAct[],
  secondsApart = 4,
  idOf: (index: number) => string | undefined = () => undefined
): Promise<string> {
  await page.goto('/');
  await page.getByLabel('Name of the job').waitFor();
  await page.waitForFunction(async () => {
    const databases = await indexedDB.databases();
    return databases.some(({ name }) => name === 'evencourse');
  });
  const jobId = '01900000-0000-7000-8000-0000000000bb';
  const start = Date.now() - (acts.length + 60) * secondsApart * 1000;
  let inForce: string | null = null;
  const rows = acts.map(({ type, body: given, sorter = '' }, index) => {
    const at = start + index * secondsApart * 1000;
    const clock = at.toString(16).padStart(12, '0');
    const tail = index.toString(16).padStart(12, '0');
    const id = idOf(index) ?? `${clock.slice(0, 8)}-${clock.slice(8)}-7000-8000-${tail}`;
    const body = given.gradesId === IN_FORCE ? { ...given, gradesId: inForce } : given;
    if (type === 'gradesSet') inForce = id;
    return {
      id,
      jobId,
      deviceId: DEVICE,
      deviceSeq: index + 1,
      at: new Date(at).toISOString(),
      sorter,
      type,
      v: 1,
      body
    };
  });
  const last = rows[rows.length - 1];
  const job = {
    jobId,
    name: 'Seeded',
    revision: rows.length,
    lastId: last.id,
    lastAt: last.at,
    viewVersion: 0,
    exported: 0,
    exportedAt: null,
    sequences: { [DEVICE]: rows.length }
  };
  for (let from = 0; from < rows.length; from += 20_000)
    await page.evaluate(
      ({ events, row }) =>
        new Promise<void>((resolve, reject) => {
          const opening = indexedDB.open('evencourse');
          opening.onerror = () => reject(opening.error);
          opening.onsuccess = () => {
            const database = opening.result;
            const writing = database.transaction(['events', 'jobs'], 'readwrite');
            for (const event of events) writing.objectStore('events').put(event);
            writing.objectStore('jobs').put(row);
            writing.onerror = () => reject(writing.error);
            writing.oncomplete = () => {
              database.close();
              resolve();
            };
          };
        }),
      { events: rows.slice(from, from + 20_000), row: job }
    );
  return jobId;
}

/** Every event of a job as it stands in the database, in the order of ids. */
export async function eventsOf(page: Page, jobId: string): Promise<SeedAct[]> {
  return page.evaluate(
    (id) =>
      new Promise<SeedAct[]>((resolve, reject) => {
        const opening = indexedDB.open('evencourse');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const database = opening.result;
          const range = IDBKeyRange.bound([id, ''], [id, '￿']);
          const reading = database.transaction('events').objectStore('events').getAll(range);
          reading.onerror = () => reject(reading.error);
          reading.onsuccess = () => {
            database.close();
            resolve(reading.result as SeedAct[]);
          };
        };
      }),
    jobId
  );
}

/** A job with pallets of 400 slates each and, unless `thresholdsMm` is empty, grades. */
export function smallJob(thresholdsMm: readonly number[], pallets = ['A', 'B', 'C']): SeedAct[] {
  return [
    { type: 'jobOpened', body: { name: 'Seeded' } },
    ...pallets.map((label) => ({
      type: 'palletAdded',
      body: { palletId: `pallet-${label}`, label, slates: 400 }
    })),
    ...(thresholdsMm.length > 0
      ? [{ type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [...thresholdsMm] } }]
      : [])
  ];
}
