export { default as FilesScreen } from './FilesScreen.svelte';
export { default as SettingsScreen } from './SettingsScreen.svelte';
