import { EngineError, requireFinite } from '../errors.ts';
import type { Plan } from './plan-types.ts';

/** What slates weigh and measure. */
export interface SlateToLift {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly slateAndAHalfWidthMm: number;
  readonly densityKgPerM3: number;
  /** Mean thickness of each pile, pile 1 first. */
  readonly pileThicknessMm: readonly number[];
  /** Mean thickness of a common stock of slate-and-a-halves. */
  readonly commonThicknessMm?: number;
}

/** What the scaffold and the hoist may carry; set by the user. */
export interface LoadLimits {
  /** Greatest height of a stack laid flat, mm. */
  readonly stackHeightMm: number;
  /** Greatest mass of one lift, kg. */
  readonly liftMassKg: number;
}

/** Slates of one kind for one slope, stacked flat. */
export interface LoadStack {
  /** Counted through the whole list from 1: the number on its tag. */
  readonly stack: number;
  readonly slopeId: string;
  /** Undefined for slate-and-a-halves of the common stock. */
  readonly pile?: number;
  readonly size: 'slate' | 'slate-and-a-half';
  readonly count: number;
  readonly heightMm: number;
  readonly massKg: number;
  /** First and last course that it serves; both 0 for the undereave row. */
  readonly fromCourse: number;
  readonly toCourse: number;
}

/** Stacks hoisted together. */
export interface Lift {
  /** From 1, in the order of hoisting. */
  readonly lift: number;
  readonly massKg: number;
  readonly stacks: readonly LoadStack[];
}

/** A single slate is higher or heavier than the limits. */
export interface LimitsTooTight {
  readonly ok: false;
  readonly reason: 'limits-too-tight';
  /** Least stack height and lift mass that take every slate. */
  readonly needsStackHeightMm: number;
  readonly needsLiftMassKg: number;
}

/**
 * The loading-out list: which stacks go up in which lift, so that slates stand on the slope and in
 * the order they are laid.
 *
 * Slates of one slope, pile and size are stacked flat in laying order, each stack as high as the
 * height limit and the mass of a whole lift allow; a stack serves consecutive courses. Lifts take
 * stacks in the order in which their first course is laid, as many as the mass limit allows, so
 * what is laid first goes up first. Reserves are not loaded. A course 0 is the undereave row below the
 * first: its slates are to be cut, so they stack by themselves.
 *
 * Definitions: mass = density × thickness × length × width with the pile's mean thickness, holes
 * and dressed edges not taken off; height of a stack = count × mean thickness, uneven slates lie
 * less close.
 *
 * @throws EngineError `out-of-range` for figures that are not above 0, `wrong-length`, `not-finite`
 *
 * Cost: linear in courses and stacks.
 * @example
 * // 500 × 250 × 6 mm at 2,800 kg/m³ is 2.1 kg; 300 mm of them is a stack of 50, 105 kg
 */
export function loadOut(
  plan: Plan,
  spec: SlateToLift,
  limits: LoadLimits
):
  { readonly ok: true; readonly lifts: readonly Lift[]; readonly massKg: number } | LimitsTooTight {
  requireSpec(plan, spec, limits);
  const kinds = kindsOf(plan, spec);
  const thickest = Math.max(0, ...kinds.map((kind) => kind.thicknessMm));
  const heaviest = Math.max(0, ...kinds.map((kind) => kind.massKg));
  if (thickest > limits.stackHeightMm || heaviest > limits.liftMassKg)
    return {
      ok: false,
      reason: 'limits-too-tight',
      needsStackHeightMm: thickest,
      needsLiftMassKg: heaviest
    };
  const stacks = kinds
    .flatMap((kind) => stacksOf(kind, limits))
    .sort((one, other) => one.firstInPlan - other.firstInPlan);
  const lifts = liftsOf(
    stacks.map(({ stack }, index) => ({ ...stack, stack: index + 1 })),
    limits
  );
  return { ok: true, lifts, massKg: lifts.reduce((sum, lift) => sum + lift.massKg, 0) };
}

/** All slates of one slope, pile and size, course by course; undereave slates apart. */
interface Kind {
  readonly slopeId: string;
  readonly pile?: number;
  readonly size: LoadStack['size'];
  readonly thicknessMm: number;
  /** Of one slate. */
  readonly massKg: number;
  readonly needs: { readonly course: number; readonly inPlan: number; readonly count: number }[];
}

