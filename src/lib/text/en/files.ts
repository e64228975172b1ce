import { pluralizer } from '../plural.ts';
import { common } from './common.ts';

const many = pluralizer('en');
const readings = (n: number) => many(n, { one: 'reading', other: 'readings' });

/** Words of the Files screen: readings in and out, and backups. */
export const files = {
  title: 'Files and backup',
  importTitle: 'Readings from a file',
  importHint:
    'Columns pallet and thickness, or pallet and grade (thick, medium, thin or 1 to 8). One bad line and nothing is loaded.',
  chooseCsv: 'Choose a CSV file',
  reading: 'Reading the file…',
  writing: 'Writing the file…',
  makingBackup: 'Making the file…',
  imported: (slates: number, pallets: number) =>
    `Taken in: ${common.slates(slates)} on ${common.pallets(pallets)}.`,
  ignored: (columns: string) => `Columns not read: ${columns}.`,
  newPallets: (n: number, sizes: string) =>
    n === 1
      ? `New pallet, as large as its lines in the file: ${sizes}. If it holds more, say so:`
      : `New pallets, each as large as its lines in the file: ${sizes}. If they hold more, say so:`,
  palletSize: (label: string, slates: number) => `${label} ${common.slates(slates)}`,
  andMore: (n: number) => `${n.toLocaleString('en')} more`,
  setSizes: 'Sizes of the pallets',
  filledDown: (n: number, lines: string) =>
    n === 1
      ? `Line ${lines} names no pallet: taken as that of the line above.`
      : `Lines ${lines} name no pallet: taken as that of the line above.`,
  notSlates: (lines: string) => `Not read, since it is no slate: ${lines}.`,
  noteLine: (line: number, text: string) => `line ${line} “${text}”`,
  sumsLeftOut: (n: number) =>
    `Left out as a mean or total: ${many(n, { one: 'line', other: 'lines' })}.`,
  readHeadings: (headings: string) => `Headings read: ${headings}.`,
  headingAs: (heading: string, column: string) => `“${heading}” as ${column}`,
  inches: (text: string, mm: string) => `Taken as inches: ${text} is ${mm}.`,
  apart: (n: number) =>
    n === 1
      ? 'One slate of the sample is kept apart and does not judge the delivery: Findings says why.'
      : `${common.slates(n)} of the sample are kept apart and do not judge the delivery: Findings says why.`,
  askSums: (n: number) =>
    n === 1
      ? 'Is this line a slate, or a mean or total of the others?'
      : 'Are these lines slates, or means or totals of the others?',
  sumLine: (line: number, text: string) => `Line ${line}: “${text}”`,
  sumOnPallet: (pallet: string) => `As a slate it would be on pallet “${pallet}”.`,
  leaveSums: (n: number) => (n === 1 ? 'Leave the line out' : 'Leave the lines out'),
  takeSums: (n: number) => (n === 1 ? 'It is a slate' : 'They are slates'),
  chosen: (name: string) => `${name}:`,
  allKnown: (rows: number) =>
    rows === 1
      ? 'The one reading of this file is already in this job: same pallet, same measure.'
      : `All ${readings(rows)} of this file are already in this job: same pallets, same measures.`,
  someKnown: (rows: number, known: number) =>
    `${known.toLocaleString('en')} of the ${readings(rows)} of this file are already in this job: same pallets, same measures. ${
      rows - known === 1 ? '1 is new.' : `${(rows - known).toLocaleString('en')} are new.`
    }`,
  askKnown:
    'Was the file, or a part of it, taken in before? Then leave these out: each slate would count twice. If they are other slates that measured the same, take them in.',
  leaveOut: (rows: number) => (rows === 1 ? 'Leave it out' : 'Leave them out'),
  takeNewOnly: (n: number) => `Take in only the ${many(n, { one: 'new one', other: 'new ones' })}`,
  takeAll: (rows: number) => `Take in all ${rows.toLocaleString('en')} all the same`,
  takeOneAgain: 'Take it in all the same',
  takeNothing: 'Take in nothing',
  leftOut: (n: number) => `Left out, because the job has them already: ${readings(n)}.`,
  allLeftOut: 'Nothing was taken in: the job is as it was.',
  moreProblems: (n: number) => `Show ${many(n, { one: 'more problem', other: 'more problems' })}`,
  refused: 'Nothing was taken in. Fix the file:',
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
  notSaved:
    'The readings were not saved; nothing changed. Do what the red strip says, then choose the file again.',
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
  atLine: (line: number) => `See line ${line}.`,
  problems: {
    'too-large': (bytes: number, limit: number) =>
      `The file has ${mb(bytes)}; a file of readings has at most ${mb(limit)}. Is it the right file?`,
    'too-many-rows': (rows: number, limit: number) =>
      `The file has ${rows.toLocaleString('en')} rows; at most ${limit.toLocaleString('en')} are taken. Split it by pallet.`,
    binary: () => 'This is no text file. In the spreadsheet, save it as CSV.',
    empty: () => 'The file is empty.',
    'no-rows': () => 'The file has headings and no readings below them.',
    'missing-column': (column: string, found: string) =>
      `There is no column ${column}. The first line has: ${found}.`,
    'duplicate-column': (column: string) => `The column ${column} is there twice. Remove one.`,
    'unknown-unit': (column: string) =>
      `The heading “${column}” has a unit that is not read. Convert the column to mm.`,
    'too-many-point-columns': (found: number) =>
      `There are ${found} columns of points; a slate has at most four. If each is a slate of its own, give each a line.`,
    'unknown-separator': (text: string) =>
      `The first line says that “${text}” separates the columns. Use commas, semicolons or tabs.`,
    'too-many-points': (line: number, found: number) =>
      `Line ${line} has ${found} points; a slate has at most four.`,
    'mean-differs': (line: number, text: string, mean: number) =>
      `Line ${line}: the thickness is ${text}, but its points have the mean ${mean.toFixed(2)} mm. One of them is wrong.`,
    'ambiguous-separator': () =>
      'It is not clear what separates the columns. Use commas, semicolons or tabs, only one of them.',
    'comma-twice': (line: number) =>
      `Line ${line}: the comma separates columns and marks decimals. Use semicolons between the columns, or decimal points.`,
    'unclosed-quote': (line: number) => `Line ${line}: a quotation mark is opened and not closed.`,
    'stray-quote': (line: number) =>
      `Line ${line}: a quotation mark stands inside a cell. Remove it.`,
    'columns-differ': (line: number, found: number, expected: number) =>
      `Line ${line} has ${many(found, { one: 'column', other: 'columns' })}; the headings have ${expected}.`,
    'torn-last-line': (line: number) =>
      `Line ${line}, the last, is cut off. The file was not written to its end: save it again.`,
    'missing-pallet': (line: number) => `Line ${line} does not say which pallet.`,
    'pallet-too-long': (line: number) =>
      `Line ${line}: the pallet's name is longer than 200 letters.`,
    'no-reading': (line: number) => `Line ${line} has neither a thickness nor a grade.`,
    'marks-without-thickness': (line: number) =>
      `Line ${line} has ring, faults or sizes and no thickness. They are kept with a measured slate only.`,
    'spreadsheet-error': (line: number, text: string) =>
      `Line ${line}: “${text}” is what a spreadsheet writes when a formula fails. Type the reading.`,
    'like-a-fraction': (line: number, text: string) =>
      `Line ${line}: “${text}” may be a fraction of an inch or two points. Write decimals: 9.5, or 3.0/8.0.`,
    'unit-differs': (line: number, text: string) =>
      `Line ${line}: “${text}” is in another unit than the heading says.`,
    'bad-measure': (line: number, text: string, limit: number) =>
      `Line ${line}: “${text}” is no length from 0 to ${limit} mm.`,
    'not-whole': (line: number, text: string) =>
      `Line ${line}: “${text}” is no layer or place. Write a whole number.`,
    'not-yes-or-no': (line: number, text: string) =>
      `Line ${line}: “${text}” is neither yes nor no.`,
    'unknown-ring': (line: number, text: string) =>
      `Line ${line}: “${text}” is no ring. Write clear or dull.`,
    'unknown-fault': (line: number, text: string) =>
      `Line ${line}: “${text}” is no fault that is known. Write none, broken, dull ring, twisted, tapered, wrong size, inclusion, colour or other.`,
    'ambiguous-grade': (line: number, text: string) =>
      `Line ${line}: “${text}” may be thick or thin. Write the word.`,
    'not-a-number': (line: number, text: string) => `Line ${line}: “${text}” is not a number.`,
    'several-decimals': (line: number, text: string) =>
      `Line ${line}: “${text}” has more than one decimal mark.`,
    negative: (line: number, text: string) =>
      `Line ${line}: ${text} is below zero. A slate has a thickness above 1.5 mm.`,
    zero: (line: number) => `Line ${line}: the thickness is 0. Measure the slate again.`,
    'unknown-grade': (line: number, text: string) =>
      `Line ${line}: “${text}” is no grade. Write thick, medium, thin, or a pile number from 1 to 8.`,
    'unknown-set-aside': (line: number, text: string) =>
      `Line ${line}: “${text}” is no reason for setting aside that this app writes.`,
    'too-thin': (line: number, text: string, limit: number) =>
      `Line ${line}: ${withUnit(text)} is thinner than ${limit} mm, the least that is taken.`,
    'too-thick': (line: number, text: string, limit: number) =>
      `Line ${line}: ${withUnit(text)} is thicker than ${limit} mm, the most that is taken. Is a decimal mark missing?`,
    'mixed-decimals': (point: number, comma: number) =>
      `Line ${point} has a decimal point, line ${comma} a decimal comma. Use one of them throughout.`,
    'ambiguous-decimal': (line: number, text: string) =>
      `Line ${line}: “${text}” can be read in two ways. Write thousands without a mark.`,
    'looks-like-inches': (line: number, text: string, mm: number) =>
      `The thicknesses look like inches (line ${line}: ${text}, that would be ${mm.toFixed(2)} mm). Convert the column to mm: 1 inch is 25.4 mm.`,
    'mixed-grades': (line: number, text: string) =>
      `Line ${line}: “${text}” does not go with thick, medium and thin. Use words or pile numbers throughout.`,
    'more-problems': (count: number) =>
      `And ${count.toLocaleString('en')} more lines with problems.`
  }
};

/** A number as typed, in mm where it has no unit of its own. */
function withUnit(text: string): string {
  return /[a-z"″”]$/i.test(text) ? text : `${text} mm`;
}

function mb(bytes: number): string {
  return `${(bytes / 1024 / 1024).toFixed(0)} MB`;
}
