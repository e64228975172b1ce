import { sha256Hex } from '$lib/storage';

/** Hexadecimal digits of a mark: enough to tell the sheets of one job apart. */
const DIGITS = 8;

/** A short fingerprint (SHA-256) of what a sheet says, so that two prints can be compared by eye. */
export function printMark(content: unknown): string {
  return sha256Hex(new TextEncoder().encode(JSON.stringify(content))).slice(0, DIGITS);
}
