import type { NewEvent } from '../src/lib/journal/index.ts';

/** The worked example: an invented job, act by act, each with the nickname of who did it. */
export function workedExample(): { acts: { sorter: string; act: NewEvent }[] } {
  return {
    acts: [{ sorter: '', act: { type: 'jobOpened', body: { name: 'Worked example' } } }]
  };
}
