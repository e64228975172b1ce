import { type Page, expect } from '@playwright/test';
import type { StoredEvent } from '../../src/lib/journal/index.ts';

/** What the browser has on its disk of one job, read past the app. */
export interface JobOnDisk {
  /** In order of id. */
  readonly events: readonly StoredEvent[];
  /** The stored view's parts as text, to compare. */
  readonly parts: string;
}

/** The id of the job that a page shows. */
export function jobIdOf(page: Page): string {
  const id = /\/job\/([0-9a-f-]{36})/.exec(page.url())?.[1];
  if (!id) throw new Error(`${page.url()} shows no job`);
  return id;
}

/** Reads a job straight from the database; any page of the app's origin will do. */
export function jobOnDisk(page: Page, jobId: string): Promise<JobOnDisk> {
  return page.evaluate(async (job) => {
    const answer = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((done, failed) => {
        request.onsuccess = () => done(request.result);
        request.onerror = () => failed(request.error);
      });
    const database = await answer(indexedDB.open('evencourse'));
    try {
      const range = IDBKeyRange.bound([job], [job, []]);
      const transaction = database.transaction(['events', 'bundles', 'parts'], 'readonly');
      const [own, bundles, parts] = await Promise.all(
        ['events', 'bundles', 'parts'].map((name) =>
          answer(transaction.objectStore(name).getAll(range))
        )
      );
      const events = [
        ...(own as StoredEvent[]),
        ...(bundles as { events: StoredEvent[] }[]).flatMap((bundle) => bundle.events)
      ].sort((one, other) => (one.id < other.id ? -1 : 1));
      return { events, parts: JSON.stringify(parts) };
    } finally {
      database.close();
    }
  }, jobId);
}

/** Everything in every table but the small things of the device, as text: to show that nothing changed. */
export function wholeDatabase(page: Page): Promise<string> {
  return page.evaluate(async () => {
    const answer = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((done, failed) => {
        request.onsuccess = () => done(request.result);
        request.onerror = () => failed(request.error);
      });
    const database = await answer(indexedDB.open('evencourse'));
    try {
      const tables = [...database.objectStoreNames].filter((name) => name !== 'device');
      const transaction = database.transaction(tables, 'readonly');
      const rows = tables.map((name) => answer(transaction.objectStore(name).getAll()));
      return JSON.stringify(await Promise.all(rows));
    } finally {
      database.close();
    }
  });
}

/** The numbers of each device run 1, 2, 3 … and the ids rise with them. */
export function expectGapless(events: readonly StoredEvent[]): void {
  const byDevice = new Map<string, number[]>();
  for (const { deviceId, deviceSeq } of events)
    byDevice.set(deviceId, [...(byDevice.get(deviceId) ?? []), deviceSeq]);
  for (const numbers of byDevice.values())
    expect(numbers).toEqual(numbers.map((_number, index) => index + 1));
}

/** Hundredths of a millimetre of each gauged slate → how many events hold it. */
export function gaugedCounts(events: readonly StoredEvent[]): Map<number, number> {
  const counts = new Map<number, number>();
  for (const { type, body } of events) {
    if (type !== 'slateGauged') continue;
    const [hundredths] = body.points as number[];
    counts.set(hundredths, (counts.get(hundredths) ?? 0) + 1);
  }
  return counts;
}

/** Readings that the screen called saved and that the disk does not hold. */
export function lostOf(
  acknowledged: readonly number[],
  events: readonly StoredEvent[]
): readonly number[] {
  const left = gaugedCounts(events);
  return acknowledged.filter((hundredths) => {
    const count = left.get(hundredths) ?? 0;
    left.set(hundredths, count - 1);
    return count < 1;
  });
}

/** Folds the job anew on the health page; the stored view must come out the same. */
export async function expectSameWhenRebuilt(page: Page, jobId: string): Promise<void> {
  const before = await jobOnDisk(page, jobId);
  await page.goto('/settings');
  await page
    .getByRole('button', { name: /^Recalculate/ })
    .first()
    .click();
  await expect(page.getByText('recalculated from')).toBeVisible();
  const after = await jobOnDisk(page, jobId);
  expect(after.parts).toBe(before.parts);
  expect(after.events).toEqual(before.events);
}
