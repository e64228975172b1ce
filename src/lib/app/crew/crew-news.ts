import type { StoredEvent } from '$lib/journal';
import type { Timer } from '$lib/gauge';

/** News is said at most so often, and stands as long. */
export const NEWS_EVERY_MS = 60_000;
/** Before the first is said, what comes in together is gathered. */
const GATHER_MS = 1_000;

/** Something that a mate did. His nickname is empty where he gave none. */
export type CrewNews =
  | {
      readonly kind: 'sorted';
      readonly name: string;
      readonly palletId: string;
      readonly slates: number;
    }
  /** A course that was entered on two devices; it counts once. */
  | {
      readonly kind: 'laid-too';
      readonly name: string;
      readonly slopeId: string;
      readonly course: number;
    };

interface Parts {
  /** This device, whose own acts are no news. */
  readonly own: () => string;
  readonly timer: Timer;
  /** Shows the news; none once it has stood long enough. */
  readonly say: (news: readonly CrewNews[]) => void;
}

/** Sums up what comes in from the crew, and says it once a minute at most. */
export class NewsDesk {
  readonly #parts: Parts;
  /** By event, slates that were put on a pile and not told yet. */
  readonly #sorted = new Map<string, { readonly name: string; readonly palletId: string }>();
  #laidToo: CrewNews[] = [];
  #callOff: (() => void) | undefined;
  #saidAt = -Infinity;

  constructor(parts: Parts) {
    this.#parts = parts;
  }

  /** Takes note of events that came in. A slate that is taken back before it was told is no news. */
  take(events: readonly StoredEvent[], laidToo: readonly CrewNews[] = []): void {
    const own = this.#parts.own();
    for (const { id, type, deviceId, sorter, body } of events) {
      if (deviceId === own) continue;
      const { palletId, pile, voids } = body as Record<string, unknown>;
      if (type === 'entryVoided') this.#sorted.delete(String(voids));
      const isSorted = type === 'slateTapped' || (type === 'slateGauged' && pile !== null);
      if (isSorted && typeof palletId === 'string')
        this.#sorted.set(id, { name: sorter, palletId });
    }
    this.#laidToo.push(...laidToo);
    if (this.#sorted.size > 0 || this.#laidToo.length > 0) this.#plan();
  }

  stop(): void {
    this.#callOff?.();
  }

  #plan(): void {
    this.#callOff?.();
    const { timer } = this.#parts;
    const dueIn = this.#saidAt + NEWS_EVERY_MS - timer.now();
    this.#callOff = timer.after(Math.max(GATHER_MS, dueIn), () => this.#say());
  }

  #say(): void {
    const { timer, say } = this.#parts;
    this.#saidAt = timer.now();
    // In the order in which they came, never by who did more.
    const sums = new Map<string, CrewNews & { kind: 'sorted' }>();
    for (const { name, palletId } of this.#sorted.values()) {
      const key = JSON.stringify([name, palletId]);
      const slates = (sums.get(key)?.slates ?? 0) + 1;
      sums.set(key, { kind: 'sorted', name, palletId, slates });
    }
    const news = [...this.#laidToo, ...sums.values()];
    this.#sorted.clear();
    this.#laidToo = [];
    say(news);
    this.#callOff = news.length > 0 ? timer.after(NEWS_EVERY_MS, () => this.#say()) : undefined;
  }
}
