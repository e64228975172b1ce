import { pluralizer } from '../plural.ts';

const many = pluralizer('en');
const SLATE = { one: 'slate', other: 'slates' };

/** Words of the quick split. */
export const quick = {
  title: 'Quick split',
  lead: 'No pallets, no roof: where to split, from 20 slates.',
  slates: 'How many slates?',
  know: 'What do you know of the roof?',
  knows: { courses: 'The number of courses', size: 'Rafter, width and slate' },
  courses: 'Courses, eave to ridge',
  rafter: 'Rafter length',
  width: 'Width at the eave',
  slateLength: 'Slate length',
  slateWidth: 'Slate width',
  headlap: 'Headlap',
  measure: 'Measure 20 slates',
  wrong: {
    slates: 'Type how many slates there are: a whole number from 1 to 100,000.',
    courses: 'Type how many courses: a whole number from 1 to 300.',
    length: 'Type a length in millimetres, for example 5000.',
    moreCourses: 'That is less than one slate a course. Check both numbers.',
    roof: (field: string) => `A roof of these sizes cannot be laid. Check the ${field}.`,
    anyRoof: 'A roof of these sizes cannot be laid. Check the sizes.'
  },
  caution: 'Open crates flat on firm ground. Lift with help, wear gloves: edges cut.',
  count: (done: number, asked: number) => `${done} of ${asked}`,
  counted: (done: number) => many(done, { one: 'slate measured', other: 'slates measured' }),
  takeBack: (thickness: string) => `Take back ${thickness}`,
  show: 'Show the split',
  paste: 'Paste a list',
  pasteLabel: 'Thicknesses in mm, one a line',
  pasteTake: 'Take the list',
  pasteWrong: {
    empty: 'The list is empty. Type or paste thicknesses, for example 6.2.',
    tooMany: 'The list has more than 2,000 numbers. Take fewer.',
    notAReading: (text: string) =>
      `“${text}” is no thickness from 1.5 to 40 mm. Correct it; nothing was taken yet.`
  },
  tooFew: (readings: number, fewest: number) =>
    `${readings === 1 ? 'One slate tells' : `${many(readings, SLATE)} tell`} nothing yet: measure ${fewest} or more, best 20.`,
  allEqual: (thickness: string) =>
    `All measure ${thickness}: there is nothing to split. Measure more, or lay them as they are.`,
  lines: 'Where to split',
  over: (from: string) => `${from} and over`,
  between: (from: string, to: string) => `${from} to ${to}`,
  under: (to: string) => `under ${to}`,
  share: (isFirst: boolean, courses: number) =>
    `${isFirst ? 'about ' : ''}${many(courses, { one: 'course', other: 'courses' })}`,
  slatesOf: (slates: string) => `about ${slates} slates`,
  picture: (said: string) => `The roof from eave to ridge: ${said}`,
  joints: (sorted: string, unsorted: string) =>
    `${sorted} in 100 joints will show; unsorted ${unsorted}.`,
  about: (n: string) => `About ${n}`,
  lessThanOne: 'Less than 1',
  short: (missing: string) => `The roof needs about ${missing} slates more.`,
  rough: (readings: number) => `From ${many(readings, SLATE)}: a first idea.`,
  keep: 'Keep as a job',
  more: 'Measure more',
  numbers: 'Change numbers',
  restart: 'Start over',
  restartSure: (readings: number) =>
    `Drop ${many(readings, { one: 'reading', other: 'readings' })}?`,
  jobName: (day: string) => `Quick split, ${day}`,
  pallet: 'All',
  slope: 'Roof'
};
