export { words, LOCALES, isLocale, type Catalogue, type Locale } from './words.svelte.ts';
export { type Piles, countPiles, numberOfPile, placeOfPile } from './pile-names.ts';
export { pluralizer, type PluralForms } from './plural.ts';
export { NumberWords } from './numbers.ts';
