import type { CoursePart, Plan, PlannedCourse } from '$lib/engine/courses';
import { toHundredths } from '$lib/engine';
import { type CourseDemand, piecesOfDemand } from '$lib/engine/roof';
import { partsOfPieces } from './course-parts.ts';
import type { CourseDone } from './laying-facts.ts';
import { placeOf, planOfParts } from './plan-of-parts.ts';
import type { PlanGround } from './plan-request.ts';
import { undereaveOfPiles } from './undereave-draw.ts';

/** What each course still to lay is laid from in the slater's own plan, by its place. */
export type OwnParts = ReadonlyMap<string, readonly CoursePart[]>;

/** A place of a slope where one pile gives way to another, seen from the eaves. */
export interface OwnChange {
  readonly slopeId: string;
  readonly lower: number;
  readonly upper: number;
  /** The last course of the lower pile. */
  readonly upTo: number;
  /** The courses between which it may be moved, so that each pile keeps one. */
  readonly least: number;
  readonly most: number;
  /** Height of the first course above it. */
  readonly heightMm: number;
}

/** Two heights nearer than this are one, mm. */
const SAME_HEIGHT_MM = 0.5;

/** The parts of a plan of what is left, to begin an own plan with. */
export function ownPartsOf(rest: Plan): OwnParts {
  return new Map(rest.courses.map((course) => [placeOf(course), course.parts]));
}

/** The figures of an own plan, over the courses that it knows. */
export function ownPlanOf({ request }: PlanGround, own: OwnParts): Plan {
  return planOfParts(request, request.courses, (place) => own.get(place));
}

/** Where a slope changes pile in a plan of what is left, from the eaves up. */
export function changesOf({ courses }: Plan, slopeId: string): OwnChange[] {
  return changesAmong(risingBySlope(courses).get(slopeId) ?? []);
}

/** The same for the courses of one slope, eaves first. */
function changesAmong(
  courses: readonly Pick<PlannedCourse, 'slopeId' | 'course' | 'heightMm' | 'parts'>[]
): OwnChange[] {
  const own = courses.filter(({ parts }) => parts.length > 0);
  const runs: { pile: number; from: number; to: number }[] = [];
  for (const [at, { parts }] of own.entries())
    for (const { pile } of parts) {
      const last = runs.at(-1);
      if (last?.pile === pile) last.to = at;
      else runs.push({ pile, from: at, to: at });
    }
  return runs.slice(1).map(({ pile: upper, from, to }, index) => {
    const below = runs[index];
    const isShared = below.to === from;
    const first = (isShared ? own[from + 1] : undefined) ?? own[from];
    const upTo = own[below.to].course;
    return {
      ...{ slopeId: first.slopeId, lower: below.pile, upper, upTo },
      least: own[below.from].course,
      most: Math.max(upTo, own[to].course - 1),
      heightMm: first.heightMm
    };
  });
}

const risings = new WeakMap<object, ReadonlyMap<string, readonly CoursePlace[]>>();
type CoursePlace = Pick<CourseDemand, 'slopeId' | 'course'>;

/** Courses slope by slope, eaves first: sorted once for a list, since each step of a drag asks again. */
function risingBySlope<T extends CoursePlace>(
  courses: readonly T[]
): ReadonlyMap<string, readonly T[]> {
  const known = risings.get(courses) as ReadonlyMap<string, readonly T[]> | undefined;
  if (known) return known;
  const bySlope = new Map<string, T[]>();
  for (const course of courses) {
    const own = bySlope.get(course.slopeId);
    if (own) own.push(course);
    else bySlope.set(course.slopeId, [course]);
  }
  for (const own of bySlope.values()) own.sort((one, other) => one.course - other.course);
  risings.set(courses, bySlope);
  return bySlope;
}

/**
 * Moves a change up or down to another course, and with it every change between the same piles that lies
 * at the same height on another slope; courses that meet at a hip or valley stay of one pile. The
 * number is kept within what leaves each pile a course.
 *
 * @param upTo the course that is to be the last of the lower pile; a course laid from both becomes of one
 */
