export { default as OrderScreen } from './OrderScreen.svelte';
export { default as RoofScreen } from './RoofScreen.svelte';
export { default as SettingOutScreen } from './SettingOutScreen.svelte';
