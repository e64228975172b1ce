import type { ImportResult } from '$lib/storage';
import { words } from '$lib/text';
import { journalStore } from '$lib/app';

/** What became of a file that was taken in. */
export interface RestoreAnswer {
  readonly isGood: boolean;
  readonly jobId?: string;
  readonly sentences: readonly string[];
}

/** Takes job files in, and asks where a phone was copied. */
export class RestoringState {
  #copied: File | undefined;
  isBusy = $state(false);
  answer = $state.raw<RestoreAnswer>();
  /** Which phone was copied, while the person is asked whether both are to be kept. */
  asksWhich = $state<'' | 'this' | 'other'>('');

  /** Takes a file in, or says why not. */
  takeIn(file: File): Promise<void> {
    return this.#work(file, 'refuse');
  }

  /** Takes the file in once more, beside the entries here that carry the same numbers. */
  async keepBoth(): Promise<void> {
    if (this.#copied) await this.#work(this.#copied, 'keep-both');
  }

  async #work(file: File, copies: 'refuse' | 'keep-both'): Promise<void> {
    this.isBusy = true;
    this.answer = undefined;
    this.#copied = undefined;
    this.asksWhich = '';
    try {
      const { restore, sayRestore } = await import('./take-in.ts');
      const result = await restore(file, copies);
      const jobId = result.ok ? result.jobId : undefined;
      await this.#noteCopied(file, result);
      this.answer = { isGood: result.ok, jobId, sentences: sayRestore(result) };
    } catch (error) {
      this.answer = { isGood: false, sentences: [words.text.common.saveFailed(String(error))] };
    } finally {
      this.isBusy = false;
    }
  }

  async #noteCopied(file: File, result: ImportResult): Promise<void> {
    if (result.ok || result.copiedDevice === undefined) return;
    this.#copied = file;
    const isThis = result.copiedDevice === (await journalStore().deviceId());
    this.asksWhich = isThis ? 'this' : 'other';
  }
}
