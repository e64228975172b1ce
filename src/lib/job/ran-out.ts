import type { CoursePart, Plan, PlanRequest } from '$lib/engine/courses';
import { momentsOfBins } from '$lib/engine/thickness';
import { joinParts } from './course-parts.ts';
import { firstThinBelowThick } from './own-plan.ts';
import { pilesLeft } from './piles-left.ts';
import { placeOf, planOfParts } from './plan-of-parts.ts';
import type { PlanGround } from './plan-request.ts';
import { undereaveOfPiles } from './undereave-draw.ts';

/** Courses of a pile that ran out, laid from a neighbouring pile instead. */
export interface Borrowed {
  readonly fromPile: number;
  /** The rest of the roof so laid. */
  readonly plan: Plan;
  readonly courses: number;
  /** The lowest of them. */
  readonly first: { readonly slopeId: string; readonly course: number };
  readonly slates: number;
  /** Slates that are missing all the same, since the neighbour has no more to spare. */
  readonly stillMissing: number;
  /** Expected kickers gained. */
  readonly kickersGained: number;
  /** Whether a thinner course then lies below a thicker one, against the rule. */
  readonly rises: boolean;
}

/** What a pile that ran out leaves to do, priced. */
export interface RanOut {
  readonly pile: number;
  readonly standing: number;
  /** Expected of it from the pallets, if they are sorted. */
  readonly toCome: number;
  /** Slates to sort until what is missing is there; undefined where the pallets do not hold it. */
  readonly toSort?: number;
  /** Slates that the rest of the plan, with its undereave rows, takes beyond those that stand there. */
  readonly missing: number;
  /** Piles beside it, thicker first: what they give, or undefined where they have none to spare. */
  readonly neighbours: readonly { readonly pile: number; readonly borrowed?: Borrowed }[];
  /** Mean thickness of the pile, to order by. */
  readonly aboutMm?: number;
  /** What a planner is asked who may count on nothing more of the pile than stands there. */
  readonly request: PlanRequest;
}

/**
 * What can be done where a pile holds no more sorted slates than were counted: how far the slates
 * still on the pallets reach, and what its courses come to if a neighbouring pile lays them. From a
 * thinner pile the uppermost courses are taken, from a thicker the lowest, whole courses, until
 * nothing is missing or the neighbour has no more to spare beyond its own courses and its reserve.
 *
 * Cost: linear in the pieces of the roof.
 */
export function ranOut(ground: PlanGround, rest: Plan, pile: number): RanOut {
  const book = pilesLeft(ground);
  const { standing, toCome } = book[pile - 1];
  const kept = undereaveOfPiles(ground.undereave, book.length)[pile - 1].slates;
  const forCourses = Math.max(0, standing - kept);
  const missing = Math.max(0, rest.piles[pile - 1].slates - forCourses);
  const unsorted = book.reduce((sum, each) => sum + each.toCome, 0);
  const toSort =
    missing <= toCome && toCome > 0 ? Math.ceil((missing * unsorted) / toCome) : undefined;
  const mean = momentsOfBins(ground.pileBins[pile - 1]);
  const beside = [pile - 1, pile + 1].filter((one) => one >= 1 && one <= book.length);
  return {
    ...{ pile, standing, toCome, missing },
    ...(toSort !== undefined && { toSort }),
    ...(mean.ok && { aboutMm: mean.meanMm }),
    neighbours: beside.map((from) => {
      const borrowed = missing > 0 ? borrow(ground, rest, pile, from, missing) : undefined;
      return { pile: from, ...(borrowed && { borrowed }) };
    }),
    request: {
      ...ground.request,
      piles: ground.request.piles.map((stock, index) =>
        index === pile - 1
          ? {
              ...stock,
              slates: forCourses,
              reservedSlates: Math.min(stock.reservedSlates, forCourses)
            }
          : stock
      )
    }
  };
}

function borrow(
  ground: PlanGround,
  rest: Plan,
  pile: number,
  fromPile: number,
  missing: number
): Borrowed | undefined {
  const own = rest.courses.filter(({ parts }) => parts.some((part) => part.pile === pile));
  const inOrder = fromPile > pile ? own.toReversed() : own;
  let { spareSlates: spare, spareSlateAndAHalves: spareWide } = rest.piles[fromPile - 1];
  let slates = 0;
  const changed = new Map<string, readonly CoursePart[]>();
  const places: (typeof own)[number][] = [];
  for (const course of inOrder) {
    const part = course.parts.find((one) => one.pile === pile);
    if (!part || slates >= missing) break;
    if (part.slates > spare || part.slateAndAHalves > Math.max(0, spareWide)) break;
    spare -= part.slates;
    spareWide -= part.slateAndAHalves;
    slates += part.slates;
    const parts = course.parts.map((one) => (one.pile === pile ? { ...one, pile: fromPile } : one));
    changed.set(placeOf(course), joinParts(parts));
    places.push(course);
  }
  const first = places.toSorted((one, other) => one.heightMm - other.heightMm).at(0);
  if (!first) return undefined;
  const before = new Map(rest.courses.map((course) => [placeOf(course), course.parts]));
  const partsOf = (place: string) => changed.get(place) ?? before.get(place);
  const plan = planOfParts(ground.request, ground.request.courses, partsOf);
  return {
    ...{ fromPile, plan, slates, courses: places.length },
    first: { slopeId: first.slopeId, course: first.course },
    stillMissing: Math.max(0, missing - slates),
    kickersGained: plan.kickers - rest.kickers,
    rises: firstThinBelowThick([...ground.laid, ...ground.partLaid, ...plan.courses]) !== undefined
  };
}
