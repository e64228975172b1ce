export { default as TagsScreen } from './TagsScreen.svelte';
