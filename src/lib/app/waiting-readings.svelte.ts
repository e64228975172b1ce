import { palletIds, partOf } from '$lib/journal';
import type { JobState } from './job.svelte.ts';
import { journalStore } from './store.ts';

/** How many readings of a job wait for an answer (J65): on this device, and on others. */
export class WaitingReadings {
  readonly #job: () => JobState;
  #deviceId = $state<string>();

  /** The device of each. */
  readonly #devices = $derived.by(() => {
    const { view } = this.#job();
    return palletIds(view).flatMap((id) =>
      partOf(view, `pallet:${id}`).held.map(({ value }) => value.deviceId)
    );
  });
  /** Both are 0 until it is known which device this is. */
  readonly here = $derived(this.#devices.filter((id) => id === this.#deviceId).length);
  readonly elsewhere = $derived(
    this.#deviceId === undefined ? 0 : this.#devices.length - this.here
  );

  constructor(job: () => JobState) {
    this.#job = job;
    void journalStore()
      .deviceId()
      .then((deviceId) => (this.#deviceId = deviceId))
      .catch(() => undefined); // a database that fails shows itself at the next act
  }
}
