export { default as QuickScreen } from './QuickScreen.svelte';
