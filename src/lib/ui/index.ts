export { default as Slab } from './Slab.svelte';
export { default as PileMark } from './PileMark.svelte';
export { default as Notice } from './Notice.svelte';
export { default as Field } from './Field.svelte';
export { default as StatusStrip } from './StatusStrip.svelte';
export { default as StepBar } from './StepBar.svelte';
export { pileColour, pileInk } from './pile-colour.ts';
