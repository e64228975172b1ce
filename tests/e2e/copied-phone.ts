import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  type BrowserContext,
  type BrowserContextOptions,
  type LaunchOptions,
  chromium,
  test
} from '@playwright/test';

/** For tests: phones whose profile lies on the disk, so that one can be copied. */
export class CopiedPhones {
  readonly #folders: string[] = [];

  /** Cleared away after each test of the file that calls it. */
  static ofEachTest(): CopiedPhones {
    const phones = new CopiedPhones();
    test.afterEach(() => {
      for (const folder of phones.#folders.splice(0))
        rmSync(folder, { recursive: true, force: true });
    });
    return phones;
  }

  /** A place for the profile of a phone with nothing on it. */
  fresh(): string {
    const folder = mkdtempSync(join(tmpdir(), 'evencourse-phone-'));
    this.#folders.push(folder);
    return folder;
  }

  /** The place of a copy, made while the phone is off. */
  copyOf(folder: string): string {
    const copy = this.fresh();
    cpSync(folder, copy, { recursive: true });
    return copy;
  }

  /** Switches a phone on. */
  start(folder: string, options: LaunchOptions & BrowserContextOptions): Promise<BrowserContext> {
    return chromium.launchPersistentContext(folder, options);
  }
}
