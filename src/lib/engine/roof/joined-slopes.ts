import type { CourseDemand } from './course-demand.ts';
import { MEETING_MM, type Slope, insetAtTopMm } from './slope-shape.ts';

/** A side by which two slopes meet. */
export type JoinKind = 'hip' | 'valley' | 'ridge';
type Side = 'left' | 'right' | 'ridge';

/** Two slopes that share a hip, a valley or the ridge, seen from outside. */
export interface Join {
  readonly kind: JoinKind;
  readonly one: string;
  readonly oneSide: Side;
  readonly other: string;
  readonly otherSide: Side;
  readonly lengthMm: number;
}

/** Sides whose lengths differ by less than this share are taken to be one: tape error. Ours. */
const SAME_LENGTH = 0.01;
/** A side shorter than this joins nothing, mm. */
const SHORTEST_MM = 300;

/**
 * The length of a slope's side on the roof: of a hip or valley √(rafter² + inset²), of the ridge what
 * is left of the eave between both insets.
 *
 * For equal pitches at a square corner the inset on plan is the run, so that the hip's length is
 * √(rafter² + run²).
 *
 * @returns mm, 0 or more
 * Source: geometry identity, Euclid I 47.
 * @example
 * // a rafter of 5000 at a pitch with a run of 4000: the hip is √(5000² + 4000²) = 6403
 */
export function sideLengthMm(slope: Slope, side: Side): number {
  if (side === 'ridge')
    return Math.max(
      0,
      slope.eaveWidthMm - insetAtTopMm(slope, slope.left) - insetAtTopMm(slope, slope.right)
    );
  return Math.hypot(slope.rafterLengthMm, insetAtTopMm(slope, slope[side]));
}

/** A slope as drawn when its joins are asked for; `meets` names the slope round an edge, if told. */
export interface JoinedSlope extends Slope {
  readonly meets?: { readonly left?: string; readonly right?: string };
}

/**
 * Which slopes meet, at most one on each side and two slopes once: those a person named first, then
 * ridges of one length, then hips with hips and valleys with valleys, as the slopes are listed.
 *
 * @param slopes sound; not modified
 * @returns each join once. Seen from outside, the right side of one slope meets the left of the next
 */
export function joinsOf(slopes: readonly JoinedSlope[]): Join[] {
  const joins: Join[] = [];
  const taken = new Set<string>();
  const key = (slope: Slope, side: Side) => JSON.stringify([slope.id, side]);
  const add = (kind: JoinKind, one: Slope, oneSide: Side, other: Slope, otherSide: Side): void => {
    if (one === other || taken.has(key(one, oneSide)) || taken.has(key(other, otherSide))) return;
    taken.add(key(one, oneSide)).add(key(other, otherSide));
    const lengthMm = sideLengthMm(one, oneSide);
    joins.push({ kind, one: one.id, oneSide, other: other.id, otherSide, lengthMm });
  };
  const areJoined = (slope: Slope, beside: Slope): boolean =>
    joins.some(
      ({ one, other }) =>
        (one === slope.id && other === beside.id) || (one === beside.id && other === slope.id)
    );
  const kindOf = (slope: Slope, side: 'left' | 'right'): JoinKind | undefined => {
    const { kind } = slope[side];
    return kind === 'hip' || kind === 'valley' ? kind : undefined;
  };
  for (const slope of slopes)
    for (const side of ['right', 'left'] as const) {
      const across = side === 'right' ? 'left' : 'right';
      const other = slopes.find(({ id }) => id === slope.meets?.[side]);
      const kind = kindOf(slope, side);
      if (other && kind && kindOf(other, across) === kind) add(kind, slope, side, other, across);
    }
  for (const [index, slope] of slopes.entries()) {
    const behind = slopes
      .slice(index + 1)
      .find(
        (other) =>
          !taken.has(key(other, 'ridge')) &&
          isSameLength(sideLengthMm(slope, 'ridge'), sideLengthMm(other, 'ridge'))
      );
    if (behind) add('ridge', slope, 'ridge', behind, 'ridge');
  }
  for (const [index, slope] of slopes.entries()) {
    const others = [...slopes.slice(index + 1), ...slopes.slice(0, index)];
    const kind = kindOf(slope, 'right');
    const beside =
      kind &&
      others.find(
        (other) =>
          kindOf(other, 'left') === kind &&
          !areJoined(slope, other) &&
          !taken.has(key(other, 'left')) &&
          isSameLength(sideLengthMm(slope, 'right'), sideLengthMm(other, 'left'))
      );
    if (kind && beside) add(kind, slope, 'right', beside, 'left');
  }
  return joins;
}

