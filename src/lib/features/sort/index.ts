export { default as SortScreen } from './SortScreen.svelte';
export { verdictWords } from './verdict-words.ts';
