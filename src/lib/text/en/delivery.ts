import { pluralizer } from '../plural.ts';

const many = pluralizer('en');
const SLATE = { one: 'slate', other: 'slates' };
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
    findingsOpen: 'They come with the first measured slate.',
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
    taken: (who: string, when: string) => `Taken by ${who} on ${when}.`
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
    tolerance: 'Tolerance of one slate, plus or minus',
    toleranceFromMemory: 'Left empty: 35 % from memory. Check the order.',
    toleranceFromOrder: 'Set by the order.',
    texture: 'Texture as declared (sets how far a slate may bow)',
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
    replacementDays: 'Days until a replacement is here',
    queryDays: 'Days that a query holds the work up',
    delayCost: 'Cost of a day’s delay',
    returnCost: 'Cost of sending the slates back',
    credit: 'Credit offered per thousand, if kept',
    acceptable: 'Kickers per 100 joints you accept without sorting',
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
  sample: {
    title: 'Sample list',
    lead: 'Slates picked by eye judge nothing. The list draws places by chance, so whoever measures picks nothing.',
    choose: 'Plan',
    kinds: {
      attributes: 'Count the slates outside',
      variables: 'Judge by the spread of thickness',
      own: 'Own plan from two risks'
    },
    kindHints: {
      attributes: 'MIL-STD-105E, single sampling: every check of the order counts.',
      variables:
        'MIL-STD-414 / ANSI Z1.9, standard deviation method: fewer slates, thickness only, and only if thickness is near normal.',
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
    asks: (n: number) => `Draw ${many(n, SLATE)}.`,
    everySlate: 'Every slate is looked at: the sample would reach the delivery.',
    accept: (n: number) =>
      n === 0 ? 'Accept if none of them is outside.' : `Accept with at most ${n} outside.`,
    acceptShare: (share: string) =>
      `Accept if the share outside, estimated from mean and spread, is at most ${share}.`,
    sellersRisk: (share: string, risk: string) =>
      `Seller’s risk: a delivery with ${share} outside is refused ${risk} of the time.`,
    buyersRisk: (share: string, risk: string) =>
      `Buyer’s risk: a delivery with ${share} outside is still accepted ${risk} of the time.`,
    byGauge: (n: number) =>
      `With the gauge alone, for one limit, ${many(n, SLATE)} would keep the same risks.`,
    curve: 'How often a delivery is accepted, by its share outside',
    curveX: 'Share of the delivery outside',
    curveY: 'Accepted',
    curveText: (good: string, goodChance: string, poor: string, poorChance: string) =>
      `A falling line: at ${good} outside ${goodChance} are accepted, at ${poor} outside ${poorChance}.`,
    draw: 'Draw the list',
    drawAgain: 'Draw another list',
    drawAgainHint:
      'Slates measured for an earlier list keep counting; both lists are named on the sheet.',
    seed: (seed: number) => `Drawn by chance with seed ${seed}: the same seed gives the same list.`,
    drawnAt: (moment: string) => `Drawn ${moment}.`,
    listTitle: 'Walking list',
    listHint:
      'Layer 1 is the top one. Count the slates of a layer from the end you agree on, always the same.',
    place: (label: string, layer: number, place: number) =>
      `Pallet ${label}, layer ${layer}, slate ${place}`,
    columns: { layer: 'Layer', slate: 'Slate', thickness: 'Thickness', notes: 'Notes' },
    ofPallet: (label: string, n: number) => `Pallet ${label}: ${many(n, SLATE)}`,
    measured: 'measured',
    print: 'Print the list',
    toMeasure: 'Measure them',
    sortedAlready: (labels: string) =>
      `Sorting has begun on pallet ${labels}. A list drawn now cannot judge those pallets: what is left on them is no chance sample of what came. Their slates would be listed apart.`,
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
      'fewer-than-plan': (asked: string) =>
        `The plan asks for ${asked}: with fewer its risks do not hold. Draw at least that many.`,
      'no-lot': 'Enter the pallets with their slates first.',
      'layers-missing': (labels: string) =>
        `Layers are missing for pallet ${labels}: enter them, so that every slate has a place.`,
      'holds-less': (labels: string) =>
        `The layers of pallet ${labels} hold fewer slates than the pallet: count again.`,
      number: 'Type a number.'
    }
  },
  measure: {
    title: 'Measure the sample',
    noList: 'Draw the sample list first.',
    next: (label: string, layer: number, place: number) =>
      `Pallet ${label} · layer ${layer} · slate ${place}`,
    progress: (done: string, of: string) => `${done} of ${of} measured`,
    all: 'All places of the list are measured.',
    allNext: 'Now the stack of 100 and photos, then the findings.',
    gauge: 'Gauge it in the tail third.',
    gauged: 'Gauged. Add what else you see, then save.',
    waiting: (thickness: string) =>
      `${thickness} is not saved yet, so the new reading was not taken. Save it, or gauge again.`,
    cannotGauge: 'It cannot be gauged',
    saveWithout: 'Save without a thickness',
    taper: (mm: string) => `taper ${mm}`,
    skip: 'Later',
    skipHint: 'Cannot be reached now: comes back at the end.',
    save: 'Save slate',
    again: 'Gauge again',
    undo: 'Undo last slate',
    saved: (what: string) => `Saved: ${what}`,
    points: 'Points gauged on each slate',
    ring: 'Ring when tapped',
    rings: { clear: 'Clear', dull: 'Dull' },
    defects: 'Defects',
    noDefect: 'None seen',
    more: 'Size, squareness, edge, bow',
    moreHint: 'Of every tenth slate or so. Leave empty what is not measured.',
    fields: {
      lengthMm: 'Length',
      widthMm: 'Width',
      outOfSquareMm: 'Out of square over the length',
      edgeBowMm: 'Long edge from straight',
      flatnessMm: 'Face from flat'
    },
    fieldWrong: (limit: string) => `Type millimetres from 0 to ${limit}.`,
    needSomething: 'Gauge the slate, or mark the defect that forbids it.',
    late: (label: string) =>
      `Sorting has begun on pallet ${label}. What is measured on it now is kept and listed apart; it does not judge the delivery.`,
    missing: 'Still missing',
    missingNone: 'Nothing is missing.',
    places: 'All places',
    choosePlace: (place: string) => `Measure ${place}`,
    stack: {
      title: 'Stack of 100',
      hint: 'Pack slates tight as on the label and measure across. Fewer than 100 will do.',
      pallet: 'Pallet',
      anyPallet: 'From several',
      slates: 'Slates in the stack',
      total: 'Thickness of the stack',
      add: 'Save stack',
      line: (slates: number, total: string, per100: string, label: string) =>
        `${many(slates, SLATE)}: ${total}, ${per100} per 100${label ? `, pallet ${label}` : ''}`,
      wrong: 'Type 1 to 1,000 slates and a thickness from 1 to 20,000 mm.',
      remove: 'Take back'
    },
    photos: {
      title: 'Photos',
      hint: 'Made small on this device; the place where it was taken is not kept.',
      add: 'Add a photo',
      caption: 'What it shows',
      captionHint: 'For example: broken corner, pallet B.',
      working: 'Making the photo small…',
      tooLarge: (size: string, limit: string) =>
        `The photo has ${size}; at most ${limit} can be opened on a phone. Take it at a lower resolution.`,
      notAPhoto: 'This file is no photo that the browser can open. Choose a JPEG or PNG.',
      failed: (detail: string) => `The photo was not saved (${detail}). Choose it again.`,
      missing: 'This photo is not on this device.',
      alt: (caption: string) => `Photo: ${caption}`
    },
    note: {
      title: 'Notes',
      label: 'A defect, damage or anything to tell the supplier',
      add: 'Save note',
      empty: 'Write the note first.'
    }
  },
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
  findings: {
    title: 'Findings',
    none: {
      'no-order': 'Enter size, nominal thickness and count of the order first.',
      'no-pallets': 'Enter the pallets with their slates first.',
      'no-list':
        'Draw the sample list first: only slates drawn by chance before sorting judge a delivery.',
      'no-unsorted-sample': 'No slate of the unsorted sample is measured yet.',
      'sample-exceeds-lot':
        'The sample is larger than the delivery. Check the slates on the pallets, or draw the list again.',
      'size-missing': 'Enter length and width of the order first.',
      'thickness-missing': 'Enter the nominal thickness first.',
      'count-zero': 'The order or the delivery has no slates: enter the count.',
      'tolerance-over-100': 'The tolerance is over 100 %: mend it in the order.'
    } as Record<string, string>,
    interval: (low: string, high: string) => (low === high ? low : `${low} to ${high}`),
    level: 'Intervals hold with 95 % confidence.',
    first: '1. Outside what was ordered',
    outside: (outside: number, judged: number) =>
      `${outside} of ${many(judged, { one: 'sampled slate', other: 'sampled slates' })} outside the order.`,
    inDelivery: (interval: string, total: string) => `In the delivery: ${interval} of ${total}.`,
    shareAsProcess: (interval: string) => `As a share of what the supplier makes: ${interval}.`,
    plan: (n: number, most: number) =>
      `Plan: ${many(n, SLATE)}, accepted with at most ${most} outside.`,
    planStarting: (share: string) =>
      `The list named no plan: a delivery with ${share} outside is taken to be acceptable, ours as a starting value.`,
    states: {
      accepted: 'The plan accepts.',
      refused: 'The plan refuses.',
      unfinished: 'Not decided yet.'
    },
    toJudge: (n: number) => `${many(n, { one: 'slate', other: 'slates' })} still to be measured.`,
    variables: (mean: string, sd: string, share: string, allowed: string) =>
      `By the spread of thickness: mean ${mean}, SD ${sd}, estimated ${share} outside; ${allowed} is allowed.`,
    variablesYes: 'The variables plan accepts.',
    variablesNo: 'The variables plan refuses.',
    columns: {
      check: 'Check',
      measured: 'Measured',
      outside: 'Outside',
      share: 'Share of the delivery',
      slates: 'In the delivery'
    },
    notMeasured: 'not measured',
    band: (low: string, high: string, percent: string) =>
      `Thickness ordered: ${low} to ${high} (${percent} either way)`,
    count: (ordered: string, delivered: string) =>
      `Ordered ${ordered}, on the pallets ${delivered}.`,
    countShort: (n: number) => `${many(n, SLATE)} short.`,
    countOver: (n: number) => `${many(n, SLATE)} over.`,
    countRight: 'The count is right.',
    stack: (measured: string, label: string, percent: string) =>
      `Stack of 100: ${measured} against ${label} on the label, ${percent}.`,
    stackStates: {
      pass: 'Within what the order allows.',
      fail: 'Beyond what the order allows.',
      'no limit set': 'The order sets no limit.'
    },
    stackMissing: 'The label with the packed thickness of 100 slates is missing.',
    stackNotMeasured: 'No stack was measured.',
    second: '2. Inside the order, but needs sorting',
    needed: {
      yes: 'Sorting is needed.',
      no: 'It can be laid without sorting.',
      unknown: 'Say in the order how many kickers you accept, to see whether sorting is needed.'
    },
    inside: (interval: string) => `Slates inside the order: ${interval}.`,
    spread: (thinnest: string, thickest: string, mean: string, sd: string) =>
      `Those inside run from ${thinnest} to ${thickest}, mean ${mean}, SD ${sd}.`,
    evenness: (unsorted: string, sorted: string, piles: string) =>
      `Kickers per 100 joints, foretold from the sample: ${unsorted} unsorted, ${sorted} with ${piles}.`,
    hours: (interval: string) => `Hours of sorting: ${interval}.`,
    hoursUnknown: 'Enter a sorting pace in the order to see the hours.',
    cost: (interval: string) => `Cost of sorting: ${interval}.`,
    costUnknown: 'Enter the cost of an hour to see the cost.',
    third: '3. Fit for this roof',
    noRoof: 'Enter the roof to see whether the delivery makes it.',
    roof: {
      enough: 'Enough for the roof and its reserve.',
      'reserve short': 'Enough for the roof, not for its reserve.',
      short: 'Too few for the roof.',
      uncertain: 'The sample does not tell: the roof may run short.'
    },
    usable: (interval: string) => `Usable slates: ${interval}.`,
    need: (need: string, reserve: string) => `The roof takes ${need}, and a reserve of ${reserve}.`,
    missingSlates: (interval: string) => `Missing: ${interval}.`,
    pallets: 'Pallets compared',
    palletColumns: {
      pallet: 'Pallet',
      judged: 'Sampled',
      outside: 'Outside',
      mean: 'Mean',
      sd: 'SD',
      chart: 'Against the others'
    },
    position: { inside: 'like the others', below: 'thinner', above: 'thicker' },
    chart: 'Pallet means with limits',
    chartText: (centre: string, odd: string) =>
      odd
        ? `Mean of all ${centre}. Outside the limits: pallet ${odd}. Look at it; it need not be outside the order.`
        : `Mean of all ${centre}. No pallet differs from the others by more than chance explains.`,
    chartBasis: (sd: string) =>
      `Limits: three standard errors either side, from the spread within pallets (SD ${sd}).`,
    chartNone: 'Too few slates to compare pallets.',
    histogram: 'Thickness of the sample',
    histogramText: (n: number, thinnest: string, thickest: string) =>
      `${many(n, SLATE)} from ${thinnest} to ${thickest}; lines mark what was ordered.`,
    low: 'least ordered',
    high: 'most ordered',
    nominal: 'nominal',
    apart: 'Listed apart: these judge nothing',
    apartNone: 'Nothing is listed apart.',
    apartSorting: (n: number) =>
      `${many(n, SLATE)} gauged while sorting: whoever sorts picks what is measured.`,
    apartReasons: {
      'drawn-late':
        'offered as sample, but the list was drawn after sorting had begun on the pallet',
      'measured-late': 'offered as sample, but measured after sorting had begun on the pallet',
      'list-unknown': 'offered as sample, but from a list that is not in this job',
      'not-on-list': 'offered as sample, but not on the list',
      'measured-again': 'measured twice: the later reading counts'
    } as Record<string, string>,
    apartLine: (n: number, reason: string) => `${many(n, SLATE)} ${reason}.`
  },
  verdict: {
    title: 'Verdict',
    names: { take: 'Take', query: 'Query', refuse: 'Refuse' },
    says: {
      take: 'Take the delivery.',
      query: 'Query the delivery with the supplier before anything is holed or fixed.',
      refuse: 'Refuse the delivery.'
    },
    rule: 'The rule is ours: refuse when the plan refuses on limits that do not rest on memory; query when count, label, roof or a remembered limit is in doubt or the sample is unfinished; else take.',
    why: 'Why',
    noReason: 'Nothing speaks against it.',
    reasons: {
      'outside-order': (f: Record<string, string>) =>
        `${f.outsideForCertain} of ${f.judged} sampled slates are outside the order; at most ${f.acceptAtMost} are accepted.`,
      'outside-order-by-memory': (f: Record<string, string>) =>
        `${f.outside} of ${f.judged} are outside by a tolerance from memory; at most ${f.acceptAtMost} are accepted. Check the order.`,
      'sample-unfinished': (f: Record<string, string>) =>
        `The sample is unfinished: ${f.toJudge} slates to go, ${f.outside} of ${f.judged} outside so far.`,
      'thickness-by-variables': (f: Record<string, string>) =>
        `Thickness spreads too far: an estimated ${f.shareOutside} outside, ${f.allowedShare} allowed.`,
      'count-short': (f: Record<string, string>) => `${f.short} slates short of the order.`,
      'count-over': (f: Record<string, string>) => `${f.over} slates more than ordered.`,
      'label-missing': () => 'The label does not give the packed thickness of 100 slates.',
      'stack-not-measured': () => 'No stack was measured against the label.',
      'stack-off-label': (f: Record<string, string>) =>
        `100 slates measure ${f.measuredMmPer100}, the label says ${f.labelMmPer100}.`,
      'roof-short': (f: Record<string, string>) =>
        `Between ${f.usableLow} and ${f.usableHigh} usable slates; the roof takes ${f.needed}.`,
      'roof-reserve-short': (f: Record<string, string>) =>
        `The reserve of ${f.reserve} is not covered: ${f.usableLow} to ${f.usableHigh} usable, ${f.needed} needed.`,
      'roof-uncertain': (f: Record<string, string>) =>
        `The roof may run short: ${f.usableLow} to ${f.usableHigh} usable, ${f.needed} needed and ${f.reserve} kept back.`,
      'sorting-needed': (f: Record<string, string>) =>
        f.sortedKickersPer100
          ? `It needs sorting: ${f.unsortedKickersPer100} kickers per 100 joints as it comes, ${f.sortedKickersPer100} sorted.`
          : 'It needs sorting.',
      'listed-apart': (f: Record<string, string>) =>
        `${f.slates} readings are listed apart and judge nothing.`
    } as Record<string, (figures: Record<string, string>) => string>,
    weights: { refuse: 'speaks for refusing', query: 'speaks for a query', note: 'to note' },
    change: 'What would change it',
    changes: {
      'outside-in-sample-at-most': (now: string, limit: string) =>
        `Slates outside in the sample: ${now} now; the plan accepts up to ${limit}.`,
      'thickness-tolerance-percent-at-least': (now: string, limit: string) =>
        `Tolerance: ${now} % now; the plan accepts from ${limit} %.`,
      'thickness-sd-mm-at-most': (now: string, limit: string) =>
        `Spread: SD ${now} now; the variables plan accepts up to ${limit}.`,
      'slates-delivered-at-least': (now: string, limit: string) =>
        `Slates delivered: ${now} now; the order asks for ${limit}.`,
      'unusable-in-sample-at-most': (now: string, limit: string) =>
        `Unusable slates in the sample: ${now} now; the roof is sure with up to ${limit}.`
    } as Record<string, (now: string, limit: string) => string>,
    costs: 'What each answer costs',
    costColumns: { choice: 'Answer', cost: 'Cost', parts: 'Made up of' },
    costParts: {
      sorting: 'sorting',
      shortage: 'slates to make up',
      credit: 'credit',
      delay: 'delay',
      return: 'sending back'
    } as Record<string, string>,
    costUnknown: (parts: string) => `not entered: ${parts}`,
    costNothing: 'nothing entered',
    costHint: 'The price of the delivery itself is in none of them.',
    sign: 'Sign the verdict',
    signHint:
      'Signing keeps the verdict with the fingerprint of every entry made so far. Later entries do not change it.',
    signedBy: 'Signed by',
    signedByMissing: 'Write who signs: a name or nickname.',
    note: 'Note',
    choice: 'Your verdict',
    differs: (advised: string) => `The figures say: ${advised}. Say in the note why you differ.`,
    signButton: 'Sign',
    signing: 'Working the fingerprint out…',
    signed: (verdict: string, who: string, when: string) => `${verdict}: signed by ${who}, ${when}`,
    signAgain: 'Sign another verdict'
  },
  sheet: {
    title: 'Delivery sheet',
    job: 'Job',
    print: 'Print, or keep as PDF',
    csv: 'All readings as CSV: Files',
    supplier: 'Supplier',
    arrived: 'Arrived',
    order: 'Order',
    method: 'Method',
    methodText: (n: string, pallets: string, moment: string) =>
      `${n} drawn by chance from ${pallets}, before sorting, on ${moment}; each pallet by its share, each slate with the same chance, none twice.`,
    measuredText: (first: string, last: string) => `Measured from ${first} to ${last}.`,
    thicknessText:
      'Thickness of a slate is the mean of its points, in the tail third, away from the dressed edge.',
    lists: (n: number) => `${n} lists were drawn; all their slates count.`,
    data: 'Data',
    readings: 'Every reading that judges (pallet/layer/slate, millimetres)',
    readingColumns: {
      place: 'Place',
      thickness: 'Thickness',
      points: 'Points',
      size: 'Length × width',
      square: 'Square',
      edge: 'Edge',
      flat: 'Flat',
      ring: 'Ring',
      defects: 'Defects'
    },
    photos: 'Photos',
    notes: 'Notes',
    noPhotos: 'No photos.',
    missing: 'Missing evidence',
    missingNone: 'None.',
    missingItems: {
      label: 'No packed thickness of 100 slates from the label.',
      stack: 'No stack measured.',
      photos: 'No photos.',
      places: (n: number) =>
        `${many(n, { one: 'place of the list is', other: 'places of the list are' })} not measured.`,
      check: (check: string, n: string, of: string) => `${check}: measured on ${n} of ${of}.`,
      memory: 'The thickness tolerance is from memory, not from the order.',
      arrival: 'No arrival date or days to claim.',
      unsigned: 'No verdict is signed.',
      roof: 'No roof is entered: the third finding is open.'
    },
    signature: 'Signature',
    unsigned: 'Not signed yet.',
    handSigned: 'Name, date, signature',
    hash: 'Fingerprint of the journal (SHA-256)',
    hashOf: (n: number) => `of the first ${many(n, { one: 'entry', other: 'entries' })}`,
    hashHow: (n: number) =>
      `Anyone with the job file can work it out again: head -n ${n + 1} FILE | tail -n +2 | sha256sum`,
    hashLater: (n: number) =>
      `${many(n, { one: 'entry was', other: 'entries were' })} made after signing and are not part of what was signed.`,
    message: 'Message to the supplier',
    copy: 'Copy the message',
    copied: 'Copied.',
    copyFailed: 'The browser did not copy it: select the text and copy it by hand.',
    messageText: {
      start: (job: string, arrived: string) =>
        `Delivery for “${job}”${arrived ? `, arrived ${arrived}` : ''}.`,
      sample: (n: number) => `We measured ${many(n, SLATE)} drawn by chance before sorting.`,
      outside: (outside: number, interval: string, total: string) =>
        `${outside} of them ${outside === 1 ? 'is' : 'are'} outside the order; that is ${interval} of ${total}.`,
      take: 'We take the delivery.',
      query: 'We query the delivery and hold it unfixed until you answer.',
      refuse: 'We refuse the delivery and hold it unfixed.',
      end: 'The sheet with method, readings and photos is attached.',
      hash: (sha: string) => `Journal fingerprint ${sha}`
    }
  },
  compare: {
    title: 'Deliveries compared',
    lead: 'All deliveries on this device that have a measured sample. Nothing leaves the device.',
    none: 'No delivery with a measured sample is on this device yet.',
    loading: (done: string, of: string) => `Opening job ${done} of ${of}…`,
    failed: (name: string) => `The job ${name} did not open and is left out.`,
    overTime: 'Over time',
    bySupplier: 'By supplier',
    noSupplier: 'no nickname',
    noDate: 'no date',
    columns: {
      job: 'Job',
      supplier: 'Supplier',
      arrived: 'Arrived',
      sampled: 'Sampled',
      mean: 'Mean',
      sd: 'SD',
      outside: 'Outside',
      aside: 'Set aside',
      kickers: 'Kickers per 100',
      deliveries: 'Deliveries'
    },
    picture: 'Mean and spread of each delivery',
    pictureText: (n: number) =>
      `${many(n, { one: 'delivery', other: 'deliveries' })} in order of arrival: the mark is the mean, the bar one SD either way.`,
    palletsOf: (job: string) => `Pallet means of ${job}`,
    unknown: 'unknown'
  },
  axis: { mm: 'mm', slates: 'slates' }
};
