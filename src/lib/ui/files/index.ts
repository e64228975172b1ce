export { default as FilePicker } from './FilePicker.svelte';
export { intoView } from './into-view.ts';
