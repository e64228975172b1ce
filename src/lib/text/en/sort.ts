import { pluralizer } from '../plural.ts';

const many = pluralizer('en');
const SLATE = { one: 'slate', other: 'slates' };

/** Words of the sort screen. */
export const sort = {
  title: 'Sort',
  ready: {
    gauge: 'Gauge a slate',
    hand: 'Tap the pile of each slate'
  },
  /** Where the sorter is in the sample before grades, or on the delivery's list. */
  sample: {
    count: (label: string, done: number, of: number) =>
      `Pallet ${label}: ${done > of ? `${done} measured` : `${done} of ${of}`}.`,
    take: (label: string) => `Take pallet ${label}`,
    enough: 'Enough measured: set the grades.',
    list: (done: number, of: number, label: string, layer: number, place: number) =>
      `Sample list ${done} of ${of}. Next: pallet ${label}, layer ${layer}, slate ${place}`,
    toList: 'Measure it'
  },
  pallet: {
    named: (label: string) => `pallet ${label}`,
    label: 'From pallet',
    more: 'Pallets',
    left: (left: number, slates: number) =>
      slates === 0 ? 'count unknown' : left === 0 ? 'empty' : `${many(left, { other: 'left' })}`,
    measured: (n: number) => many(n, { other: 'measured' }),
    over: (n: number) => `${many(n, { other: 'more than on the label' })}`
  },
  count: 'Count piles',
  mode: { hand: 'By hand', gauge: 'Gauge' },
  entry: 'Reading',
  keypad: {
    label: 'Keypad',
    decimal: 'Decimal point',
    back: 'Back',
    clear: 'Clear',
    enter: 'Take the number'
  },
  take: (number: string) => `Take ${number}`,
  told: {
    byHand: 'by hand',
    from: (label: string) => `from pallet ${label}`,
    saving: 'saving…',
    saved: 'saved',
    notSaved: 'NOT SAVED',
    borderline: 'Borderline',
    borderlineWhy: (threshold: string) => `very near ${threshold}: either pile is right`,
    tooThick: 'Too thick, check it',
    tooThin: 'Too thin, check it',
    outsideOrder: (band: string) => `outside the order, ${band}`,
    beyondSpread: (over: string) =>
      `${over} beyond nearly all so far: measure it again, else set it aside`,
    sample: 'Measured',
    sampleWhy: 'Put it back on its pallet.',
    toGrades: 'Set the grades',
    setAside: 'Set aside',
    taper: (taper: string) => `taper ${taper}`,
    point: (done: number, wanted: number) => `Point ${done} of ${wanted}`,
    pointWhy: 'Gauge the next point of the same slate.',
    side: { left: 'Measure its left side', right: 'Now its right side' },
    sideWhy: 'The same slate, near the edge, at one height.',
    again: 'Hold still: once more',
    againWhy: (first: string) => `${first} read; gauge the same point again.`,
    moved: 'The two readings differ',
    movedWhy: (first: string, second: string) => `${first}, then ${second}: gauge the point again.`,
    checkAgrees: 'Spot check: agrees',
    checkDiffers: 'Spot check: differs',
    checkWhy: (thickness: string, felt: string, gauged: string) =>
      `${thickness}: felt as ${felt}, gauged as ${gauged}`,
    undone: 'Undone'
  },
  refused: {
    title: 'Not taken',
    empty: 'No number yet. Type the thickness, for example 6.4.',
    notANumber: (text: string) => `“${text}” is not a number. Type the thickness, for example 6.4.`,
    severalNumbers: (text: string) => `“${text}” holds more than one number. Gauge once more.`,
    severalDecimals: (text: string) =>
      `“${text}” has more than one decimal mark. Type one number, for example 6.4.`,
    unfinished: (text: string) => `“${text}” ends in a decimal mark. Type the rest, or drop it.`,
    tooManyDigits: (text: string) => `“${text}” has too many decimals. Gauge once more.`,
    unknownUnit: (unit: string) => `The unit “${unit}” is not known. Use mm or inches.`,
    negative: (text: string) => `${text} is below zero. Zero the gauge and read again.`,
    zero: 'The gauge shows zero. Close it on the slate and read again.',
    tooThin: (value: string, limit: string) =>
      `${value} is too thin for a slate: ${limit} is the least. Read again.`,
    tooThick: (value: string, limit: string) =>
      `${value} is too thick for a slate: ${limit} is the most. Read again.`,
    looksLikeInches: (text: string) => `${text} is too thin in millimetres. Is it in inches?`,
    looksLikeMm: (text: string) => `${text} is too thick in inches. Is it in millimetres?`,
    missingDecimal: (text: string) => `${text} is too thick. Is a decimal mark missing?`,
    cutShort: (text: string) => `Only “${text}” arrived, a part of a reading. Gauge once more.`,
    interrupted: (text: string) =>
      `“${text}” came with a long pause inside, so it may be two readings. Gauge once more.`,
    noPallet: (text: string) => `Choose the pallet first; ${text} waits here and is not saved.`
  },
  unit: {
    ask: (unit: string) => `Are the readings in ${unit}?`,
    mm: 'millimetres',
    in: 'inches',
    yes: (unit: string) => `Yes, ${unit}`,
    other: (unit: string) => `No, ${unit}`
  },
  setAside: {
    button: 'Set aside',
    title: 'Set aside: why?',
    useTitle: 'For',
    which: 'Which slate?',
    newSlate: 'The one in hand',
    lastSlate: (what: string) => `The last one (${what})`,
    reasons: {
      broken: 'Broken',
      dullRing: 'Dull ring',
      twisted: 'Twisted or bowed',
      tapered: 'Tapered',
      wrongSize: 'Wrong size',
      inclusion: 'Inclusion',
      colour: 'Colour',
      other: 'Other'
    },
    uses: { undereave: 'Undereave', cutPiece: 'Cut piece', return: 'Return', scrap: 'Scrap' }
  },
  undo: {
    last: 'Undo',
    list: 'Entries',
    gauged: (thickness: string, pile: string) => `${thickness}, ${pile}`,
    sample: (thickness: string) => `${thickness}, measured`,
    tapped: (pile: string) => `${pile}, by hand`,
    setAside: (reason: string) => `Set aside: ${reason}`,
    checked: (thickness: string) => `Spot check ${thickness}`,
    pallet: (label: string) => `Pallet ${label} added`
  },
  check: {
    ask: (pile: string) => `Spot check: gauge the slate just put on ${pile}.`,
    why: 'It teaches what your hand calls thick and thin.',
    type: 'Type it',
    skip: 'Not now'
  },
  sides: {
    next: 'Next slate: measure left and right side',
    this: 'Left and right'
  },
  tail: {
    text: 'Measure in the tail third, away from the dressed edge.',
    drawing: 'A slate with the place to measure marked near its lower end',
    close: 'Seen'
  },
  photos: 'Photos',
  tally: {
    title: 'On the piles',
    pace: (n: string) => `${n} slates an hour`,
    noPace: 'Pace shows after five minutes',
    left: (n: number) => `${many(n, SLATE)} left on the pallets`,
    toFinish: (time: string) => `about ${time} to finish`,
    hours: (hours: number, minutes: number) =>
      hours > 0 ? `${hours} h ${minutes} min` : `${minutes} min`,
    perPallet: 'Slates by pallet',
    pallet: 'Pallet',
    remaining: 'Left',
    setAside: 'Aside',
    found: 'Counted on the piles, pallet not known',
    total: 'All'
  },
  day: {
    button: 'The day'
  },
  options: {
    button: 'Options',
    endingLearnt: 'Learnt: this gauge sends no Enter, so a pause takes the reading.',
    tags: 'Tags, sheets'
  },
  caution:
    'Lift with help, stack low and level, wear gloves: edges cut. Local rules and the licensed trade decide.',
  unsaved: (n: number) =>
    `${many(n, { one: 'entry waits', other: 'entries wait' })} to be saved. ${n === 1 ? 'It stays' : 'They stay'} on this screen.`,
  live: (n: number, last: string) => (n > 1 ? `${n} entries. Last: ${last}` : last)
};
