import type { Timer } from '$lib/gauge';

/** The page's own clock and alarm. */
export const pageTimer: Timer = {
  now: () => performance.now(),
  after: (ms, action) => {
    const id = setTimeout(action, ms);
    return () => clearTimeout(id);
  }
};
