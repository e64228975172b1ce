import { type CourseDemand, piecesInRun } from '../roof/index.ts';

/**
 * The roof as one row of slots in laying order: slot 1 at the lower left of the lowest course. A
 * slot takes one piece from a pile. Prefix counts let the planner price any stretch in one step.
 *
 * With a common stock of slate-and-a-halves those pieces take no slot; the slate beside one counts
 * as a slot with a common neighbour.
 *
 * All arrays run from 0 to `count`; index 0 stands before the first slot.
 */
export interface SlotRow {
  readonly count: number;
  /** 1 if slots p and p + 1 are neighbours in one run. */
  readonly isJoint: Uint8Array;
  /** 1 if slots p and p + 1 lie in the same course. */
  readonly isInsideCourse: Uint8Array;
  /** Last slot of the course that holds slot p. */
  readonly lastOfCourse: Int32Array;
  /** Joints p with 1 ≤ p ≤ index. */
  readonly jointsUpTo: Int32Array;
  /** Full slates among the first slots. */
  readonly slatesUpTo: Int32Array;
  /** Slate-and-a-halves among the first slots. */
  readonly slateAndAHalvesUpTo: Int32Array;
  /** Joints between a slot's slate and a common slate-and-a-half, among the first slots. */
  readonly commonJointsUpTo: Int32Array;
  /** For each course in laying order its last slot (that of the course before, if it has none). */
  readonly courseEnds: Int32Array;
  /** For each course, joints between two common slate-and-a-halves. */
  readonly pairedCommonJoints: Int32Array;
}

/** Lays the ordered courses out as slots. Linear in the pieces. */
export function slotRow(courses: readonly CourseDemand[], hasCommonStock: boolean): SlotRow {
  let count = 0;
  for (const { runs } of courses) for (const run of runs) count += slotsOf(run, hasCommonStock);
  const row = {
    count,
    isJoint: new Uint8Array(count + 1),
    isInsideCourse: new Uint8Array(count + 1),
    lastOfCourse: new Int32Array(count + 1),
    jointsUpTo: new Int32Array(count + 1),
    slatesUpTo: new Int32Array(count + 1),
    slateAndAHalvesUpTo: new Int32Array(count + 1),
    commonJointsUpTo: new Int32Array(count + 1),
    courseEnds: new Int32Array(courses.length),
    pairedCommonJoints: new Int32Array(courses.length)
  };
  let slot = 0;
  for (const [index, course] of courses.entries()) {
    const first = slot + 1;
    for (const run of course.runs) {
      const slots = slotsOf(run, hasCommonStock);
      const ends = Number(run.startsWithSlateAndAHalf) + Number(run.endsWithSlateAndAHalf);
      if (hasCommonStock && slots === 0 && ends === 2) row.pairedCommonJoints[index]++;
      for (let place = 1; place <= slots; place++) {
        slot++;
        const isStart = place === 1 && run.startsWithSlateAndAHalf;
        const isEnd = place === slots && run.endsWithSlateAndAHalf;
        const isWide = !hasCommonStock && (isStart || isEnd);
        const commonNeighbours = hasCommonStock ? Number(isStart) + Number(isEnd) : 0;
        row.isJoint[slot] = Number(place < slots);
        row.slatesUpTo[slot] = row.slatesUpTo[slot - 1] + Number(!isWide);
        row.slateAndAHalvesUpTo[slot] = row.slateAndAHalvesUpTo[slot - 1] + Number(isWide);
        row.commonJointsUpTo[slot] = row.commonJointsUpTo[slot - 1] + commonNeighbours;
        row.jointsUpTo[slot] = row.jointsUpTo[slot - 1] + row.isJoint[slot];
      }
    }
    row.courseEnds[index] = slot;
    row.lastOfCourse.fill(slot, first, slot + 1);
    row.isInsideCourse.fill(1, first, slot);
  }
  return row;
}

function slotsOf(run: CourseDemand['runs'][number], hasCommonStock: boolean): number {
  return hasCommonStock ? run.slates : piecesInRun(run);
}
