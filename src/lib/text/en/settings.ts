import { common } from './common.ts';

/** Words of the settings and health page. */
export const settings = {
  title: 'Settings and health',
  languageTitle: 'Language',
  healthTitle: 'Health of this device',
  checking: 'Checking…',
  writeGood: (ms: number) => `A test entry was written and read back in ${ms} ms.`,
  writeFull:
    'The device is full: a test entry could not be written. Free some space before you sort.',
  writeBad: (detail: string) =>
    `A test entry could not be written (${detail}). Do not sort on this device; close other tabs of the app, load the page again, or use another browser.`,
  persistTitle: 'Kept for good',
  persisted: 'The browser has promised to keep the data until you remove it.',
  notPersisted:
    'The browser may clear the data when space runs short. Ask it to keep it, install the app on the home screen, and back up daily.',
  askPersist: 'Ask the browser to keep the data',
  persistRefused: 'The browser said no. Install the app on the home screen and back up daily.',
  persistUnknown: 'This browser does not say whether it keeps data. Back up daily.',
  space: (used: string, quota: string) => `${used} in use of about ${quota} allowed.`,
  facts: {
    jobs: 'Jobs',
    events: 'Entries',
    photos: 'Photos',
    unexported: 'Entries not backed up',
    staleViews: 'Jobs to recalculate',
    offline: 'Starts without a network',
    version: 'Version'
  },
  /** What the device holds of the app itself. */
  shell: {
    fetching: 'not yet: the app is being fetched',
    whole: 'yes',
    refilled: 'yes: parts were missing and have been fetched again',
    lacking: 'not yet: load the app once more while online'
  },
  rebuildTitle: 'Recalculate and export',
  rebuildHint:
    'Recalculates a job from its saved entries. It deletes nothing and may take a minute.',
  rebuild: 'Recalculate',
  rebuilt: (name: string, entries: number) =>
    `${name}: recalculated from ${common.entries(entries)}.`,
  exportAll: 'Make a file of each job',
  exportingAll: 'Making the backup files…',
  exportAllHint: 'One file of all jobs is made under All jobs; here, a file of each.',
  diagnosticTitle: 'Diagnostic text',
  diagnosticHint: 'For whoever helps you: versions and counts, no names and no readings.',
  copy: 'Copy',
  copied: 'Copied.',
  copyFailed: 'The browser does not allow copying here. Mark the text and copy it by hand.',
  back: 'All jobs',
  noJobs: 'No job on this device yet.',
  licences: 'Licences of the parts',
  problem: (detail: string) => `That did not work (${detail}). Nothing was changed.`
};
