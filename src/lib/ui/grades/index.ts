export { default as PilesStepper } from './PilesStepper.svelte';
export { default as PileTable } from './PileTable.svelte';
export { default as SpreadChart } from './SpreadChart.svelte';
export { default as SpreadTable } from './SpreadTable.svelte';
export { default as WayChooser } from './WayChooser.svelte';
export type { SpreadBar } from './spread-chart.ts';
