export { default as CrewScreen } from './CrewScreen.svelte';
export { default as JoinScreen } from './JoinScreen.svelte';
