import type { KnownStack } from '$lib/engine/thickness';
import { type BodyOf, type JobView, partOf } from '$lib/journal';
import { lastCountOf } from './counted-piles.ts';
import { pilesLeft } from './piles-left.ts';
import { type PlanGround, planRequestOf } from './plan-request.ts';
import { gradesOf, tallyPallets } from './queries.ts';
import { type Stock, numbersInStock, stockOf } from './stock.ts';

/** What else a count says: how it was taken, or the slate-and-a-halves counted with it. */
type CountExtras = Partial<
  Pick<BodyOf<'pileCounted'>, 'heightMm' | 'sdSlates' | 'slateAndAHalves'>
>;

/**
 * The event that says how many slates really stand on a pile. What was laid and lost by now is in the
 * count already; slate-and-a-halves stay as they are unless they are counted too.
 *
 * @param pile its place, 1 for the thickest
 * @param slates counted, whole
 */
export function handCount(
  { left: leftOf, before, stock, numbers }: PlanGround,
  pile: number,
  slates: number,
  gradesId: string | null,
  extras: CountExtras = {}
): BodyOf<'pileCounted'> {
  const left = leftOf[pile - 1];
  const { slates: had, slateAndAHalves: wide } = before[pile - 1];
  return {
    ...{ gradesId, pile: numbers[pile - 1], slates, tallied: stock.piles[pile - 1].tallied },
    taken: Math.max(0, had - left.slates),
    ...(wide !== undefined && { slateAndAHalves: left.slateAndAHalves }),
    ...extras
  };
}

/** One pile as whoever counts it finds it in the book. */
export interface PileInBook {
  /** Its place, 1 for the thickest. */
  readonly pile: number;
  readonly number: number;
  /** Whether the grades in force sort on to it. */
  readonly isGraded: boolean;
  /** Whether it was counted before. */
  readonly isCounted: boolean;
  /** Full slates that stand there by the book. */
  readonly standing: number;
  /** How far that may be off, as a standard deviation: it was counted by its height. */
  readonly sdSlates: number;
  /** Slate-and-a-halves that stand there; undefined before they were counted. */
  readonly wide: number | undefined;
  /** The event that a count of it is; see {@link handCount}. */
  readonly count: (slates: number, extras?: CountExtras) => BodyOf<'pileCounted'>;
}

/** What the piles are counted against. */
export interface CountingGround {
  readonly piles: readonly PileInBook[];
  /**
   * Most slates that can stand on the piles: what came less those set aside, laid and lost. Undefined
   * where nobody knows how many came on a pallet.
   */
  readonly most: number | undefined;
  /** Whether the roof takes slate-and-a-halves. */
  readonly hasWide: boolean;
  /** Whether some pile was counted before. */
  readonly isCounted: boolean;
}

/** What a count of the piles rests on, before and after there is a roof. */
export function countingGround(view: JobView): CountingGround {
  const ground = planRequestOf(view);
  const stock = ground.ok ? ground.stock : stockOf(view);
  const isKnown = tallyPallets(view).every(({ slates }) => slates > 0);
  const taken = ground.ok
    ? ground.before.reduce(
        (sum, { slates }, at) => sum + Math.max(0, slates - ground.left[at].slates),
        0
      )
    : 0;
  const most = Math.max(0, stock.delivered - stock.setAside - taken);
  return {
    piles: ground.ok ? fromGround(view, ground) : withoutRoof(view, stock),
    most: isKnown && stock.delivered > 0 ? most : undefined,
    hasWide: ground.ok && ground.slateAndAHalvesNeeded > 0,
    isCounted: stock.piles.some(({ number }) => lastCountOf(view, number) !== undefined)
  };
}

function fromGround(view: JobView, ground: PlanGround): PileInBook[] {
  const gradesId = gradesOf(view)?.gradesId ?? null;
  return pilesLeft(ground).map(({ pile, standing }, index) => {
    const { slateAndAHalves } = ground.left[index];
    const before = ground.before[index];
    return {
      ...{ pile, standing, ...ofStock(view, ground.stock, index) },
      wide: before.slateAndAHalves === undefined ? undefined : slateAndAHalves,
      count: (counted, extras) => handCount(ground, pile, counted, gradesId, extras)
    };
  });
}

function ofStock(view: JobView, { piles }: Stock, index: number) {
  const { number, grade, countSd } = piles[index];
  const isCounted = lastCountOf(view, number) !== undefined;
  return { number, isGraded: grade !== undefined, isCounted, sdSlates: countSd };
}

/** Nothing is laid before there is a roof. */
function withoutRoof(view: JobView, stock: Stock): PileInBook[] {
  const gradesId = gradesOf(view)?.gradesId ?? null;
  return stock.piles.map(({ pile, number, onPile, tallied }, index) => ({
    ...{ pile, standing: onPile, ...ofStock(view, stock, index), wide: undefined },
    count: (slates, extras = {}) => ({
      ...{ gradesId, pile: number, slates, tallied, taken: 0 },
      ...extras
    })
  }));
}

/** Why counts of piles cannot stand. */
export type CountRefusal =
  /** More than came, whatever stands on the other piles. */
  | { readonly pile: number; readonly reason: 'above-came'; readonly most: number }
  /** More than came together with the other piles. */
  | {
      readonly pile: number;
      readonly reason: 'above-with-others';
      readonly sum: number;
      readonly most: number;
    };

/**
 * What is wrong with counts of some piles, where the others stand as in the book: more slates than
 * came. The pile named is the one that grew most.
 *
 * @param counted the fewest slates that each pile may hold by its count, pile 1 first; undefined
 * where it was not counted
 * @example 400 came, 300 stand on pile 2, 150 counted on pile 1 → 450 with the others
 */
export function refusedCounts(
  { piles, most }: Pick<CountingGround, 'piles' | 'most'>,
  counted: readonly (number | undefined)[]
): CountRefusal | undefined {
  if (most === undefined) return undefined;
  const tooMany = counted.findIndex((slates) => slates !== undefined && slates > most);
  if (tooMany >= 0) return { pile: tooMany + 1, reason: 'above-came', most };
  const sum = piles.reduce((total, { standing }, at) => total + (counted[at] ?? standing), 0);
  const grewBy = piles.map(({ standing }, at) => (counted[at] ?? standing) - standing);
  const grewMost = Math.max(...grewBy);
  if (sum <= most || grewMost <= 0) return undefined;
  return { pile: grewBy.indexOf(grewMost) + 1, reason: 'above-with-others', sum, most };
}

/** Stacks of known count on the piles, by the place of each pile; a pile that is no more has none. */
export function knownStacks(view: JobView): (KnownStack & { readonly eventId: string })[] {
  const numbers = numbersInStock(view);
  return partOf(view, 'job').packed.flatMap(({ id, value }) => {
    const pile = value.pile === undefined ? 0 : numbers.indexOf(value.pile) + 1;
    const { slates, totalMm } = value;
    return pile > 0 && totalMm > 0 ? [{ eventId: id, pile, slates, totalMm }] : [];
  });
}
