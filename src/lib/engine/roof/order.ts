import { EngineError, requireFinite } from '../errors.ts';
import type { RoofTotals } from './layout.ts';
import { NAILS_PER_PIECE } from './materials.ts';
import { piecesCounted } from './demand.ts';

/** What comes on top of what a roof takes. Shares of it. */
export interface OrderAllowances {
  /** Slates broken in handling and cutting. */
  readonly breakageShare: number;
  /** Slates kept for repairs. */
  readonly sparesShare: number;
  /** Batten lost in cutting and laps. */
  readonly battenWasteShare: number;
  /** Length that battens are bought in, mm. */
  readonly battenLengthMm: number;
}

/** Slates of one kind: what the roof takes, what comes on top, what is there, and what to order. */
export interface OrderedSlates {
  readonly kind: 'slate' | 'undereave' | 'slate-and-a-half';
  readonly takes: number;
  readonly breakage: number;
  readonly spares: number;
  /** What the roof takes with breakage and spares. */
  readonly needed: number;
  /** Of this kind there already; undefined where there is no stock, or nobody counted this kind. */
  readonly there?: number;
  readonly order: number;
}

/** What a job has already, laid slates with it. In whole slates. */
export interface SlatesThere {
  /** Slates of full width that will do, the broken ones with them. */
  readonly slates: number;
  /** Of these, lost since: they come off the breakage, and what is beyond it is not there. */
  readonly lost: number;
  /** Slates set aside that will do for the undereave, none of them among `slates`. */
  readonly forUndereave: number;
  /** Whether the undereave row is cut from slates; else it comes ready cut, and no slate serves it. */
  readonly isUndereaveCut: boolean;
  /** Slate-and-a-halves; undefined where nobody counted them. */
  readonly slateAndAHalves?: number;
  /** Slates that its piles keep back beyond the shares, since each rounds up; 0 if left out. */
  readonly roundedUp?: number;
}

/** Nails of one length. */
export interface OrderedNails {
  /** Undefined while no thickness is known, or no plan says how many of each length. */
  readonly lengthMm?: number;
  readonly takes: number;
  readonly order: number;
}

/** Everything to order for a roof. */
export interface RoofOrder {
  readonly slates: readonly OrderedSlates[];
  readonly nails: readonly OrderedNails[];
  readonly battens: {
    readonly takesM: number;
    readonly orderM: number;
    /** Whole battens that hold as much, and their length. */
    readonly pieces: number;
    readonly lengthMm: number;
  };
  /** Slates laid in all, the undereave with them. */
  readonly pieces: number;
  /** Hours of laying at the pace given. */
  readonly hours?: number;
  /** Price of the slates at the price given. */
  readonly price?: number;
}

/**
 * How many must come so that some are there once a share of all of them is kept back, rounded up.
 *
 * @throws EngineError `out-of-range` for a share of 1 or more
 * @example 104 that are lacking, 4.5 % kept back → 109
 */
export function toBuy(lacking: number, reserveShare = 0): number {
  if (!(reserveShare < 1))
    throw new EngineError('out-of-range', `reserve is ${reserveShare}; give less than 1`);
  return upTo(lacking / (1 - reserveShare));
}

/**
 * What to order for a whole roof.
 *
 * Breakage and spares are shares of the slates that come, as piles keep them back, rounded up to whole
 * slates: what is ordered is enough for a plan that keeps them back. Undereave slates are cut from slates and
 * ordered as such; wide ones from slate-and-a-halves. Nails are two to a piece, with the breakage share on
 * top, by the lengths that the piles' thickness asks for; those the piles do not account for take the
 * last length. Before a plan shares them out they have a length where all piles ask for the same one.
 *
 * Of what is there each slate counts once: the courses take what they need, the undereave row those set
 * aside for it and then what is left over. Slate-and-a-halves serve their own line alone.
 *
 * @param totals of a roof laid out
 * @param nailsByLength nails that the plan asks for, by length in mm; may be empty
 * @param rates pieces laid an hour, and the price of a thousand slates; each may be left out
 * @param there what the job has already; left out, all of it is ordered
 * @returns counts in pieces, battens in metres rounded up to whole ones, and in battens as bought
 * @throws EngineError `not-finite`, `out-of-range` for a share below 0, breakage and spares of 1 or more
 * together, a pace or a length of battens not above 0
 * Source: breakage and spares as the job sets them; batten waste is common practice, no source.
 * @example
 * // 1000 slates, breakage 2.5 %, spares 2 %: 1048 to order, of which 27 and 21; 600 there: 448
 */