export function moveChange(
  ground: PlanGround,
  own: OwnParts,
  change: OwnChange,
  upTo: number
): OwnParts {
  const target = Math.min(change.most, Math.max(change.least, upTo));
  const bySlope = risingBySlope(ground.request.courses);
  const firstAbove = bySlope.get(change.slopeId)?.find(({ course }) => course > target);
  const piles = new Map<string, number>();
  for (const [slopeId, courses] of bySlope) {
    const planned = courses.map((one) => ({ ...one, parts: own.get(placeOf(one)) ?? [] }));
    for (const one of changesAmong(planned)) {
      const isSame =
        one.lower === change.lower &&
        one.upper === change.upper &&
        Math.abs(one.heightMm - change.heightMm) < SAME_HEIGHT_MM;
      if (!isSame) continue;
      const below = courses
        .filter(({ heightMm }) => firstAbove && heightMm < firstAbove.heightMm - SAME_HEIGHT_MM)
        .map(({ course }) => course);
      const last =
        slopeId === change.slopeId ? target : Math.min(one.most, Math.max(one.least, ...below));
      for (const course of courses) {
        const isRaised = course.course > one.upTo && course.course <= last;
        const isLowered = course.course > last && course.course <= one.upTo;
        const isShared = course.course === one.upTo && (own.get(placeOf(course))?.length ?? 0) > 1;
        if (isRaised || (isShared && last >= one.upTo)) piles.set(placeOf(course), one.lower);
        else if (isLowered) piles.set(placeOf(course), one.upper);
      }
    }
  }
  return withPiles(ground, own, piles);
}

/**
 * Lays one course from a pile, whole; courses that meet it at a hip or valley follow. A course that the
 * plan leaves out, since the stock was short, comes in.
 */
export function setPileOfCourse(
  ground: PlanGround,
  own: OwnParts,
  place: { readonly slopeId: string; readonly course: number },
  pile: number
): OwnParts {
  return withPiles(ground, own, new Map([[placeOf(place), pile]]));
}

function withPiles(
  { request }: PlanGround,
  own: OwnParts,
  piles: ReadonlyMap<string, number>
): OwnParts {
  const met = new Map<number, number>();
  const meeting = request.courses.filter(({ meets }) => meets);
  for (const course of meeting) {
    const pile = piles.get(placeOf(course));
    if (pile !== undefined) met.set(toHundredths(course.heightMm), pile);
  }
  const changed = new Map(own);
  const set = (course: CourseDemand, pile: number | undefined): void => {
    if (pile !== undefined) changed.set(placeOf(course), partsOfOne(course, pile));
  };
  for (const course of request.courses) set(course, piles.get(placeOf(course)));
  if (met.size > 0)
    for (const course of meeting) set(course, met.get(toHundredths(course.heightMm)));
  return changed;
}

function partsOfOne(course: CourseDemand, pile: number): CoursePart[] {
  const pieces = piecesOfDemand(course);
  return pieces > 0 ? partsOfPieces(course, [{ pile, pieces }]) : [];
}

/** The first course, slope by slope from the eaves, that is thicker than the one below it. */
export function firstThinBelowThick(
  courses: readonly CourseDone[]
): { readonly slopeId: string; readonly course: number } | undefined {
  const thinnest = new Map<string, number>();
  for (const { slopeId, course, parts } of courses.toSorted(
    (one, other) => one.course - other.course
  )) {
    const own = parts.map(({ pile }) => pile);
    if (own.length === 0) continue;
    if (Math.min(...own) < (thinnest.get(slopeId) ?? 0)) return { slopeId, course };
    thinnest.set(slopeId, Math.max(...own));
  }
  return undefined;
}

/** A pile of which a plan takes more slates than it has. */
export interface PileLacking {
  readonly pile: number;
  readonly takes: number;
  readonly has: number;
}

/**
 * The piles of which a plan of what is left, with its undereave rows, takes more slates than stand there
 * or are to come.
 */
export function pilesLacking({ left, undereave }: PlanGround, rest: Plan): PileLacking[] {
  const kept = undereaveOfPiles(undereave, left.length);
  return rest.piles.flatMap(({ pile, slates }, index) => {
    const takes = slates + kept[index].slates;
    const has = left[index].slates;
    return takes > has ? [{ pile, takes, has }] : [];
  });
}
