/**
 * Keeps the screen on while someone sorts. The browser drops the lock whenever the page is hidden,
 * so it is asked for again when the page comes back.
 */
export class WakeLock {
  #lock: WakeLockSentinel | undefined;
  #isWanted = false;

  /** Whether this browser can keep the screen on. */
  static get isSupported(): boolean {
    return typeof navigator !== 'undefined' && 'wakeLock' in navigator;
  }

  /** Keeps the screen on until the function returned is called. */
  hold(): () => void {
    this.#isWanted = true;
    const again = (): void => void this.#request();
    document.addEventListener('visibilitychange', again);
    again();
    return () => {
      this.#isWanted = false;
      document.removeEventListener('visibilitychange', again);
      void this.#lock?.release().catch(() => undefined);
      this.#lock = undefined;
    };
  }

  async #request(): Promise<void> {
    if (!WakeLock.isSupported || document.visibilityState !== 'visible') return;
    if (this.#lock && !this.#lock.released) return;
    try {
      const lock = await navigator.wakeLock.request('screen');
      if (this.#isWanted) this.#lock = lock;
      else await lock.release();
    } catch {
      // A low battery refuses the lock; sorting goes on.
    }
  }
}
