export type {
  CommonStock,
  CoursePart,
  Evenness,
  KickChances,
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
export { layingOrder } from './laying-order.ts';
export { planCourses } from './planner.ts';
export { type PlanFault, checkPlan } from './plan-check.ts';
export {
  type CourseDraw,
  type Draw,
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
export { type SimulatedKickers } from './simulation-tally.ts';
