import { type JobView, type PalletPart, current, palletIds, partOf } from '$lib/journal';
import { pileOfKey, sum } from './queries.ts';

/** What is known of one pallet while sorting. */
export interface PalletCount {
  readonly palletId: string;
  readonly label: string;
  /** Slates as declared; 0 when nobody said. */
  readonly slates: number;
  /** Slates put on each pile, pile 1 first. */
  readonly onPile: readonly number[];
  /** Slates measured but on no pile: before there were grades, or for the sample. */
  readonly measured: number;
  readonly setAside: number;
  /** Slates that left the pallet: piled or set aside. */
  readonly sorted: number;
  /** Slates still on it: never below 0. */
  readonly left: number;
}

/**
 * Counts pallets, each anew only when an act touched it: a view shares its untouched parts, so the
 * cost of an act does not grow with the readings before it.
 */
export class PalletCounter {
  #piles = 0;
  #known = new WeakMap<PalletPart, PalletCount>();

  /** All pallets that were entered or that have slates, by label in natural order. */
  all(view: JobView, piles: number): PalletCount[] {
    return palletIds(view)
      .map((palletId) => this.one(view, palletId, piles))
      .filter((count) => count !== undefined)
      .sort((one, other) => one.label.localeCompare(other.label, 'en', { numeric: true }));
  }

  /** One pallet, or undefined when every trace of it was undone. */
  one(view: JobView, palletId: string, piles: number): PalletCount | undefined {
    if (piles !== this.#piles) {
      this.#piles = piles;
      this.#known = new WeakMap();
    }
    const part = partOf(view, `pallet:${palletId}`);
    let count = this.#known.get(part);
    if (!count) {
      count = countPallet(palletId, part, piles);
      this.#known.set(part, count);
    }
    const isKnown = part.declared.length > 0 || count.sorted > 0 || count.measured > 0;
    return isKnown ? count : undefined;
  }
}

function countPallet(palletId: string, part: PalletPart, piles: number): PalletCount {
  const declared = current(part.declared);
  const onPile = new Array<number>(piles).fill(0);
  let measured = sum(part.sampled);
  for (const [key, { gauged, tapped }] of Object.entries(part.piles)) {
    const pile = pileOfKey(key);
    const slates = sum(gauged) + sum(tapped);
    if (pile > 0) onPile[Math.min(pile, piles) - 1] += slates;
    else measured += slates;
  }
  const setAside = sum(part.setAside);
  const sorted = onPile.reduce((total, n) => total + n, 0) + setAside;
  const slates = declared?.slates ?? 0;
  return {
    palletId,
    label: declared?.label ?? palletId,
    slates,
    onPile,
    measured,
    setAside,
    sorted,
    left: Math.max(0, slates - sorted)
  };
}
