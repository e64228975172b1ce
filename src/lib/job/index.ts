export { adoptedPlanOf, planAdoption, type AdoptedPlan, type PlanWay } from './adopted-plan.ts';
export {
  changesOf,
  firstThinBelowThick,
  moveChange,
  ownPartsOf,
  ownPlanOf,
  pilesLacking,
  setPileOfCourse,
  type OwnChange,
  type OwnParts
} from './own-plan.ts';
export { partsOfPieces, piecesOfParts } from './course-parts.ts';
export { listCoverage, slatesHeldTo, type ListCoverage } from './delivery-coverage.ts';
export {
  countedByStanding,
  drawInForce,
  gaugedWhileSorting,
  labelsOf,
  listProgress,
  offeredSlates,
  orderInForce,
  palletsSorted,
  signedVerdict,
  sortingBegan,
  type SampleDraw,
  type ListProgress,
  type OfferedSlate
} from './delivery-sample.ts';
export { WIDE_STORE, palletsForDraw } from './draw-pallets.ts';
export { drawnThicknessMm } from './drawn-thickness.ts';
export {
  drawOf,
  coursesLaidTwice,
  keptForCourse,
  lastLaidAct,
  lowerElsewhere,
  rogueStretches,
  slopeProgress,
  type LaidAct
} from './lay-reading.ts';
export { slicePieces } from './laid-stretches.ts';
export { type CoursePartDone, wholeCourse } from './laying-facts.ts';
export {
  countingGround,
  handCount,
  knownStacks,
  refusedCounts,
  type CountRefusal,
  type CountingGround,
  type PileInBook
} from './hand-count.ts';
export { keptShare, keptShares } from './reserve.ts';
export { farReadings, type FarReading } from './far-readings.ts';
export { answerHeld, heldReadings, type HeldAnswer, type HeldReading } from './held-readings.ts';
export { lastSlope } from './last-slope.ts';
export { likelyRangeOf } from './likely-range.ts';
export { palletRemoval } from './pallet-removal.ts';
export { palletName } from './pallet-name.ts';
export { nextStep, toMeasure, type NextStep } from './next-step.ts';
export {
  firstMinuteOfDay,
  jobPace,
  minutesOf,
  paceSince,
  sortedMinutesOf,
  type Pace
} from './pace.ts';
export { PalletCounter, type PalletCount } from './pallet-count.ts';
export { palletSpreads } from './pallet-spreads.ts';
export { pileMaterials, undereaveNails } from './pile-materials.ts';
export { pileRows } from './pile-rows.ts';
export {
  KEPT_WITHIN_MM,
  gradesBody,
  misfitsOf,
  pileMeanings,
  pilesUnder,
  type PileMeaning,
  type PilesOfGrades
} from './pile-numbers.ts';
export { pilesLeft, type PileLeft } from './piles-left.ts';
export { takeWorkedOut, type PilesWorkedOut } from './piles-worked-out.ts';
export { renewedCourses, type NamedPile, type RenewedCourses } from './plan-renewed.ts';
export { regradedCourses, type RegradedCourses } from './plan-under-grades.ts';
export { placeOf } from './plan-of-parts.ts';
export {
  ASSUMED_SOFTNESS,
  ENOUGH_TAPERS,
  type TaperOfJob,
  kickSoftnessOf,
  taperOf
} from './kick-softness.ts';
export {
  begunOn,
  changeOfRest,
  coursesOn,
  per100IfSharp,
  placesOf,
  wholeRoof
} from './plan-reading.ts';
export {
  planRequestOf,
  type MissingForPlan,
  type PileBefore,
  type PlanGround,
  wideNeeded
} from './plan-request.ts';
export {
  DEFAULT_SETTINGS,
  binsOf,
  deliveryOf,
  gradesOf,
  isSameList,
  jobName,
  numbersOf,
  pileNumbersOf,
  pilesOf,
  settingsOf,
  sizesOf,
  slopesOf,
  specOf,
  tallyPallet,
  tallyPallets,
  type Grades,
  type JobSettings,
  type PalletTally
} from './queries.ts';
export { ranOut, type RanOut } from './ran-out.ts';
export { readingCounts } from './reading-counts.ts';
export { MOST_UNDOABLE, undoableActs } from './recent-acts.ts';
export { readRoof, roofAsText, type RoofAsText } from './roof-as-text.ts';
export {
  CUSTOMARY_OVERHANGS,
  rememberRoof,
  roofLayoutOf,
  slateForEngine,
  slopeForEngine,
  type RoofOfJob
} from './roof-of.ts';
export {
  undereaveLaying,
  undereaveOfPiles,
  withUndereave,
  type UndereaveDraw
} from './undereave-draw.ts';
export { undereaveServedAtMost } from './roof-undereave.ts';
export { listStep, type ListStep } from './list-step.ts';
export { placeKey, type Place } from './sample-place.ts';
export { sampleStep, type SampleStep } from './sample-step.ts';
export { type WhyFewer, whyFewerJoints } from './why-fewer.ts';
export { slatesThere } from './slates-there.ts';
export { setAsideForUndereave } from './set-aside-for-undereave.ts';
export {
  ASSUMED_HAND_SD_MM,
  UNSTUDIED_GAUGE_SD_MM,
  isWildReading,
  judgeSlate,
  orderBand,
  type JudgingGround,
  type SlateJudgement
} from './slate-judgement.ts';
export { slatesFoundByCount, slatesFoundByPile, slatesSorted } from './slates-sorted.ts';
export {
  SLOPE_FIELDS,
  SLOPE_FIELD_NAMES,
  choicesOf,
  customaryOf,
  eachSlopeField,
  slopeBody,
  type SlopeField,
  type SlopeTexts
} from './slope-fields.ts';
export { numbersInStock, pilesRestOn, stockOf, type PileInStock } from './stock.ts';
export { UsualRange } from './usual-range.ts';
export { wideCount } from './wide-count.ts';
