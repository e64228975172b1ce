/** Pause before the shell is fetched anew when the first try failed. */
const RETRY_MS = 15_000;

/** What the device holds of the app itself. */
export type OfflineShell = 'fetching' | 'whole' | 'refilled' | 'lacking';

/**
 * The service worker's registration and its updates. A new version waits until the person accepts
 * it, so that it never reloads a batch away.
 */
class Updates {
  isWaiting = $state(false);
  /** Whether all of the app is on the device, so that a cold start needs no network. */
  shell = $state<OfflineShell>('fetching');
  #registration: ServiceWorkerRegistration | undefined;

  /**
   * Registers the worker and looks for a new version now and whenever the network comes back.
   *
   * @param version the version of the page, which has started
   */
  async start(scriptUrl: string, version: string): Promise<void> {
    if (!('serviceWorker' in navigator)) {
      this.shell = 'lacking';
      return;
    }
    // The versions before this one may go.
    navigator.serviceWorker.controller?.postMessage(`started ${version}`);
    addEventListener('online', () => void this.#renew(scriptUrl));
    await this.#renew(scriptUrl);
  }

  /** Looks for what is lacking on the device and for a new version. */
  async #renew(scriptUrl: string): Promise<void> {
    await idle();
    await this.#look(scriptUrl);
    await this.lookAtShell();
  }

  /** Has the worker look at what the device holds of the app, and fetch what is lacking. */
  async lookAtShell(): Promise<void> {
    const active = this.#registration?.active;
    if (!active) {
      this.shell = this.#registration?.installing ? 'fetching' : 'lacking';
      return;
    }
    const { port1, port2 } = new MessageChannel();
    const answer = new Promise<{ isWhole: boolean; lacking: number }>((resolve) => {
      port1.onmessage = ({ data }) => resolve(data);
    });
    active.postMessage('look', [port2]);
    const { isWhole, lacking } = await answer;
    this.shell = !isWhole ? 'lacking' : lacking > 0 ? 'refilled' : 'whole';
  }

  async #look(scriptUrl: string): Promise<void> {
    const registration = await navigator.serviceWorker
      .register(scriptUrl, { type: 'module', updateViaCache: 'none' })
      .catch(() => undefined);
    if (!registration) return; // no worker is allowed here: the app runs, but only while online
    if (this.#registration !== registration) this.#follow(registration, scriptUrl);
    if (navigator.onLine) void registration.update().catch(() => undefined);
  }

  #follow(registration: ServiceWorkerRegistration, scriptUrl: string): void {
    this.#registration = registration;
    this.isWaiting = !!registration.waiting && !!navigator.serviceWorker.controller;
    const watch = (incoming: ServiceWorker | null): void =>
      incoming?.addEventListener('statechange', () => {
        if (incoming.state === 'installed' && navigator.serviceWorker.controller)
          this.isWaiting = true;
        if (incoming.state === 'activated') void this.lookAtShell();
        // On a poor network a file of the first shell may fail to come: then all of it once more.
        if (incoming.state === 'redundant' && !registration.active) {
          this.shell = 'lacking';
          setTimeout(() => void this.#look(scriptUrl), RETRY_MS);
        }
      });
    // The first registration may be installing already, before anyone could listen.
    watch(registration.installing);
    registration.addEventListener('updatefound', () => watch(registration.installing));
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

/** Waits until the page has loaded and has nothing else to do. */
async function idle(): Promise<void> {
  if (document.readyState !== 'complete')
    await new Promise((done) => addEventListener('load', done, { once: true }));
  if ('requestIdleCallback' in window)
    await new Promise((done) => requestIdleCallback(done, { timeout: 5000 }));
}

export const updates = new Updates();
