import { type PilesWorkedOut, isSameList, pilesRestOn } from '$lib/job';
import type { JobView } from '$lib/journal';
import { runTask } from '$lib/worker';

/** The last piles that were asked for, so that one screen after the other works them out once. */
let last:
  { readonly restsOn: unknown[]; readonly worked: Promise<PilesWorkedOut | undefined> } | undefined;

/** Has the worker work out the piles of a view; undefined where it cannot. */
export function pilesAside(view: JobView): Promise<PilesWorkedOut | undefined> {
  const restsOn = pilesRestOn(view);
  if (!last || !isSameList(last.restsOn, restsOn)) {
    const asked = { restsOn, worked: runTask('workOutPiles', view).result.catch(() => undefined) };
    last = asked;
    void asked.worked.then((worked) => {
      if (!worked && last === asked) last = undefined;
    });
  }
  return last.worked;
}
