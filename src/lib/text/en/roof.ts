import { pluralizer } from '../plural.ts';
import { checks } from './roof-checks.ts';
import { slate, slope } from './roof-fields.ts';
import { course, datum, drawing, figures } from './roof-figures.ts';
import { materials, totals, undereave } from './roof-materials.ts';
import { trouble } from './roof-trouble.ts';

const many = pluralizer('en');

/** Words of the roof screen. */
export const roof = {
  title: 'Roof',
  lead: 'Start with the slate, then the slopes.',

  whole: {
    answer: (courses: number, slates: number, wide: number) =>
      `${many(courses, { one: 'course', other: 'courses' })}: ${many(slates, { one: 'slate', other: 'slates' })}${wide > 0 ? ` and ${many(wide, { one: 'slate-and-a-half', other: 'slate-and-a-halves' })}` : ''}.`,
    /** @param isEvened whether the courses are made equal, so that the lap is more than asked for */
    gauge: (gauge: string, headlap: string, isEvened: boolean) =>
      `Gauge ${gauge}${isEvened ? ' evened out' : ''}, headlap ${headlap}. Breakage and spares extra.`,
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
  draftKept: 'Kept on this device.',
  discard: 'Discard changes',
  leave: 'Leave it',
  saved: 'Saved',
  use: (value: string) => `Use ${value}`,

  slate,

  slopes: {
    title: 'Slopes',
    none: 'No slope yet.',
    add: 'Add a slope',
    choose: 'Slopes of this roof, all to one scale',
    name: (n: number) => `Slope ${n}`,
    removed: (name: string) => `${name} is removed.`,
    bringBack: 'Bring it back',
    needSlate: 'Enter the slate first: it decides how many courses a slope takes.',
    unsound: 'Fix a field of this slope.',
    size: (width: string, rafter: string) => `${width} wide, ${rafter} up the rafter`,
    exampleTitle: 'Or look at an invented roof',
    exampleLead: 'Made up; you can change everything.',
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
      others: 'Depth of the house, eave to eave',
      'lean-to': 'Depth, eave to wall',
      cheeks: 'Depth, front to main roof'
    },
    depthHint: 'Measured level, as on a drawing: not up the slope.',
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

  slope,
  trouble,
  figures,
  drawing,
  course,
  datum,
  checks,
  totals,
  materials,
  undereave
};
