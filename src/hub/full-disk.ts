// As an object, so that a test can put a disk of its own in its place.
import fs from 'node:fs';
import { join } from 'node:path';
import { HubFull } from './hub-store.ts';
import { LIMITS } from './protocol.ts';

/** What a system says where a write finds no room: the disk, a quota, or the most of one file. */
const NO_ROOM = new Set(['ENOSPC', 'EDQUOT', 'EFBIG']);
/** The largest write of a hub: a photo. */
const PROBE_BYTES = LIMITS.photoBytes;

/**
 * What to tell of a failed write of SQLite. Its layer over the file system keeps the cause to
 * itself: where the disk is full it says "disk I/O error". So the folder is asked.
 *
 * @param error what SQLite threw
 * @param folder where its file lies
 * @returns HubFull where there is no room, else the error as it is
 */
export function fullOr(error: unknown, folder: string): unknown {
  if (!(error instanceof Error)) return error;
  const isFull =
    /disk is full/i.test(error.message) ||
    (/disk I\/O error/i.test(error.message) && !hasRoom(folder));
  return isFull ? new HubFull(error) : error;
}

/** Whether a file as large as the largest write finds room; it is written and removed. */
function hasRoom(folder: string): boolean {
  const file = join(folder, 'hub.room');
  try {
    const handle = fs.openSync(file, 'w');
    try {
      for (let at = 0; at < PROBE_BYTES;)
        at += fs.writeSync(handle, new Uint8Array(PROBE_BYTES - at));
      return true;
    } finally {
      fs.closeSync(handle);
      fs.unlinkSync(file);
    }
  } catch (error) {
    return !NO_ROOM.has((error as NodeJS.ErrnoException).code ?? '');
  }
}
