/** The panels of the Sort screen: fetched when the first one is opened, so that Sort opens light. */
export { default as DayPanel } from './DayPanel.svelte';
export { default as Keypad } from './Keypad.svelte';
export { default as OptionsPanel } from './OptionsPanel.svelte';
export { default as PalletForm } from './PalletForm.svelte';
export { default as PalletPanel } from './PalletPanel.svelte';
export { default as SerialPanel } from './SerialPanel.svelte';
export { default as SetAsidePanel } from './SetAsidePanel.svelte';
export { default as UndoPanel } from './UndoPanel.svelte';
