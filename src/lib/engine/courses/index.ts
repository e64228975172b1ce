export type {
  CommonStock,
  CoursePart,
  Evenness,
  KickChances,
  LaidCourse,
  PileCount,
  PileStock,
  PileUse,
  Plan,
  PlanRequest,
  PlanResult,
  PlannedCourse,
  Shortage
} from './plan-types.ts';
export { kickChances } from './kick-chances.ts';
export { inOrderOfPiles } from './laying-order.ts';
export { planCourses } from './planner.ts';
export { planByRule } from './rule-plan.ts';
export { type PlanFault, checkPlan } from './plan-check.ts';
export {
  type CourseDraw,
  type PalletDraw,
  type PalletStock,
  type PalletsShort,
  FEWEST_PALLETS,
  drawList
} from './draw-list.ts';
export {
  type Simulation,
  type SimulationRequest,
  type SimulationSummary,
  createSimulation
} from './simulate.ts';
export type { SimulatedKickers } from './simulation-tally.ts';
export {
  type ExpectedPiles,
  type PlanForThresholds,
  type UnsortedStock,
  expectedPiles,
  planBeforeSorting
} from './expected-piles.ts';
export { type WhatIfChoices, type WhatIfRow, whatIf } from './what-if.ts';
export { type LayingEvent, type LayingProgress, layingProgress } from './laying.ts';
export { type CourseChange, type PlanChange, comparePlans } from './compare-plans.ts';
export { type RogueCheck, type RogueInPile, type RoguePlace, rogueCheck } from './rogue.ts';
export {
  type Lift,
  type LimitsTooTight,
  type LoadLimits,
  type SlateToLift,
  type LoadStack,
  loadOut
} from './load-out.ts';
export type {
  LayPart,
  LetSlopesDiffer,
  LetThicknessRise,
  MoveThreshold,
  NarrowReserve,
  OrderSlates,
  OtherPiles,
  StockKnowledge,
  WayOut
} from './way-out-types.ts';
export { waysOut } from './ways-out.ts';
export { type CoursesApart, coursesApart } from './apart-at-joins.ts';
