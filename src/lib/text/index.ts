export { words, LOCALES, type Locale } from './words.svelte.ts';
export { pluralizer, type PluralForms } from './plural.ts';
export { NumberWords } from './numbers.ts';
