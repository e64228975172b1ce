/** What Sort fetches when it is first asked for, so that it opens light. */
export { Keypad, PalletForm } from '$lib/ui';
export { default as PanelView } from './PanelView.svelte';
