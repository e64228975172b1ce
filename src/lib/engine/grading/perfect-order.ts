import { type ThicknessBins, totalCount } from '../thickness/index.ts';
import { type KickSoftness, kickBySteps, stepSdMm } from './soft-kick.ts';
import { type CourseNeed, sumCourses } from './whole-courses.ts';

/**
 * Expected kickers if every slate were measured and laid in falling order of thickness. No sorting by
 * thickness does better by much, and none needs to reach it; taper and twist are left as they are.
 *
 * @param bins the spread; not modified. It is scaled to the slates the courses need: the number of
 * slates thicker than each bin's lower edge is rounded to whole slates
 * @param courses what each course needs, eave first; not modified
 * @param kickAllowanceMm the step between neighbours that is still accepted, mm
 * @param softness how far steps scatter about the difference; not at all if left out
 * @returns expected kickers over all the courses; 0 for no slates
 *
 * Definition: in that order a kicker can stand only where the spread has a gap wider than the
 * allowance, and only if both slates fall into one course. With softness a joint between equal slates
 * kicks by the scatter alone, one at a gap by gap and scatter. A course with fewer joints than its
 * slates can have (openings, several slopes) has each of its joints equally likely to be the one.
 * Cost: bins + courses.
 *
 * @example
 * // 10 of 7 mm and 10 of 5 mm over two courses of 10: the gap falls between the courses
 * perfectOrderKickers(binsFromPairs([[700, 1], [500, 1]]), Array(2).fill({ slates: 10, joints: 9 }), 1.5); // 0
 */
export function perfectOrderKickers(
  bins: ThicknessBins,
  courses: readonly CourseNeed[],
  kickAllowanceMm: number,
  softness?: KickSoftness
): number {
  const total = totalCount(bins);
  const { slates } = sumCourses(courses);
  const need = slates[courses.length];
  const widest =
    bins.hundredths.length > 0
      ? bins.hundredths[bins.hundredths.length - 1] - bins.hundredths[0]
      : 0;
  const chances = kickBySteps(kickAllowanceMm, softness ? stepSdMm(softness, 0) : 0, widest);
  let kickers = total > 0 ? chances[0] * courses.reduce((sum, { joints }) => sum + joints, 0) : 0;
  let thicker = 0;
  let laid = 0;
  let lastLaid = 0;
  let course = 0;
  for (let bin = bins.hundredths.length - 1; bin >= 0; bin--) {
    thicker += bins.counts[bin];
    const end = Math.round((thicker / total) * need);
    if (end === laid) continue;
    const more = laid > 0 ? chances[lastLaid - bins.hundredths[bin]] - chances[0] : 0;
    if (more > 0) {
      while (slates[course + 1] < laid) course++;
      const isWithinCourse = slates[course + 1] > laid;
      if (isWithinCourse)
        kickers += more * Math.min(1, courses[course].joints / (courses[course].slates - 1));
    }
    laid = end;
    lastLaid = bins.hundredths[bin];
  }
  return kickers;
}
