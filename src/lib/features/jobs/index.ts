export { default as JobFrame } from './JobFrame.svelte';
export { default as JobScreen } from './JobScreen.svelte';
export { default as JobsScreen } from './JobsScreen.svelte';
export { default as RestoredAnswer } from './RestoredAnswer.svelte';
