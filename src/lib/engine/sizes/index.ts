export {
  type SetWidths,
  type SlateSet,
  type SetsProblem,
  MOST_SETS,
  LEAST_BATTEN_STEP_MM,
  meanWidthMm,
  specOfSet,
  setsProblems,
  isStepPossible
} from './slate-sets.ts';
export { type CourseAsBattened, type CourseFault, checkCourses } from './course-check.ts';
export {
  type SetCourses,
  type SetCourseLine,
  type SetsSetOut,
  setOutSets,
  toTopBattenMm
} from './set-out-sets.ts';
export { courseNeed, slatedWidths, unitAreaM2 } from './course-need.ts';
export {
  type SetStock,
  type SetUse,
  type ChosenSets,
  type NoSetsFit,
  chooseCourses
} from './choose-courses.ts';
export {
  type RandomLaying,
  type RandomLayingRequest,
  SLATES_IN_REACH,
  layRandomWidths,
  evenWidthsMm
} from './random-laying.ts';
export {
  type Ranged,
  type WeighedSize,
  CUSTOMARY_DENSITY,
  countByWeight,
  densityOfPallet
} from './by-weight.ts';
export { type OldHolePlace, type OldHoles, NEAR_HOLES_MM, oldHolesUnder } from './old-holes.ts';
export { type SetRoofs, layOutSets, setRoofProblems } from './set-roofs.ts';
export {
  type BoundariesCompared,
  type BoundariesUnknown,
  compareBoundaries
} from './shared-boundaries.ts';
