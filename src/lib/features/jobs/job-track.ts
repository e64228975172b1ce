import { type JobView, current, partOf } from '$lib/journal';
import {
  type NextStep,
  gradesOf,
  nextStep,
  pilesOf,
  readingCounts,
  slatesSorted,
  slopesOf,
  specOf,
  stockOf,
  tallyPallets,
  toMeasure
} from '$lib/job';

/** How far a job is: what the list of jobs and a job's page say of it. */
export interface JobTrack {
  readonly next: NextStep;
  readonly pallets: number;
  /** Pallets of which nobody knows how many slates came on them. */
  readonly uncounted: number;
  readonly delivered: number;
  readonly measured: number;
  /** Readings that are worth having before the grades are set; undefined once they are set. */
  readonly toMeasure?: number;
  /** Piles by the grades; 0 before they are set. */
  readonly piles: number;
  readonly slopes: number;
  /** Whether roof and slate are entered, so that courses can be planned. */
  readonly hasRoof: boolean;
  /** Courses of the plan; 0 before there is one. */
  readonly courses: number;
  readonly sorted: number;
  readonly laid: number;
  /** By whom and when the delivery was refused; undefined where it was not. */
  readonly refused?: { readonly by: string; readonly at: string };
}

/** Reads from a job's view how far it is. `roofCourses` as for `nextStep`. */
export function jobTrack(view: JobView, roofCourses?: number): JobTrack {
  const pallets = tallyPallets(view);
  const measured = readingCounts(view).all;
  const hasGrades = gradesOf(view) !== undefined;
  const open = toMeasure(view).reduce((sum, { slates }) => sum + slates, 0);
  const plan = current(partOf(view, 'plans').plans);
  const signed = partOf(view, 'job').verdicts.at(-1);
  return {
    ...(signed?.value.verdict === 'refuse' && {
      refused: { by: signed.value.signedBy, at: signed.at }
    }),
    next: nextStep(view, roofCourses),
    pallets: pallets.length,
    uncounted: pallets.filter(({ slates }) => slates === 0).length,
    delivered: stockOf(view).delivered,
    measured,
    ...(!hasGrades && { toMeasure: measured + open }),
    piles: hasGrades ? pilesOf(view) : 0,
    slopes: slopesOf(view).length,
    hasRoof: slopesOf(view).length > 0 && specOf(view) !== undefined,
    courses: plan?.courses.length ?? 0,
    sorted: slatesSorted(view),
    laid: Object.keys(partOf(view, 'laying').laid).length
  };
}