/** A hip or valley that no other slope meets yet. */
export interface OpenSide {
  readonly slopeId: string;
  readonly side: 'left' | 'right';
  readonly kind: 'hip' | 'valley';
  readonly lengthMm: number;
}

/**
 * Hips and valleys of a roof that no other slope meets, as the slopes are listed.
 *
 * @param roof slopes laid out and their joins; not modified
 * @returns lengths in mm
 */
export function openSides(roof: {
  readonly slopes: readonly { readonly slope: Slope }[];
  readonly joins: readonly Join[];
}): OpenSide[] {
  return roof.slopes.flatMap(({ slope }) =>
    (['left', 'right'] as const).flatMap((side) => {
      const { kind } = slope[side];
      if (kind !== 'hip' && kind !== 'valley') return [];
      const isMet = roof.joins.some(
        ({ one, oneSide, other, otherSide }) =>
          (one === slope.id && oneSide === side) || (other === slope.id && otherSide === side)
      );
      return isMet ? [] : [{ slopeId: slope.id, side, kind, lengthMm: sideLengthMm(slope, side) }];
    })
  );
}

function isSameLength(one: number, other: number): boolean {
  return one > SHORTEST_MM && Math.abs(one - other) <= SAME_LENGTH * one;
}

/** Pitches closer than this are one, degrees: a pitch gauge reads no better. Ours. */
const SAME_PITCH_DEGREES = 0.5;

/**
 * Slopes that meet at a hip or valley and were meant to be alike: of one pitch, and of rafters that
 * differ by no more than the error of a tape. They take the same number of courses.
 *
 * @returns the ids of each such group, two or more to a group
 */
export function alikeAtHips(slopes: readonly Slope[], joins: readonly Join[]): string[][] {
  const byId = new Map(slopes.map((slope) => [slope.id, slope]));
  const groupOf = new Map<string, Set<string>>();
  for (const { kind, one, other } of joins) {
    const [here, there] = [byId.get(one), byId.get(other)];
    if (kind === 'ridge' || !here || !there) continue;
    const differMm = Math.abs(here.rafterLengthMm - there.rafterLengthMm);
    if (Math.abs(here.pitchDegrees - there.pitchDegrees) > SAME_PITCH_DEGREES) continue;
    if (differMm > Math.max(MEETING_MM, SAME_LENGTH * here.rafterLengthMm)) continue;
    const both = new Set([...(groupOf.get(one) ?? [one]), ...(groupOf.get(other) ?? [other])]);
    for (const id of both) groupOf.set(id, both);
  }
  return [...new Set(groupOf.values())].map((group) => [...group]);
}

/** Heights of a slope's courses above the lowest eave, by number, mm. */
export type CourseHeights = ReadonlyMap<number, number>;

/** How the courses of two slopes come together at the hip or valley they share. */
export interface CourseMeeting {
  readonly join: Join;
  /** Whether every course of the one meets one of the other within half a course's rise. */
  readonly isLevel: boolean;
  /** Course n of the one meets course n + offset of the other. */
  readonly offset: number;
  /** The most by which course n and course n + offset miss each other, as height, mm. */
  readonly missMm: number;
  /** The most by which a course of the one misses the nearest of the other; Infinity where none meet. */
  readonly apartMm: number;
  /** How much to raise the other slope's eave so that the lowest courses that meet are level, mm. */
  readonly raiseOtherMm: number;
}

/**
 * How far courses of joined slopes miss each other at each hip and valley.
 *
 * @param joins of the slopes
 * @param heights of the courses of each slope
 * @returns one entry for each hip and valley whose slopes are both there
 */
