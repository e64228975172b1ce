import { createSubscriber } from 'svelte/reactivity';

/** What the device says of itself. */
class DeviceState {
  readonly #subscribe = createSubscriber((update) => {
    addEventListener('online', update);
    addEventListener('offline', update);
    return () => {
      removeEventListener('online', update);
      removeEventListener('offline', update);
    };
  });

  /** Whether the browser believes that it has a network. Nothing here needs one. */
  get isOnline(): boolean {
    this.#subscribe();
    return navigator.onLine;
  }
}

export const device = new DeviceState();
