export { default as LayScreen } from './LayScreen.svelte';
