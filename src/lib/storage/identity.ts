import type { KeptBranch, NewEvent } from '$lib/journal';
import type { JobRow } from './job-row.ts';

/** Names of the rows in which a device keeps its id, and the ids that it had before. */
export const DEVICE_ID = 'deviceId';
export const FORMER_IDS = 'formerDeviceIds';

/**
 * The browser cleared the data under an open page, or another device's were put in their place.
 * What the page holds in memory belongs to a journal that is gone: it must not be written on.
 */
export class DeviceChanged extends Error {
  constructor(detail: string) {
    super(detail);
    this.name = 'DeviceChangedError';
  }
}

/** Whether an error, or what wraps it, says that this is no longer the page's device. */
export function isDeviceChanged(error: unknown): boolean {
  return error instanceof DeviceChanged;
}

/**
 * Compares the id that a page works under with the one stored now, and gives the id to go on with:
 * the stored one where this device took a new one.
 *
 * @throws DeviceChanged when none is stored, or that of another device
 */
export function requireSameDevice(mine: string, stored: unknown, former: unknown): string {
  if (stored === mine) return mine;
  if (typeof stored !== 'string') throw new DeviceChanged('the id of this device is gone');
  if (Array.isArray(former) && former.includes(mine)) return stored;
  throw new DeviceChanged('the data on this device are those of another');
}

/** The note of whence the branches of a copied phone came. */
export function copyNote(branches: readonly KeptBranch[]): NewEvent {
  return { type: 'copyKept', body: { branches: [...branches] } };
}

/**
 * @throws DeviceChanged when nothing is left of a job that this page has seen entries of, or that
 * was removed from this device
 */
export function requireJobLeft({ revision, sequences }: JobRow, seen: number): void {
  if (revision > 0) return;
  if (seen > 0) throw new DeviceChanged(`the ${seen} entries of the job are gone`);
  if (Object.keys(sequences).length > 0) throw new DeviceChanged('the job was removed');
}
