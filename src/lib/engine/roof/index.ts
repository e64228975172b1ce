export { type CourseRun, type CourseDemand, piecesInRun } from './course-demand.ts';
export type { FieldProblem, FieldProblemCode } from './field-problem.ts';
export {
  type Nailing,
  type SlateSpec,
  type SlateSpecInput,
  slateSpec,
  slateSpecProblems,
  largestHeadlapMm
} from './slate-spec.ts';
export {
  type EqualGauge,
  type GaugeSpec,
  maximumGaugeMm,
  headlapAtGaugeMm,
  undereaveLengthMm,
  holeFromTailMm,
  equalGauge,
  slatesPerArea,
  slatesPerM2,
  slatesPerSquare,
  battenMPerM2
} from './gauge.ts';
export {
  type EdgeKind,
  type SlopeEdge,
  type Opening,
  type Slope,
  type SlopeInput,
  makeSlope,
  insetAtTopMm,
  leftAtMm,
  rightAtMm,
  widthAtMm,
  stripAreaMm2,
  slopeAreaMm2
} from './slope-shape.ts';
export {
  type CourseHeights,
  type CourseMeeting,
  type Join,
  type JoinKind,
  joinsOf,
  levelJoinedCourses,
  meetingsOf,
  sideLengthMm
} from './joined-slopes.ts';
export { type OutOfSquare, type SharedBatten } from './out-of-square.ts';
export { slopeProblems } from './slope-problems.ts';
export {
  type CourseLine,
  type BattenLine,
  type CourseSetOut,
  leastRafterLengthMm,
  setOutCourses
} from './courses.ts';
export {
  type BondName,
  type BondPair,
  type BondPiece,
  type BondLayout,
  type PieceKind,
  layBonds
} from './bonds.ts';
export { type Datum, type PerpMarks, type SlopeBond, bondOfCourse, setOutPerps } from './perps.ts';
export { type Piece, type PieceRun, piecesInCourse } from './pieces.ts';
export { type PieceCounts, piecesCounted, slatesUsed } from './demand.ts';
export {
  type CourseLayout,
  type SlopeLayout,
  type RoofLayout,
  type RoofProblem,
  type RoofRefused,
  type RoofTotals,
  layOutRoof,
  courseOf
} from './layout.ts';
export {
  type NailLength,
  type PileToNail,
  type PileNails,
  type Stack,
  NAILS_PER_PIECE,
  battenLengthM,
  nailLength,
  nailsByPile,
  massLaidKgPerM2,
  stackOf
} from './materials.ts';
export {
  type UndereavePattern,
  type UndereaveRow,
  type UndereaveUse,
  type FaultOfSlate,
  undereavePattern,
  usableForUndereave
} from './undereave.ts';
export { type HeadlapHint, headlapHint } from './headlap-hints.ts';
export {
  type RoofCheck,
  type RoofCheckCode,
  type CheckStanding,
  ROOF_CAUTIONS
} from './roof-checks.ts';
export {
  type MarkingSheet,
  type GaugeRodLine,
  type PerpMark,
  SCALE_CHECK_MM,
  markingSheet
} from './marking-sheet.ts';
export {
  type LengthInput,
  type LengthRefusal,
  type LengthUnit,
  parseLength
} from './length-input.ts';
