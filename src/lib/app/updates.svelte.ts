/** Pause before the shell is fetched anew when the first try failed. */
const RETRY_MS = 15_000;

/**
 * The service worker's registration and its updates. A new version waits until the person accepts
 * it, so that it never reloads a batch away.
 */
class Updates {
  isWaiting = $state(false);
  /** Whether the shell is on the device, so that a cold start needs no network. */
  isReadyOffline = $state(false);
  #registration: ServiceWorkerRegistration | undefined;

  /** Registers the worker and looks for a new version now and whenever the network comes back. */
  async start(scriptUrl: string): Promise<void> {
    if (!('serviceWorker' in navigator)) return;
    void navigator.serviceWorker.ready.then(() => (this.isReadyOffline = true));
    addEventListener('online', () => void this.#look(scriptUrl));
    await this.#look(scriptUrl);
  }

  async #look(scriptUrl: string): Promise<void> {
    const registration = await navigator.serviceWorker
      .register(scriptUrl, { type: 'module' })
      .catch(() => undefined);
    if (!registration) return; // no worker is allowed here: the app runs, but only while online
    if (this.#registration !== registration) this.#follow(registration, scriptUrl);
    if (navigator.onLine) void registration.update().catch(() => undefined);
  }

  #follow(registration: ServiceWorkerRegistration, scriptUrl: string): void {
    this.#registration = registration;
    this.isWaiting = !!registration.waiting && !!navigator.serviceWorker.controller;
    registration.addEventListener('updatefound', () => {
      const incoming = registration.installing;
      incoming?.addEventListener('statechange', () => {
        if (incoming.state === 'installed' && navigator.serviceWorker.controller)
          this.isWaiting = true;
        // On a poor network a file of the first shell may fail to come: then all of it once more.
        if (incoming.state === 'redundant' && !registration.active)
          setTimeout(() => void this.#look(scriptUrl), RETRY_MS);
      });
    });
  }

  /** Puts the waiting version in force, unless another tab has, and loads the page anew. */
  accept(): void {
    const waiting = this.#registration?.waiting;
    if (!waiting) return location.reload();
    navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), {
      once: true
    });
    waiting.postMessage('accept-update');
  }
}

export const updates = new Updates();
