import { pluralizer } from '../plural.ts';

const many = pluralizer('en');
const AND = new Intl.ListFormat('en');
const SLATE = { one: 'slate', other: 'slates' };

/** Words of the sample list. */
export const sample = {
  title: 'Sample list',
  lead: 'Chance picks the slates, not the eye. Only slates of the list count for the verdict.',
  caution:
    'Cut the bands of a crate from the side: they spring. Lift out by hand few at a time, gloves and eye protection on. Local rules decide.',
  choose: 'Plan',
  kinds: {
    attributes: 'Count the slates outside',
    variables: 'Judge by thickness alone',
    own: 'Own plan from two risks'
  },
  kindHints: {
    attributes: 'Every check of the order counts (MIL-STD-105E, single sampling).',
    variables:
      'Fewer slates, thickness only, and only if thickness is near normal (MIL-STD-414 / ANSI Z1.9, standard deviation method).',
    own: 'The smallest sample that keeps both risks you set.'
  },
  level: 'Inspection level',
  levels: {
    I: 'I, smaller (from memory)',
    II: 'II, usual',
    III: 'III, larger (from memory)'
  },
  aql: 'Share outside that is still a good delivery (AQL)',
  aqlValue: (n: string) => `${n} %`,
  severity: 'Inspection',
  severities: {
    normal: 'Normal',
    tightened: 'Tightened, after two of five were refused'
  },
  good: 'Good delivery: share outside',
  goodChance: 'Good delivery: accepted at least',
  poor: 'Poor delivery: share outside',
  poorChance: 'Poor delivery: accepted at most',
  drawAtLeast: 'Draw more than the plan asks',
  drawHint: 'Empty: as the plan asks.',
  fullChecks: 'Slates that get the full check',
  fullHint: 'Size, squareness, edge and bow. Chance picks them.',
  fullUsual: (slates: string) =>
    `Size, squareness, edge and bow. Chance picks them. Empty: ${slates}.`,
  from: 'Where from',
  froms: { anywhere: 'One by one, anywhere on the pallet', 'few-layers': 'Fewer layers to open' },
  fromHints: {
    anywhere: 'Chance picks every slate by itself, so the risks shown hold.',
    'few-layers':
      'Chance picks layers, then slates in them: about half as many layers. The risks shown hold for slates drawn one by one, and may be worse where faults lie in layers.'
  },
  layers: (layers: number) => `${many(layers, { one: 'layer', other: 'layers' })} to open.`,
  oneByOne: 'Chance picked every slate by itself.',
  fewLayers:
    'Chance picked layers of each pallet, then slates in them; every slate had the same chance.',
  risksOneByOne:
    'These risks hold for slates drawn one by one; here slates of few layers were drawn, so they may be worse where faults lie in layers.',
  fullOnList:
    'Full check: measure size, squareness, edge and bow there. Chance picked these places, so only they tell how much of the delivery fails.',
  full: 'full check',
  asks: (n: number) => `Draw ${many(n, SLATE)}.`,
  everySlate: 'Every slate is looked at: the sample would reach the delivery.',
  planRule: (slates: string, most: string) => `Of ${slates} slates, ${most} may be outside.`,
  risksNotKept: (share: string, risk: string, set: string) =>
    `With this many slates no number keeps both risks: a delivery with ${share} outside is accepted ${risk} of the time, not ${set} as you set. Draw a few more, or as the plan asks.`,
  acceptShare: (share: string) =>
    `By thickness, accept if the share outside, estimated from average and usual variation, is at most ${share}.`,
  sellersRisk: (share: string, risk: string) =>
    `Seller’s risk: a delivery with ${share} outside is refused ${risk} of the time.`,
  buyersRisk: (share: string, risk: string) =>
    `Buyer’s risk: a delivery with ${share} outside is still accepted ${risk} of the time.`,
  byGauge: (n: number) =>
    `With the gauge alone, for one limit, ${many(n, SLATE)} would keep the same risks.`,
  curve: 'How often a delivery is accepted, by its share outside',
  curveX: 'Share of the delivery outside',
  curveText: (good: string, goodChance: string, poor: string, poorChance: string) =>
    `A falling line: at ${good} outside ${goodChance} are accepted, at ${poor} outside ${poorChance}.`,
  draw: 'Draw the list',
  drawAgain: 'Draw another list',
  drawAgainHint:
    'Slates measured for an earlier list keep counting; both lists are named on the sheet.',
  seed: (seed: number) => `Drawn by chance with seed ${seed}: the same seed gives the same list.`,
  drawnAt: (moment: string) => `Drawn ${moment}.`,
  listAnswer: (slates: number, labels: readonly string[], measured: number) =>
    `${many(slates, SLATE)} from ${labels.length === 1 ? 'pallet' : 'pallets'} ${AND.format(labels)}, ${measured.toLocaleString('en')} measured.`,
  nextPlace: (place: string) => `Next: ${place}.`,
  listTitle: 'Walking list',
  terms: 'How was it drawn, and what does it decide?',
  listHint:
    'Layer 1 is the top one. Count the slates of a layer from the end you agree on, always the same.',
  place: (label: string, layer: number, place: number) =>
    `Pallet ${label}, layer ${layer}, slate ${place}`,
  columns: { done: 'Done', layer: 'Layer', slate: 'Slate', thickness: 'Thickness', notes: 'Notes' },
  blanks: { length: 'length', width: 'width', square: 'square', edge: 'edge', bow: 'bow' },
  palletsOn: (labels: readonly string[]) =>
    `${labels.length === 1 ? 'Pallet' : 'Pallets'} ${labels.join(', ')}`,
  ofPallet: (label: string, n: number) => `Pallet ${label}: ${many(n, SLATE)}`,
  measured: 'measured',
  print: 'Print the list',
  toMeasure: 'Measure them',
  sortedAlready: (labels: string) =>
    `Sorting has begun on pallet ${labels}. What is left there is no fair sample of what came, so its slates would not be used for the verdict.`,
  refused: {
    'lot-too-small': 'Fewer slates than a plan needs: look at every one.',
    'cell-in-doubt':
      'For so small a delivery the table is in doubt at this level: look at every slate.',
    'lot-beyond-table':
      'The table of this plan ends at 10,000 slates. Count the slates outside instead.',
    'points-wrong':
      'The poor delivery needs the larger share outside and the smaller chance, all between 0 and 100 %.',
    'sample-too-large':
      'The two deliveries are so alike that no sample tells them apart. Move the shares further apart.',
    'sample-exceeds-lot': (asked: string, lot: string) =>
      `A sample of ${asked} is larger than the delivery of ${lot}. Draw at most ${lot}, or move the two deliveries further apart.`,
    'full-exceeds-sample': (asked: string) =>
      `The list has ${asked} slates: at most so many can get the full check.`,
    'fewer-than-plan': (asked: string) =>
      `The plan asks for ${asked}: with fewer its risks do not hold. Draw at least that many.`,
    'no-lot': 'Enter the pallets with their slates first.',
    'layers-missing': (labels: string) =>
      `Layers are missing for pallet ${labels}: enter them, so that every slate has a place.`,
    'holds-less': (labels: string) =>
      `The layers of pallet ${labels} hold fewer slates than the pallet. Count again.`,
    number: 'Type a number.'
  }
};

