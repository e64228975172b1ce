/**
 * One unbroken run of slates in a course, from its left end to its right end. An opening splits a
 * course into several runs; nothing kicks across an opening.
 */
export interface CourseRun {
  /** Slates used up: full slates, and one for every piece cut from a slate. */
  readonly slates: number;
  /** Whether a slate-and-a-half begins the run at the left. */
  readonly startsWithSlateAndAHalf: boolean;
  /** Whether a slate-and-a-half ends the run at the right. */
  readonly endsWithSlateAndAHalf: boolean;
}

/** What one course of one slope asks of the stock. */
export interface CourseDemand {
  readonly slopeId: string;
  /** 1 at the eaves, rising towards the ridge, within its slope. */
  readonly course: number;
  /** Vertical height of the course's tail above the lowest eaves of the job, mm. */
  readonly heightMm: number;
  readonly runs: readonly CourseRun[];
  /** Set where it meets a course of another slope at a hip or valley: both change pile together. */
  readonly meets?: true;
}

/** Pieces in a run: its slates and its slate-and-a-halves. A run of n pieces has n − 1 joints. */
export function piecesInRun(run: CourseRun): number {
  return run.slates + Number(run.startsWithSlateAndAHalf) + Number(run.endsWithSlateAndAHalf);
}
