import { journalSha256 } from '$lib/storage';
import { journalStore } from '../store.ts';

/** Hexadecimal digits that are read out, in groups of four. */
const DIGITS = 16;

/**
 * By what two devices see that they hold the same entries of a job: the first digits of the
 * journal's SHA-256, which a backup shows whole.
 *
 * @returns the digits in groups, and how many entries they are of
 */
export async function journalFingerprint(
  jobId: string
): Promise<{ readonly signs: string; readonly events: number }> {
  const { sha256, events } = await journalSha256(journalStore(), jobId);
  const signs = sha256.slice(0, DIGITS).match(/.{4}/g)?.join(' ') ?? '';
  return { signs, events };
}
