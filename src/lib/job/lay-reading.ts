import {
  type CourseDraw,
  type Plan,
  type PlannedCourse,
  type RoguePlace,
  drawList
} from '$lib/engine/courses';
import { type BodyOf, type JobView, type Setting, partOf } from '$lib/journal';
import type { CoursePartDone } from './laying-facts.ts';
import { placeOf } from './plan-of-parts.ts';
import type { PlanGround } from './plan-request.ts';
import { palletsForDraw } from './draw-pallets.ts';

/** One slope as it is laid. */
export interface SlopeProgress {
  readonly slopeId: string;
  readonly laid: number;
  readonly all: number;
  /** The lowest course of the plan that is not laid; of one that lies in part, its rest. */
  readonly next?: PlannedCourse;
  /** What lies of that course, where it was begun or left with a note. */
  readonly begun?: CoursePartDone;
}

/** How far each slope is, in the order of the roof. */
export function slopeProgress(ground: PlanGround, rest: Plan): SlopeProgress[] {
  return ground.roof.slopes.map(({ slope: { id } }) => {
    const isHere = ({ slopeId }: { slopeId: string }) => slopeId === id;
    const next = rest.courses.find(isHere);
    const begun = next && ground.partLaid.find((part) => placeOf(part) === placeOf(next));
    return {
      slopeId: id,
      laid: ground.laid.filter(isHere).length,
      all: ground.roof.demand.filter(isHere).length,
      ...(next && { next }),
      ...(begun && { begun })
    };
  });
}

/** Courses of other slopes that lie lower than a course and are not laid. */
export function lowerElsewhere(rest: Plan, next: PlannedCourse): number {
  return rest.courses.filter(
    ({ slopeId, heightMm }) => slopeId !== next.slopeId && heightMm < next.heightMm - 0.5
  ).length;
}

/**
 * What a course is drawn from, pallet by pallet, if it is laid next; undefined where the pallets are
 * not known.
 */
export function drawOf(
  ground: PlanGround,
  rest: Plan,
  next: PlannedCourse
): CourseDraw | undefined {
  const piles = rest.piles.map((use) => {
    const part = next.parts.find(({ pile }) => pile === use.pile);
    const { slates, slateAndAHalves } = part ?? { slates: 0, slateAndAHalves: 0 };
    return { ...use, slates, slateAndAHalves };
  });
  const plan = { ...rest, courses: [next], piles };
  const list = drawList(plan, palletsForDraw(ground, plan));
  return list.ok ? list.courses[0] : undefined;
}

/** What was done last on the roof and is in force. */
export type LaidAct = { readonly id: string } & (
  | { readonly kind: 'course'; readonly slopeId: string; readonly course: number }
  | {
      readonly kind: 'part';
      readonly slopeId: string;
      readonly course: number;
      /** Pieces of it that lie. */
      readonly pieces: number;
    }
  | { readonly kind: 'lost'; readonly pile: number; readonly slates: number }
  | {
      readonly kind: 'moved';
      readonly slates: number;
      readonly fromPile: number;
      readonly toPile: number;
    }
  | { readonly kind: 'counted'; readonly pile: number; readonly slates: number }
);

/** The newest course laid, whole or in part, loss, move or count, which an undo takes back; undefined before any. */
export function lastLaidAct(view: JobView): LaidAct | undefined {
  const { laid, partLaid, lost, moved, counted } = partOf(view, 'laying');
  const newest = <T>(registers: readonly (readonly Setting<T>[])[]) =>
    registers
      .flatMap((register) => register.slice(-1))
      .reduce<Setting<T> | undefined>(
        (last, setting) => (last && last.id > setting.id ? last : setting),
        undefined
      );
  const course = newest(Object.values(laid));
  const part = newest(Object.values(partLaid));
  const loss = newest([lost]);
  const move = newest([moved]);
  const count = newest(Object.values(counted));
  const acts: (LaidAct | undefined)[] = [
    course && {
      kind: 'course',
      id: course.id,
      slopeId: course.value.slopeId,
      course: course.value.course
    },
    part && {
      kind: 'part',
      id: part.id,
      slopeId: part.value.slopeId,
      course: part.value.course,
      pieces: part.value.piles.reduce((sum, { pieces }) => sum + pieces, 0)
    },
    loss && { kind: 'lost', id: loss.id, pile: loss.value.pile, slates: loss.value.slates },
    move && { kind: 'moved', id: move.id, ...slatesOfMove(move.value) },
    count && { kind: 'counted', id: count.id, pile: count.value.pile, slates: count.value.slates }
  ];
  return acts
    .filter((act) => act !== undefined)
    .sort((one, other) => (one.id < other.id ? 1 : -1))[0];
}

function slatesOfMove({ slates, fromPile, toPile }: BodyOf<'slatesMoved'>) {
  return { slates, fromPile, toPile };
}

/** Slates that were moved to another pile to go into a course, in the order in which they were. */
export function keptForCourse(
  view: JobView,
  place: { readonly slopeId: string; readonly course: number }
): { readonly pile: number; readonly slates: number; readonly thicknessMm?: number }[] {
  return partOf(view, 'laying').moved.flatMap(({ value }) => {
    const { keptFor, toPile: pile, slates, thicknessHundredths: hundredths } = value;
    if (!keptFor || placeOf(keptFor) !== placeOf(place)) return [];
    return [{ pile, slates, ...(hundredths !== undefined && { thicknessMm: hundredths / 100 }) }];
  });
}

/** Courses that two people entered, each for himself; they count once. In no certain order. */
export function coursesLaidTwice(view: JobView): { slopeId: string; course: number }[] {
  return Object.values(partOf(view, 'laying').laid)
    .filter((register) => register.length > 1)
    .map(([{ value }]) => ({ slopeId: value.slopeId, course: value.course }));
}

/** Neighbouring courses of one slope in which a rogue may lie with one pile. */
export interface RogueStretch {
  readonly slopeId: string;
  readonly pile: number;
  readonly fromCourse: number;
  readonly toCourse: number;
}

/** Places course by course drawn together into stretches, in the order of the first of each. */
export function rogueStretches(places: readonly RoguePlace[]): RogueStretch[] {
  const stretches: { slopeId: string; pile: number; fromCourse: number; toCourse: number }[] = [];
  for (const { slopeId, pile, course } of places) {
    const open = stretches.find(
      (one) => one.slopeId === slopeId && one.pile === pile && one.toCourse === course - 1
    );
    if (open) open.toCourse = course;
    else stretches.push({ slopeId, pile, fromCourse: course, toCourse: course });
  }
  return stretches;
}
