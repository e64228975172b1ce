export { default as GradesScreen } from './GradesScreen.svelte';
