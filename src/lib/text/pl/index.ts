import type { Catalogue } from '../words.svelte.ts';

export const pl: Partial<Catalogue> = {};
