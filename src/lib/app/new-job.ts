import { createIdSource } from '$lib/journal';
import { randomHex } from './store.ts';

/** An id for a new job. */
export function newJobId(): string {
  return createIdSource(() => Date.now(), randomHex)();
}
