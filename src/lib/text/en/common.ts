import { type Piles, haveWords, numberOfPile } from '../pile-names.ts';
import { pluralizer } from '../plural.ts';

const many = pluralizer('en');
const WORDS = ['Thick', 'Medium', 'Thin'];

/** Words that several screens share. */
export const common = {
  appName: 'Evencourse',
  slates: (n: number) => many(n, { one: 'slate', other: 'slates' }),
  courses: (n: number) => many(n, { one: 'course', other: 'courses' }),
  pallets: (n: number) => many(n, { one: 'pallet', other: 'pallets' }),
  piles: (n: number) => many(n, { one: 'pile', other: 'piles' }),
  entries: (n: number) => many(n, { one: 'entry', other: 'entries' }),
  /** Name of a pile by its place: with piles 1 to 3 also a word. */
  pileWord: (pile: number, piles: Piles) => (haveWords(piles) ? WORDS[pile - 1] : ''),
  pile: (pile: number, piles: Piles) =>
    haveWords(piles) ? `${pile} ${WORDS[pile - 1]}` : `Pile ${numberOfPile(pile, piles)}`,
  back: 'Back',
  save: 'Save',
  cancel: 'Cancel',
  undo: 'Undo',
  print: 'Print',
  /** At the head of every printed page. */
  sheet: {
    page: (page: number, pages: number) => `page ${page} of ${pages}`,
    mark: (mark: string) => `fingerprint ${mark}`,
    goesOn: 'goes on'
  },
  close: 'Close',
  remove: 'Remove',
  change: 'Change',
  online: 'Online',
  offline: 'Offline, all works',
  lastSaved: (what: string) => `Saved: ${what}`,
  nothingSaved: 'Nothing saved yet',
  unexported: (n: number) =>
    n === 0 ? 'All backed up' : `${many(n, { one: 'entry', other: 'entries' })} not backed up`,
  notSaved: 'NOT SAVED',
  retry: 'Try again',
  diskFull:
    'This device has no room left, so the entry is not saved. Free some space, or back the job up and move to another device; then try again.',
  dataCleared:
    "The browser cleared this app's data on this device while the page was open. What you see is all that is left of it: note or print what you need, then load the page again and restore your backup.",
  saveFailed: (detail: string) =>
    `The browser did not save the entry (${detail}). It is still on the screen: try again.`,
  leaveUnsaved: (n: number) =>
    `${many(n, { one: 'entry is', other: 'entries are' })} not saved and would be lost. Leave the job all the same?`,
  loading: 'Opening…',
  jobMissing:
    'This job is not on this device. Open the job list, or restore it from a backup file.',
  toJobs: 'All jobs',
  steps: {
    overview: 'Job',
    delivery: 'Delivery',
    sort: 'Sort',
    grades: 'Grades',
    roof: 'Roof',
    courses: 'Courses',
    lay: 'Lay',
    sheet: 'Setting out',
    crew: 'Crew',
    join: 'Join a job',
    settings: 'Settings'
  },
  unexpected: 'Something went wrong on this screen. What was saved is safe.',
  skipToContent: 'Skip to content',
  updateWaiting: 'A new version of the app is ready. It waits until you say so; nothing is lost.',
  updateNow: 'Load it now',
  stepsLabel: 'Steps of the job',
  stepStates: { done: 'done', now: 'next', open: 'to come' },
  language: 'Language',
  languageReview:
    'Spanish, French, Polish and Romanian cover Sort, the quick split, photos, the crew and the printed tags; review by native speakers is pending. The rest is English.',
  languageFailed: 'This language is not on the device yet. Go online once, then choose it again.',
  openFailed: (detail: string) =>
    `The browser did not open this device's journal (${detail}). Close other tabs of the app and load the page again; nothing is deleted.`,
  /** What an event was, for "last saved". */
  events: {
    jobOpened: 'job opened',
    jobRenamed: 'job renamed',
    jobSettingsSet: 'settings',
    slateSpecSet: 'slate size',
    slateSizesSet: 'sizes of slate',
    setCoursesChosen: 'courses of each size',
    deliveryDeclared: 'order',
    palletAdded: 'pallet',
    sampleDrawn: 'sample list',
    slateGauged: 'slate measured',
    readingHeld: 'reading that waits',
    slateTapped: 'slate piled',
    slateSetAside: 'slate set aside',
    slateChecked: 'spot check',
    stackMeasured: 'stack measured',
    pileCounted: 'pile counted',
    entryVoided: 'undo',
    gradesSet: 'grades',
    slopeSet: 'slope',
    slopeRemoved: 'slope removed',
    planAdopted: 'plan',
    courseLaid: 'course laid',
    coursePartLaid: 'course laid in part',
    slatesLost: 'slates lost',
    slatesMoved: 'slates moved to another pile',
    defectNoted: 'defect',
    photoAdded: 'photo',
    gaugeStudied: 'gauge study',
    copyKept: 'copy of a phone kept',
    jobRescued: 'rescued from a damaged job',
    verdictSigned: 'verdict'
  } as Record<string, string>
};
