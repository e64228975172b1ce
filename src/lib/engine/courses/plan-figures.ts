import type { CourseDemand } from '../roof/index.ts';
import type { CourseStretch } from './follow-costs.ts';
import { BILLIONTHS, chancesInBillionths } from './kick-chances.ts';
import { commonNeed, inOrderOfPiles, piecesOfCourse, slatesInCourse } from './laying-order.ts';
import type {
  CoursePart,
  Evenness,
  KickChances,
  PileUse,
  Plan,
  PlannedCourse,
  PlanRequest
} from './plan-types.ts';
import type { CourseSlots } from './slots.ts';

/** A course's figures before billionths are turned into kickers. */
interface CountedCourse {
  readonly planned: PlannedCourse;
  readonly joints: number;
  readonly billionths: number;
}

/**
 * Turns the stretches of piles into the plan that people read: courses, slopes, piles and totals.
 *
 * @param request courses in laying order; `slots` and `stretches` in the same order
 */
export function planFromStretches(
  request: PlanRequest,
  slots: readonly CourseSlots[],
  stretches: readonly (readonly CourseStretch[])[]
): Plan {
  const kicks = chancesInBillionths(request.kicks);
  const counted = inOrderOfPiles(
    request.courses.map((course, index) =>
      countedCourse(course, slots[index], stretches[index], kicks, request.common !== undefined)
    ),
    ({ planned }) => planned
  );
  const courses = counted.map(({ planned }) => planned);
  const objective = counted.reduce((sum, { billionths }) => sum + billionths, 0);
  const joints = counted.reduce((sum, course) => sum + course.joints, 0);
  const { common } = request;
  return {
    status: 'optimal',
    objective,
    ...evenness(joints, objective),
    courses,
    changeovers: courses.filter(({ parts }) => parts.length > 1).length,
    slopes: slopeFigures(counted),
    piles: pileUse(request, courses),
    spareCommonSlateAndAHalves: common
      ? common.slateAndAHalves - common.reservedSlateAndAHalves - commonNeed(request.courses)
      : 0
  };
}

/** Kickers from exact billionths, and the same per 100 joints. */
export function evenness(joints: number, billionths: number): Evenness {
  const kickers = billionths / BILLIONTHS;
  return { joints, kickers, per100Joints: joints === 0 ? 0 : (100 * kickers) / joints };
}

function countedCourse(
  course: CourseDemand,
  slots: CourseSlots,
  stretches: readonly CourseStretch[],
  kicks: KickChances,
  hasCommonStock: boolean
): CountedCourse {
  const parts: CoursePart[] = [];
  let joints = slots.pairedCommonJoints;
  let billionths = joints * (kicks.common?.within ?? 0);
  for (const { pile, after, last } of stretches) {
    if (parts.length > 0 && slots.isJoint[after]) {
      joints++;
      billionths += kicks.between[parts[parts.length - 1].pile - 1][pile];
    }
    const inside = slots.joints[last - 1] - slots.joints[after];
    const common = slots.commonJoints[last] - slots.commonJoints[after];
    joints += inside + common;
    billionths += inside * kicks.within[pile];
    billionths += common * (kicks.common?.withPile[pile] ?? 0);
    parts.push({
      pile: pile + 1,
      slates: slots.slates[last] - slots.slates[after],
      slateAndAHalves: slots.slateAndAHalves[last] - slots.slateAndAHalves[after]
    });
  }
  const planned: PlannedCourse = {
    slopeId: course.slopeId,
    course: course.course,
    heightMm: course.heightMm,
    parts,
    commonSlateAndAHalves: hasCommonStock ? piecesOfCourse(course) - slatesInCourse(course) : 0,
    ...evenness(joints, billionths)
  };
  return { planned, joints, billionths };
}

function slopeFigures(counted: readonly CountedCourse[]): Map<string, Evenness> {
  const sums = new Map<string, { joints: number; billionths: number }>();
  for (const { planned, joints, billionths } of counted) {
    const sum = sums.get(planned.slopeId) ?? { joints: 0, billionths: 0 };
    sum.joints += joints;
    sum.billionths += billionths;
    sums.set(planned.slopeId, sum);
  }
  return new Map([...sums].map(([id, sum]) => [id, evenness(sum.joints, sum.billionths)]));
}

function pileUse(request: PlanRequest, courses: readonly PlannedCourse[]): PileUse[] {
  const used = request.piles.map(() => ({ slates: 0, slateAndAHalves: 0 }));
  for (const { parts } of courses)
    for (const part of parts) {
      used[part.pile - 1].slates += part.slates;
      used[part.pile - 1].slateAndAHalves += part.slateAndAHalves;
    }
  return request.piles.map((pile, index) => ({
    pile: index + 1,
    ...used[index],
    spareSlates: pile.slates - pile.reservedSlates - used[index].slates,
    spareSlateAndAHalves: request.common
      ? 0
      : pile.slateAndAHalves - pile.reservedSlateAndAHalves - used[index].slateAndAHalves
  }));
}
