import type { Access, HubStore, SpaceNews } from './hub-store.ts';
import type { Heads } from './protocol.ts';

interface Open {
  readonly access: Access;
  readonly send: (line: string) => void;
  readonly end: () => void;
}

/**
 * The open streams: each tells the heads of its space, then every parcel that comes, and an empty
 * line now and then so that a dead line is noticed.
 */
export class Streams {
  readonly #store: HubStore;
  readonly #most: number;
  readonly #open = new Set<Open>();
  readonly #pulse: ReturnType<typeof setInterval>;
  readonly #stopNews: () => void;

  constructor(store: HubStore, most: number, pulseMs: number) {
    this.#store = store;
    this.#most = most;
    this.#stopNews = store.onNews((news) => this.#hear(news));
    this.#pulse = setInterval(() => {
      for (const { send } of this.#open) send('\n');
    }, pulseMs);
    this.#pulse.unref();
  }

  /** A stream for the holder of an access, or undefined when he has too many. */
  open(access: Access): ReadableStream<Uint8Array> | undefined {
    const his = [...this.#open].filter((other) => other.access.id === access.id);
    if (his.length >= this.#most) return undefined;
    const encoder = new TextEncoder();
    let entry: Open;
    return new ReadableStream<Uint8Array>({
      start: (controller) => {
        const end = () => {
          if (!this.#open.delete(entry)) return;
          controller.close();
        };
        entry = {
          access,
          end,
          send: (line) => {
            // Who does not read is cut off rather than kept in memory; his client comes again.
            if ((controller.desiredSize ?? 0) < -1000) end();
            else controller.enqueue(encoder.encode(line));
          }
        };
        // News is heard from now on, so none is missed between the heads and what follows.
        this.#open.add(entry);
        void this.#sendHeads(entry);
      },
      cancel: () => {
        this.#open.delete(entry);
      }
    });
  }

  get count(): number {
    return this.#open.size;
  }

  close(): void {
    clearInterval(this.#pulse);
    this.#stopNews();
    for (const { end } of [...this.#open]) end();
  }

  async #sendHeads(entry: Open): Promise<void> {
    try {
      const heads: Heads = await this.#store.heads(entry.access.space);
      if (this.#open.has(entry)) entry.send(`${JSON.stringify({ heads })}\n`);
    } catch {
      entry.end();
    }
  }

  #hear(news: SpaceNews): void {
    for (const entry of [...this.#open]) {
      if (news.kind === 'look-again') void this.#sendHeads(entry);
      else if (news.space !== entry.access.space) continue;
      else if (news.kind === 'parcel') entry.send(`${JSON.stringify([news.device, news.last])}\n`);
      else if (news.access === entry.access.id) entry.end();
    }
  }
}
