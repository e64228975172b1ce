export { default as SizesScreen } from './SizesScreen.svelte';
