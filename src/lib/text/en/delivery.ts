import { pluralizer } from '../plural.ts';
import { compare, sheet } from './delivery-sheet.ts';
import { findings } from './delivery-findings.ts';
import { measure, sample } from './delivery-measuring.ts';
import { verdict } from './delivery-verdict.ts';

const many = pluralizer('en');
const DAY = { one: 'day', other: 'days' };

/** Words of the delivery screens. */
export const delivery = {
  title: 'Delivery',
  lead: 'Judge the delivery before anything is sorted, holed or fixed: what is outside the order, what needs sorting, and whether it makes this roof.',
  loading: 'Working the figures out…',
  parts: 'Parts of the delivery screen',
  nav: {
    overview: 'Overview',
    order: 'Order and pallets',
    sample: 'Sample list',
    measure: 'Measure',
    findings: 'Findings',
    sheet: 'Sheet',
    compare: 'Compare'
  },
  hub: {
    order: 'What was ordered',
    orderDone: (slates: string, size: string, thickness: string) =>
      `${slates}, ${size}, nominal ${thickness}`,
    orderOpen: 'Enter size, nominal thickness and count from the order.',
    pallets: (n: number, slates: string) =>
      `${many(n, { one: 'pallet', other: 'pallets' })}, ${slates}`,
    palletsOpen: 'Enter the pallets with their layers.',
    sample: 'Which slates are measured',
    sampleDone: (n: number) => `A list of ${many(n, { one: 'place', other: 'places' })} is drawn.`,
    sampleOpen: 'Draw the list before anything is sorted.',
    measure: 'The sample, measured',
    measureDone: (done: string, of: string) => `${done} of ${of} places measured`,
    measureOpen: 'Take the list to the pallets.',
    findings: 'Findings and verdict',
    findingsOpen: 'They come when the list is measured to its end.',
    sheet: 'Sheet for the supplier',
    sheetHint: 'A4 to print or to keep as PDF, and a message to send.',
    compare: 'Deliveries side by side',
    compareHint: 'This device’s deliveries over time and by supplier.'
  },
  clock: {
    title: 'Time to claim',
    open: (days: number, last: string) => `${many(days, DAY)} left to claim, until ${last}.`,
    lastDay: (last: string) => `Today, ${last}, is the last day to claim.`,
    over: (days: number, last: string) =>
      `The time to claim ended on ${last}, ${many(days, DAY)} ago.`,
    notArrived: 'The arrival date lies ahead: check it.',
    unset: 'No arrival date or days to claim are entered: look the days up in the order.',
    doNotFix: 'Do not hole or fix yet: holing or laying a slate can end the right to claim.',
    refused: 'Refused: do not hole or fix; keep the slates as they came.',
    taken: (who: string, when: string) => `Taken by ${who} on ${when}: it may be holed and fixed.`,
    takenAgainst: (found: string) =>
      `The findings alone say: ${found}. Holing or laying a slate can end the right to claim.`
  },
  caution:
    'A crate of slates weighs as much as a small car: lift with the machine it is made for, stand clear of stacks, lift few slates at a time and wear gloves. Cutting and holing raise silica dust.',
  order: {
    title: 'Order and label',
    fromOrder: 'From the order',
    fromLabel: 'From the label on the pallets',
    claim: 'Claim',
    costs: 'What each answer costs',
    costsHint: 'Only what you enter is counted. Leave out what you do not know.',
    supplier: 'Supplier (a nickname)',
    supplierHint: 'Stays on this device; deliveries are compared by it.',
    length: 'Length',
    width: 'Width',
    sizeHint: 'Left empty: the slate of the roof.',
    sizeFromRoof: (mm: string) => `Of the roof: ${mm}`,
    thickness: 'Nominal thickness',
    tolerance: 'Tolerance, plus or minus',
    toleranceFromMemory: 'Of one slate. Left empty: 35 % from memory; check the order.',
    toleranceFromOrder: 'Of one slate, set by the order.',
    texture: 'Texture as declared',
    textureHint: 'Sets how far a slate may bow.',
    textures: {
      verySmooth: 'Very smooth, below 0.9 % of the length',
      smooth: 'Smooth, below 1.0 %',
      normal: 'Normal, below 1.5 %',
      textured: 'Textured, below 2.0 %'
    },
    count: 'Slates ordered',
    price: 'Price per thousand',
    currency: 'Currency',
    stack: 'Packed thickness of 100 slates',
    stackMissing: 'Label missing: ask the supplier for it. The verdict stays a query without it.',
    stackTolerance: 'Departure from the label that the order allows',
    stackToleranceHint: 'No figure is published; none is assumed.',
    arrived: 'Arrived on',
    days: 'Days to claim',
    daysHint: 'As the order or the supplier’s terms say; no figure is assumed.',
    replacementDays: 'Days until a replacement',
    queryDays: 'Days a query takes',
    queryDaysHint: 'While it holds the work up.',
    delayCost: 'Cost of a day’s delay',
    returnCost: 'Cost of sending the slates back',
    credit: 'Credit per thousand',
    creditHint: 'Offered if the slates are kept.',
    acceptable: 'Kickers accepted per 100 joints',
    acceptableHint: 'With more than these it needs sorting.',
    pace: 'Slates sorted in an hour',
    paceMeasured: (n: string) => `Measured on this job: ${n} an hour, used while this is empty.`,
    paceHint: 'Used until the job has a pace of its own.',
    rate: 'Cost of an hour’s sorting',
    save: 'Save the order',
    saved: 'Saved.',
    problems: {
      'not-a-number': (text: string) => `“${text}” is not a number. Type digits only.`,
      separators: (text: string) =>
        `“${text}” may mean two numbers. Write it without a separator of thousands.`,
      'count-zero': 'An order of no slates cannot be judged: type how many were ordered.',
      'not-whole': (text: string) => `“${text}” is not a whole number. Type it without decimals.`,
      'too-large': (limit: string) => `Too large: at most ${limit}.`,
      'tolerance-over-100':
        'More than 100 % would let a slate have no thickness at all. Type 0 to 100, as in the order.',
      'over-100': 'Type 0 to 100.',
      'thickness-range':
        'A slate is 1.5 to 40 mm thick. Type the nominal thickness in millimetres.',
      'size-range': 'Type 100 to 2,000 mm.',
      date: 'This is no day of the calendar. Choose the day of arrival.',
      negative: 'Type 0 or more.'
    }
  },
  pallets: {
    title: 'Pallets',
    hint: 'Count layers and slates in a layer: the sample list names slates by them.',
    name: 'Name on the pallet',
    slates: 'Slates',
    layers: 'Layers',
    perLayer: 'Slates in a layer',
    add: 'Add pallet',
    edit: (label: string) => `Change pallet ${label}`,
    saveEdit: 'Save pallet',
    packed: 'Layers × slates',
    unpacked: 'layers missing',
    total: 'All pallets',
    against: (delivered: string, ordered: string) =>
      `${delivered} on the pallets, ${ordered} ordered`,
    problems: {
      name: 'Give the pallet a name, for example A.',
      taken: (name: string) => `There is a pallet ${name} already. Give this one another name.`,
      slates: 'Type a whole number from 1 to 100,000.',
      layers: 'Type a whole number from 1 to 1,000.',
      holds: (room: string, slates: string) =>
        `These layers hold ${room}, fewer than ${slates}. Count again.`
    }
  },
  sample,
  measure,
  checks: {
    thickness: 'Thickness',
    length: 'Length',
    width: 'Width',
    squareness: 'Squareness',
    edge: 'Edge',
    flatness: 'Flatness',
    ring: 'Ring',
    defects: 'Defects'
  } as Record<string, string>,
  standing: {
    published: 'published',
    quoted: 'quoted',
    computed: 'computed',
    'set by the order': 'set by the order',
    'common practice': 'common practice, no source',
    'from memory': 'from memory: check it'
  } as Record<string, string>,
  basis: (source: string, standing: string) => (source ? `${source} (${standing})` : standing),
  basisLabel: 'Rests on',
  findings,
  verdict,
  sheet,
  compare,
  axis: { mm: 'mm', slates: 'slates' }
};
