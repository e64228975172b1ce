import { EngineError, requireFinite, requireWhole } from '../errors.ts';
import { courseName } from './laying-order.ts';
import type { KickChances, LaidCourse, PlanRequest } from './plan-types.ts';

/**
 * Throws unless the stock and the chances of a request are possible figures that fit each other.
 * (The courses are checked where they are put in laying order.) A stock that is merely too small
 * is no misuse: the planner answers it with `short`.
 *
 * @throws EngineError `not-whole`, `out-of-range`, `wrong-length`, `inconsistent`:
 *   which figure, and what it must be
 */
export function requireRequest(request: PlanRequest): void {
  for (const [index, pile] of request.piles.entries()) {
    const name = `pile ${index + 1}`;
    requireWhole(pile.slates, 0, `slates of ${name}`);
    requireWhole(pile.slateAndAHalves, 0, `slate-and-a-halves of ${name}`);
    requireWhole(pile.reservedSlates, 0, `reserve of ${name}`);
    requireWhole(pile.reservedSlateAndAHalves, 0, `reserve of slate-and-a-halves of ${name}`);
  }
  if (request.common) {
    requireWhole(request.common.slateAndAHalves, 0, 'common slate-and-a-halves');
    requireWhole(request.common.reservedSlateAndAHalves, 0, 'reserve of common slate-and-a-halves');
  }
  requireChances(request.kicks, request.piles.length, request.common !== undefined);
  for (const course of request.laid ?? []) requireLaid(course, request.piles.length);
}

function requireLaid(course: LaidCourse, piles: number): void {
  const { heightMm, thickestPile, thinnestPile } = course;
  requireFinite(heightMm, `height of ${courseName(course)}`);
  requireWhole(thickestPile, 1, `thickest pile of ${courseName(course)}`);
  requireWhole(thinnestPile, thickestPile, `thinnest pile of ${courseName(course)}`);
  if (thinnestPile > piles)
    throw new EngineError(
      'out-of-range',
      `${courseName(course)} is laid from pile ${thinnestPile}`
    );
}

function requireChances(kicks: KickChances, piles: number, needsCommon: boolean): void {
  requireRow(kicks.within, piles, 'chances within piles');
  if (kicks.between.length !== piles)
    throw new EngineError('wrong-length', `${kicks.between.length} rows of chances between piles`);
  for (const [row, chances] of kicks.between.entries()) {
    requireRow(chances, piles, `chances between pile ${row + 1} and others`);
    for (let column = 0; column < row; column++)
      if (chances[column] !== kicks.between[column][row])
        throw new EngineError(
          'inconsistent',
          `piles ${column + 1} and ${row + 1} kick with chance ${kicks.between[column][row]} and ${chances[column]}`
        );
  }
  if (!needsCommon) return;
  if (!kicks.common)
    throw new EngineError('inconsistent', 'a common stock needs its chances of kicking');
  requireRow(kicks.common.withPile, piles, 'chances with the common stock');
  requireChance(kicks.common.within, 'chance within the common stock');
}

function requireRow(chances: readonly number[], length: number, name: string): void {
  if (chances.length !== length)
    throw new EngineError('wrong-length', `${chances.length} ${name} for ${length} piles`);
  for (const chance of chances) requireChance(chance, name);
}

function requireChance(chance: number, name: string): void {
  requireFinite(chance, name);
  if (chance < 0 || chance > 1)
    throw new EngineError('out-of-range', `${name}: ${chance}; give 0 to 1`);
}
