export { type CourseRun, type CourseDemand, piecesInRun } from './course-demand.ts';
export { courseStretch, piecesOfDemand } from './course-stretch.ts';
export type { FieldProblem, FieldProblemCode } from './field-problem.ts';
export {
  USUAL_DENSITY_KG_PER_M3,
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
  slopeAreaMm2,
  openingsAsSlated
} from './slope-shape.ts';
export { sideLapOfRandom } from './side-lap.ts';
export {
  type CourseHeights,
  type CourseMeeting,
  type Join,
  type JoinKind,
  joinsOf,
  levelJoinedCourses,
  meetingsOf,
  type OpenSide,
  openSides,
  sideLengthMm
} from './joined-slopes.ts';
export {
  START_SHAPES,
  type ShapeMeasures,
  type ShapePart,
  type ShapeSlope,
  type StartShape,
  shapeProblems,
  slopeRound,
  startShape
} from './start-shapes.ts';
export {
  type OrderAllowances,
  type OrderedNails,
  type OrderedSlates,
  type RoofOrder,
  roofOrder,
  type SlatesThere,
  toBuy
} from './order.ts';
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
export { type Piece, type PieceRun, filledMm, piecesInCourse } from './pieces.ts';
export {
  type CutShape,
  type Notch,
  type OpeningCourses,
  type RakedSide,
  coursesRoundOpening,
  cutShape,
  edgeCut
} from './cut-shape.ts';
export { type PieceCounts, piecesCounted, slatesUsed } from './demand.ts';
export {
  type CourseLayout,
  type SlopeLayout,
  type RoofLayout,
  type RoofProblem,
  type RoofRefused,
  type RoofTotals,
  layOutRoof,
  type CoursesGiven,
  layOutSlope,
  slopeAsLaid,
  roofOf,
  courseOf,
  lastCourse
} from './layout.ts';
export {
  type NailLength,
  type PileToNail,
  type PileNails,
  type Stack,
  NAILS_PER_PIECE,
  battenLengthM,
  nailLength,
  slatesCarried,
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
