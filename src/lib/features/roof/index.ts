export { default as RoofScreen } from './RoofScreen.svelte';
export { default as SettingOutScreen } from './SettingOutScreen.svelte';
