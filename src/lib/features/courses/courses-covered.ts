interface CourseOf {
  readonly slopeId: string;
  readonly course: number;
}

/** Which courses of a roof a plan lays. */
export interface CoursesCovered {
  readonly isAll: boolean;
  readonly courses: number;
  readonly of: number;
  /** The course up to which every slope is laid, as far as it goes; undefined where slopes differ. */
  readonly upTo?: number;
}

/**
 * Which courses a plan covers, so that two plans are not compared over unlike parts of the roof.
 *
 * @param all the courses of the whole roof
 * @param planned those that the plan lays, from among them
 */
export function coursesCovered(
  all: readonly CourseOf[],
  planned: readonly CourseOf[]
): CoursesCovered {
  const [courses, of] = [planned.length, all.length];
  if (courses === of) return { isAll: true, courses, of };
  const upTo = planned.reduce((most, { course }) => Math.max(most, course), 0);
  const below = all.filter(({ course }) => course <= upTo).length;
  return { isAll: false, courses, of, ...(below === courses && upTo > 0 && { upTo }) };
}
