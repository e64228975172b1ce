import type { Dexie } from 'dexie';

type Core = Parameters<Parameters<Dexie['use']>[0]['create']>[0];

/** Where the page says that it is put by for the Back button, and shown again. */
export type PageEvents = Pick<EventTarget, 'addEventListener'>;

/**
 * A page that is left may be put by as it stands, for the Back button: its scripts stop. A
 * transaction that is open at that moment can never end, and in WebKit it bars the database to
 * every page opened afterwards: their entries would stay at "saving" for ever. So it is given up
 * when the page is put by, and its work waits until the page is shown again.
 */
export class LeftPage {
  readonly #open = new Set<{ abort: () => void }>();
  #shown: Promise<void> | undefined;
  #show: (() => void) | undefined;

  constructor(page: PageEvents | undefined) {
    page?.addEventListener('pagehide', (event) => {
      if ((event as PageTransitionEvent).persisted) this.#leave();
    });
    page?.addEventListener('pageshow', () => {
      this.#show?.();
      this.#shown = undefined;
    });
  }

  /** Waits until the page is shown, if it is put by. */
  async whenShown(): Promise<void> {
    await this.#shown;
  }

  /** Watches every transaction of a database. */
  readonly middleware = (core: Core): Core => ({
    ...core,
    transaction: (stores, mode, options) => {
      const transaction = core.transaction(stores, mode, options);
      const native = transaction as unknown as IDBTransaction;
      this.#open.add(transaction);
      const ended = () => this.#open.delete(transaction);
      native.addEventListener('complete', ended);
      native.addEventListener('abort', ended);
      return transaction;
    }
  });

  #leave(): void {
    this.#shown ??= new Promise((resolve) => (this.#show = resolve));
    for (const transaction of this.#open)
      try {
        transaction.abort();
      } catch {
        // It ended a moment ago.
      }
  }
}
