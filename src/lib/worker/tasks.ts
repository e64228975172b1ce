import { type SorterTaps, fuseTaps } from '$lib/engine/estimates';
import { type RoofToSuit, suitTheRoof } from '$lib/engine/grading';
import type { ThicknessBins } from '$lib/engine/thickness';

/**
 * The engine's long tasks, by name. A task is a generator: it yields the share done (0 to 1) where
 * it can be stopped, and returns its result. Input and result are plain data that can be cloned.
 */
export const tasks = {
  /** Answers with its input: shows that the worker is alive. */
  *echo(input: string): Generator<number, string> {
    yield 1;
    return input;
  },

  /** Boundaries that suit the roof. */
  *suitTheRoof(roof: RoofToSuit): Generator<number, ReturnType<typeof suitTheRoof>> {
    yield 0;
    return suitTheRoof(roof);
  },

  /** Gauged slates and taps as one spread. */
  *fuseTaps(input: {
    gauged: ThicknessBins;
    sorters: readonly SorterTaps[];
  }): Generator<number, ReturnType<typeof fuseTaps>> {
    yield 0;
    return fuseTaps(input.gauged, input.sorters);
  }
};

export type Tasks = typeof tasks;
export type TaskName = keyof Tasks;
export type TaskInput<N extends TaskName> = Parameters<Tasks[N]>[0];
type Returned<G> =
  G extends Generator<number, infer R> ? R : G extends AsyncGenerator<number, infer R> ? R : never;
export type TaskResult<N extends TaskName> = Returned<ReturnType<Tasks[N]>>;
