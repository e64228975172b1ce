import type { Catalogue } from '../words.svelte.ts';

export const es: Partial<Catalogue> = {};
