/** What is wrong in a field of the roof, and what to do. */
export const trouble = {
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
  'outside-slope': (limit: string) => `The opening lies outside the slope. The limit is ${limit}.`,
  'overlaps-opening': 'This opening lies over another one. Move it beside.',
  'square-sides-only':
    'Only a slope with square sides is measured for square: a hip or valley cuts every course anyway. Type 0.',
  'out-by-a-course': (limit: string) =>
    `That is out by more than a course, too much to share out. Measure again; else true the roof up with the joiner, or lay it in parts. The limit is ${limit}.`,
  'no-such-diagonal': (limit: string) =>
    `No slope with these sides has such a diagonal. Measure from the eave's left to the ridge's right corner; square would be ${limit}.`,
  'same-id': 'This slope is there twice. Remove one of them.'
};
