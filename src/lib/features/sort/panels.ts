/** What Sort fetches when it is first asked for, so that it opens light. */
export { Keypad } from '$lib/ui';
export { default as AskView } from './AskView.svelte';
export { default as FirstPallet } from './FirstPallet.svelte';
export { default as HeldView } from './HeldView.svelte';
export { default as SidesView } from './SidesView.svelte';
export { default as PanelView } from './PanelView.svelte';
export { slatesFoundByPile } from '$lib/job';
