import fs from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Random } from '$lib/engine';

/** What a disk was asked to do with a file, in order. */
type DiskAct =
  | { readonly what: 'write'; readonly file: string; readonly at: number; readonly bytes: Buffer }
  | { readonly what: 'cut'; readonly file: string; readonly length: number }
  | { readonly what: 'sync' | 'remove'; readonly file: string };

/** The folder itself: once it is synced, what was removed stays so. */
const FOLDER = '.';
/** What a sector holds is old or new, never half. */
const SECTOR = 512;

/**
 * For tests: writes down what the database of the hub asks of the disk in a folder, and makes the
 * folder as it may stand after the power failed at any moment. What was written and not yet synced
 * may be there, in part there, or not there at all, in any order; a sync makes a file and its name
 * durable, and what was removed may come back until the folder was synced.
 */
export class WrittenDown {
  readonly acts: DiskAct[] = [];
  readonly #folder: string;
  readonly #names = new Map<number, string>();
  #restore: () => void = () => undefined;

  constructor(folder: string) {
    this.#folder = folder;
  }

  begin(): void {
    const { openSync, closeSync, writeSync, ftruncateSync, fsyncSync, unlinkSync } = fs;
    // Node itself keeps some of these functions where they were first used, so they also look.
    let isOn = true;
    const note = (act: DiskAct): void => void (isOn && this.acts.push(act));
    const isOurs = (path: unknown): boolean => dirname(String(path)) === this.#folder;
    const named = (fd: number): string | undefined => this.#names.get(fd);
    fs.openSync = (path, ...rest) => {
      const fd = openSync(path, ...rest);
      if (path === this.#folder) this.#names.set(fd, FOLDER);
      else if (isOurs(path)) this.#names.set(fd, basename(String(path)));
      return fd;
    };
    fs.closeSync = (fd) => {
      this.#names.delete(fd);
      closeSync(fd);
    };
    fs.writeSync = ((fd: number, bytes: Buffer, from: number, length: number, at: number) => {
      const file = named(fd);
      if (file) {
        const part = Buffer.from(bytes.subarray(from, from + length));
        note({ what: 'write', file, at, bytes: part });
      }
      return writeSync(fd, bytes, from, length, at);
    }) as typeof fs.writeSync;
    fs.ftruncateSync = (fd, length) => {
      const file = named(fd);
      if (file) note({ what: 'cut', file, length: length ?? 0 });
      ftruncateSync(fd, length);
    };
    fs.fsyncSync = (fd) => {
      const file = named(fd);
      if (file) note({ what: 'sync', file });
      fsyncSync(fd);
    };
    fs.unlinkSync = (path) => {
      if (isOurs(path)) note({ what: 'remove', file: basename(String(path)) });
      unlinkSync(path);
    };
    this.#restore = () => {
      isOn = false;
      Object.assign(fs, { openSync, closeSync, writeSync, ftruncateSync, fsyncSync, unlinkSync });
    };
  }

  end(): void {
    this.#restore();
  }

  /** Makes a folder as it may stand when the power fails before an act. */
  standAfter(act: number, folder: string, random: Random): void {
    const disk = new Map<string, { durable: Held; pending: DiskAct[] }>();
    for (const done of this.acts.slice(0, act)) {
      if (done.file === FOLDER) {
        for (const { durable, pending } of disk.values()) {
          const removed = pending.findLastIndex(({ what }) => what === 'remove');
          for (const one of pending.splice(0, removed + 1)) durable.take(one);
        }
        continue;
      }
      const file = disk.get(done.file) ?? { durable: new Held(), pending: [] };
      disk.set(done.file, file);
      if (done.what !== 'sync') file.pending.push(done);
      else for (const one of file.pending.splice(0)) file.durable.take(one);
    }
    for (const [name, { durable, pending }] of disk) {
      for (const one of pending) for (const left of whatIsLeft(one, random)) durable.take(left);
      if (durable.isThere) fs.writeFileSync(join(folder, name), durable.bytes);
    }
  }
}

/** What of an act that was not synced has come to the disk: all, nothing, or some sectors. */
function whatIsLeft(act: DiskAct, random: Random): DiskAct[] {
  if (act.what !== 'write') return random() < 0.5 ? [act] : [];
  const left: DiskAct[] = [];
  const share = [0, 0.5, 1][Math.floor(random() * 3)];
  for (let from = 0; from < act.bytes.length; from += SECTOR)
    if (random() < share)
      left.push({ ...act, at: act.at + from, bytes: act.bytes.subarray(from, from + SECTOR) });
  return left;
}

/** A file's bytes, which grow in place. */
class Held {
  #room = Buffer.alloc(0);
  #length = 0;
  isThere = false;

  get bytes(): Buffer {
    return this.#room.subarray(0, this.#length);
  }

  take(act: DiskAct): void {
    this.isThere = act.what !== 'remove';
    if (act.what === 'remove') this.#length = 0;
    else if (act.what === 'cut') this.#setLength(act.length);
    else if (act.what === 'write') {
      this.#setLength(Math.max(this.#length, act.at + act.bytes.length));
      act.bytes.copy(this.#room, act.at);
    }
  }

  #setLength(length: number): void {
    if (length > this.#room.length) {
      const wider = Buffer.alloc(2 * length);
      this.bytes.copy(wider);
      this.#room = wider;
    }
    this.#room.fill(0, Math.min(length, this.#length), Math.max(length, this.#length));
    this.#length = length;
  }
}
