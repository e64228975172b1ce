import type { JobSummary } from '$lib/storage';

/** Entries without a backup from which the app reminds. Ours: about twenty minutes of sorting. */
const MANY = 300;
const DAY_MS = 24 * 3600 * 1000;

/** Whether to remind of a backup: many entries on this device only, or some for more than a day. */
export function isBackupDue(summary: JobSummary, now: number): boolean {
  if (summary.unexported === 0) return false;
  if (summary.unexported >= MANY) return true;
  return summary.exportedAt !== null && now - Date.parse(summary.exportedAt) > DAY_MS;
}

/** Whether this browser clears sites unused for a week: Safari, unless installed. */
export function clearsUnusedSites(vendor: string, isInstalled: boolean): boolean {
  return vendor.startsWith('Apple') && !isInstalled;
}
