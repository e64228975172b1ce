import { EngineError, requireWhole } from '../errors.ts';
import type { CourseDemand } from '../roof/index.ts';
import { courseName } from './laying-order.ts';
import type {
  CommonStock,
  CoursePart,
  LaidCourse,
  PileStock,
  Plan,
  PlannedCourse,
  PlanRequest
} from './plan-types.ts';

/** Something that happened on the roof, in the order it happened. */
export type LayingEvent =
  | {
      readonly type: 'course-laid';
      readonly slopeId: string;
      readonly course: number;
      /** What was really laid, if not what the plan said. */
      readonly parts?: readonly CoursePart[];
    }
  | {
      /** A stretch of a course that is not laid to its end. */
      readonly type: 'course-part-laid';
      /** The pieces of this stretch. */
      readonly parts: readonly CoursePart[];
      /** What of the course is still to lay after it. */
      readonly rest: CourseDemand;
    }
  | {
      /** An undereave row, which is no course: its pieces come off the stock and bind nothing. */
      readonly type: 'undereave-laid';
      readonly parts: readonly CoursePart[];
    }
  | {
      /** Slates broken or thrown out while laying. */
      readonly type: 'slates-lost';
      readonly pile: number | 'common';
      readonly slates: number;
      readonly slateAndAHalves: number;
    }
  | {
      /** A pile counted again; a pile that ran out is counted as nothing. */
      readonly type: 'pile-counted';
      readonly pile: number | 'common';
      readonly slates: number;
      readonly slateAndAHalves: number;
    };

/** Where a roof stands that is laid in part. */
export interface LayingProgress {
  /** Courses laid, in the order they were laid. */
  readonly laid: readonly { readonly slopeId: string; readonly course: number }[];
  readonly lostSlates: number;
  readonly lostSlateAndAHalves: number;
  /** What is left to plan: courses not laid, stock not used; hand it to the planner. */
  readonly remaining: PlanRequest;
  /**
   * Piles that gave more than they were counted to hold, as they stand after the last count: their
   * stock is taken as nothing until they are counted again.
   */
  readonly overdrawn: readonly (number | 'common')[];
}

/**
 * Folds what happened on the roof into what is left of it. Nothing is planned here: plan
 * `remaining` again when asked to, and compare the plans.
 *
 * Rules. A laid course takes its pieces off the stock (those of the plan unless others are given).
 * A lost slate comes off the stock and off the reserve, for the reserve is there to break; but the
 * reserve never falls below the spares kept for repairs. A count replaces the stock. Laid courses
 * bind the rest: nothing thicker above them, nothing thinner below. So does a part of a course that
 * is laid; its rest stays to be planned as a shorter course.
 *
 * @param request what the plan was made for
 * @param keptSpares full slates of each pile kept for repairs whatever breaks; none if left out
 * @throws EngineError `inconsistent` for a course that is not in the plan or laid twice;
 * `out-of-range` for a pile that does not exist; `not-whole`
 *
 * Cost: linear in courses and events.
 */
