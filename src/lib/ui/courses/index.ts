export type { CoursePlace } from './by-slope.ts';
export { default as RoofElevation } from './RoofElevation.svelte';
export { default as PlanGlance } from './PlanGlance.svelte';
export { default as CourseCard } from './CourseCard.svelte';
export { default as PlanTable } from './PlanTable.svelte';
export { default as WideTable } from './WideTable.svelte';
export { default as PlanDifference } from './PlanDifference.svelte';
