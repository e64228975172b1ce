import type { Translation } from '../words.svelte.ts';
import { common } from './common.ts';
import { crew } from './crew.ts';
import { photos } from './photos.ts';
import { quick } from './quick.ts';
import { sort } from './sort.ts';
import { sortCount } from './sort-count.ts';
import { sortOptions } from './sort-options.ts';
import { tags } from './tags.ts';

/** What this language has so far; the rest is English. Review by a native speaker is pending. */
export const pl: Translation = { common, crew, photos, quick, sort, sortCount, sortOptions, tags };
