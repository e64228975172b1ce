import { type CourseDemand, piecesInRun } from '../roof/index.ts';
import type { CoursePart, Plan, PlannedCourse, PlanRequest } from './plan-types.ts';

/** One way in which a plan breaks its request, in words for a log or a test. */
export interface PlanFault {
  readonly rule: 'courses' | 'demand' | 'piles' | 'order' | 'stock' | 'figures';
  readonly detail: string;
}

/** Rounding of chances to billionths leaves a plan's kickers within this of the exact sum. */
const KICKERS_TOLERANCE_PER_JOINT = 1e-9;

/**
 * Checks a plan against its request without using the planner: walks every course, piece by piece
 * and joint by joint. Run it before a plan is shown or adopted.
 *
 * @returns the rules broken; empty for a sound plan. Soundness, not optimality: that is the
 * planner's proof.
 *
 * Rules: every course of the request is there once (`courses`) and gets its pieces (`demand`); a
 * course holds at most two piles that exist (`piles`); in a course, on a slope and from height to
 * height over all slopes thickness never rises, and courses of one height can be laid one after the
 * other without its rising, courses laid already included (`order`); no stock is used beyond its
 * reserve (`stock`);
 * kickers, joints, changeovers and spares add up (`figures`). Cost: linear in the pieces.
 */
export function checkPlan(request: PlanRequest, plan: Plan): PlanFault[] {
  const faults: PlanFault[] = [];
  const report = (rule: PlanFault['rule'], detail: string) => faults.push({ rule, detail });
  const key = ({ slopeId, course }: { slopeId: string; course: number }) =>
    JSON.stringify([slopeId, course]);

  const planned = new Map(plan.courses.map((course) => [key(course), course]));
  if (planned.size !== plan.courses.length) report('courses', 'a course is planned twice');
  if (plan.courses.length !== request.courses.length)
    report('courses', `${plan.courses.length} courses planned, ${request.courses.length} asked`);

  let kickers = 0;
  let joints = 0;
  const laid: Laid[] = [];
  for (const demand of request.courses) {
    const course = planned.get(key(demand));
    if (!course) {
      report('courses', `course ${demand.course} of slope ${demand.slopeId} has no plan`);
      continue;
    }
    laid.push({ demand, course });
    checkParts(request, demand, course, report);
    const walk = walkCourse(request, demand, course.parts);
    if (walk.joints !== course.joints || !isNear(walk.kickers, course.kickers, walk.joints))
      report('figures', `course ${demand.course} of slope ${demand.slopeId} has wrong kickers`);
    kickers += walk.kickers;
    joints += walk.joints;
  }
  if (plan.joints !== joints || !isNear(plan.kickers, kickers, joints))
    report('figures', `plan says ${plan.kickers} kickers, its joints say ${kickers}`);
  if (plan.changeovers !== plan.courses.filter((course) => course.parts.length === 2).length)
    report('figures', 'changeovers are miscounted');
  checkOrder(laid, report);
  checkBesideLaid(request, laid, report);
  checkStock(request, plan, report);
  return faults;
}

interface Laid {
  readonly demand: CourseDemand;
  readonly course: PlannedCourse;
}

type Report = (rule: PlanFault['rule'], detail: string) => void;

function checkParts(
  request: PlanRequest,
  demand: CourseDemand,
  course: PlannedCourse,
  report: Report
): void {
  const name = `course ${demand.course} of slope ${demand.slopeId}`;
  const wide = demand.runs.reduce(
    (sum, run) => sum + Number(run.startsWithSlateAndAHalf) + Number(run.endsWithSlateAndAHalf),
    0
  );
  const slates = demand.runs.reduce((sum, run) => sum + run.slates, 0);
  const given = course.parts.reduce((sum, part) => sum + part.slates, 0);
  const givenWide = course.parts.reduce((sum, part) => sum + part.slateAndAHalves, 0);
  const common = course.commonSlateAndAHalves;
  if (given !== slates) report('demand', `${name} gets ${given} slates of ${slates}`);
  if (givenWide !== (request.common ? 0 : wide) || common !== (request.common ? wide : 0))
    report('demand', `${name} gets ${givenWide} + ${common} slate-and-a-halves of ${wide}`);
  if (course.parts.length > 2) report('piles', `${name} holds ${course.parts.length} piles`);
  for (const [index, part] of course.parts.entries()) {
    if (part.pile < 1 || part.pile > request.piles.length)
      report('piles', `${name} is laid from pile ${part.pile}, which does not exist`);
    if (index > 0 && part.pile <= course.parts[index - 1].pile)
      report('order', `${name} does not give its thicker pile first`);
    if (part.slates + part.slateAndAHalves === 0) report('piles', `${name} has an empty part`);
    if (part.slates < 0 || part.slateAndAHalves < 0) report('demand', `${name} has a part below 0`);
  }
}

/** Lays a course piece by piece from its parts and counts joints and expected kickers. */
function walkCourse(
  request: PlanRequest,
  demand: CourseDemand,
  parts: readonly CoursePart[]
): { joints: number; kickers: number } {
  const pieces: (number | 'common')[][] = [];
  const left = parts.map((part) => part.slates + part.slateAndAHalves);
  const nextPiece = (): number => {
    const index = left.findIndex((count) => count > 0);
    if (index >= 0) left[index]--;
    return parts[index]?.pile ?? 0;
  };
  for (const run of demand.runs) {
    const row: (number | 'common')[] = [];
    for (let place = 0; place < piecesInRun(run); place++) {
      const isWide =
        (place === 0 && run.startsWithSlateAndAHalf) ||
        (place === piecesInRun(run) - 1 && run.endsWithSlateAndAHalf);
      row.push(isWide && request.common ? 'common' : nextPiece());
    }
    pieces.push(row);
  }
  let joints = 0;
  let kickers = 0;
  for (const row of pieces)
    for (let place = 1; place < row.length; place++) {
      joints++;
      kickers += jointChance(request, row[place - 1], row[place]);
    }
  return { joints, kickers };
}