function kindsOf(plan: Plan, spec: SlateToLift): Kind[] {
  const kinds = new Map<string, Kind>();
  const need = (
    inPlan: number,
    pile: number | undefined,
    size: LoadStack['size'],
    count: number
  ): void => {
    if (count === 0) return;
    const { slopeId, course } = plan.courses[inPlan];
    const name = JSON.stringify([slopeId, pile ?? 0, size, course === 0]);
    const thicknessMm = pile ? spec.pileThicknessMm[pile - 1] : (spec.commonThicknessMm ?? 0);
    const widthMm = size === 'slate' ? spec.widthMm : spec.slateAndAHalfWidthMm;
    const massKg = (spec.densityKgPerM3 * thicknessMm * spec.lengthMm * widthMm) / 1e9;
    const kind = kinds.get(name) ?? { slopeId, pile, size, thicknessMm, massKg, needs: [] };
    kind.needs.push({ course, inPlan, count });
    kinds.set(name, kind);
  };
  for (const [inPlan, { parts, commonSlateAndAHalves }] of plan.courses.entries()) {
    for (const { pile, slates, slateAndAHalves } of parts) {
      need(inPlan, pile, 'slate', slates);
      need(inPlan, pile, 'slate-and-a-half', slateAndAHalves);
    }
    need(inPlan, undefined, 'slate-and-a-half', commonSlateAndAHalves);
  }
  return [...kinds.values()];
}

interface PlacedStack {
  readonly stack: Omit<LoadStack, 'stack'>;
  readonly firstInPlan: number;
}

function stacksOf(kind: Kind, limits: LoadLimits): PlacedStack[] {
  const most = Math.min(
    wholeTimes(limits.stackHeightMm, kind.thicknessMm),
    wholeTimes(limits.liftMassKg, kind.massKg)
  );
  const stacks: PlacedStack[] = [];
  let count = 0;
  let first = kind.needs[0];
  const close = (toCourse: number) => {
    const { slopeId, pile, size, thicknessMm, massKg } = kind;
    stacks.push({
      firstInPlan: first.inPlan,
      stack: {
        slopeId,
        ...(pile !== undefined && { pile }),
        size,
        count,
        heightMm: count * thicknessMm,
        massKg: count * massKg,
        fromCourse: first.course,
        toCourse
      }
    });
    count = 0;
  };
  for (const need of kind.needs)
    for (let left = need.count; left > 0;) {
      if (count === 0) first = need;
      const taken = Math.min(left, most - count);
      count += taken;
      left -= taken;
      if (count === most) close(need.course);
    }
  if (count > 0) close(kind.needs[kind.needs.length - 1].course);
  return stacks;
}

function liftsOf(stacks: readonly LoadStack[], limits: LoadLimits): Lift[] {
  const lifts: { lift: number; massKg: number; stacks: LoadStack[] }[] = [];
  for (const stack of stacks) {
    const last = lifts.at(-1);
    if (last && last.massKg + stack.massKg <= limits.liftMassKg * (1 + ROUNDING)) {
      last.stacks.push(stack);
      last.massKg += stack.massKg;
    } else lifts.push({ lift: lifts.length + 1, massKg: stack.massKg, stacks: [stack] });
  }
  return lifts;
}

/** Forgives the binary error of decimals where a limit is met exactly; a part in a million million. */
const ROUNDING = 1e-12;

function wholeTimes(limit: number, each: number): number {
  return Math.floor((limit / each) * (1 + ROUNDING));
}

function requireSpec(plan: Plan, spec: SlateToLift, limits: LoadLimits): void {
  const hasCommon = plan.courses.some((course) => course.commonSlateAndAHalves > 0);
  const figures: [string, number | undefined][] = [
    ['length', spec.lengthMm],
    ['width', spec.widthMm],
    ['width of a slate-and-a-half', spec.slateAndAHalfWidthMm],
    ['density', spec.densityKgPerM3],
    ['stack height', limits.stackHeightMm],
    ['mass of a lift', limits.liftMassKg]
  ];
  if (spec.pileThicknessMm.length !== plan.piles.length)
    throw new EngineError('wrong-length', `${spec.pileThicknessMm.length} thicknesses of piles`);
  for (const { pile, slates, slateAndAHalves } of plan.piles)
    if (slates + slateAndAHalves > 0)
      figures.push([`thickness of pile ${pile}`, spec.pileThicknessMm[pile - 1]]);
  if (hasCommon) figures.push(['thickness of the common stock', spec.commonThicknessMm]);
  for (const [name, figure] of figures) {
    requireFinite(figure ?? Number.NaN, name);
    if (figure! <= 0) throw new EngineError('out-of-range', `${name} is ${figure}; give above 0`);
  }
}