export function meetingsOf(
  joins: readonly Join[],
  heights: ReadonlyMap<string, CourseHeights>
): CourseMeeting[] {
  return joins.flatMap((join) => {
    const [one, other] = [heights.get(join.one), heights.get(join.other)];
    if (join.kind === 'ridge' || !one?.size || !other?.size) return [];
    const [line, across] = [lineOf(one), lineOf(other)];
    const offset = Math.round((line.at(1) - across.at(1)) / across.riseMm) || 0;
    const last = Math.min(line.last, across.last - offset);
    const first = Math.max(1, 1 - offset);
    const missesAt = (course: number): number => line.at(course) - across.at(course + offset);
    const missMm =
      last < first ? Infinity : Math.max(Math.abs(missesAt(first)), Math.abs(missesAt(last)));
    return [
      {
        join,
        isLevel: missMm <= Math.min(line.riseMm, across.riseMm) / 2,
        offset,
        missMm,
        apartMm: furthestFromAny([...one.values()], [...other.values()]),
        raiseOtherMm: missesAt(last < first ? 1 : first)
      }
    ];
  });
}

/** The most by which one of some heights misses the nearest other, where both are there. */
function furthestFromAny(heights: readonly number[], others: readonly number[]): number {
  const [least, most] = [Math.min(...others), Math.max(...others)];
  const misses = heights
    .filter((height) => height >= least - MEETING_MM && height <= most + MEETING_MM)
    .map((height) => Math.min(...others.map((other) => Math.abs(height - other))));
  return misses.length > 0 ? Math.max(...misses) : Infinity;
}

/** The straight line that heights of equal courses lie on. */
function lineOf(heights: CourseHeights) {
  const courses = [...heights.keys()];
  const [first, last] = [Math.min(...courses), Math.max(...courses)];
  const from = heights.get(first) ?? 0;
  const riseMm = last > first ? ((heights.get(last) ?? from) - from) / (last - first) : Infinity;
  const at = (course: number): number =>
    course === first ? from : from + (course - first) * riseMm;
  return { last, riseMm, at };
}

/**
 * The courses of slopes that meet at a hip or valley, put on one height and marked: course n of the one
 * beside course n of the other is one unit for whoever spreads piles, so that a pile never changes at
 * course 23 on this side of a hip and at 24 on that. Only slopes whose courses meet within half a course
 * are joined; others keep their own heights.
 *
 * @param demand courses in any order; not modified
 * @param joins of the slopes that the courses are on
 * @returns the same courses, those of joined slopes at the height of the slope with most courses, lowest
 *   first; equal heights keep their order. Within a slope heights still rise
 * @example
 * // rafters of 5500 and 5490 mm round a hip: course 23 of the shorter is put beside that of the longer
 */
export function levelJoinedCourses(
  demand: readonly CourseDemand[],
  joins: readonly Join[]
): CourseDemand[] {
  const heights = new Map<string, Map<number, number>>();
  for (const { slopeId, course, heightMm } of demand)
    heights.set(slopeId, (heights.get(slopeId) ?? new Map<number, number>()).set(course, heightMm));
  const meetings = meetingsOf(joins, heights).filter(({ isLevel }) => isLevel);
  const places = placesOf(meetings, heights);
  return demand
    .map((course): CourseDemand => {
      const place = places.get(course.slopeId);
      if (!place) return course;
      const heightMm = place.heightOf(course.course + place.offset);
      return { ...course, heightMm, meets: true };
    })
    .sort((one, other) => one.heightMm - other.heightMm);
}

/** Where a slope's courses stand on the line of its leader. */
interface Place {
  readonly offset: number;
  readonly heightOf: (course: number) => number;
}

/** Each joined slope's place beside the slope of its group that has most courses. */
function placesOf(
  meetings: readonly CourseMeeting[],
  heights: ReadonlyMap<string, CourseHeights>
): Map<string, Place> {
  const places = new Map<string, Place>();
  const bySize = [...heights].sort(([, one], [, other]) => other.size - one.size);
  for (const [leader, own] of bySize) {
    if (places.has(leader) || !meetings.some(({ join }) => touches(join, leader))) continue;
    const { at: heightOf } = lineOf(own);
    places.set(leader, { offset: 0, heightOf });
    const open = [leader];
    for (let slope = open.pop(); slope !== undefined; slope = open.pop()) {
      const { offset } = places.get(slope) as Place;
      for (const { join, offset: step } of meetings) {
        if (!touches(join, slope)) continue;
        const isOne = join.one === slope;
        const beside = isOne ? join.other : join.one;
        if (places.has(beside)) continue;
        places.set(beside, { offset: offset + (isOne ? -step : step), heightOf });
        open.push(beside);
      }
    }
  }
  return places;
}

function touches(join: Join, slope: string): boolean {
  return join.one === slope || join.other === slope;
}
