export { default as CompareScreen } from './CompareScreen.svelte';
export { default as DeliveryFrame } from './DeliveryFrame.svelte';
export { default as DeliveryScreen } from './DeliveryScreen.svelte';
export { default as FindingsScreen } from './FindingsScreen.svelte';
export { default as MeasureScreen } from './MeasureScreen.svelte';
export { default as OrderScreen } from './OrderScreen.svelte';
export { default as SampleScreen } from './SampleScreen.svelte';
export { default as SheetScreen } from './SheetScreen.svelte';
