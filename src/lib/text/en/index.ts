import { common } from './common.ts';

/** The section that every start needs. */
const first = { common };

/** The sections that a screen fetches when it opens: they would slow down every start. */
export const LATER = {
  courses: async () => (await import('./courses.ts')).courses,
  csv: async () => (await import('./csv.ts')).csv,
  crew: async () => (await import('./crew.ts')).crew,
  delivery: async () => (await import('./delivery.ts')).delivery,
  files: async () => (await import('./files.ts')).files,
  grades: async () => (await import('./grades.ts')).grades,
  jobFolds: async () => (await import('./job-folds.ts')).jobFolds,
  jobMenu: async () => (await import('./job-menu.ts')).jobMenu,
  jobs: async () => (await import('./jobs.ts')).jobs,
  lay: async () => (await import('./lay.ts')).lay,
  order: async () => (await import('./order.ts')).order,
  photos: async () => (await import('./photos.ts')).photos,
  quick: async () => (await import('./quick.ts')).quick,
  roof: async () => (await import('./roof.ts')).roof,
  sizes: async () => (await import('./sizes.ts')).sizes,
  settings: async () => (await import('./settings.ts')).settings,
  sheet: async () => (await import('./sheet.ts')).sheet,
  sort: async () => (await import('./sort.ts')).sort,
  sortCount: async () => (await import('./sort-count.ts')).sortCount,
  sortOptions: async () => (await import('./sort-options.ts')).sortOptions,
  tags: async () => (await import('./tags.ts')).tags
};

export type LaterSection = keyof typeof LATER;
type Later = { [S in LaterSection]: Awaited<ReturnType<(typeof LATER)[S]>> };

/** The English catalogue: the complete one, which the other languages fall back on. */
export type Catalogue = typeof first & Later;

/** What of it is there from the start. */
export const en: Partial<Catalogue> & typeof first = first;
