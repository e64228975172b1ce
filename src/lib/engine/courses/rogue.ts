import { EngineError, requireFinite } from '../errors.ts';
import { type KickSoftness, kickProbabilityBetween } from '../grading/index.ts';
import { type ThicknessBins, binsFromPairs } from '../thickness/index.ts';
import { toHundredths } from '../units.ts';
import type { Plan } from './plan-types.ts';

/** How a rogue slate would sit among the slates of one pile. */
export interface RogueInPile {
  readonly pile: number;
  /** Chance that it kicks with a random neighbour from the pile. */
  readonly kickChance: number;
  readonly mayLie: boolean;
}

/** A course, and within it a pile, where a rogue may lie. */
export interface RoguePlace {
  readonly slopeId: string;
  readonly course: number;
  readonly pile: number;
}

/** The answer to: may this slate lie here, and if not, where? */
export interface RogueCheck {
  /** One per pile, pile 1 first. */
  readonly piles: readonly RogueInPile[];
  /** Courses of the plan where it may lie, in laying order; a changeover course names the part. */
  readonly places: readonly RoguePlace[];
}

/**
 * Where a slate that stands out may be laid: in courses of a pile among whose slates it kicks with
 * a random neighbour no more often than is accepted. It has two neighbours (one at an end), each
 * with that chance.
 *
 * @param plan courses that may still take it: the plan of what is left
 * @param piles spread of each pile; a pile without slates takes no rogue
 * @param thicknessMm gauged thickness of the slate
 * @param mostKickChance largest accepted chance for each joint, 0 to 1
 * @param softness how far steps scatter about the difference of two slates; not at all if left out
 * @throws EngineError `wrong-length`, `not-finite`, `out-of-range`
 *
 * Cost: bins × piles, then linear in the courses.
 * @example
 * // pile of 5.0, 5.2, 5.4 and 7.0 mm, allowance 1.5 mm: a slate of 6.8 mm kicks with 5.0 and 5.2,
 * // that is with chance 0.5
 */
export function rogueCheck(
  plan: Plan,
  piles: readonly ThicknessBins[],
  thicknessMm: number,
  kickAllowanceMm: number,
  mostKickChance: number,
  softness?: KickSoftness
): RogueCheck {
  if (piles.length !== plan.piles.length)
    throw new EngineError('wrong-length', `${piles.length} spreads for ${plan.piles.length} piles`);
  requireFinite(mostKickChance, 'accepted chance');
  if (mostKickChance < 0 || mostKickChance > 1)
    throw new EngineError('out-of-range', `accepted chance is ${mostKickChance}; give 0 to 1`);
  const rogue = binsFromPairs([[toHundredths(thicknessMm), 1]]);
  const checked = piles.map((pile, index): RogueInPile => {
    const kickChance = kickProbabilityBetween(rogue, pile, kickAllowanceMm, softness);
    const mayLie = pile.counts.length > 0 && kickChance <= mostKickChance;
    return { pile: index + 1, kickChance, mayLie };
  });
  return {
    piles: checked,
    places: plan.courses.flatMap(({ slopeId, course, parts }) =>
      parts
        .filter((part) => checked[part.pile - 1].mayLie)
        .map((part) => ({ slopeId, course, pile: part.pile }))
    )
  };
}
