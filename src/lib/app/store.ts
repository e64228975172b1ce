import { DexieStore, type JournalStore } from '$lib/storage';

/** Sixteen random hexadecimal digits from the browser's generator. */
export function randomHex(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(8));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

let opened: DexieStore | undefined;

/** This device's journal, opened at the first use. */
export function journalStore(): JournalStore & DexieStore {
  opened ??= new DexieStore({ now: () => Date.now(), randomHex });
  return opened;
}
