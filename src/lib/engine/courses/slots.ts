import { type CourseDemand, piecesInRun } from '../roof/index.ts';

/**
 * A course as a row of slots from its left end; a slot takes one piece from a pile. Prefix counts
 * let the planner price any stretch in one step.
 *
 * With a common stock of slate-and-a-halves those pieces take no slot; the slate beside one counts
 * as a slot with a common neighbour.
 *
 * All arrays run from 0 to `count`; index 0 stands before the first slot.
 */
export interface CourseSlots {
  readonly count: number;
  /** 1 if slots p and p + 1 are neighbours in one run. */
  readonly isJoint: Uint8Array;
  /** Joints p with 1 ≤ p ≤ index. */
  readonly joints: Int32Array;
  /** Full slates among the first slots. */
  readonly slates: Int32Array;
  /** Slate-and-a-halves among the first slots. */
  readonly slateAndAHalves: Int32Array;
  /** Joints between a slot's slate and a common slate-and-a-half, among the first slots. */
  readonly commonJoints: Int32Array;
  /** Joints between two common slate-and-a-halves. */
  readonly pairedCommonJoints: number;
}

/** Lays courses out as slots. Courses of the same runs share one object. Linear in the pieces. */
export function slotsOfCourses(
  courses: readonly CourseDemand[],
  hasCommonStock: boolean
): CourseSlots[] {
  const known = new Map<string, CourseSlots>();
  return courses.map(({ runs }) => {
    const key = JSON.stringify(
      runs.map((run) => [run.slates, run.startsWithSlateAndAHalf, run.endsWithSlateAndAHalf])
    );
    const slots = known.get(key) ?? courseSlots(runs, hasCommonStock);
    known.set(key, slots);
    return slots;
  });
}

function courseSlots(runs: CourseDemand['runs'], hasCommonStock: boolean): CourseSlots {
  const slotsOf = (run: CourseDemand['runs'][number]) =>
    hasCommonStock ? run.slates : piecesInRun(run);
  const count = runs.reduce((sum, run) => sum + slotsOf(run), 0);
  const isJoint = new Uint8Array(count + 1);
  const joints = new Int32Array(count + 1);
  const slates = new Int32Array(count + 1);
  const slateAndAHalves = new Int32Array(count + 1);
  const commonJoints = new Int32Array(count + 1);
  let pairedCommonJoints = 0;
  let slot = 0;
  for (const run of runs) {
    const slots = slotsOf(run);
    if (hasCommonStock && slots === 0 && run.startsWithSlateAndAHalf && run.endsWithSlateAndAHalf)
      pairedCommonJoints++;
    for (let place = 1; place <= slots; place++) {
      slot++;
      const isStart = place === 1 && run.startsWithSlateAndAHalf;
      const isEnd = place === slots && run.endsWithSlateAndAHalf;
      const isWide = !hasCommonStock && (isStart || isEnd);
      const commonNeighbours = hasCommonStock ? Number(isStart) + Number(isEnd) : 0;
      isJoint[slot] = Number(place < slots);
      joints[slot] = joints[slot - 1] + isJoint[slot];
      slates[slot] = slates[slot - 1] + Number(!isWide);
      slateAndAHalves[slot] = slateAndAHalves[slot - 1] + Number(isWide);
      commonJoints[slot] = commonJoints[slot - 1] + commonNeighbours;
    }
  }
  return { count, isJoint, joints, slates, slateAndAHalves, commonJoints, pairedCommonJoints };
}
