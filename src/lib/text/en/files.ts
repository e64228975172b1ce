import { common } from './common.ts';

/** Words of the Files screen: readings in and out, and backups. */
export const files = {
  title: 'Files and backup',
  importTitle: 'Readings from a file',
  importHint:
    'Columns pallet and thickness, or pallet and grade (thick, medium, thin or the number of the pile). One bad line and nothing is loaded.',
  chooseCsv: 'Choose a CSV file',
  reading: 'Reading the file…',
  writing: 'Writing the file…',
  makingBackup: 'Making the file…',
  exportTitle: 'Readings to a file',
  exportHint: 'One line a slate: measured, sorted by eye or set aside.',
  fileName: (job: string, isForSpreadsheet: boolean) =>
    isForSpreadsheet ? `${job} readings decimal comma` : `${job} readings`,
  exportStandard: 'CSV, point and comma',
  exportSpreadsheet: 'CSV for a spreadsheet with decimal comma',
  ready: (name: string, isForSpreadsheet: boolean) =>
    isForSpreadsheet
      ? `${name} is ready, with decimal commas and semicolons.`
      : `${name} is ready, with decimal points and commas.`,
  saveFile: 'Save the file',
  shareFile: 'Share the file',
  backupTitle: 'Backup',
  backupHint:
    'One file with every entry and photo of this job. Keep it somewhere else; any device with this app can take it in.',
  makeBackup: 'Make a backup file',
  lastBackup: (moment: string) => `Last backup made or read here: ${moment}.`,
  neverBackedUp: 'This job was never backed up here.',
  backupReady: (name: string, entries: number) => `${name} holds ${common.entries(entries)}.`,
  notShared: 'It was not shared: the file is still here.',
  backupNoted: 'Noted as backed up.',
  backupNotNoted:
    'The file was handed over, but this device could not note it: its entries still count as not backed up.',
  notWhole: 'This is not a whole backup, and it does not count as one.',
  holdsRest: (n: number) => `The file holds what can still be read: ${common.entries(n)}.`,
  missingEntries: (
    from: number,
    to: number,
    reason: 'gone' | 'damaged',
    isThisDevice: boolean
  ): string => {
    const which = from === to ? `Entry ${from}` : `Entries ${from} to ${to}`;
    const where = isThisDevice ? 'this device' : 'another device';
    const fault = reason === 'damaged' ? 'cannot be read' : from === to ? 'is gone' : 'are gone';
    return `${which} made on ${where} ${fault}.`;
  },
  missingPhotos: (n: number) =>
    n === 1 ? '1 photo is gone or damaged.' : `${n} photos are gone or damaged.`,
  askOtherFile:
    'Is the job on another phone or in an older backup? Take that file in under Jobs: what is missing comes back.',
  elseOwnJob:
    'If not, save a backup file here, open it under Jobs and take it in as a job of its own.',
  saveRest: 'If not, save this file, open it under Jobs and take it in as a job of its own.',
  nothingReadable: 'No backup was made: nothing of this job can be read on this device.',
  everyJob: 'Every job',
  notMade: 'No backup was made: the file did not pass its check. Nothing changed; try again.',
  problem: (detail: string) =>
    `That did not work (${detail}). What is saved on this device is unchanged: try again.`,
  fingerprint: 'Fingerprint of the journal (SHA-256)',
  remind: (n: number) =>
    `${common.entries(n)} are on this device only. If it is lost or broken, they are gone: make a backup now.`,
  remindWeekly:
    'This browser may clear a site that is not opened for a week. Install the app on the home screen, and back up.',
  restored: (added: number, already: number) =>
    already === 0
      ? `Taken in: ${common.entries(added)}.`
      : `Taken in: ${common.entries(added)}; ${common.entries(already)} were here already.`,
  thisWasCopied: 'This phone was copied.',
  otherWasCopied: 'A phone of this job was copied.',
  copiedWhy:
    'The file and this device hold different entries under the same numbers: a phone was set up from another, or put back to an earlier day. Keep both, and each entry counts once.',
  keepBoth: 'Keep both',
  keptBoth: (n: number) =>
    `Kept as the entries of another phone beside those here: ${common.entries(n)}.`,
  incompleteWhy:
    'It cannot go back into that job: the gaps would stay for good. Take it in as a job of its own and work on there.',
  takeAsOwnJob: 'Take it in as a job of its own',
  rescued: (missing: number) =>
    `This job was saved from a damaged one: ${common.entries(missing)} of that one are missing here.`,
  rescuedPhotos: (n: number) =>
    n === 1 ? '1 photo is missing too.' : `${n} photos are missing too.`,
  openRestored: 'Open the job',
  restoreUnknown: (n: number) =>
    `${common.entries(n)} come from a later version of the app. They are kept and count once this app is updated.`,
  restoreRefused: 'Nothing was taken in and nothing changed.',
  restoreReasons: {
    'not-a-job-file': 'This is no job file of this app.',
    'too-new': 'A later version of the app wrote this file. Update the app, then try again.',
    'too-large': 'The file is larger than 1 GB: it is no job file.',
    torn: 'The file is cut off. Copy it again from where it was saved.',
    'wrong-count': 'The file does not hold as many entries as it says. Copy it again.',
    'wrong-hash': 'The file was changed after it was written: its fingerprint does not match.',
    'broken-line':
      'A line of the file is broken, or holds what this app never writes. Copy the file again from where it was saved.',
    'bad-photo': 'A photo in the file is broken.',
    'mixed-jobs': 'The file mixes several jobs.',
    gap: 'Entries are missing in the file: the numbers of a device have a gap.',
    conflict: 'The file holds an entry that differs from the same entry on this device.',
    'undo-circle': 'The file holds undos that go round in a circle.',
    part: 'A phone was copied, so a part of the job is not enough. Ask him to send all, without your code.',
    incomplete: 'This file was made of a damaged job: entries are missing in it.'
  },
  atLine: (line: number) => `See line ${line}.`
};
