/** What Sort fetches when it is first asked for, so that it opens light. */
export { Keypad } from '$lib/ui';
export { default as PalletForm } from './PalletForm.svelte';
export { default as PanelView } from './PanelView.svelte';
