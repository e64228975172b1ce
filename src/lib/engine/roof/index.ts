export { type CourseRun, type CourseDemand, piecesInRun } from './course-demand.ts';
