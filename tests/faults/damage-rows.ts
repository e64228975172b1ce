import type { Page } from '@playwright/test';

/** Deletes one row of the app's database, past the app. */
export function deleteRow(page: Page, table: string, key: string | string[]): Promise<void> {
  return page.evaluate(
    ({ name, at }) =>
      new Promise<void>((done, failed) => {
        const opening = indexedDB.open('evencourse');
        opening.onerror = () => failed(opening.error);
        opening.onsuccess = () => {
          const database = opening.result;
          const writing = database.transaction(name, 'readwrite');
          writing.objectStore(name).delete(at);
          writing.onerror = () => failed(writing.error);
          writing.oncomplete = () => {
            database.close();
            done();
          };
        };
      }),
    { name: table, at: key }
  );
}

/** Leaves a row in its place without one of its fields. */
export function spoilRow(
  page: Page,
  table: string,
  key: string | string[],
  field: string
): Promise<void> {
  return page.evaluate(
    ({ name, at, lost }) =>
      new Promise<void>((done, failed) => {
        const opening = indexedDB.open('evencourse');
        opening.onerror = () => failed(opening.error);
        opening.onsuccess = () => {
          const database = opening.result;
          const writing = database.transaction(name, 'readwrite');
          const store = writing.objectStore(name);
          const reading = store.get(at);
          reading.onsuccess = () => {
            const row = reading.result as Record<string, unknown>;
            delete row[lost];
            store.put(row);
          };
          writing.onerror = () => failed(writing.error);
          writing.oncomplete = () => {
            database.close();
            done();
          };
        };
      }),
    { name: table, at: key, lost: field }
  );
}
