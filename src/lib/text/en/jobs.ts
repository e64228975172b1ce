import { pluralizer } from '../plural.ts';
import { common } from './common.ts';
import { decidedBy } from './decided-by.ts';

const many = pluralizer('en');
const jobCount = (n: number) => many(n, { one: 'job', other: 'jobs' });
const OTHER_PALLET = { one: 'other pallet', other: 'other pallets' };
const count = (n: number): string => n.toLocaleString('en');

/** Words of the job list and the overview of one job. */
export const jobs = {
  title: 'Jobs',
  lead: 'Sort natural slates by thickness and lay every course even.',
  openExample: 'Open the worked example',
  exampleHint: 'An invented delivery of six pallets and its roof.',
  openChapel: 'Open the chapel roof, of three lengths',
  makingExample: 'Making the worked example…',
  newJob: 'New job',
  quick: 'Quick split',
  quickHint: 'Twenty slates measured, no pallets, no roof: where to split.',
  jobName: 'Name of the job',
  start: 'Start',
  nameMissing: 'Give the job a name, so that you find it again.',
  nameTaken: (name: string) => `There is a job called ${name} already. Give this one another name.`,
  menu: 'More',
  menuOf: (name: string) => `More: ${name}`,
  putAwayTitle: 'Put away',
  allPutAway: 'Every job is put away.',
  isPutAway: (name: string) => `Put away: ${name}. You find it under “Put away”.`,
  bringBack: 'Bring back',
  plainHttp:
    'Saving works. Offline start, scanning and sharing need an https address; this one is plain http.',
  installHint:
    'Install the app, so that it starts without a network and the phone keeps the entries: tap Share, then Add to Home Screen.',
  none: 'No job on this device yet.',
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
  restore: 'Open a job sent to me',
  restoreHint: 'A backup, or a file from a mate.',
  restoreChoose: 'Choose a job file',
  restoreScan: 'Scan or paste',
  settings: 'Settings and health',
  lastEntry: (moment: string) => `last entry ${moment}`,
  hasCrew: 'shared with a crew',
  notShared: (n: number) => `${common.entries(n)} not shared yet`,
  /** How far a job of the list is, beside its next step. */
  progress: {
    measured: (n: string, of: string) => `${n} of ${of} measured for grades`,
    sorted: (n: string, of: string) => `${n} of ${of} sorted`,
    laid: (n: string, of: string) => `${n} of ${of} courses laid`
  },
  next: 'Next',
  nextSteps: {
    pallets: { title: 'Enter the pallets', why: 'How many pallets came, and their slates.' },
    sample: { title: 'Measure a sample', why: '' },
    grades: { title: 'Set the grades', why: 'Split the slates into piles before sorting.' },
    roof: { title: 'Enter the roof', why: 'It says how many slates each course takes.' },
    plan: { title: 'Make the plan', why: 'Give every course its pile, from eave to ridge.' },
    sort: { title: 'Sort the slates', why: 'Put each slate on its pile.' },
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
  /** Once a pallet is begun, its slates judge no delivery. */
  judgeFirst: 'Or check the delivery first',
  /** The steps of a job with how far each one is. */
  track: {
    label: 'How far the job is',
    titles: {
      pallets: 'Pallets',
      delivery: 'Delivery',
      sample: 'Measured for grades',
      grades: 'Grades',
      roof: 'Roof',
      plan: 'Plan',
      sort: 'Sorted',
      lay: 'Laid'
    },
    facts: {
      none: 'not yet',
      pallets: (pallets: number, slates: number) =>
        slates > 0 ? `${count(pallets)} with ${common.slates(slates)}` : count(pallets)
    }
  },
  undecided: 'verdict not signed',
  unjudged: 'not checked',
  decidedBy,
  roofPicture: 'The roof, each course in the shade of its pile',
  safe: (unexported: number, backedUpAt: string) =>
    unexported === 0
      ? 'Everything is backed up.'
      : backedUpAt
        ? `${common.entries(unexported)} on this device only, since the backup of ${backedUpAt}.`
        : `Not backed up: ${common.entries(unexported)} on this device only.`,
  devices: (n: number) => `${count(n)} devices have added entries.`,
  counts: 'Every count',
  slopes: (n: number) => many(n, { one: 'slope', other: 'slopes' }),
  pilesTitle: 'What is on each pile?',
  more: 'Setting out, tags, settings',
  tags: 'Tags and tally sheet',
  files: 'Files and backup',
  ofTotal: (part: string, total: string) => `${part} of ${total}`,
  safety:
    'Slates are heavy and brittle. Stack low, lift with help, wet or extract the dust. Local rules and the licensed trade decide.'
};
