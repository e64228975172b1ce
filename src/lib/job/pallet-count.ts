import { type JobView, type PalletPart, current, palletIds, partOf } from '$lib/journal';
import { palletName } from './pallet-name.ts';
import { isSameList, pileOfKey, sum } from './queries.ts';

/** What is known of one pallet while sorting. */
export interface PalletCount {
  readonly palletId: string;
  readonly label: string;
  /** Slates as declared; 0 when nobody said. */
  readonly slates: number;
  /** Slates put on each pile of the grades in force, the thickest first. */
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
  #piles: readonly number[] = [];
  #known = new WeakMap<PalletPart, PalletCount>();

  /** All pallets that were entered or that have slates, by label in natural order. */
  all(view: JobView, piles: readonly number[]): PalletCount[] {
    return palletIds(view)
      .map((palletId) => this.one(view, palletId, piles))
      .filter((count) => count !== undefined)
      .sort((one, other) => one.label.localeCompare(other.label, 'en', { numeric: true }));
  }

  /** One pallet, or undefined when every trace of it was undone. */
  one(view: JobView, palletId: string, piles: readonly number[]): PalletCount | undefined {
    if (!isSameList(piles, this.#piles)) {
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

function countPallet(palletId: string, part: PalletPart, piles: readonly number[]): PalletCount {
  const declared = current(part.declared);
  const onPile = piles.map(() => 0);
  let beside = 0;
  let measured = sum(part.sampled);
  for (const [key, { gauged, tapped }] of Object.entries(part.piles)) {
    const pile = pileOfKey(key);
    const slates = sum(gauged) + sum(tapped);
    if (piles.includes(pile)) onPile[piles.indexOf(pile)] += slates;
    else if (pile > 0) beside += slates;
    else measured += slates;
  }
  const setAside = sum(part.setAside);
  const sorted = onPile.reduce((total, n) => total + n, beside) + setAside;
  const slates = declared?.slates ?? 0;
  return {
    palletId,
    label: declared ? palletName(declared.label) : palletId,
    slates,
    onPile,
    measured,
    setAside,
    sorted,
    left: Math.max(0, slates - sorted)
  };
}