export function roofOrder(
  totals: RoofTotals,
  allowances: OrderAllowances,
  nailsByLength: readonly { readonly lengthMm: number; readonly nails: number }[] = [],
  rates: { readonly piecesPerHour?: number; readonly pricePerThousand?: number } = {},
  there?: SlatesThere
): RoofOrder {
  for (const name of ['breakageShare', 'sparesShare', 'battenWasteShare'] as const)
    requireShare(allowances[name], name);
  const { breakageShare, sparesShare } = allowances;
  const { piecesPerHour, pricePerThousand } = rates;
  if (piecesPerHour !== undefined && !(piecesPerHour > 0))
    throw new EngineError('out-of-range', `pace is ${piecesPerHour} an hour; give more than 0`);
  const { battenLengthMm } = allowances;
  requireFinite(battenLengthMm, 'length of battens');
  if (battenLengthMm <= 0)
    throw new EngineError('out-of-range', `battens are ${battenLengthMm} mm; give more than 0`);
  const battensM = totals.battenM * (1 + allowances.battenWasteShare);
  const slatesOf = (kind: OrderedSlates['kind'], takes: number): OrderedSlates => {
    const needed = toBuy(takes, breakageShare + sparesShare);
    const spares = Math.min(needed - takes, Math.round(needed * sparesShare));
    return { kind, takes, breakage: needed - takes - spares, spares, needed, order: needed };
  };
  const whole = [
    slatesOf('slate', totals.slates),
    slatesOf('undereave', totals.undereaveSlates),
    slatesOf('slate-and-a-half', totals.slateAndAHalves + totals.undereaveSlateAndAHalves)
  ];
  const slates = (there ? lessThere(whole, there) : whole).filter(({ takes }) => takes > 0);
  const pieces =
    piecesCounted(totals.counts) + totals.undereaveSlates + totals.undereaveSlateAndAHalves;
  const ordered = slates
    .filter(({ kind }) => kind !== 'slate-and-a-half')
    .reduce((sum, { order }) => sum + order, 0);
  return {
    slates,
    nails: nailsOf(pieces * NAILS_PER_PIECE, nailsByLength, allowances.breakageShare),
    battens: {
      takesM: totals.battenM,
      orderM: upTo(battensM),
      pieces: upTo((battensM * 1000) / battenLengthMm),
      lengthMm: battenLengthMm
    },
    pieces,
    ...(piecesPerHour !== undefined && { hours: pieces / piecesPerHour }),
    ...(pricePerThousand !== undefined && { price: (ordered * pricePerThousand) / 1000 })
  };
}

/** The lines of slates, undereave and slate-and-a-halves less what is there of each. */
function lessThere(
  [courses, undereave, wide]: readonly OrderedSlates[],
  { slates, lost, forUndereave, isUndereaveCut, slateAndAHalves, roundedUp = 0 }: SlatesThere
): OrderedSlates[] {
  const slate = {
    ...courses,
    breakage: courses.breakage + roundedUp,
    needed: courses.needed + roundedUp
  };
  const breakage = slate.breakage + (isUndereaveCut ? undereave.breakage : 0);
  const standing = Math.max(0, slates - Math.max(0, lost - breakage));
  const short = Math.max(0, undereave.needed - forUndereave);
  const over = Math.max(0, standing - slate.needed);
  const toUndereave = isUndereaveCut ? Math.min(short, over) : 0;
  const less = (line: OrderedSlates, has: number): OrderedSlates => ({
    ...line,
    there: has,
    order: Math.max(0, line.needed - has)
  });
  return [
    less(slate, standing - toUndereave),
    isUndereaveCut ? less(undereave, forUndereave + toUndereave) : undereave,
    slateAndAHalves === undefined ? wide : less(wide, slateAndAHalves)
  ];
}

function nailsOf(
  all: number,
  byLength: readonly { readonly lengthMm: number; readonly nails: number }[],
  breakageShare: number
): OrderedNails[] {
  const lengths = new Map<number, number>();
  for (const { lengthMm, nails } of byLength.filter((one) => one.nails > 0))
    lengths.set(lengthMm, (lengths.get(lengthMm) ?? 0) + nails);
  const known = [...lengths.values()].reduce((sum, nails) => sum + nails, 0);
  const last = [...lengths.keys()].at(-1);
  const withRest = (nails: number): OrderedNails['order'] => upTo(nails * (1 + breakageShare));
  if (last === undefined) {
    const sizes = new Set(byLength.map(({ lengthMm }) => lengthMm));
    const only = sizes.size === 1 && { lengthMm: byLength[0].lengthMm };
    return all > 0 ? [{ ...only, takes: all, order: withRest(all) }] : [];
  }
  lengths.set(last, (lengths.get(last) ?? 0) + Math.max(0, all - known));
  return [...lengths]
    .sort(([one], [other]) => one - other)
    .map(([lengthMm, takes]) => ({ lengthMm, takes, order: withRest(takes) }));
}

/** Up to a whole number, forgiving the binary error of decimals. */
function upTo(value: number): number {
  return Math.ceil(Number(value.toFixed(9)));
}

function requireShare(share: number, name: string): void {
  requireFinite(share, name);
  if (share < 0) throw new EngineError('out-of-range', `${name} is ${share}; give 0 or more`);
}
