/**
 * A door of its own: only what is behind it needs a distribution library, so a screen that plans
 * without the chance of running out does not load one.
 */
export {
  type HeldRisk,
  type PileEstimate,
  type RoofPlans,
  type RunOutChance,
  reservesWithinRisk,
  roofPlans,
  runOutChances
} from './run-out.ts';
