import type { EveryBackup } from '$lib/app';
import { words } from '$lib/text';

/** The backup of every job on this device: one tap makes the file, the next saves it. */
export class BackingUpState {
  /** Jobs done, of how many, while the file is made. */
  progress = $state.raw<{ done: number; of: number }>();
  made = $state.raw<EveryBackup>();
  problem = $state('');
  /** Whether what left the device could be noted; undefined before it left. */
  isNoted = $state<boolean>();
  isNotShared = $state(false);

  async make(): Promise<void> {
    this.made = undefined;
    this.isNoted = undefined;
    this.problem = '';
    this.progress = { done: 0, of: 0 };
    try {
      const { makeEveryBackup } = await import('./take-in.ts');
      this.made = await makeEveryBackup((done, of) => (this.progress = { done, of }));
    } catch (error) {
      this.problem = words.text.files.problem(String(error));
    } finally {
      this.progress = undefined;
    }
  }

  /** Hands the file over and notes each whole backup in it. */
  async save(way: 'download' | 'share'): Promise<void> {
    const { made } = this;
    if (!made?.file) return;
    const { download, noteEveryBackup, share } = await import('./take-in.ts');
    this.isNotShared = false;
    if (way === 'download') download(made.file);
    else if (!(await share(made.file))) {
      this.isNotShared = true;
      return;
    }
    this.isNoted = await noteEveryBackup(made);
  }
}
