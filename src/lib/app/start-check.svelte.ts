import type { ProbeResult } from '$lib/storage';
import { journalStore } from './store.ts';

/** Whether a write came back when the app started: better told now than at the first slate. */
class StartCheck {
  result = $state.raw<ProbeResult>();

  async run(): Promise<void> {
    this.result = await journalStore().probe();
  }
}

export const startCheck = new StartCheck();
