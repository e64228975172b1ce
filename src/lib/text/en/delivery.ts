import { pluralizer } from '../plural.ts';
import { compare, sheet } from './delivery-sheet.ts';
import { claim } from './delivery-claim.ts';
import { findings, outOf } from './delivery-findings.ts';
import { measure, sample } from './delivery-measuring.ts';
import { verdict } from './delivery-verdict.ts';

const many = pluralizer('en');
const DAY = { one: 'day', other: 'days' };

/** Words of the delivery screens. */
export const delivery = {
  title: 'Delivery',
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
    /** The verdict so far, by how far the delivery is. */
    answer: {
      none: 'Nothing is measured yet.',
      /** Job counts them as measured for the grades. */
      onSort: (slates: string) => `${slates} measured for grades, none for the check.`,
      found: (verdict: string, says: string) => `${verdict}: ${says}`
    },
    /** The next step, as its button says it. */
    next: {
      order: 'Enter the order',
      pallets: 'Enter the pallets',
      sample: 'Draw the sample list',
      measure: 'Measure the sample',
      sign: 'See the findings and sign',
      sheet: 'Sheet for the supplier'
    },
    track: 'Steps of the delivery',
    order: 'Order and pallets',
    orderDone: (slates: string, size: string, thickness: string) =>
      `${slates}, ${size}, ${thickness} thick`,
    orderOpen: 'size, thickness and number',
    palletsOpen: 'pallets missing',
    sample: 'Sample list',
    sampleDone: (n: number) => `${many(n, { one: 'place', other: 'places' })} drawn`,
    sampleOpen: 'before anything is sorted',
    measure: 'Measure',
    measureDone: (done: string, of: string) => `${done} of ${of} listed`,
    measureOpen: 'walk the list',
    findings: 'Findings and verdict',
    findingsOpen: 'when the list is measured',
    findingsDone: outOf,
    sheet: 'Sheet for the supplier',
    sheetHint: 'to print and send',
    compare: 'Compare deliveries',
    compareHint: 'on this device'
  },
  clock: {
    title: 'Time to claim',
    open: (days: number, last: string) => `${many(days, DAY)} left to claim, until ${last}.`,
    lastDay: (last: string) => `Today, ${last}, is the last day to claim.`,
    over: (days: number, last: string) =>
      `The time to claim ended on ${last}, ${many(days, DAY)} ago.`,
    notArrived: 'The day of arrival lies ahead. Check it.',
    unset: 'Enter the day of arrival and the days to claim.',
    doNotFix: 'Do not hole or fix yet: it can end your right to claim.',
    laid: (courses: number) =>
      `${many(courses, { one: 'course is', other: 'courses are' })} laid: those slates are holed and fixed.`,
    laidMeans: 'Claim for the slates not laid; stop laying them.',
    laidTitle: 'Slates already laid?',
    laidTerms:
      'Of slates that are fixed, terms mostly leave only what could not be seen before (common practice, no source): read your order, take photos, and lay no more of this delivery before the supplier answers.',
    refused: 'Refused: do not hole or fix; keep the slates as they came.',
    taken: (who: string, when: string) => `Taken by ${who} on ${when}: it may be holed and fixed.`,
    takenAgainst: (found: string) =>
      `The findings alone say: ${found}. Holing or fixing a slate can end your right to claim.`
  },
  caution:
    'A crate weighs as much as a small car: lift it by machine, stand clear. By hand take few slates, gloves on. Cutting raises silica dust.',
  order: {
    title: 'Order and label',
    costs: 'What each answer costs',
    costsHint: 'Only what you enter counts. Leave out what you do not know.',
    supplier: 'Supplier',
    supplierHint: 'Printed on the claim.',
    printed: 'Printed on the claim.',
    papers: 'Papers of the delivery',
    papersEntered: (entered: number, of: number) => `${entered} of ${of}`,
    buyer: 'Buyer',
    orderNumber: 'Order number',
    orderedOn: 'Ordered on',
    deliveryNote: 'Number of the delivery note',
    batches: 'Batch numbers on the pallets',
    product: 'Product, as the order names it',
    gauge: 'Make or number of the gauge, and its step',
    gaugeCheckedOn: 'Gauge last checked on',
    measuredBy: 'Who measured',
    asks: 'What you ask for',
    asksHint: 'If you query or refuse. Whoever takes the delivery chooses it when signing.',
    askNames: { credit: 'Credit', replacement: 'Replacement', collection: 'Collection' },
    answerBy: 'Answer wanted by',
    length: 'Length',
    width: 'Width',
    sizeFromRoof: (mm: string) => `Of the roof: ${mm}`,
    thickness: 'Nominal thickness',
    tolerance: 'Tolerance, plus or minus',
    toleranceNotAgreed: 'Empty: not agreed, so no slate is outside for its thickness.',
    toleranceFromOrder: 'Of one slate.',
    toleranceWhere: 'Where it states the tolerance',
    agreed: {
      title: 'Limits the order or contract states',
      ticked: (limits: number) => `${limits} ticked`,
      lead: 'Tick a limit only where it is written, and say where. The claim can refuse on these alone; every other limit can only query.',
      plusMinus: (check: string, mm: string) => `${check}: ${mm} either way`,
      most: (check: string, mm: string) => `${check}: at most ${mm}`,
      below: (check: string, mm: string) => `${check}: below ${mm}`,
      unknown: (check: string) => `${check}: within what it states`,
      limit: (check: string) => `${check}: limit stated`,
      limitHint: 'Empty: as above.',
      where: (limit: string) => `${limit}: where it says so`,
      whereHint: 'Such as “order, line 3”. Printed on the claim.',
      marks: {
        ring: 'No dull ring',
        broken: 'No broken slate',
        twisted: 'None twisted or bowed',
        tapered: 'None tapered',
        wrongSize: 'None of a wrong size',
        inclusion: 'No inclusions',
        colour: 'Colour as agreed',
        other: 'No other defect'
      } as Record<string, string>
    },
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
    stackFrom: 'From the label.',
    stackMissing: 'Label missing: ask for it. Without it the verdict stays a query.',
    stackTolerance: 'How far a stack may be off the label',
    stackToleranceHint: 'As the order says. Left empty: nothing is checked.',
    arrived: 'Arrived on',
    days: 'Days to claim',
    daysHint: 'As order or terms say.',
    replacementDays: 'Days until a replacement',
    queryDays: 'Days a query takes',
    queryDaysHint: 'While it holds the work up.',
    delayCost: 'Cost of a day’s delay',
    returnCost: 'Cost of sending the slates back',
    credit: 'Credit per thousand',
    creditHint: 'Offered if the slates are kept.',
    acceptable: 'Joints in 100 that may show',
    acceptableHint:
      'With more it needs sorting. A joint shows where a thick slate lies beside a thin one (a kicker).',
    pace: 'Slates sorted in an hour',
    paceMeasured: (n: string) => `Measured on this job: ${n} an hour, used while this is empty.`,
    paceHint: 'Used until the job has a pace of its own.',
    rate: 'Cost of an hour’s sorting',
    save: 'Save the order',
    saved: 'Saved.',
    discard: 'Discard changes',
    notSaved: 'Not saved.',
    draftKept: 'The changes stay on this device until you save or discard them.',
    problems: {
      'not-a-number': (text: string) => `“${text}” is not a number. Type digits only.`,
      separators: (text: string) =>
        `“${text}” may mean two numbers. Write it without a separator of thousands.`,
      'count-zero': 'An order of no slates cannot be judged: type how many were ordered.',
      'not-whole': (text: string) => `“${text}” is not a whole number. Type it without decimals.`,
      'too-large': (limit: string) => `Too large: at most ${limit}.`,
      'tolerance-over-100':
        'More than 100 % would let a slate have no thickness at all. Type 0 to 100, as in the order.',
      'tolerance-zero':
        'With 0 % every slate would be outside. Type what the order states, or leave it empty.',
      'where-missing': 'Write where the order or contract says so, or take the tick away.',
      'limit-range': 'Type 0.1 to 200 mm, as the order states it, or leave it empty.',
      'over-100': 'Type 0 to 100.',
      'thickness-range':
        'A slate is 1.5 to 40 mm thick. Type the nominal thickness in millimetres.',
      'size-range': 'Type 100 to 2,000 mm.',
      date: 'This is no day of the calendar. Choose a day.',
      'arrived-before-order': 'It arrived before it was ordered. Check both days.',
      'answer-before-arrival': 'This day lies before the arrival. Choose a later one.',
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
    'from memory': 'from memory: check it',
    'not agreed': 'no tolerance agreed'
  } as Record<string, string>,
  basis: (source: string, standing: string) => (source ? `${source} (${standing})` : standing),
  basisLabel: 'Where this comes from',
  findings,
  verdict,
  sheet,
  claim,
  compare,
  axis: { mm: 'mm', slates: 'slates' }
};
