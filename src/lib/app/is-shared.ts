import { journalStore } from './store.ts';

/** The row in which a device keeps how it shares a job. */
export const crewRow = (jobId: string): string => `crew:${jobId}`;

/**
 * Whether a job is shared with a crew, and can be here: over plain http from another machine a
 * browser has no sealing, no locks and no camera.
 */
export async function isShared(jobId: string): Promise<boolean> {
  if (!canShare()) return false;
  return (
    (await journalStore()
      .readDevice(crewRow(jobId))
      .catch(() => undefined)) !== undefined
  );
}

export function canShare(): boolean {
  return isSecureContext && 'locks' in navigator && !!crypto.subtle;
}
