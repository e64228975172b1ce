import type { CoursePart, Plan } from '$lib/engine/courses';
import { piecesOfDemand } from '$lib/engine/roof';
import type { BodyOf } from '$lib/journal';
import { type PiecesByPile, partsOfPieces, piecesOfParts } from './course-parts.ts';
import { slicePieces } from './laid-stretches.ts';
import { type CoursePartDone, wholeCourse } from './laying-facts.ts';
import { placeOf, planOfParts } from './plan-of-parts.ts';
import type { PlanGround } from './plan-request.ts';
import { type JobView, partOf } from '$lib/journal';

/** How a plan came about: by the rule, the most even one, or as the slater set it. */
export type PlanWay = 'byRule' | 'mostEven' | 'own';

/** The plan in force, set against the roof and the stock as they are now. */
export interface AdoptedPlan {
  readonly id: string;
  readonly at: string;
  readonly body: BodyOf<'planAdopted'>;
  readonly way: PlanWay;
  /** The courses still to lay as adopted, with figures of the stock as it is now. */
  readonly rest: Plan;
  /** Every course of the roof that the plan knows: laid ones as they were laid. */
  readonly whole: Plan;
  /** Courses to lay that the plan does not know, or knows with other pieces: the roof changed. */
  readonly unknownCourses: number;
  /** Piles that the rest of the plan would draw below their reserve, and by how many slates. */
  readonly short: readonly Shortfall[];
}

/** A pile that does not carry what a plan still takes from it, in full slates. */
export interface Shortfall {
  readonly pile: number;
  /** Slates that are missing to lay the plan; 0 where only the reserve is not whole. */
  readonly toLay: number;
  /** Slates that are missing to lay it and to keep the reserve back: at least as many. */
  readonly withReserve: number;
}

/**
 * Piles that hold fewer slates than a plan takes from them and the reserve asks for, in the order of
 * the piles. Every screen that tells of a short pile tells it by this.
 *
 * @example of 200 slates 12 kept back, 195 still to lay → 0 missing to lay, 7 with the reserve
 */
export function shortfallsOf(
  uses: Plan['piles'],
  stocks: readonly { readonly slates: number; readonly reservedSlates: number }[]
): Shortfall[] {
  return uses.flatMap(({ pile, slates }, index) => {
    const { slates: has, reservedSlates } = stocks[index];
    const withReserve = slates + reservedSlates - has;
    return withReserve > 0 ? [{ pile, toLay: Math.max(0, slates - has), withReserve }] : [];
  });
}

/**
 * The plan that was adopted last, read against the job as it stands: what of it is laid, what is
 * left, and whether the stock still carries it. Undefined before a plan was adopted.
 *
 * Cost: linear in the pieces of the roof.
 */
export function adoptedPlanOf(view: JobView, ground: PlanGround): AdoptedPlan | undefined {
  const setting = partOf(view, 'plans').plans.at(-1);
  if (!setting) return undefined;
  const { id, at, value: body } = setting;
  const adopted = new Map(body.courses.map((course) => [placeOf(course), course.piles]));
  const laid = new Map(ground.laid.map((course) => [placeOf(course), course.parts]));

  const toLay = new Map<string, CoursePart[]>();
  const begun = new Map(ground.partLaid.map((course) => [placeOf(course), course]));
  for (const demand of ground.request.courses) {
    const pieces = inPlaces(adopted.get(placeOf(demand)), ground.numbers);
    const part = begun.get(placeOf(demand));
    const total = pieces?.reduce((sum, one) => sum + one.pieces, 0);
    const of = part?.of ?? piecesOfDemand(demand);
    if (pieces && total === of)
      toLay.set(placeOf(demand), partsOfPieces(demand, part ? restOf(pieces, part) : pieces));
  }
  const restRequest = ground.request;
  const rest = planOfParts(restRequest, restRequest.courses, (place) => toLay.get(place));
  return {
    id,
    at,
    body,
    way: wayOf(body),
    rest,
    whole: planOfParts(restRequest, ground.roof.demand, (place) => {
      const rest = toLay.get(place);
      const part = begun.get(place);
      return laid.get(place) ?? (part && rest ? wholeCourse(part, rest) : rest);
    }),
    unknownCourses: ground.request.courses.length - toLay.size,
    short: shortfallsOf(rest.piles, restRequest.piles)
  };
}

/** A course's piles by their places in the stock; undefined where one is no more. */
function inPlaces(
  pieces: PiecesByPile | undefined,
  numbers: readonly number[]
): PiecesByPile | undefined {
  const placed = pieces?.map((one) => ({ ...one, pile: numbers.indexOf(one.pile) + 1 }));
  return placed?.every(({ pile }) => pile > 0) ? placed : undefined;
}

/** A plan of before there were ways is the most even one, unless it was held to a chance. */
function wayOf({ way, heldUnder }: BodyOf<'planAdopted'>): PlanWay {
  return way ?? (heldUnder === undefined ? 'mostEven' : 'byRule');
}

/**
 * The event that adopts a plan of what is left, together with what is laid already. A course of which
 * a part lies is adopted as if its rest began at that end: what lies is told by its own event.
 *
 * @param heldUnder largest accepted chance that a pile runs out, where the plan was held under one
 */
export function planAdoption(
  ground: PlanGround,
  plan: Plan,
  gradesId: string | null,
  kickAllowanceMm: number,
  way: PlanWay,
  heldUnder?: number
): BodyOf<'planAdopted'> {
  const parts = new Map<string, readonly CoursePart[]>(
    [...ground.laid, ...plan.courses].map((course) => [placeOf(course), course.parts])
  );
  const begun = new Map(ground.partLaid.map((course) => [placeOf(course), course]));
  const whole = planOfParts(ground.request, ground.roof.demand, (place) => {
    const part = begun.get(place);
    const rest = parts.get(place);
    return part && rest ? wholeCourse(part, rest) : rest;
  });
  return {
    gradesId,
    kickAllowanceMm,
    expectedKickers: whole.kickers,
    joints: whole.joints,
    way,
    ...(heldUnder !== undefined && { heldUnder }),
    courses: whole.courses
      .filter((course) => course.parts.length > 0)
      .map((course) => {
        const part = begun.get(placeOf(course));
        const rest = piecesOfParts(parts.get(placeOf(course)) ?? []);
        const { slopeId, course: number } = course;
        const piles = (part ? fromItsEnd(rest, part) : rest).map((one) => ({
          ...one,
          pile: ground.numbers[one.pile - 1]
        }));
        return { slopeId, course: number, piles };
      })
  };
}

/** What of a course's pieces is still to lay. */
function restOf(pieces: PiecesByPile, { from, pieces: lie, of }: CoursePartDone): PiecesByPile {
  return from === 'left' ? slicePieces(pieces, lie, of) : slicePieces(pieces, 0, of - lie);
}

/** The rest of a course as a whole course, of which `restOf` gives it back. */
function fromItsEnd(
  rest: readonly { pile: number; pieces: number }[],
  { from, pieces: lie }: CoursePartDone
): { pile: number; pieces: number }[] {
  const nearest = from === 'left' ? 0 : rest.length - 1;
  return rest.map((one, at) => (at === nearest ? { ...one, pieces: one.pieces + lie } : one));
}
