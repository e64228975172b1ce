import { common } from './common.ts';
import { files } from './files.ts';
import { jobs } from './jobs.ts';
import { settings } from './settings.ts';

/** The sections that every start needs, and those of the first pages. */
const first = { common, files, jobs, settings };

/** The sections that a screen fetches when it opens: they would slow down every start. */
export const LATER = {
  courses: async () => (await import('./courses.ts')).courses,
  delivery: async () => (await import('./delivery.ts')).delivery,
  grades: async () => (await import('./grades.ts')).grades,
  lay: async () => (await import('./lay.ts')).lay,
  roof: async () => (await import('./roof.ts')).roof,
  sheet: async () => (await import('./sheet.ts')).sheet,
  sort: async () => (await import('./sort.ts')).sort,
  tags: async () => (await import('./tags.ts')).tags
};

export type LaterSection = keyof typeof LATER;
type Later = { [S in LaterSection]: Awaited<ReturnType<(typeof LATER)[S]>> };

/** The English catalogue: the complete one, which the other languages fall back on. */
export type Catalogue = typeof first & Later;

/** What of it is there from the start. */
export const en: Partial<Catalogue> & typeof first = first;
