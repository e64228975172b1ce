import { common } from './common.ts';
import { courses } from './courses.ts';
import { delivery } from './delivery.ts';
import { files } from './files.ts';
import { grades } from './grades.ts';
import { jobs } from './jobs.ts';
import { lay } from './lay.ts';
import { roof } from './roof.ts';
import { settings } from './settings.ts';
import { sheet } from './sheet.ts';
import { sort } from './sort.ts';
import { tags } from './tags.ts';

/** The English catalogue: the complete one, which the others fall back on. */
export const en = {
  common,
  jobs,
  sort,
  files,
  grades,
  roof,
  sheet,
  courses,
  lay,
  delivery,
  settings,
  tags
};
