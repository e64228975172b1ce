import type { JobState } from '$lib/app';
import { newJobId } from '$lib/app';
import { type PalletCount, PalletCounter } from '$lib/job';
import { own } from '$lib/journal';
import { type Preferences, palletOfSize } from '$lib/app';

/** Pallets kept open side by side, at most: more would not fit the bar. */
const MOST_OPEN = 8;

/** The pallets of a job while sorting: which are open, and which one slates come from now. */
export class PalletState {
  readonly #job: () => JobState;
  readonly #preferences: Preferences;
  readonly #counter = new PalletCounter();

  readonly all: PalletCount[] = $derived.by(() =>
    this.#counter.all(this.#job().view, this.#job().pileNumbers)
  );
  readonly #openIds: readonly string[] = $derived.by(() => {
    const kept = own(this.#preferences.values.openPallets, this.#job().jobId) ?? [];
    const known = kept.filter((id) => this.all.some(({ palletId }) => palletId === id));
    if (known.length > 0) return known;
    const first = this.all.find(({ left }) => left > 0) ?? this.all[0];
    return first ? [first.palletId] : [];
  });
  /** The pallet that slates come from, or undefined when there is none. */
  readonly current: PalletCount | undefined = $derived(
    this.all.find(({ palletId }) => palletId === this.#openIds[0])
  );
  /** Open pallets: the one slates come from first, then the others as they were entered. */
  readonly open: PalletCount[] = $derived([
    ...(this.current ? [this.current] : []),
    ...this.all.filter(
      ({ palletId }) => palletId !== this.current?.palletId && this.#openIds.includes(palletId)
    )
  ]);
  /** Slates left on all pallets; undefined where nobody knows how many came on one. */
  readonly left: number | undefined = $derived(
    this.all.every(({ slates }) => slates > 0)
      ? this.all.reduce((sum, { left }) => sum + left, 0)
      : undefined
  );

  constructor(job: () => JobState, preferences: Preferences) {
    this.#job = job;
    this.#preferences = preferences;
  }

  /** Open pallets, with the one to take next at hand beside the one in use. */
  openWith(nextId: string | undefined): PalletCount[] {
    const [first, ...others] = this.open;
    const isNext = ({ palletId }: PalletCount): boolean => palletId === nextId;
    return [first, ...this.all.filter(isNext), ...others.filter((other) => !isNext(other))];
  }

  isOpen(palletId: string): boolean {
    return this.#openIds.includes(palletId);
  }

  /** Takes slates from this pallet from now on; opens it if need be. */
  takeFrom(palletId: string): void {
    this.#keep([palletId, ...this.#openIds.filter((id) => id !== palletId)]);
  }

  /** Opens a pallet beside the others, or closes it; the last open one stays. */
  toggle(palletId: string): void {
    const [current, ...others] = this.#openIds;
    if (!this.isOpen(palletId)) this.#keep([current ?? palletId, palletId, ...others]);
    else if (this.#openIds.length > 1) this.#keep(this.#openIds.filter((id) => id !== palletId));
  }

  /** Enters a pallet and opens it; slates go on coming from the one in use. A mixed one has a part for
   * each length. False: not saved. */
  async add(label: string, slates: number, isMixed = false): Promise<boolean> {
    const { sizes, sizeId } = this.#job();
    const id = newJobId();
    const palletId = isMixed && sizeId ? palletOfSize(id, sizeId) : id;
    // How many of each length lie on a mixed pallet shows as it is sorted.
    const saved = await this.#job().act(
      isMixed
        ? sizes.map(({ sizeId: of }) => ({
            type: 'palletAdded' as const,
            body: { palletId: palletOfSize(id, of), label, slates: 0, sizeId: of }
          }))
        : { type: 'palletAdded', body: { palletId, label, slates } }
    );
    if (saved && !this.isOpen(palletId)) this.toggle(palletId);
    return saved !== undefined;
  }

  #keep(ids: readonly string[]): void {
    const { openPallets } = this.#preferences.values;
    const kept = { ...openPallets, [this.#job().jobId]: ids.slice(0, MOST_OPEN) };
    this.#preferences.set({ openPallets: kept });
  }
}
