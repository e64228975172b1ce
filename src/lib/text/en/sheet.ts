import { pluralizer } from '../plural.ts';

const many = pluralizer('en');
const number = (value: number) => value.toLocaleString('en', { maximumFractionDigits: 1 });

/** Words of the setting-out sheet. */
export const sheet = {
  title: 'Setting out',
  lead: 'What you mark the roof out by, slope by slope. Print it, or read it on the phone.',
  none: 'Nothing to set out yet. Enter the slate and at least one slope.',
  problems: 'The roof cannot be set out yet. Fix the marked fields on the Roof screen.',
  toRoof: 'Go to Roof',
  working: 'Working it out…',
  printHint: 'Print at 100 %, without fitting to the page, and check the line of 100 mm first.',
  slopeChooser: 'Slopes on this sheet',
  scaleLine: 'This line is 100 mm long. Measure it: if it is not, the sheet is not to scale.',
  slate: (length: string, width: string) => `Slate ${length} × ${width}`,
  headlap: (headlap: string) => `headlap ${headlap}`,
  gauge: (gauge: string) => `gauge ${gauge}`,
  courses: (full: number) =>
    `${many(full, { one: 'full course', other: 'full courses' })} and the top course`,
  pitch: (pitch: string) => `pitch ${pitch}`,
  size: (rafter: string, width: string) => `rafter ${rafter}, eave ${width}`,
  drawing: (scale: number) => `Drawn 1 : ${scale}`,
  wholeRoof: 'Whole roof',
  drawingOnScreen: 'Drawing',

  rod: {
    title: 'Gauge rod and batten lines',
    lead: (first: string, step: string) =>
      `Batten 0 carries the undereave slates, batten 1 the heads of course 1, and so on. The centre line of batten 0 lies ${first} up from the eave line. Every step is ${step}. Mark from batten 0 in one run; the marks are rounded, never the steps.`,
    leadDrop: (batten: number, first: string, step: string, gauge: string) =>
      `Batten ${batten} carries the heads of course ${batten}, the next one those of course ${batten + 1}, and so on. Its centre line lies ${first} up from the eave line, ${step} above the batten below. Every further step is ${gauge}. Go on from batten 0 on the same rod; the marks are rounded, never the steps.`,
    below: (first: string) => `−${first}`,
    batten: 'Batten',
    undereave: 'undereave',
    top: 'and top',
    drop: 'drop',
    dropLead: (batten: number, step: string) =>
      `At batten ${batten} a shorter slate begins: its step is ${step} only.`,
    mark: 'On the rod',
    step: 'Step',
    fromEave: 'From the eave',
    none: '–'
  },
  randomSlate: (length: string, from: string, to: string) =>
    `Slate ${length}, random widths ${from} to ${to}`,
  perps: {
    title: 'Perp marks',
    random: (sideLap: string, lookFor: string) =>
      `Random widths, drawn at their mean: no perp marks. Least side lap ${sideLap}, edge to edge. Look for ${lookFor} and wider.`,
    lead: (datum: string) => `Measured along the course from ${datum}.`,
    edge: {
      left: 'Each mark is the left edge of a slate.',
      right: 'Each mark is the right edge of a slate; measure leftwards.',
      centre: 'Measure the same marks to the left and to the right of the middle.'
    },
    over: (distance: string) => `That end lies ${distance} past the corner of the roof.`,
    bondA: 'Bond A: courses 1, 3, 5 …',
    bondB: 'Bond B: courses 2, 4, 6 … and the undereave',
    joint: (a: string, b: string) =>
      a === b ? `Joint ${a}.` : `Joint ${a} in bond A, ${b} in bond B.`,
    number: 'No.',
    A: 'Bond A',
    B: 'Bond B'
  },
  stick: {
    title: 'Marking stick for the perps',
    lead: (datum: string) => `Lay a lath along the course with its start at ${datum}.`,
    edge: {
      left: 'Each mark is the left edge of a slate.',
      right: 'Each mark is the right edge of a slate; turn the lath round and measure leftwards.',
      centre: 'Use the same marks to the left and to the right of the middle.'
    },
    picture: (part: number, parts: number) =>
      `Marking stick, stretch ${part} of ${parts}, bond A above and bond B below`,
    start: { left: 'Start: left end', right: 'Start: right end', centre: 'Start: the middle' },
    upper: 'Bond A, edge towards the ridge: courses 1, 3, 5 …',
    lower: 'Bond B, edge towards the eave: undereave and courses 2, 4, 6 …',
    waste: 'Waste end: saw off'
  },
  lines: {
    title: 'Courses, eave to ridge',
    lead: (gauge: string) =>
      `Batten lines up the rafter from the eave line, every step ${gauge}. Mark all from one point.`,
    leadDrop: (batten: number, step: string, gauge: string) =>
      `Batten lines up the rafter from the eave line. Batten ${batten} lies ${step} above the one below: a shorter slate begins. Every further step is ${gauge}. Mark all from one point.`,
    random: (mean: string) => `Slates are counted at the mean width, ${mean}.`,
    planned: 'Piles as planned.',
    unplanned: 'No plan is in use yet: write the pile in.',
    course: 'Course',
    batten: 'Batten',
    rod: 'On the rod',
    leftMm: 'Batten, left',
    middleMm: 'middle',
    rightMm: 'right',
    bond: 'Bond',
    pile: 'Pile',
    slates: 'Slates',
    wide: '1½',
    cuts: 'Cuts',
    widths: 'Cut in full, left to right: tail/head',
    toFill: 'Width to fill',
    about: 'Slates, about',
    drop: 'drop',
    done: 'Laid',
    undereave: 'Under',
    noPile: '____'
  },
  cuts: {
    title: 'Cuts',
    edge: (side: 'left' | 'right', kind: 'hip' | 'valley', degrees: string, leans: string) =>
      `At the ${side} ${kind} cut at ${degrees}° to the slate’s side, leaning ${leans} towards the head.`,
    loose:
      'A piece marked × has no room for its nail: cut it from a wider slate, else bond or hook it.',
    opening: (
      name: string,
      below: number | undefined,
      above: number | undefined,
      from: number | undefined,
      to: number | undefined
    ) => {
      const cut =
        from === undefined
          ? 'no course is cut'
          : from === to
            ? `course ${from} is cut`
            : `courses ${from} to ${to} are cut`;
      const under =
        below === undefined ? 'none runs whole below it' : `course ${below} runs whole below it`;
      const over = above === undefined ? 'none above it' : `course ${above} above it`;
      return `${name}: ${cut}, ${under}, ${over}.`;
    },
    raked: (tail: string, head: string) => `tail ${tail}, head ${head}`,
    toPoint: (tail: string) => `tail ${tail}, to a point`,
    leans: (way: 'left' | 'right') => `leaning ${way} towards the head`,
    notch: (width: string, height: string) => `notch ${width} × ${height}`,
    wide: 'from a slate-and-a-half',
    noNail: 'no room for its nail'
  },
  outOfSquare: {
    title: 'Out of square',
    longer: (side: 'left' | 'right', by: string, each: string) =>
      `The ${side} side is ${by} longer: every course takes ${each} of it. Mark the battens at both sides and snap between.`,
    bow: (way: 'high' | 'low', by: string) =>
      `The middle is ${by} too ${way}: mark the battens there too.`,
    ridge: (way: 'wider' | 'narrower', by: string) => `The ridge is ${by} ${way} than the eave.`,
    verge: (side: 'left' | 'right', where: 'ridge' | 'eave', by: string) =>
      `${side === 'left' ? 'Left' : 'Right'} verge: cut the verge slates by ${by} at the ${where}, by nothing at the ${where === 'ridge' ? 'eave' : 'ridge'}, evenly between.`,
    noDiagonal: 'Measure a diagonal to see which verge leans.',
    perps: (datum: string) => `Perps stay square to the eave, set out from ${datum}.`
  },
  eaves: {
    title: 'Before you cut:',
    lead: (overhang: string) =>
      `lay one undereave slate and one full slate, hooked on their battens, at three places. Tails must reach ${overhang} past the eave line and lie flat on each other.`,
    then: (slates: number, wide: number) =>
      wide > 0
        ? `Only then cut ${many(slates, { one: 'undereave slate', other: 'undereave slates' })} and ${many(wide, { one: 'wide one', other: 'wide ones' })}.`
        : `Only then cut ${many(slates, { one: 'undereave slate', other: 'undereave slates' })}.`,
    places: ['left', 'middle', 'right']
  },
  patterns: {
    title: 'Patterns',
    undereave: 'Undereave slate',
    full: 'Full slate',
    length: (length: string) => `length ${length}`,
    width: (width: string) => `width ${width}`,
    widths: (from: string, to: string) => `width ${from} to ${to}`,
    hole: (hole: string) => `holes ${hole} from the tail`,
    holeFromHead: (hole: string) => `(${hole} from the head)`,
    tail: 'tail',
    head: 'head',
    sides: (fromSide: string) =>
      `Two holes, drawn ${fromSide} in from each side: common practice, no source.`,
    count: (slates: number, wide: number) =>
      wide > 0
        ? `This slope takes ${many(slates, { one: 'undereave slate', other: 'undereave slates' })} and ${number(wide)} of the width of a slate-and-a-half.`
        : `This slope takes ${many(slates, { one: 'undereave slate', other: 'undereave slates' })}.`,
    wholeRoof: 'Undereave slates for the whole roof'
  },
  table: {
    title: 'Courses, eave to ridge',
    course: 'Course',
    bond: 'Bond',
    tail: 'Tail line',
    full: 'Full',
    slateAndAHalf: 'Slate-and-a-half',
    cut: 'Cut',
    cutWidths: 'Cut pieces in full, left to right, tail / head',
    note: 'Tail line: up the rafter from the eave line; below it with a minus sign.'
  },
  checks: 'Checks and cautions'
};