export function layingProgress(
  request: PlanRequest,
  plan: Plan,
  events: readonly LayingEvent[],
  keptSpares: readonly number[] = request.piles.map(() => 0)
): LayingProgress {
  if (keptSpares.length !== request.piles.length)
    throw new EngineError('wrong-length', `${keptSpares.length} spares`);
  const piles = request.piles.map((pile) => ({ ...pile }));
  const common = request.common && { ...request.common };
  const planned = new Map(plan.courses.map((course) => [key(course), course]));
  const laid = new Map<string, LaidCourse | undefined>();
  const partLaid: LaidCourse[] = [];
  const restOf = new Map<string, CourseDemand>();
  const overdrawn = new Set<number | 'common'>();
  let lostSlates = 0;
  let lostSlateAndAHalves = 0;

  const stockOf = (pile: number): Mutable<PileStock> => {
    requireWhole(pile, 1, 'pile');
    if (pile > piles.length) throw new EngineError('out-of-range', `there is no pile ${pile}`);
    return piles[pile - 1];
  };
  const take = (pile: number | 'common', slates: number, slateAndAHalves: number) => {
    requireWhole(slates, 0, 'slates');
    requireWhole(slateAndAHalves, 0, 'slate-and-a-halves');
    if (pile !== 'common') {
      const stock = stockOf(pile);
      const wide = common ? 0 : slateAndAHalves;
      if (slates > stock.slates || wide > stock.slateAndAHalves) overdrawn.add(pile);
      stock.slates = Math.max(0, stock.slates - slates);
      stock.slateAndAHalves = Math.max(0, stock.slateAndAHalves - wide);
    } else if (common) {
      if (slateAndAHalves > common.slateAndAHalves) overdrawn.add(pile);
      common.slateAndAHalves = Math.max(0, common.slateAndAHalves - slateAndAHalves);
    } else throw new EngineError('inconsistent', 'there is no common stock');
  };

  for (const event of events) {
    if (event.type === 'course-laid') {
      const course = planned.get(key(event));
      if (!course) throw new EngineError('inconsistent', `${courseName(event)} is not in the plan`);
      if (laid.has(key(event)))
        throw new EngineError('inconsistent', `${courseName(event)} is laid twice`);
      const parts = event.parts ?? course.parts;
      for (const part of parts) take(part.pile, part.slates, part.slateAndAHalves);
      laid.set(key(event), laidCourse(course, parts));
      if (course.commonSlateAndAHalves > 0) take('common', 0, course.commonSlateAndAHalves);
    } else if (event.type === 'course-part-laid') {
      const { parts, rest } = event;
      for (const part of parts) take(part.pile, part.slates, part.slateAndAHalves);
      const binds = laidCourse(rest, parts);
      if (binds) partLaid.push(binds);
      restOf.set(key(rest), rest);
    } else if (event.type === 'undereave-laid') {
      for (const part of event.parts) take(part.pile, part.slates, part.slateAndAHalves);
    } else if (event.type === 'slates-lost') {
      take(event.pile, event.slates, event.slateAndAHalves);
      lostSlates += event.slates;
      lostSlateAndAHalves += event.slateAndAHalves;
      if (event.pile === 'common') breakCommon(common!, event.slateAndAHalves);
      else breakReserve(stockOf(event.pile), event, keptSpares[event.pile - 1]);
    } else {
      requireWhole(event.slates, 0, 'slates');
      requireWhole(event.slateAndAHalves, 0, 'slate-and-a-halves');
      overdrawn.delete(event.pile);
      const { slates, slateAndAHalves } = event;
      if (event.pile !== 'common') Object.assign(stockOf(event.pile), { slates, slateAndAHalves });
      else if (common) common.slateAndAHalves = slateAndAHalves;
      else throw new EngineError('inconsistent', 'there is no common stock');
    }
  }
  return {
    laid: [...laid.keys()].map((name) => courseOf(planned.get(name)!)),
    lostSlates,
    lostSlateAndAHalves,
    overdrawn: [...overdrawn],
    remaining: {
      ...request,
      courses: request.courses
        .filter((course) => !laid.has(key(course)))
        .map((course) => restOf.get(key(course)) ?? course),
      piles,
      ...(common && { common }),
      laid: [
        ...(request.laid ?? []),
        ...partLaid,
        ...[...laid.values()].filter((course) => course !== undefined)
      ]
    }
  };
}

/** How a laid course binds the rest; a course without graded pieces binds nothing. */
function laidCourse(
  course: Pick<PlannedCourse, 'slopeId' | 'course' | 'heightMm'>,
  parts: readonly CoursePart[]
): LaidCourse | undefined {
  if (parts.length === 0) return undefined;
  const piles = parts.map((part) => part.pile);
  return {
    ...courseOf(course),
    heightMm: course.heightMm,
    thickestPile: Math.min(...piles),
    thinnestPile: Math.max(...piles)
  };
}

function courseOf({ slopeId, course }: Pick<PlannedCourse, 'slopeId' | 'course'>): {
  slopeId: string;
  course: number;
} {
  return { slopeId, course };
}

type Mutable<T> = { -readonly [Key in keyof T]: T[Key] };

function breakReserve(
  stock: Mutable<PileStock>,
  lost: { slates: number; slateAndAHalves: number },
  keptSpares: number
): void {
  const floor = Math.min(stock.reservedSlates, keptSpares);
  stock.reservedSlates = Math.max(floor, stock.reservedSlates - lost.slates);
  stock.reservedSlateAndAHalves = Math.max(0, stock.reservedSlateAndAHalves - lost.slateAndAHalves);
}

function breakCommon(common: Mutable<CommonStock>, lost: number): void {
  common.reservedSlateAndAHalves = Math.max(0, common.reservedSlateAndAHalves - lost);
}

function key(course: { readonly slopeId: string; readonly course: number }): string {
  return JSON.stringify([course.slopeId, course.course]);
}
