import { pluralizer } from '../plural.ts';
import { common } from './common.ts';
import { decidedBy } from './decided-by.ts';
import { gone } from './gone.ts';

const many = pluralizer('en');
const jobCount = (n: number) => many(n, { one: 'job', other: 'jobs' });
const OTHER_PALLET = { one: 'other pallet', other: 'other pallets' };

/** Words of the job list and the overview of one job. */
export const jobs = {
  title: 'Jobs',
  lead: 'Sort natural slates by thickness and lay every course even.',
  openExample: 'Open the worked example',
  exampleHint:
    'An invented delivery of six pallets, part measured, part sorted by hand, with a roof.',
  makingExample: 'Making the worked example…',
  newJob: 'New job',
  quick: 'Quick split',
  quickHint: 'Twenty slates measured, no pallets, no roof: where to split.',
  jobName: 'Name of the job',
  start: 'Start',
  nameMissing: 'Give the job a name, so that you find it again.',
  plainHttp:
    'Saving works. Offline start, scanning and sharing need an https address; this one is plain http.',
  installHint:
    'Install the app, so that it starts without a network and the phone keeps the entries: tap Share, then Add to Home Screen.',
  none: 'No job on this device yet.',
  entries: (n: number) => common.entries(n),
  find: 'Find a job',
  foundNone: (wanted: string) => `No job has “${wanted}” in its name.`,
  showMore: (n: number) => `Show ${n} more`,
  backUpAll: 'Back up every job',
  backingUp: (done: number, of: number) =>
    of === 0 ? 'Making the file…' : `Making the file: ${done} of ${of} jobs…`,
  backedUp: (n: number) => `In one file, read back and whole: ${jobCount(n)}.`,
  jobInFile: (at: number) => `Job ${at}`,
  restoredJobs: (n: number, added: number) =>
    `Taken in: ${jobCount(n)}, ${common.entries(added)} of them new.`,
  notRestored: (n: number) => `Not taken in: ${jobCount(n)}. Choose the file of each by itself.`,
  moreJobs: (n: number) => `And ${jobCount(n)} more.`,
  restore: 'Restore a backup',
  restoreHint: 'A file that this app wrote, on this device or another: one job or several.',
  restoreChoose: 'Choose a job file',
  settings: 'Settings and health',
  lastEntry: (moment: string) => `last entry ${moment}`,
  overviewTitle: 'Job',
  next: 'Next',
  nextSteps: {
    pallets: {
      title: 'Enter the pallets',
      why: 'How many pallets came, and how many slates are on each.'
    },
    sample: {
      title: 'Measure a sample',
      why: 'About 20 slates from each pallet, or 60 in all, show the spread of thickness.'
    },
    grades: { title: 'Set the grades', why: 'Cut the spread into piles before sorting.' },
    roof: { title: 'Enter the roof', why: 'The roof decides how many slates each course takes.' },
    plan: { title: 'Make the plan', why: 'Give every course its pile, from eave to ridge.' },
    sort: { title: 'Sort the slates', why: 'Log each slate on to its pile.' },
    lay: { title: 'Lay', why: 'Mark courses as they are laid.' },
    done: { title: 'All courses are laid', why: 'Print or back up the record.' }
  },
  toMeasure: (pallets: readonly { label: string; slates: number }[]) => {
    const said = pallets
      .slice(0, 3)
      .map(({ label, slates }) => `${common.slates(slates)} from pallet ${label}`);
    const others = pallets.length - said.length;
    const rest = others > 0 ? [`and some from ${many(others, OTHER_PALLET)}`] : [];
    return `Still to measure: ${[...said, ...rest].join(', ')}.`;
  },
  facts: {
    stock: 'Stock',
    delivery: 'Delivery',
    sample: 'Sample',
    beforeGrades: 'Gauged before there were grades, on no pile',
    sorted: 'Sorted so far',
    gauged: 'of these, measured at the gauge',
    tapped: 'of these, told by hand',
    setAside: 'of these, set aside',
    thickness: 'Thickness by gauge',
    grades: 'Grades',
    roof: 'Roof',
    plan: 'Plan',
    laid: 'Laid'
  },
  decidedBy,
  undecided: 'No verdict is signed yet',
  slopes: (n: number) => (n === 1 ? '1 slope' : `${n} slopes`),
  planned: (courses: number, kickers: number) =>
    `${common.courses(courses)}, about ${many(Math.round(kickers), { one: 'kicker', other: 'kickers' })} expected`,
  plannedUnmeasured: (courses: number) =>
    `${common.courses(courses)}; kickers unknown, no slate was measured`,
  onPile: (n: number) => `${n.toLocaleString('en')} of them piled`,
  pilesLeft: 'What is left of each pile now, laid and lost slates taken off, as on Lay.',
  pilesBefore: (laid: number) =>
    `The piles as they were sorted: ${laid > 0 ? `what ${common.courses(laid)} took` : 'what was lost'} since is not taken off, because the slate or the roof is not entered in full.`,
  leftOfPile: (left: number, standing: number) =>
    `${common.slates(left)} left, ${standing.toLocaleString('en')} of them piled`,
  laidOfPile: (n: number) => `${n.toLocaleString('en')} laid`,
  lostOfPile: (n: number) => `${n.toLocaleString('en')} lost`,
  more: 'More',
  tags: 'Tags and tally sheet',
  files: 'Files and backup',
  noPallets: 'No pallets entered',
  uncounted: (n: number, all: number) =>
    n === all ? 'slates not counted' : `slates not counted on ${n} of them`,
  sampleStays: (slates: string) => `${slates} measured and put back on their pallets`,
  noSample: 'None yet',
  sortedOf: (sorted: string, all: string) => `${sorted} of ${all}`,
  noneSorted: 'None yet',
  noReadings: 'No readings yet',
  usable: (usable: string, delivered: string, others: readonly string[]) =>
    `${usable} usable of ${delivered}: the others are ${others.join('; ')}.`,
  usableAside: 'set aside, or are expected to be',
  gone,
  noGrades: 'Not set',
  noRoof: 'Not entered',
  noPlan: 'Not made',
  nothingToLay: 'No plan yet',
  noneLaid: (all: string) => `None yet of ${all}`,
  ofTotal: (part: string, total: string) => `${part} of ${total}`,
  spread: (readings: number, mean: string, low: string, high: string) =>
    `${many(readings, { one: 'reading averages', other: 'readings average' })} ${mean}, from ${low} to ${high}`,
  importTitle: 'Readings from a file',
  importHint:
    'A CSV file with the columns pallet and thickness_mm, or pallet and grade. It is taken whole or not at all.',
  importButton: 'Import CSV',
  exportButton: 'Export CSV',
  exportCountryButton: 'Export for a spreadsheet with decimal comma',
  imported: (slates: string, pallets: string) => `Imported ${slates} on ${pallets}.`,
  safety:
    'Slates are heavy and brittle. Stack low and level, lift with help, wet or extract the dust when you cut or hole, and work at height only from a proper scaffold. Local rules and the licensed trade decide.'
};
