import { randomBytes } from 'node:crypto';
import { type Hub, createHub, hashOf } from './handler.ts';
import type { HubStore } from './hub-store.ts';
import { PostgresHubStore } from './postgres-store.ts';
import type { Limits } from './protocol.ts';
import { SqliteHubStore } from './sqlite-store.ts';

export { type Hub, createHub, hashOf } from './handler.ts';
export type { HubStore } from './hub-store.ts';
export { SqliteHubStore } from './sqlite-store.ts';
export { HUB_PATH } from './protocol.ts';

export interface OpenedHub extends Hub {
  /** The hub key, when it was made now; the hub keeps its hash only and cannot tell it again. */
  readonly newKey: string | undefined;
}

/**
 * Opens a hub on its data, and makes its key on the first start.
 *
 * @param where a PostgreSQL address, or the path of a file for SQLite
 * @param makeNewKey puts a new key in place of the one that was lost
 */
export async function openHub(
  where: { readonly databaseUrl?: string; readonly file: string },
  makeNewKey: boolean,
  onFault: (error: unknown) => void,
  limits?: Partial<Limits>
): Promise<OpenedHub> {
  const store: HubStore = where.databaseUrl
    ? await PostgresHubStore.open(where.databaseUrl)
    : new SqliteHubStore(where.file);
  const key = randomBytes(32).toString('base64url');
  let isNew = true;
  if (makeNewKey) await store.replaceHubKey(hashOf(key), Date.now());
  else isNew = await store.firstHubKey(hashOf(key), Date.now());
  const hub = createHub({ store, now: () => Date.now(), onFault, limits });
  return Object.defineProperty(hub, 'newKey', { value: isNew ? key : undefined }) as OpenedHub;
}
