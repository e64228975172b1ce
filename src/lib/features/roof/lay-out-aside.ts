import { type JobState, nextTask } from '$lib/app';
import { readRoof, rememberRoof, slopesOf } from '$lib/job';
import { runTask } from '$lib/worker';

/** So few slopes are laid out on the page as quickly as a worker is started. */
const FEW_SLOPES = 6;

/**
 * Has the worker lay out a roof of many slopes, so that the page stays quick; it is remembered where it
 * is asked for. Without the worker nothing is remembered, and the page does it itself.
 */
export async function layOutAside({ view, sizes }: JobState): Promise<void> {
  // A view of one of several sizes has its roof from the whole job, which the worker does not know.
  if (sizes.length > 0 || slopesOf(view).length <= FEW_SLOPES) return;
  const handed = await runTask('layOutRoof', view).result.catch(() => undefined);
  if (handed) rememberRoof(view, await readRoof(handed, nextTask));
}
