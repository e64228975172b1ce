import type { Height, RoofHeights } from './heights.ts';
import { mayHold } from './laid-bounds.ts';
import type { KickChances } from './plan-types.ts';

/** What one pile may give. */
export interface PileLimit {
  readonly slates: number;
  readonly slateAndAHalves: number;
}

/** What the search is about. Chances are whole billionths. */
export interface Search {
  readonly roof: RoofHeights;
  readonly limits: readonly PileLimit[];
  readonly kicks: KickChances;
  /** Whether the stock lets a change from the first so many piles to the others lie in a height. */
  readonly mayChange: (height: number, firstPiles: number) => boolean;
  /** Infinity, as often as any table asks for it. */
  readonly nowhere: Float64Array;
}

/** Puts a search together. */
export function createSearch(
  roof: RoofHeights,
  limits: readonly PileLimit[],
  kicks: KickChances
): Search {
  const { heights, total } = roof;
  const givenBy = (piles: readonly PileLimit[]): PileLimit => ({
    slates: piles.reduce((sum, { slates }) => sum + slates, 0),
    slateAndAHalves: piles.reduce((sum, { slateAndAHalves }) => sum + slateAndAHalves, 0)
  });
  const first = [...limits, undefined].map((_pile, count) => givenBy(limits.slice(0, count)));
  const others = [...limits, undefined].map((_pile, count) => givenBy(limits.slice(count)));
  const size = heights.reduce(
    (most, { states, slates, slateAndAHalves }) =>
      Math.max(most, states, (slates + 1) * (slateAndAHalves + 1)),
    0
  );
  return {
    roof,
    limits,
    kicks,
    nowhere: new Float64Array(size).fill(Infinity),
    mayChange(height, piles) {
      const { below } = heights[height];
      const end = heights[height + 1]?.below ?? total;
      return (
        below.slates <= first[piles].slates &&
        below.slateAndAHalves <= first[piles].slateAndAHalves &&
        end.slates >= total.slates - others[piles].slates &&
        end.slateAndAHalves >= total.slateAndAHalves - others[piles].slateAndAHalves
      );
    }
  };
}

/** Whether a pile's slate-and-a-halves can run out at all; if not, they need not be counted. */
export function countsWide({ roof, limits }: Search, pile: number): boolean {
  return limits[pile].slateAndAHalves < roof.total.slateAndAHalves;
}

/** Columns of a pile's tables at a height. */
export function columnsOf(search: Search, height: Height, pile: number): number {
  return countsWide(search, pile) ? height.slateAndAHalves + 1 : 1;
}

/** Figures in a pile's tables at a height. */
function sizeOf(search: Search, height: Height, pile: number): number {
  return (height.slates + 1) * columnsOf(search, height, pile);
}

/** The least cost of ending anywhere in a height that the pile lays whole. */
export function leastOf(search: Search, at: number, pile: number, reach: Float64Array): number {
  return reach[sizeOf(search, search.roof.heights[at], pile) - 1];
}

/** Cost of so many joints all laid from one pile. */
export function priceOf(
  { kicks, limits }: Search,
  pile: number,
  joints: number,
  commonJoints: number
): number {
  const common = kicks.common?.withPile[pile] ?? 0;
  return (kicks.within[pile] * joints + common * commonJoints) * limits.length;
}

/** The farthest height above `from` in which the pile's stretch may still end. */
export function farthest(
  { roof, limits }: Search,
  pile: number,
  usedUpTo: { readonly slates: number; readonly slateAndAHalves: number },
  from: number,
  bars: (height: number, pile: number) => boolean
): number {
  const { heights, total } = roof;
  const mostSlates = usedUpTo.slates + limits[pile].slates;
  const mostWide = usedUpTo.slateAndAHalves + limits[pile].slateAndAHalves;
  let height = from;
  while (height < heights.length && !bars(height, pile)) {
    const end = heights[height + 1]?.below ?? total;
    if (end.slates > mostSlates || end.slateAndAHalves > mostWide) break;
    height++;
  }
  return height;
}

/** Whether what is laid bars a pile from some course of a height. */
export function barsAt({ roof }: Search): (height: number, pile: number) => boolean {
  const isFree = roof.bounds.every(
    ({ least, most, beside }) => least === 0 && most === Infinity && beside.length === 0
  );
  if (isFree) return () => false;
  const barred = roof.heights.map(
    ({ chains }) =>
      (pile: number) =>
        chains.some((chain) => !mayHold(roof.bounds[chain[0]], pile, pile))
  );
  return (height, pile) => barred[height](pile);
}

/** The least cost of ending within a height that the pile enters with so much left. */
export function reachedPartly(
  search: Search,
  top: number,
  pile: number,
  reach: Float64Array,
  mostSlates: number,
  mostWide: number
): number {
  const height = search.roof.heights[top];
  if (!height) return reach[0];
  const columns = columnsOf(search, height, pile);
  const row = Math.min(height.slates, mostSlates - height.below.slates);
  const column = Math.min(columns - 1, mostWide - height.below.slateAndAHalves);
  return reach[row * columns + column];
}
