import { band } from './band.ts';
import { pluralizer } from '../plural.ts';
import { common } from './common.ts';

const many = pluralizer('en');
const wides = (n: number) => many(n, { one: 'slate-and-a-half', other: 'slate-and-a-halves' });

/** Words of the lay screen. */
export const lay = {
  title: 'Lay',
  notReady: 'Nothing to lay yet',
  notReadyWhy: 'A roof is laid by a plan. Before that, this is missing:',
  missing: {
    stock: { what: 'Pallets: no slate of this job is entered yet.', go: 'Enter the pallets' },
    grades: {
      what: 'Grades: not split yet.',
      go: 'Split the grades'
    },
    spec: {
      what: 'The slate: its length, width and headlap are not entered yet.',
      go: 'Enter the slate'
    },
    roof: { what: 'The roof: no slope that takes a course is entered yet.', go: 'Enter the roof' },
    plan: { what: 'The plan: none is in use yet.', go: 'Go to Courses' }
  },
  allLaid: (n: number) => `All ${common.courses(n)} are laid.`,
  allLaidMore: 'Print or back up the record. What is left on the piles stands below.',
  progress: (laid: number, all: number) => `${laid} of ${common.courses(all)} laid`,

  slopes: 'Slope',
  slopeNext: (course: number) => `course ${course} next`,
  slopeDone: 'all laid',
  slopeStopped: 'nothing planned',

  next: (slope: string, course: number, of: number) => `${slope}: course ${course} of ${of}`,
  drop: (step: string) => `Shorter slates begin: batten ${step} above the last.`,
  sizes: {
    early: (slope: string, courses: number, length: string) =>
      `${slope}: ${common.courses(courses)} of ${length} below ${courses === 1 ? 'is' : 'are'} not laid. Lay ${courses === 1 ? 'it' : 'them'} first, or let ${length} end earlier.`,
    misplaced: (slope: string, from: number, to: number, laid: string, now: string) =>
      `${slope}, ${from === to ? `course ${from}` : `courses ${from} to ${to}`}: laid of ${laid}, where ${now} is chosen now.`,
    next: (slope: string, course: number, length: string) =>
      `This length is laid. Next: ${length}, ${slope}, course ${course}.`,
    take: (length: string) => `Take ${length} in hand`,
    toSizes: 'Sizes'
  },
  site: {
    batten: (mm: string) => `Batten ${mm} up`,
    wideAt: {
      left: 'slate-and-a-half at the left',
      right: 'slate-and-a-half at the right',
      both: 'slate-and-a-half at both ends',
      none: 'no slate-and-a-half'
    },
    random: (fill: string, sideLap: string, lookFor: string) =>
      `Fill ${fill} · side lap ${sideLap} or more · look for ${lookFor} and wider`,
    nails: (mm: readonly string[]) => `${mm.join(' and ')} nails`,
    after: (course: number, piles: readonly string[]) =>
      `Then course ${course}: ${piles.join(', then ')}`
  },
  otherSlope: (last: string, now: string) =>
    `The last course was laid on ${last}. Is this one on ${now}?`,
  laidOn: (slope: string) => `Yes, on ${slope}`,
  left: 'From the left',
  pieces: (slates: number, wide: number) =>
    wide > 0 ? `${common.slates(slates)} + ${wides(wide)}` : common.slates(slates),
  under: (parts: readonly string[], lacking: number) =>
    [
      ...(parts.length > 0 ? [`Undereave first: ${parts.join(', ')}.`] : []),
      ...(lacking > 0 ? [`${common.slates(lacking)} short for it.`] : [])
    ].join(' '),
  underAside: (slates: number) => `${slates.toLocaleString('en')} set aside`,
  underPart: (slates: number, wide: number, pile: string) =>
    `${slates.toLocaleString('en')}${wide > 0 ? ` + ${wide.toLocaleString('en')} wide` : ''} of ${pile}`,
  about: (pieces: string) => `about ${pieces}`,
  joints: 'one joint between the two piles',
  draw: 'Draw from',
  drawPallet: (pallet: string, slates: number) => `${pallet}: ${common.slates(slates)}`,
  drawUnknown: 'The pallets of this pile are not known; draw from the pile as it stands.',
  lower: (n: number) =>
    `${common.courses(n)} lower on other slopes ${n === 1 ? 'is' : 'are'} not laid yet. Slopes that meet change pile at the same height.`,

  part: {
    button: 'Part laid',
    title: 'Part of the course laid',
    lead: (slope: string, course: number, of: number) =>
      `${slope}, course ${course}: how many of its ${of.toLocaleString('en')} slates lie when you stop?`,
    pieces: 'Laid so far',
    of: (of: number) => `of ${of.toLocaleString('en')}`,
    from: 'Counted from',
    ends: { left: 'the left', right: 'the right' },
    goesOn: (from: 'left' | 'right') => `Counted from the ${from}, as it was begun.`,
    note: 'Note for whoever goes on',
    noteHint: 'May stay empty.',
    noted: (note: string) => `Note: ${note}`,
    saved: (slope: string, course: number, pieces: number) =>
      `${slope}, course ${course}: ${common.slates(pieces)} laid`,
    refused: (of: number, isBegun: boolean) =>
      `Give a whole number from ${isBegun ? '0' : '1'} to ${(of - 1).toLocaleString('en')}. With all ${of.toLocaleString('en')} laid, press “Course laid”.`
  },
  laid: 'Course laid',
  saved: (what: string) => `Saved: ${what}`,
  courseSaved: (slope: string, course: number) => `${slope}, course ${course} laid`,
  courseTwice: (slope: string, course: number) =>
    `${slope}, course ${course} laid, entered by two, counts once`,
  lostSaved: (slates: string, pile: string) => `${slates} of ${pile} lost`,
  countSaved: (slates: string, pile: string) => `${pile} counted, ${slates}`,
  notSaved: 'Not saved. Press “Try again” in the red strip; nothing on this screen is lost.',
  undo: (what: string) => `Undo: ${what}`,
  undone: 'Taken back.',
  lastNow: (what: string) => `Last now: ${what}`,
  nothingYet: 'Nothing laid yet.',
  undoShort: 'Undo',

  broken: 'Broken',
  brokenOne: '1 broken',
  brokenMany: 'Several broken',
  howMany: 'How many broke?',
  record: 'Record',
  ofPile: 'Of which pile?',
  refusedCount: (most: number) =>
    `Give a whole number from 1 to ${most.toLocaleString('en')}, what is left of the pile.`,

  rogue: 'Rogue slate',
  rogueLead: (slope: string, course: number) =>
    `A slate that stands out: measure it and see whether it may lie in ${slope}, course ${course}, or where else.`,
  thickness: 'Its thickness',
  check: 'Check it',
  refusedThickness: 'Give a thickness from 1.5 to 40 mm.',
  noBins: 'No slate of these piles is measured, so there is nothing to compare with.',
  mayHere: (mm: string, slope: string, course: number, chance: string) =>
    `Yes, in ${slope}, course ${course}, next to lay: a slate of ${mm} shows against a neighbour in ${chance} of joints.`,
  mayNotHere: (mm: string, slope: string, course: number, chance: string) =>
    `No, not in ${slope}, course ${course}, next to lay: a slate of ${mm} would show against a neighbour in ${chance} of joints.`,
  mayElsewhere: 'By its thickness it suits:',
  mayAlso: 'By its thickness it also suits:',
  mayNowhere: 'It suits no course that is left.',
  rogueOut: 'Or take it off: it is booked as lost from its pile and counts on no other.',
  nothingOnIt: (pile: string) => `None of ${pile} is left: choose the pile that it came from.`,
  keepFor: (slope: string, course: number) => `Keep it for ${slope}, course ${course}`,
  keptHere: (slates: string, mm: string, pile: string) =>
    `Kept for this course: ${slates}${mm === '' ? '' : ` of ${mm}`}, with ${pile}`,
  movedSaved: (slates: string, from: string, to: string) => `${slates} of ${from} now with ${to}`,
  place: (slope: string, from: number, to: number, pile: string) =>
    from === to
      ? `${slope}, course ${from} (${pile})`
      : `${slope}, courses ${from} to ${to} (${pile})`,
  rogueRule: (percent: string) =>
    `Accepted: at most ${percent} of joints, a starting value of ours.`,
  throwOut: 'Take it off this pile, as lost',

  ranOut: 'Pile ran out',
  ranOutLead: 'Count the sorted slates that really stand there. 0 when the pile is empty.',
  ranOutBook: (pile: string, standing: number, toCome: number) =>
    `We think ${common.slates(standing)} of ${pile} ${standing === 1 ? 'stands' : 'stand'} there.${toCome > 0 ? ` About ${toCome.toLocaleString('en')} more are on the pallets, if sorted.` : ''}`,
  ranOutCount: 'Sorted slates standing there',
  ranOutMany: (slates: number) =>
    `That is more than the ${common.slates(slates)} that are left of this pile, sorted or not. Count again; if it is right, record it.`,
  refusedAboveCame: (came: number) =>
    `Only ${common.slates(came)} came in all. Count again, or correct the pallets on Sort.`,
  ways: {
    title: 'Ways out',
    stand: (pile: string, standing: number, toCome: number) =>
      `${pile}: ${standing === 0 ? 'none stands' : standing === 1 ? '1 slate stands' : `${common.slates(standing)} stand`} there.${toCome > 0 ? ` About ${toCome.toLocaleString('en')} more on the pallets, if sorted.` : ''}`,
    enough: 'That is enough for the plan.',
    missing: (n: number) => `The plan takes ${common.slates(n)} more than stand there.`,
    sort: (slates: string) => `Sort about ${slates}, and they stand there.`,
    hours: (hours: number) =>
      hours < 1
        ? 'That takes less than an hour.'
        : `That takes about ${many(Math.round(hours), { one: 'hour', other: 'hours' })}.`,
    sortNot: (pile: string) => `The pallets do not hold so many more of ${pile}.`,
    toSort: 'Sort more',
    borrow: (slates: string, pile: string, slope: string, course: number, courses: number) =>
      `Borrow ${slates} of ${pile} for ${common.courses(courses)}, the lowest on ${slope}, course ${course}.`,
    borrowGo: (pile: string) => `Borrow from ${pile}`,
    noneToSpare: (pile: string) => `${pile} has none to spare for a whole course.`,
    kickers: (n: string, isMore: boolean) => `${n} ${isMore ? 'more' : 'fewer'} joints will show.`,
    kickersUnknown: 'Nothing is measured, so it is not known how many joints will show.',
    stillMissing: (n: number) => `${common.slates(n)} stay missing.`,
    rises: 'Thicker slates then lie above thinner ones.',
    order: (slates: string, mm: string) => `Order ${slates}${mm === '' ? '' : ` of about ${mm}`}.`,
    copy: 'Copy the order',
    copied: 'Copied',
    notCopied: 'Not copied: write it down',
    planning: 'Looking for another plan…',
    noPlan: 'No other plan gets by with what stands there.',
    change: (n: number) => `Change the plan: ${common.courses(n)} from other piles.`,
    changeGo: 'Change the plan'
  },
  recordAnyway: 'Record it all the same',
  /** Beside the progress: a warning stands below the buttons. */
  warned: 'Read below: a warning stands under the buttons',
  readBelow: 'Read below',
  unsorted: (slates: number, pile: string, sorted: number) =>
    `This course takes ${common.slates(slates)} of ${pile}; ${sorted === 0 ? 'none is' : `only ${common.slates(sorted)} ${sorted === 1 ? 'is' : 'are'}`} logged as sorted. Sort and log more first.`,
  refusedLeft: 'Give a whole number of slates, 0 or more.',

  piles: 'What is left on the piles?',
  inSlates: 'In slates.',
  ofLeftToCome: (n: number) =>
    `${common.slates(n)} of those left ${n === 1 ? 'is' : 'are'} still to be sorted. Slates we expect you to set aside are not among them.`,
  pile: 'Pile',
  standNow: 'Stand there',
  onPallets: 'On the pallets, if sorted',
  toLay: 'Still to lay',
  lost: 'Lost',

  rest: 'The rest of the roof',
  again: 'Plan the rest again',
  planning: 'Planning…',
  againTitle: 'The rest, planned again',
  same: 'Planned again from what is left, no course would change.',
  changed: (n: number) => `${common.courses(n)} would change.`,
  heldTo: (percent: string) => `No pile is likelier to run out than ${percent}.`,
  notHeld: (percent: string) =>
    `With what is left no plan keeps each pile's chance of running out to ${percent}.`,
  chances: (was: string, now: string) =>
    `Likeliest to run out: ${was} with the current plan, ${now} with the new one.`,
  chanceOf: (pile: string, percent: string) => `${pile}, ${percent}`,
  adopt: 'Use the new plan',
  keep: 'Keep the old plan',
  roofChanged: (n: number) =>
    `The plan leaves out ${common.courses(n)}: they had no slates, or the roof changed.`,

  regraded: {
    title: 'The grades were changed after this plan was made:',
    courses: (slope: string, from: number, to: number, pile: string) =>
      `${slope}, ${from === to ? `course ${from}` : `courses ${from} to ${to}`}, ${pile}:`,
    band,
    noPile: 'no such pile now',
    what: 'The plan stays as it is until you plan the rest again and use the new one.'
  },
  drawing: 'How far are we?',
  caution:
    'No phone while you climb. Scaffold, safe stacks, clear ground below: local rules and the licensed trade decide.'
};
