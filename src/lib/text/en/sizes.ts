import { pluralizer } from '../plural.ts';

const plural = pluralizer('en');
const courses = (n: number) => plural(n, { one: 'course', other: 'courses' });

/** Words for a roof of several lengths, random widths, slates by weight and reclaimed slates. */
export const sizes = {
  title: 'Sizes of slate',
  lead: 'One line for each length, longest first. It goes lowest on the roof.',
  needSlate: 'Enter the slate on Roof first: its headlap and nailing hold for every length.',
  toRoof: 'To Roof',
  bar: 'Slates in hand',
  barLink: 'Sizes',
  random: (length: string, from: string, to: string) => `${length}, random ${from} to ${to}`,
  one: (length: string, width: string) => `${length} × ${width}`,
  row: (number: number) => `Length ${number}`,
  length: 'Length',
  isRandom: 'Random widths',
  width: 'Width',
  from: 'Narrowest',
  to: 'Widest',
  mean: 'Mean width',
  meanHint: 'Left out: the middle of the two.',
  add: 'Add a length',
  most: (most: string) => `${most} lengths are the most. Lay the two nearest as one.`,
  remove: 'Remove',
  save: 'Save the sizes',
  backToOne: 'Back to one size',
  notSaved: 'Not saved yet.',
  problems: {
    'no-sets': () => 'Add at least one length.',
    'too-many': (most: string) => `More than ${most} lengths: lay the two nearest as one.`,
    'not-a-length': () => 'A length or a width is missing. Type every one.',
    rising: (length: string, before: string) =>
      `${length} stands above ${before}: the longest goes lowest. Put the lengths in falling order.`,
    'same-length': (length: string) => `${length} stands there twice. Give each length one line.`,
    'below-twice-lap': (length: string, least: string) =>
      `${length} is below twice the headlap. The shortest that can be laid is ${least}.`,
    'headlap-above-third': (length: string, most: string) =>
      `The headlap is more than a third of ${length}. Leave this length out, or ask for ${most} at most.`,
    'wider-than-long': (width: string, length: string) =>
      `${width} wide is more than ${length} long. Look whether the two are turned round.`,
    'widths-reversed': (from: string, to: string) =>
      `From ${from} to ${to} is turned round. The narrowest comes first.`,
    'step-too-large': (length: string, before: string) =>
      `From ${before} to ${length} is too big a step: two battens would touch. Put a length between them.`
  },
  courses: {
    title: 'Courses of each length',
    none: 'Enter the slopes on Roof. Then the courses of each length stand here.',
    trouble: 'The slopes do not take these slates. Roof says which field.',
    impossible: 'These lengths do not fill the rafter. Change a length or a slope.',
    answer: (parts: readonly string[]) => `From the eave: ${parts.join(', then ')}.`,
    part: (n: number, size: string) => `${courses(n)} of ${size}`,
    headlap: (from: string) => `Headlap ${from} or more on every course.`,
    proposed: 'Proposed from what there is.',
    unknownStock: 'No slates are entered: all lengths are taken to be there alike.',
    chosen: 'Chosen. They stay, whatever is sorted.',
    stale: 'The courses chosen fill the roof no more. These are proposed instead.',
    misplaced: (slope: string, courses: string, laid: string, now: string) =>
      `${slope}, course ${courses}: laid of ${laid}, where ${now} would lie. Propose again: what lies is kept.`,
    use: 'Use these courses',
    free: 'Propose again',
    short: (m2: string) =>
      `Too little slate: ${m2} m² are missing. Order more, or take another length.`,
    unused: (size: string) => `No course of ${size}.`,
    size: 'Slate',
    range: 'Numbers',
    gauge: 'Gauge',
    drop: 'First gauge',
    dropNote:
      'The first batten of a shorter length is nearer, by half the difference. Mark it on the rod.',
    takes: 'Takes',
    has: 'Has, less reserve',
    metres: (n: string) => `${n} m`,
    fromTo: (from: number, to: number) => (from === to ? `${from}` : `${from} to ${to}`)
  },
  randomWidths: {
    title: 'Laying random widths',
    sideLap: (length: string) => `Least side lap ${length}, edge to edge.`,
    lookFor: (length: string) =>
      `Look for ${length} and wider: over a narrower slate no joint clears both sides.`,
    rule: 'Of the next five, lay the one whose joint clears by most.',
    need: (often: string, asTheyCome: string) =>
      `Then about ${often} joints in 100 still need a cut or a swap; laid as they come, ${asTheyCome}.`,
    simulated: (joints: string) => `Simulated over ${joints} joints, all widths alike.`
  },
  boundaries: {
    title: 'Boundaries: each length its own, or shared',
    tooFew: 'Gauge some slates of every length first.',
    figures: (own: string, shared: string) =>
      `Each length its own: ${own} kickers in 100 joints. The same for all: ${shared}.`,
    better: {
      own: 'Set them for each length.',
      shared: 'Share them: one setting of the gauge serves all lengths.'
    },
    use: (thresholds: string) => `Use ${thresholds} for every length`,
    used: 'In use for every length. Slates sorted before stay on their piles.'
  },
  weight: {
    title: 'Count by weight',
    lead: 'What a delivery in tonnes comes to in slates.',
    tonnes: 'Weight of slates',
    thickness: 'Thickness',
    measured: (mm: string, pallets: number) =>
      pallets > 1
        ? `Measured here: ${mm} on ${pallets} pallets. The range holds how they differ.`
        : `Measured here: ${mm} on one pallet; others may be out by a tenth. Measure a second.`,
    pallets: 'Pallets it stands on',
    typed: 'Not measured yet: taken to be right within a tenth.',
    answer: (n: string, from: string, to: string) =>
      `About ${n} slates, between ${from} and ${to}.`,
    density: (value: string, from: string, to: string) =>
      `Density ${value} kg/m³ (${from} to ${to}).`,
    customary: 'Common practice, no source. Weigh a counted pallet to know better.',
    mended: 'From the weighed pallet.',
    weighed: 'A weighed pallet',
    kilograms: 'Its slates weigh',
    counted: 'Its slates, counted',
    odd: 'No slate is as light or as heavy as that. Look at weight, count and size.',
    label: 'Pallet',
    add: 'Enter as a pallet',
    added: (label: string, n: string) => `${label} is entered with ${n} slates.`
  },
  reclaimed: {
    title: 'Reclaimed slates',
    lead: 'Try some by ring, edges, thickness and old holes. Set the unsound aside on Sort.',
    tried: 'Slates tried',
    sound: 'Sound ones',
    lot: 'Slates in the lot',
    answer: (n: string, from: string, to: string) =>
      `About ${n} are sound, between ${from} and ${to}.`,
    sizes: 'Sizes of sound ones',
    sizesHint: 'Length × width in millimetres, as 502 x 248, 405 x 200.',
    sizesWrong: 'Write each as length x width, with commas between, as 502 x 248, 405 x 200.',
    sizesTooMany: 'More are measured than were sound. Look at the numbers.',
    ofSize: (size: string, n: string, from: string, to: string) =>
      `${size}: about ${n}, between ${from} and ${to}.`,
    unfit: (n: number) =>
      n === 1
        ? '1 slate measured makes no size of this roof.'
        : `${n} slates measured make no size of this roof.`,
    name: 'Name of the lot',
    enter: 'Enter as stock',
    entered: (name: string) => `${name} is entered, each length with its own slates.`,
    roofs: (likely: string, from: string, to: string) =>
      `That is ${likely} times what this roof takes of them, ${from} to ${to}.`,
    noRoof: 'How many roofs that is shows once the courses are worked out.',
    refusals: {
      'sample-exceeds-lot': 'More were tried than are in the lot. Look at the numbers.',
      'nothing-sampled': 'Try at least one slate.',
      'lot-empty': 'Type how many slates the lot has.'
    },
    tooMany: 'More sound ones than were tried. Look at the numbers.',
    holes: 'Old holes, from the tail',
    holesHint: 'Millimetres, with commas, as 304, 306.',
    newHole: (hole: string, margin: string) => `New hole ${hole} from the tail; ${margin} shows.`,
    places: {
      seen: 'would be seen',
      covered: 'is covered',
      'serves-again': 'serves again',
      doubled: 'lies so near the new hole that the slate may break'
    },
    place: (hole: string, place: string) => `${hole}: ${place}`,
    asItWas: (list: string) => `As it was: ${list}.`,
    turned: (list: string) => `Turned end for end: ${list}.`,
    better: {
      'as-it-was': 'Lay it as it was.',
      turned: 'Turn it end for end.',
      neither: 'Holes are seen either way: keep it for cut pieces or leave it.'
    },
    offSlate: (length: string) => `A hole lies beside a slate of ${length}. Measure again.`,
    caution:
      'Turned slates show the side that was hidden. Ring each one again; whether old slate will do is for the code and a licensed roofer.'
  }
};
