export { DexieStore } from './dexie-store.ts';
export { isQuotaExceeded } from './reconnect.ts';
export type {
  Appended,
  ImportRefusal,
  ImportResult,
  JobSummary,
  JournalStore,
  OpenJob,
  StoreSurroundings
} from './store.ts';
