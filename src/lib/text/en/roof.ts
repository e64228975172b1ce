import { pluralizer } from '../plural.ts';

const many = pluralizer('en');
const number = (value: number) => value.toLocaleString('en', { maximumFractionDigits: 1 });

/** Words of the roof screen. */
export const roof = {
  title: 'Roof',
  lead: 'Enter the slate, then each slope. Courses, marks and slates are worked out.',

  whole: {
    answer: (courses: number, slates: number, wide: number) =>
      `${many(courses, { one: 'course', other: 'courses' })}: ${many(slates, { one: 'slate', other: 'slates' })}${wide > 0 ? ` and ${many(wide, { one: 'slate-and-a-half', other: 'slate-and-a-halves' })}` : ''}.`,
    gauge: (gauge: string, headlap: string) =>
      `Gauge ${gauge}, headlap ${headlap}. Breakage and spares come on top.`,
    fromTo: (from: string, to: string) => `${from} to ${to}`,
    warning: (slope: string, what: string) => `${slope}: ${what}`,
    more: (n: number) =>
      `${many(n, { one: 'more warning', other: 'more warnings' })}: see the checks.`,
    picture: (slopes: number) =>
      `The roof from above, ${many(slopes, { one: 'slope', other: 'slopes' })}`
  },
  folds: {
    each: 'Each slope',
    order: 'What to order?',
    nails: 'Nails and mass by pile',
    undereave: 'Undereave slates',
    checks: 'Checks and cautions',
    units: 'Lengths in'
  },

  toOrder: 'See what to order',

  unitLabel: 'Lengths in',
  units: { mm: 'Millimetres', ftIn: 'Feet and inches' },
  unitHint: {
    mm: 'A number alone is millimetres. You can also type 5.5 m, 18 ft 6 in or 10".',
    ftIn: 'A number alone is inches. You can also type 18′ 6 1/2″, 18 ft 6 in, 500 mm or 5.5 m.'
  },
  notSaved: 'Not saved yet',
  draftKept: 'Kept on this device until you save or discard it.',
  discard: 'Discard changes',
  saved: 'Saved',
  use: (value: string) => `Use ${value}`,

  slate: {
    title: 'Slate',
    lead: 'One slate for the whole job. You give size and headlap; the rest starts at common practice.',
    toSizes: 'Several lengths or random widths',
    lengthMm: 'Length',
    widthMm: 'Width',
    headlapMm: 'Headlap',
    slateAndAHalfWidthMm: 'Width of a slate-and-a-half',
    slateAndAHalfHint: 'Left empty: one and a half times the width.',
    nailing: 'Nailed',
    nailings: { centre: 'at the centre', head: 'at the head' },
    headNailLineMm: 'Nail line from the head',
    headNailLineHint: 'Common practice, no source.',
    holeClearanceMm: 'Hole clears the slate below by',
    holeClearanceHint: 'Trade guides give 3 to 15 mm.',
    undereaveHoleFromHeadMm: 'Undereave hole from its head',
    undereaveHoleHint: 'Common practice, no source.',
    jointMinMm: 'Joint, from',
    jointMaxMm: 'Joint, to',
    jointHint: 'Trade guides: 3 to 5 mm.',
    eaveOverhangMm: 'Overhang at the eave',
    eaveOverhangHint: 'A trade manual: about 50 mm.',
    vergeOverhangMm: 'Overhang at the verges',
    vergeOverhangHint: 'A trade manual: 40 to 50 mm.',
    narrowestCutMm: 'No cut narrower than',
    narrowestCutHint: 'British code 2014, as trade guides report it: 150 mm.',
    densityKgPerM3: 'Density',
    densityUnit: 'kg/m³',
    densityHint: 'Natural slate: 2,650 to 2,800.',
    more: 'Nailing, joints, overhangs, density',
    save: 'Save the slate',
    change: 'Change the slate',
    size: (length: string, width: string) => `${length} × ${width}`,
    summary: (size: string, headlap: string, nailing: string) =>
      `${size}, headlap ${headlap}, nailed ${nailing}`,
    headlapMost: (most: string) => `At most ${most}, a third of the length.`,
    headlapHint: (headlap: string, pitch: string) =>
      `Trade guides for moderate exposure agree on at least ${headlap} at ${pitch}.`,
    headlapList: (rows: string) => `Trade guides for moderate exposure agree on: ${rows}.`,
    headlapRow: (pitch: string, headlap: string) => `${pitch} ${headlap}`,
    headlapNone: 'Guides do not agree on a headlap for this size and pitch.',
    headlapDecides: 'The local code, the exposure and licensed practice decide.'
  },

  slopes: {
    title: 'Slopes',
    none: 'No slope yet. A slope is one plane of the roof, seen from outside.',
    add: 'Add a slope',
    choose: 'Slopes of this roof, all to one scale',
    name: (n: number) => `Slope ${n}`,
    removed: (name: string) => `${name} is removed.`,
    bringBack: 'Bring it back',
    needSlate: 'Enter the slate first: it decides how many courses a slope takes.',
    unsound: 'Fix a field of this slope.',
    size: (width: string, rafter: string) => `${width} wide, ${rafter} up the rafter`,
    exampleTitle: 'Or look at an invented roof',
    exampleLead:
      'These four roofs are made up. Tap one to fill in slate and slopes; you can change everything afterwards.',
    example: (name: string) => `Start from an example roof: ${name}`,
    examples: [
      { id: 'gable', name: 'gable, two equal slopes' },
      { id: 'hipped', name: 'hipped, four slopes' },
      { id: 'l-with-valley', name: 'L on plan with a valley and a hip' },
      { id: 'gable-with-rooflight', name: 'gable with a rooflight and a chimney' }
    ]
  },

  shapes: {
    title: 'Start from a shape',
    names: {
      'two-slope': 'Two slopes',
      hipped: 'Hipped',
      'l-with-valley': 'L with a valley',
      'lean-to': 'Lean-to',
      cheeks: 'Dormer cheeks'
    },
    length: { others: 'Length along the eave', cheeks: 'Length of the dormer’s eave' },
    depth: {
      others: 'Depth on plan, eave to eave',
      'lean-to': 'Depth on plan, eave to wall',
      cheeks: 'Depth on plan, front to roof'
    },
    draw: 'Draw this roof',
    parts: {
      front: 'Front slope',
      back: 'Back slope',
      leftEnd: 'Left end',
      rightEnd: 'Right end',
      wingInner: 'Wing, inner slope',
      wingOuter: 'Wing, outer slope',
      leanTo: 'Lean-to',
      leftCheek: 'Left cheek',
      rightCheek: 'Right cheek'
    }
  },

  joins: {
    round: (kind: 'hip' | 'valley', side: 'left' | 'right', name: string) =>
      `Add the slope round the ${side} ${kind} of ${name}`,
    misses: (one: string, other: string, miss: string) =>
      `${one} and ${other}: courses miss each other by up to ${miss} where they meet.`,
    levelAtEaves: (one: string, courses: number, other: string, others: number) =>
      `They are level at the eaves, but ${one} climbs in ${courses} courses and ${other} in ${others}.`,
    noMeeting: (one: string, other: string) =>
      `${one} and ${other}: no course of the one lies as high as one of the other, though they share an edge.`,
    missesBy: (line: string, miss: string) => `${line}; courses miss each other by up to ${miss}`,
    level: (line: string) => `${line}; courses meet`,
    raise: (name: string, by: string) => `Raise ${name} by ${by}, so that they meet at the eaves`,
    title: 'Hips, valleys and ridges',
    kinds: { hip: 'Hip', valley: 'Valley', ridge: 'Ridge' },
    line: (kind: string, one: string, other: string, length: string) =>
      `${kind}, ${one} with ${other}: ${length}`,
    open: (kind: string, one: string, length: string) => `${kind} of ${one}: ${length}`,
    note: 'Hips mitred or capped, valleys open, swept or laced: local practice decides. Gutters and flashings are not worked out here.'
  },

  slope: {
    title: (name: string) => `Measures of ${name}`,
    change: (name: string) => `Change ${name}`,
    name: 'Name of the slope',
    rafterLengthMm: 'Rafter length, eave to ridge',
    eaveWidthMm: 'Width along the eave',
    pitchDegrees: 'Pitch',
    pitchUnit: '°',
    eaveHeightMm: 'Height above the lowest eave',
    ridgeGapMm: 'Top batten below the ridge line',
    setOutFrom: 'Set the bonds out from',
    hints: {
      eaveWidthMm: 'Between the two edges, without overhang.',
      eaveHeightMm: '0 for the lowest eave of the job.',
      setOutFrom: 'Only matters where both edges are square to the eave.',
      rafterLeftMm: 'For a roof out of square; 0 where not measured.',
      rafterRightMm: '0 where not measured.',
      ridgeWidthMm: '0 where not measured.',
      diagonalMm: '0 where not measured. It tells which verge leans.'
    },
    rafterLeftMm: 'Rafter at the left edge',
    rafterRightMm: 'Rafter at the right edge',
    ridgeWidthMm: 'Width along the ridge',
    diagonalMm: 'Diagonal, eave left to ridge right',
    choices: { left: 'the left', right: 'the right' },
    more: 'Ridge, eave height, setting out, out of square',
    edges: { left: 'Left edge', right: 'Right edge' },
    kind: 'Kind',
    kinds: { verge: 'Verge', hip: 'Hip', valley: 'Valley', abutment: 'Abutment' },
    way: 'Its line',
    ways: {
      square: 'square to the eave',
      inwards: 'inwards at the top by …',
      outwards: 'outwards at the top by …',
      angle: 'at an angle on plan'
    },
    insets: { inwards: 'Inwards at the top by', outwards: 'Outwards at the top by' },
    planAngleDegrees: 'Angle to the eave on plan',
    planAngleHint: '45° where two equal pitches meet at a square corner.',
    openings: 'Openings',
    openingsNone: 'No rooflight or chimney on this slope.',
    opening: (kind: string, n: number) => `${kind} ${n}`,
    openingKinds: { rooflight: 'Rooflight', chimney: 'Chimney' },
    addOpening: { rooflight: 'Add a rooflight', chimney: 'Add a chimney' },
    fromLeftMm: 'From the left end of the eave',
    widthMm: 'Width',
    fromEaveMm: 'From the eave up the rafter',
    heightMm: 'Length up the rafter',
    removeOpening: (name: string) => `Remove ${name}`,
    save: (name: string) => `Save ${name}`,
    saveNew: 'Save the slope',
    remove: (name: string) => `Remove ${name}`
  },

  trouble: {
    empty: 'Nothing is entered here. Type a measure.',
    'name-missing': 'The slope has no name. Give it one, such as "South".',
    ambiguous: (value: string) =>
      `A comma or point before three digits can be thousands or decimals. Type ${value}, or write the unit.`,
    'not-a-length': 'This is not a length. Type a number, with or without a unit: 5.5 m.',
    'not-a-number': 'This is not a number. Type digits only.',
    negative: (limit: string) => `A measure cannot be below zero. At least ${limit} works here.`,
    inMetres: (value: string) =>
      `${value} mm is too small. If you mean ${value} metres, the field wants millimetres.`,
    'too-small': (limit: string) => `Too small: at least ${limit} works here.`,
    'too-large': (limit: string) => `Too large: at most ${limit} works here.`,
    'headlap-above-third': (limit: string) =>
      `The headlap is more than a third of the slate. At most ${limit} works.`,
    'range-reversed': (limit: string) =>
      `The widest joint is below the narrowest. At least ${limit} works.`,
    'not-wider-than-slate': (limit: string) =>
      `A slate-and-a-half must be wider than a slate. At least ${limit} works.`,
    'narrower-than-slate': (limit: string) =>
      `The slope is narrower than one slate. At least ${limit} works.`,
    'wider-than-roof': (limit: string) =>
      `The slate is wider than a slope of this job. At most ${limit} works.`,
    'longer-than-roof': (limit: string) =>
      `The slate is too long for a slope of this job. At most ${limit} works.`,
    'no-course': (limit: string) => `Not one course fits on this rafter. At least ${limit} works.`,
    'joints-too-close': (limit: string) =>
      `Joints of one course would lie too close to those of the next, so the roof could leak. Use a wider slate at a verge, a cut at the other end or another joint; a width of ${limit} needs no cut.`,
    'closes-before-ridge': (limit: string) =>
      limit
        ? `The edges meet before they reach the ridge. The limit is ${limit}.`
        : 'The edges meet before they reach the ridge. Change the other edge or the width.',
    'wrong-way': 'A hip moves inwards and a valley outwards. Turn the sign.',
    'outside-slope': (limit: string) =>
      `The opening lies outside the slope. The limit is ${limit}.`,
    'overlaps-opening': 'This opening lies over another one. Move it beside.',
    'square-sides-only':
      'Only a slope with square sides is measured for square: a hip or valley cuts every course anyway. Type 0.',
    'out-by-a-course': (limit: string) =>
      `That is out by more than a course, too much to share out. Measure again; else true the roof up with the joiner, or lay it in parts. The limit is ${limit}.`,
    'no-such-diagonal': (limit: string) =>
      `No slope with these sides has such a diagonal. Measure from the eave's left to the ridge's right corner; square would be ${limit}.`,
    'same-id': 'This slope is there twice. Remove one of them.'
  },

  figures: {
    title: (name: string) => `What ${name} takes`,
    asTyped: 'as typed, not saved',
    waiting: 'Fill every box to see the figures.',
    gauge: 'Gauge',
    gaugeMost: (most: string) => `${most} at most`,
    courses: 'Courses',
    courseParts: (full: number) =>
      `${many(full, { one: 'full', other: 'full' })} and the top course`,
    perCourse: 'Slates per course',
    perCourseRange: (least: number, most: number) =>
      least === most ? number(least) : `${number(least)} to ${number(most)}`,
    perCourseNote: 'pieces of every kind',
    headlap: 'Headlap',
    headlapGained: (gained: string) => `${gained} more than asked, since courses are equal`,
    undereave: 'Undereave slate',
    undereaveNote: (hole: string, slates: number) =>
      `hole ${hole} from the tail, ${many(slates, { one: 'piece', other: 'pieces' })}`,
    top: 'Top course',
    topNote: 'slates cut to this length',
    hole: 'Hole in a full slate',
    holeNote: 'from the tail',
    joint: 'Joint',
    joints: (a: string, b: string) => (a === b ? a : `A ${a}, B ${b}`),
    sideLap: 'Least side lap',
    battens: 'Batten lines',
    battenM: (run: string) => `${run} of batten, waste not counted`,
    full: 'Full slates',
    cut: 'Cut pieces',
    cutNote: 'each from one slate',
    slateAndAHalf: 'Slate-and-a-halves',
    slateAndAHalfCut: (n: number) => `${number(n)} of them cut`,
    slates: 'Slates used up',
    slatesNote: 'full and cut, without the undereave',
    undereaveSlates: 'Undereave pieces',
    nails: 'Nails',
    nailsNote: 'two to a piece',
    area: 'Slated area',
    areaUnit: (area: string, unit: string) => `${area} ${unit}`,
    metres: (run: string, unit: string) => `${run} ${unit}`,
    pieces: (n: number) => many(n, { one: 'piece', other: 'pieces' }),
    lines: (n: number) => many(n, { one: 'line', other: 'lines' })
  },

  drawing: {
    title: (name: string) => `${name}, true to scale`,
    hint: 'Tap a course, or use the arrow keys, to see its figures.',
    label: (name: string) => `Courses of ${name}`,
    value: (course: number, courses: number) => `Course ${course} of ${courses}`,
    below: 'Course below',
    above: 'Course above',
    key: {
      full: 'Full slate',
      slateAndAHalf: 'Slate-and-a-half',
      cut: 'Cut piece',
      opening: 'Opening'
    },
    eave: 'eave',
    outline: (name: string) => `Outline of ${name}`
  },

  course: {
    title: (course: number, courses: number) => `Course ${course} of ${courses}`,
    top: 'the top course, cut short',
    bond: 'Bond',
    bonds: {
      A: 'A, full slates from the start',
      B: 'B, a slate-and-a-half or half a slate on'
    },
    batten: 'Batten line from the eave',
    onRod: (mark: string) => `${mark} on the gauge rod`,
    tail: 'Tails from the eave',
    margin: 'Margin',
    full: 'Full slates',
    slateAndAHalf: 'Slate-and-a-halves',
    cut: 'Cut pieces',
    cutWidths: 'Cut pieces in full, left to right',
    perps: (datum: string) => `Perp marks from ${datum}`,
    none: 'none',
    past: (distance: string) => `${distance} past the eave`,
    noSlate: 'An opening or the edges take this course: no slate is laid.'
  },
  datum: {
    left: 'the left end of the slates',
    right: 'the right end of the slates',
    centre: 'the middle of the eave'
  },

  checks: {
    title: 'Checks',
    good: 'All within the published and usual limits.',
    warning: 'Look at this',
    note: 'Note',
    /** For a first look: what and by how much. */
    short: {
      'headlap-above-third': (value: string, limit: string) =>
        `headlap ${value}, over a third of the slate (${limit})`,
      'headlap-below-least': (value: string, limit: string) =>
        `headlap ${value}, none below ${limit} is accepted`,
      'headlap-below-hint': (value: string, limit: string) =>
        `headlap ${value}, guides ask for ${limit} at this pitch`,
      'pitch-below-least': (value: string, limit: string) =>
        `pitch ${value}, double-lap slate wants ${limit}`,
      'side-lap-below-headlap': (value: string, limit: string) =>
        `side lap ${value}, less than the headlap of ${limit}`,
      'cuts-without-nail': (_value: string, _limit: string, pieces: number) =>
        `${many(pieces, { one: 'cut piece has', other: 'cut pieces have' })} no room for a nail`,
      'narrow-cuts': (_value: string, limit: string, pieces: number) =>
        `${many(pieces, { one: 'cut piece is', other: 'cut pieces are' })} narrower than ${limit}`,
      'bond-not-whole': (_value: string, limit: string) =>
        `a cut ends each course; over ${limit} none would`
    },
    standing: {
      'nhbc-7-2-19': 'NHBC Standards 7.2.19, table 12',
      'bs-5534-as-reported': 'British code 2014, as trade guides report it',
      'trade-guides-moderate-exposure': 'trade guides that agree, moderate exposure only',
      'common-practice': 'common practice, no source'
    },
    found: {
      'headlap-above-third': (value: string, limit: string) =>
        `Equal courses give a headlap of ${value}, above a third of the slate, ${limit}.`,
      'headlap-below-least': (value: string, limit: string) =>
        `The headlap is ${value}; none should be below ${limit}.`,
      'headlap-below-hint': (value: string, limit: string) =>
        `The headlap is ${value}; guides for moderate exposure ask for ${limit} at this pitch.`,
      'pitch-below-least': (value: string, limit: string) =>
        `The pitch is ${value}; double-lap slate wants at least ${limit}.`,
      'side-lap-below-headlap': (value: string, limit: string) =>
        `The least side lap is ${value}, below the headlap of ${limit}.`,
      'cuts-without-nail': (_value: string, limit: string, pieces: number) =>
        `${many(pieces, { one: 'cut piece leaves', other: 'cut pieces leave' })} no room for a nail hole with ${limit} of slate round it, at a hip, a valley or an opening. Cut from a slate-and-a-half or wider where it then takes its nail; else bond or hook it, as licensed practice allows.`,
      'narrow-cuts': (value: string, limit: string, pieces: number) =>
        `${many(pieces, { one: 'cut piece is', other: 'cut pieces are' })} narrower than ${limit}; the narrowest is ${value}.`,
      'bond-not-whole': (value: string, limit: string) =>
        `No joint within its range lets both bonds finish whole over ${value}; a piece is cut at the far end. Over ${limit} they would.`
    },
    decides:
      'These checks only inform you. Local code, exposure of the site and licensed practice decide.',
    cautions: {
      'local-code-decides': 'Least headlap and pitch come from the local code and the exposure.',
      'work-at-height': 'Work at height only from a proper scaffold and roof ladders.',
      lifting:
        'Slates are heavy: load out in small stacks, spread over the roof, lifted with help.',
      'silica-dust': 'Cutting and holing free silica dust: wet it or extract it, and wear a mask.'
    }
  },

  totals: {
    title: 'Whole roof',
    slope: 'Slope',
    courses: 'Courses',
    area: (unit: string) => `Area, ${unit}`,
    slates: 'Slates',
    full: 'Full',
    cut: 'Cut',
    slateAndAHalf: 'Slate-and-a-half',
    undereave: 'Undereave',
    battens: (unit: string) => `Battens, ${unit}`,
    nails: 'Nails',
    all: 'Whole roof',
    incomplete: 'Fix the marked slope first; then the whole roof is added up.',
    note: 'Breakage, spares and batten waste come on top. Slates: full and cut pieces, one slate for each. Undereave pieces come from slates or from what was set aside.',
    sheet: 'Setting-out sheet'
  },

  materials: {
    title: 'Nails and mass by pile',
    lead: 'Nails twice the thickness and 20 to 25 mm long, two to a piece. Mass is density times measured thickness.',
    none: 'Measure some slates first: nail lengths and masses need thickness.',
    pile: 'Pile',
    all: 'All slates',
    thickness: 'Mean thickness',
    nailLength: 'Nail length',
    nailLengthRange: (sold: string, least: string, most: string) => `${sold} (${least} to ${most})`,
    nails: 'Nails by the plan',
    noPlan: 'once planned',
    mass: 'Mass laid',
    massUnit: (mass: string) => `${mass} kg/m²`,
    carried: 'One person carries',
    stack: 'A stack for the hoist',
    stackOf: (slates: number, height: string, mass: string) =>
      `${many(slates, { one: 'slate', other: 'slates' })}, ${height}, ${mass} kg`,
    undereaveNails: (nails: number) =>
      `The undereave row takes ${number(nails)} nails more. They are in the whole roof, and in no pile of the plan.`,
    source: 'Nail length from a trade manual. Battens and nails are not in the mass.'
  },

  undereave: {
    title: 'Undereave slates',
    wants: (n: number, wide: number) =>
      wide > 0
        ? `The roof takes ${many(n, { one: 'undereave slate', other: 'undereave slates' })} and ${number(wide)} of the width of a slate-and-a-half.`
        : `The roof takes ${many(n, { one: 'undereave slate', other: 'undereave slates' })}.`,
    setAside: 'Of the slates set aside:',
    fromStock: (served: number, slates: number, wide: number) =>
      served === 0
        ? 'None of them is marked for the undereave and fit for it. All come from stock, on top of what the courses take.'
        : `At most ${number(served)} of them, marked for the undereave, can serve. ${restFromStock(slates, wide)}`,
    noneSetAside:
      'No slate is set aside yet. Only the tail edge of an undereave slate shows, so slates set aside for colour or size may do.',
    reasons: {
      broken: 'broken',
      dullRing: 'dull ring',
      twisted: 'twisted or bowed',
      tapered: 'tapered',
      wrongSize: 'wrong size',
      inclusion: 'inclusion',
      colour: 'colour',
      other: 'other reason'
    },
    line: (n: number, reason: string) => `${many(n, { one: 'slate', other: 'slates' })}, ${reason}`,
    yes: 'will do',
    because: {
      unsound: 'will not do: a dull ring is a hidden crack',
      bends: 'will not do: a twisted slate lifts the first course',
      'too-short': 'will not do: too short',
      'too-narrow': 'will not do: too narrow',
      measure: 'will do where the sound part measures at least the pattern',
      inclusion: 'look: will do where the inclusion is not at the tail and does not rust through',
      thickness: 'look: will do where the tail is no thicker than its neighbours',
      unknown: 'look at each'
    }
  }
};

function restFromStock(slates: number, wide: number): string {
  const wides = many(wide, { one: 'slate-and-a-half', other: 'slate-and-a-halves' });
  const plain = many(slates, { one: 'slate', other: 'slates' });
  const parts = [...(slates > 0 ? [plain] : []), ...(wide > 0 ? [wides] : [])];
  return parts.length > 0
    ? `The rest comes from stock, on top of what the courses take: ${parts.join(' and ')}.`
    : 'No more is needed from stock.';
}
