import type { Catalogue } from '../words.svelte.ts';

export const ro: Partial<Catalogue> = {};
