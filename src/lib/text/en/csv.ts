import { pluralizer } from '../plural.ts';
import { common } from './common.ts';

const many = pluralizer('en');
const readings = (n: number) => many(n, { one: 'reading', other: 'readings' });

/** Words of readings from a file: what was taken, what is asked, and what is wrong with the file. */
export const csv = {
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
  notSaved:
    'The readings were not saved; nothing changed. Do what the red strip says, then choose the file again.',
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
      `Line ${line}: “${text}” is no pile of this job. Write thick, medium, thin, or the number of a pile.`,
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
