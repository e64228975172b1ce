import { EngineError, requireWhole } from '../errors.ts';
import { largestRemainder } from '../grading/index.ts';
import type { Plan, PlannedCourse } from './plan-types.ts';

/** Fewest pallets a course is drawn from, where its pile has so many: it blends the colour. */
export const FEWEST_PALLETS = 3;

/** What one pallet holds of each pile, pile 1 first. Whole numbers. */
export interface PalletStock {
  readonly palletId: string;
  readonly slates: readonly number[];
  /** Left out when slate-and-a-halves are drawn from a common stock. */
  readonly slateAndAHalves?: readonly number[];
  /** Slate-and-a-halves this pallet gives to the common stock. */
  readonly commonSlateAndAHalves?: number;
}

/** Pieces to fetch from one pallet for one course. */
export interface PalletDraw {
  readonly palletId: string;
  /** 1 for the thickest pile; undefined for slate-and-a-halves of the common stock. */
  readonly pile?: number;
  readonly slates: number;
  readonly slateAndAHalves: number;
}

/** One course of the draw list. */
export interface CourseDraw {
  readonly slopeId: string;
  readonly course: number;
  /** Thicker pile first, then pallets in the order given; pallets that give nothing left out. */
  readonly draws: readonly PalletDraw[];
}

/** The pallets hold less of a pile than the plan lays from it. */
export interface PalletsShort {
  readonly ok: false;
  readonly reason: 'pallets-short';
  /** Undefined for the common stock. */
  readonly pile?: number;
  readonly missingSlates: number;
  readonly missingSlateAndAHalves: number;
}

/**
 * Which pallet each course's slates come from, so that colour blends over the roof.
 *
 * Each course takes from the pallets of its pile in proportion to what they have left (largest
 * remainder, ties to the pallet given first), which wears them all down together. A course that
 * would touch fewer than three pallets although its pile has three is spread to a third, if it has
 * three slates to spread: one slate moves from the pallet that gives most to the fullest that gives
 * none. Slate-and-a-halves are few to a course and are drawn in proportion only.
 *
 * @param plan an optimal plan
 * @param pallets what stands on each pile from each pallet, reserve included; not modified
 * @returns a list in laying order; draws of a course sum exactly to its parts and running totals
 * never pass a pallet's stock. `pallets-short` names the first pile the pallets cannot fill.
 * @throws EngineError `wrong-length` unless every pallet has a figure for every pile; `not-whole`,
 * `out-of-range`; `inconsistent` for two pallets of one name
 *
 * Cost: courses × pallets.
 * @example
 * // a course of 20 from pile 1, of which pallets A, B, C hold 30, 60, 10: draws 6, 12, 2
 */
export function drawList(
  plan: Plan,
  pallets: readonly PalletStock[]
): { readonly ok: true; readonly courses: readonly CourseDraw[] } | PalletsShort {
  const left = palletsLeft(plan, pallets);
  for (const use of plan.piles) {
    const missingSlates = use.slates - sum(left.slates[use.pile - 1]);
    const missingWide = use.slateAndAHalves - sum(left.wide[use.pile - 1]);
    if (missingSlates > 0 || missingWide > 0) return short(use.pile, missingSlates, missingWide);
  }
  const common = sum(plan.courses.map((course) => course.commonSlateAndAHalves));
  if (common > sum(left.common)) return short(undefined, 0, common - sum(left.common));
  return { ok: true, courses: plan.courses.map((course) => drawCourse(course, pallets, left)) };
}

/** What pallets still hold: by pile, then by pallet. Worn down as courses are drawn. */
interface PalletsLeft {
  readonly slates: number[][];
  readonly wide: number[][];
  readonly common: number[];
}

function drawCourse(
  course: PlannedCourse,
  pallets: readonly PalletStock[],
  left: PalletsLeft
): CourseDraw {
  const draws = course.parts.flatMap(({ pile, slates, slateAndAHalves }): PalletDraw[] => {
    const drawn = draw(slates, left.slates[pile - 1], FEWEST_PALLETS);
    const wide = draw(slateAndAHalves, left.wide[pile - 1], 1);
    return pallets.map(({ palletId }, index) => ({
      palletId,
      pile,
      slates: drawn[index],
      slateAndAHalves: wide[index]
    }));
  });
  const common = draw(course.commonSlateAndAHalves, left.common, 1).map(
    (slateAndAHalves, index): PalletDraw => ({
      palletId: pallets[index].palletId,
      slates: 0,
      slateAndAHalves
    })
  );
  return {
    slopeId: course.slopeId,
    course: course.course,
    draws: [...draws, ...common].filter((one) => one.slates + one.slateAndAHalves > 0)
  };
}

/**
 * Draws `count` pieces from pallets in proportion to what is left, and takes them off `left`. No
 * share passes what a pallet has left, since no more is drawn than all have left together.
 */
function draw(count: number, left: number[], fewestPallets: number): number[] {
  if (count === 0) return left.map(() => 0);
  const drawn = largestRemainder(left, count);
  const wanted = Math.min(fewestPallets, count, left.filter((stock) => stock > 0).length);
  while (drawn.filter((pieces) => pieces > 0).length < wanted) {
    const most = indexOfMost(drawn);
    const fullest = indexOfMost(left.map((stock, index) => (drawn[index] > 0 ? 0 : stock)));
    drawn[most]--;
    drawn[fullest]++;
  }
  for (const [index, pieces] of drawn.entries()) left[index] -= pieces;
  return drawn;
}

function palletsLeft(plan: Plan, pallets: readonly PalletStock[]): PalletsLeft {
  const names = new Set(pallets.map(({ palletId }) => palletId));
  if (names.size < pallets.length)
    throw new EngineError('inconsistent', 'two pallets have the same name');
  for (const { palletId, slates, slateAndAHalves = [], commonSlateAndAHalves = 0 } of pallets) {
    if (slates.length !== plan.piles.length)
      throw new EngineError('wrong-length', `pallet ${palletId} has ${slates.length} piles`);
    for (const count of [...slates, ...slateAndAHalves, commonSlateAndAHalves])
      requireWhole(count, 0, `stock of pallet ${palletId}`);
  }
  return {
    slates: plan.piles.map((_pile, index) => pallets.map(({ slates }) => slates[index])),
    wide: plan.piles.map((_pile, index) =>
      pallets.map(({ slateAndAHalves }) => slateAndAHalves?.[index] ?? 0)
    ),
    common: pallets.map(({ commonSlateAndAHalves = 0 }) => commonSlateAndAHalves)
  };
}

function short(pile: number | undefined, slates: number, slateAndAHalves: number): PalletsShort {
  return {
    ok: false,
    reason: 'pallets-short',
    ...(pile !== undefined && { pile }),
    missingSlates: Math.max(0, slates),
    missingSlateAndAHalves: Math.max(0, slateAndAHalves)
  };
}

function indexOfMost(numbers: readonly number[]): number {
  return numbers.reduce((best, number, index) => (number > numbers[best] ? index : best), 0);
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
