import type { Catalogue } from '../words.svelte.ts';

export const fr: Partial<Catalogue> = {};