function jointChance(
  { kicks }: PlanRequest,
  left: number | 'common',
  right: number | 'common'
): number {
  if (left === 'common' && right === 'common') return kicks.common?.within ?? 0;
  if (left === 'common') return kicks.common?.withPile[Number(right) - 1] ?? 0;
  if (right === 'common') return kicks.common?.withPile[left - 1] ?? 0;
  return left === right ? kicks.within[left - 1] : (kicks.between[left - 1]?.[right - 1] ?? 0);
}

function checkOrder(laid: readonly Laid[], report: Report): void {
  const withParts = laid.filter(({ course }) => course.parts.length > 0);
  const risen = withParts.sort((one, other) => one.demand.heightMm - other.demand.heightMm);
  const thinnestOfSlope = new Map<string, number>();
  let thinnestBelow = 0;
  let thinnestHere = 0;
  let height = -Infinity;
  for (const { demand, course } of risen) {
    if (demand.heightMm - height > 0.01) {
      thinnestBelow = Math.max(thinnestBelow, thinnestHere);
      height = demand.heightMm;
    }
    const piles = course.parts.map((part) => part.pile);
    if (Math.min(...piles) < Math.max(thinnestBelow, thinnestOfSlope.get(demand.slopeId) ?? 0))
      report(
        'order',
        `course ${demand.course} of slope ${demand.slopeId} is thicker than one below`
      );
    thinnestHere = Math.max(thinnestHere, ...piles);
    thinnestOfSlope.set(demand.slopeId, Math.max(...piles));
    const clash = risen.find(
      (other) =>
        other.course !== course &&
        Math.abs(other.demand.heightMm - demand.heightMm) <= 0.01 &&
        !areOneAfterTheOther(other.course, course)
    );
    if (clash)
      report(
        'order',
        `course ${demand.course} of slope ${demand.slopeId} can be laid neither before nor after that of ${clash.demand.slopeId}`
      );
  }
}

/** Whether one of two courses ends no thinner than the other begins. */
function areOneAfterTheOther(one: PlannedCourse, other: PlannedCourse): boolean {
  const [first, second] = [one, other].map(({ parts }) => parts.map(({ pile }) => pile));
  return Math.max(...first) <= Math.min(...second) || Math.max(...second) <= Math.min(...first);
}

/** Compares every planned course with every laid one that binds it. */
function checkBesideLaid(request: PlanRequest, planned: readonly Laid[], report: Report): void {
  for (const laid of request.laid ?? [])
    for (const { demand, course } of planned) {
      const isSameSlope = laid.slopeId === demand.slopeId;
      if (course.parts.length === 0 || (request.laidBinds === 'own-slope' && !isSameSlope))
        continue;
      const rise = demand.heightMm - laid.heightMm;
      const piles = course.parts.map((part) => part.pile);
      const name = `course ${demand.course} of slope ${demand.slopeId}`;
      if (rise > 0.01 && Math.min(...piles) < laid.thinnestPile)
        report('order', `${name} is thicker than course ${laid.course} laid on ${laid.slopeId}`);
      if (rise < -0.01 && Math.max(...piles) > laid.thickestPile)
        report('order', `${name} is thinner than course ${laid.course} laid on ${laid.slopeId}`);
      const isBeside = Math.abs(rise) <= 0.01;
      const goesAside =
        Math.max(...piles) <= laid.thickestPile || Math.min(...piles) >= laid.thinnestPile;
      if (isBeside && !goesAside)
        report('order', `${name} fits on neither side of course ${laid.course} on ${laid.slopeId}`);
    }
}

function checkStock(request: PlanRequest, plan: Plan, report: Report): void {
  for (const [index, pile] of request.piles.entries()) {
    const parts = plan.courses.flatMap((course) =>
      course.parts.filter((part) => part.pile === index + 1)
    );
    const slates = parts.reduce((sum, part) => sum + part.slates, 0);
    const wide = parts.reduce((sum, part) => sum + part.slateAndAHalves, 0);
    const spare = pile.slates - pile.reservedSlates - slates;
    const spareWide = pile.slateAndAHalves - pile.reservedSlateAndAHalves - wide;
    if (spare < 0) report('stock', `pile ${index + 1} lacks ${-spare} slates`);
    if (!request.common && spareWide < 0)
      report('stock', `pile ${index + 1} lacks ${-spareWide} slate-and-a-halves`);
    const use = plan.piles[index];
    const saysWide = request.common ? 0 : spareWide;
    if (use?.spareSlates !== spare || use.spareSlateAndAHalves !== saysWide)
      report('figures', `spares of pile ${index + 1} are miscounted`);
  }
  if (!request.common) return;
  const used = plan.courses.reduce((sum, course) => sum + course.commonSlateAndAHalves, 0);
  const spare = request.common.slateAndAHalves - request.common.reservedSlateAndAHalves - used;
  if (spare < 0) report('stock', `the common stock lacks ${-spare} slate-and-a-halves`);
  if (plan.spareCommonSlateAndAHalves !== spare)
    report('figures', 'spares of the common stock are miscounted');
}

function isNear(one: number, other: number, joints: number): boolean {
  return Math.abs(one - other) <= KICKERS_TOLERANCE_PER_JOINT * (joints + 1);
}