/** Words of measuring the sample. */
export const measure = {
  title: 'Measure the sample',
  noList: 'Draw the sample list first.',
  next: (label: string, layer: number, place: number) =>
    `Pallet ${label} · layer ${layer} · slate ${place}`,
  progress: (done: string, of: string) => `${done} of ${of} measured`,
  all: 'All places of the list are measured.',
  allNext: 'Now the stack of 100 and photos, then the findings.',
  gauge: 'Gauge it in the tail third.',
  gauged:
    'Gauged. Add what else you see, then save. With nothing to add, Enter or the next reading saves it.',
  waiting: (next: string) =>
    `${next} is kept for the next slate. This one has marks: save it with its button.`,
  buttonAsked: 'This slate has marks: save it with its button.',
  cannotGauge: 'It cannot be gauged',
  saveWithout: 'Save without a thickness',
  taper: (mm: string) => `taper ${mm}`,
  skip: 'Later',
  skipHint: 'Cannot be reached now: comes back at the end.',
  save: 'Save slate',
  sound: 'Rings clear, no fault',
  again: 'Gauge again',
  undo: 'Undo last slate',
  saved: (what: string) => `Saved: ${what}`,
  /** The answer to whether it rocks on a flat board. */
  liesFlat: 'It lies flat',
  points: 'Points gauged on each slate',
  pointsHint: 'Or type all points of a slate at once: 6.20/6.30/6.10.',
  ring: 'Ring when tapped',
  rings: { clear: 'Clear', dull: 'Dull' },
  defects: 'Defects',
  noDefect: 'None seen',
  more: 'Size, squareness, edge, bow',
  moreHint: 'On the slates of the full check. Leave empty what is not measured.',
  fullHere: 'Full check: measure size, squareness, edge and bow of this one.',
  /** Sizes of the full check that are empty, as a slate is saved. */
  sizesEmpty: (empty: readonly string[], isUnsized: boolean, full: number) =>
    isUnsized
      ? `No sizes yet: ${many(full, { one: 'slate is', other: 'slates are' })} to be measured in full.`
      : `Still empty: ${AND.format(empty)}. This one is to be measured in full.`,
  enterSizes: 'Enter the sizes',
  sizesLater: 'Save, sizes later',
  sizesWrong: (names: readonly string[]) => `Not saved: see ${AND.format(names)}.`,
  sizesOpen: (slates: number) =>
    `${many(slates, { one: 'slate of the full check lacks', other: 'slates of the full check lack' })} sizes: see “Still missing” below.`,
  withoutSizes: (slates: number) => `Sizes missing: ${many(slates, SLATE)}`,
  fields: {
    lengthMm: 'Length',
    widthMm: 'Width',
    outOfSquareMm: 'Out of square over the length',
    edgeBowMm: 'Long edge from straight',
    flatnessMm: 'Face from flat'
  },
  fieldWrong: (limit: string) => `Type millimetres from 0 to ${limit}.`,
  needSomething: 'Gauge the slate, or mark the defect that forbids it.',
  photoOf: {
    label: 'Photo of',
    pallet: (label: string) => `Pallet ${label}`,
    delivery: 'The delivery'
  },
  late: (label: string) =>
    `Sorting has begun on pallet ${label}. What you measure there now is kept, but not used for the verdict.`,
  missing: 'Still missing',
  missingNone: 'Nothing is missing.',
  places: 'All places',
  stack: {
    title: 'Stack of 100',
    hint: 'Pack slates tight as on the label and measure across. Fewer than 100 will do.',
    caution: (slates: string, mass: string, carried: string) =>
      `${slates} such slates weigh about ${mass}: never lift the stack. Build it where it stays, low, level and held at both ends, from lifts of ${carried} at most, with gloves. Local rules decide.`,
    kilograms: (n: string) => `${n} kg`,
    cautionNoSize:
      'A hundred slates may weigh 200 kg and more: never lift the stack. Build it where it stays, low, level and held at both ends, a few slates at a time, with gloves. Local rules decide.',
    pallet: 'Pallet',
    anyPallet: 'From several',
    slates: 'Slates in the stack',
    total: 'Thickness of the stack',
    add: 'Save stack',
    line: (slates: number, total: string, per100: string, label: string) =>
      `${many(slates, SLATE)}: ${total}, ${per100} per 100${label ? `, pallet ${label}` : ''}`,
    slatesWrong: 'Type how many slates: 1 to 1,000.',
    totalWrong: 'Type a thickness from 1 to 20,000 mm, without a mark for thousands.',
    /** A height that may be misread, and the answers to it. */
    doubt: (total: string, slates: number, slate: string, expected: string, isFromLabel: boolean) =>
      `Not saved: ${total} for ${many(slates, SLATE)} is ${slate} a slate; the ${isFromLabel ? 'label' : 'order'} says ${expected}. Measure again.`,
    doubtTitle: 'Which thickness is it?',
    meant: (total: string) => `It is ${total}`,
    asTyped: (total: string) => `Keep ${total}`,
    remove: 'Take back'
  },
  note: {
    title: 'Notes',
    label: 'A defect, damage or anything to tell the supplier',
    add: 'Save note',
    empty: 'Write the note first.'
  }
};
