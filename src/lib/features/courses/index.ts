export { default as CoursesScreen } from './CoursesScreen.svelte';
export { default as PlanDifference } from './PlanDifference.svelte';
export { default as ShortPanel } from './ShortPanel.svelte';
export { CoursesState } from './courses.svelte.ts';
