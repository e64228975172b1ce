import type { NewEvent } from '$lib/journal';

/** One act of the example and the nickname of who did it. */
export interface ExampleAct {
  readonly sorter: string;
  readonly act: NewEvent;
}
