import {
  type FieldProblem,
  type FieldProblemCode,
  type SlateSpec,
  makeSlope,
  slateSpec,
  slateSpecProblems,
  slopeProblems
} from '$lib/engine/roof';
import {
  type SlateSpecBody,
  type SlopeBody,
  CUSTOMARY_OVERHANGS,
  slateForEngine,
  slopeForEngine
} from '$lib/journal';
import {
  type FieldReading,
  type ShownUnit,
  fieldText,
  readLength,
  readNumber,
  retypeLength
} from './length-words.ts';

/** One field that cannot stand: as the engine found it, or unreadable as typed. */
export interface FieldTrouble extends Omit<FieldProblem, 'code'> {
  readonly code:
    | FieldProblemCode
    | Exclude<FieldReading, { ok: true }>['reason']
    | 'name-missing'
    | 'wider-than-roof'
    | 'longer-than-roof';
}

/** The slate as typed: every field is the text in it. Named as in the engine. */
export interface SlateForm {
  lengthMm: string;
  widthMm: string;
  /** Empty: one and a half times the width. */
  slateAndAHalfWidthMm: string;
  nailing: 'centre' | 'head';
  headNailLineMm: string;
  holeClearanceMm: string;
  undereaveHoleFromHeadMm: string;
  headlapMm: string;
  jointMinMm: string;
  jointMaxMm: string;
  eaveOverhangMm: string;
  vergeOverhangMm: string;
  narrowestCutMm: string;
  densityKgPerM3: string;
}

/** How an edge's line is given: square to the eave, by what it moves at the ridge, or on plan. */
export type EdgeWay = 'square' | 'inwards' | 'outwards' | 'angle';

/** One side of a slope as typed. */
export interface EdgeForm {
  kind: SlopeBody['left']['kind'];
  way: EdgeWay;
  insetAtTopMm: string;
  planAngleDegrees: string;
}

/** An opening as typed. */
export interface OpeningForm {
  kind: 'rooflight' | 'chimney';
  fromLeftMm: string;
  widthMm: string;
  fromEaveMm: string;
  heightMm: string;
}

/** A slope as typed. */
export interface SlopeForm {
  slopeId: string;
  name: string;
  rafterLengthMm: string;
  eaveWidthMm: string;
  pitchDegrees: string;
  eaveHeightMm: string;
  ridgeGapMm: string;
  setOutFrom: 'left' | 'right';
  left: EdgeForm;
  right: EdgeForm;
  openings: OpeningForm[];
}

const SLATE_LENGTHS = [
  'lengthMm',
  'widthMm',
  'slateAndAHalfWidthMm',
  'headNailLineMm',
  'holeClearanceMm',
  'undereaveHoleFromHeadMm',
  'headlapMm',
  'jointMinMm',
  'jointMaxMm',
  'eaveOverhangMm',
  'vergeOverhangMm',
  'narrowestCutMm'
] as const satisfies readonly (keyof SlateForm)[];
const SLOPE_LENGTHS = ['rafterLengthMm', 'eaveWidthMm', 'eaveHeightMm', 'ridgeGapMm'] as const;
const OPENING_LENGTHS = ['fromLeftMm', 'widthMm', 'fromEaveMm', 'heightMm'] as const;
const SIDES = ['left', 'right'] as const;

/** The ways an edge of each kind may be given; the first is what a new one starts with. */
export const WAYS_OF_EDGE: Readonly<Record<EdgeForm['kind'], readonly EdgeWay[]>> = {
  verge: ['square', 'inwards', 'outwards'],
  abutment: ['square', 'inwards', 'outwards'],
  hip: ['angle', 'inwards'],
  valley: ['angle', 'outwards']
};

/** The slate form of a stored slate, or the starting values; size and headlap start empty. */
export function slateFormOf(body: SlateSpecBody | undefined, unit: ShownUnit): SlateForm {
  const customary = slateSpec({ lengthMm: 0, widthMm: 0, headlapMm: 0 });
  const given: Partial<SlateSpecBody> = body ?? {};
  const text = (field: (typeof SLATE_LENGTHS)[number], starting?: number): string => {
    const lengthMm = given[field] ?? starting;
    return lengthMm === undefined ? '' : fieldText(lengthMm, unit);
  };
  return {
    lengthMm: text('lengthMm'),
    widthMm: text('widthMm'),
    slateAndAHalfWidthMm: text('slateAndAHalfWidthMm'),
    nailing: given.nailing ?? customary.nailing,
    headNailLineMm: text('headNailLineMm', customary.headNailLineMm),
    holeClearanceMm: text('holeClearanceMm', customary.holeClearanceMm),
    undereaveHoleFromHeadMm: text('undereaveHoleFromHeadMm', customary.undereaveHoleFromHeadMm),
    headlapMm: text('headlapMm'),
    jointMinMm: text('jointMinMm', customary.jointMinMm),
    jointMaxMm: text('jointMaxMm', customary.jointMaxMm),
    eaveOverhangMm: text('eaveOverhangMm', CUSTOMARY_OVERHANGS.eaveOverhangMm),
    vergeOverhangMm: text('vergeOverhangMm', CUSTOMARY_OVERHANGS.vergeOverhangMm),
    narrowestCutMm: text('narrowestCutMm', customary.narrowestCutMm),
    densityKgPerM3: String(given.densityKgPerM3 ?? customary.densityKgPerM3)
  };
}

/** A new slope's form: verges on both sides, all measures empty but the customary ones. */
export function blankSlopeForm(slopeId: string, name: string, unit: ShownUnit): SlopeForm {
  const customary = makeSlope({ id: '', rafterLengthMm: 0, eaveWidthMm: 0, pitchDegrees: 0 });
  return {
    slopeId,
    name,
    rafterLengthMm: '',
    eaveWidthMm: '',
    pitchDegrees: '',
    eaveHeightMm: '0',
    ridgeGapMm: fieldText(customary.ridgeGapMm, unit),
    setOutFrom: customary.setOutFrom,
    left: edgeFormOf({ kind: 'verge' }, unit),
    right: edgeFormOf({ kind: 'verge' }, unit),
    openings: []
  };
}

/** The form of a stored slope. */
export function slopeFormOf(body: SlopeBody, unit: ShownUnit): SlopeForm {
  const blank = blankSlopeForm(body.slopeId, body.name, unit);
  return {
    ...blank,
    rafterLengthMm: fieldText(body.rafterLengthMm, unit),
    eaveWidthMm: fieldText(body.eaveWidthMm, unit),
    pitchDegrees: body.pitchDegrees === null ? '' : String(body.pitchDegrees),
    eaveHeightMm: body.eaveHeightMm === 0 ? '0' : fieldText(body.eaveHeightMm, unit),
    ridgeGapMm: body.ridgeGapMm === undefined ? blank.ridgeGapMm : fieldText(body.ridgeGapMm, unit),
    setOutFrom: body.setOutFrom ?? blank.setOutFrom,
    left: edgeFormOf(body.left, unit),
    right: edgeFormOf(body.right, unit),
    openings: body.openings.map((opening) => ({
      kind: opening.kind,
      fromLeftMm: fieldText(opening.fromLeftMm, unit),
      widthMm: fieldText(opening.widthMm, unit),
      fromEaveMm: fieldText(opening.fromEaveMm, unit),
      heightMm: fieldText(opening.heightMm, unit)
    }))
  };
}

function edgeFormOf(edge: SlopeBody['left'], unit: ShownUnit): EdgeForm {
  const { kind, insetAtTopMm = 0, planAngleDegrees } = edge;
  const isAngle = planAngleDegrees !== undefined;
  const moved = insetAtTopMm < 0 ? 'outwards' : insetAtTopMm > 0 ? 'inwards' : 'square';
  return {
    kind,
    way: isAngle ? 'angle' : moved,
    insetAtTopMm: isAngle || insetAtTopMm === 0 ? '' : fieldText(Math.abs(insetAtTopMm), unit),
    planAngleDegrees: isAngle ? String(planAngleDegrees) : '45'
  };
}

/** A new, empty opening. */
export function blankOpening(kind: OpeningForm['kind']): OpeningForm {
  return { kind, fromLeftMm: '', widthMm: '', fromEaveMm: '', heightMm: '' };
}

/** A slate form's texts in another unit, lengths unchanged. */
export function retypeSlate(form: SlateForm, from: ShownUnit, to: ShownUnit): SlateForm {
  return retype(form, SLATE_LENGTHS, from, to);
}

/** A slope form's texts in another unit, lengths unchanged. */
export function retypeSlope(form: SlopeForm, from: ShownUnit, to: ShownUnit): SlopeForm {
  return {
    ...retype(form, SLOPE_LENGTHS, from, to),
    left: retype(form.left, ['insetAtTopMm'], from, to),
    right: retype(form.right, ['insetAtTopMm'], from, to),
    openings: form.openings.map((opening) => retype(opening, OPENING_LENGTHS, from, to))
  };
}

function retype<Form, Field extends keyof Form>(
  form: Form,
  fields: readonly Field[],
  from: ShownUnit,
  to: ShownUnit
): Form {
  const changed = { ...form };
  for (const field of fields)
    changed[field] = retypeLength(form[field] as string, from, to) as Form[Field];
  return changed;
}

/** Writes a text into a form by the engine's path of the field, `openings.0.widthMm`. */
export function setField(form: object, path: string, text: string): void {
  const steps = path.split('.');
  const last = steps.pop() as string;
  let target = form as Record<string, unknown>;
  for (const step of steps) target = target[step] as Record<string, unknown>;
  target[last] = text;
}

/** A form read: the body to store when nothing is wrong, else every field that cannot stand. */
export interface FormRead<Body> {
  readonly troubles: readonly FieldTrouble[];
  readonly body?: Body;
}

/** Gathers the numbers of a form; an unreadable one becomes NaN with its trouble. */
class FormReader {
  readonly troubles: FieldTrouble[] = [];
  readonly #unit: ShownUnit;

  constructor(unit: ShownUnit) {
    this.#unit = unit;
  }

  length(field: string, text: string): number {
    return this.#take(field, readLength(text, this.#unit));
  }

  number(field: string, text: string): number {
    return this.#take(field, readNumber(text));
  }

  /** The engine's problems, in place of whose "not a number" stands why it could not be read. */
  finish(problems: readonly FieldTrouble[]): FieldTrouble[] {
    const unread = new Set(this.troubles.map(({ field }) => field));
    return [...this.troubles, ...problems.filter(({ field }) => !unread.has(field))];
  }

  #take(field: string, reading: FieldReading): number {
    if (reading.ok) return reading.value;
    const { reason: code, nearest } = reading;
    this.troubles.push({ field, code, value: null, ...(nearest !== undefined && { nearest }) });
    return Number.NaN;
  }
}

/**
 * Reads the slate's form.
 *
 * @param slopes the job's slopes: a slate that does not fit one of them is refused
 */
export function readSlate(
  form: SlateForm,
  unit: ShownUnit,
  slopes: readonly SlopeBody[]
): FormRead<SlateSpecBody> {
  const reader = new FormReader(unit);
  const length = (field: (typeof SLATE_LENGTHS)[number]) => reader.length(field, form[field]);
  const isHead = form.nailing === 'head';
  const body: SlateSpecBody = {
    lengthMm: length('lengthMm'),
    widthMm: length('widthMm'),
    ...(form.slateAndAHalfWidthMm.trim() !== '' && {
      slateAndAHalfWidthMm: length('slateAndAHalfWidthMm')
    }),
    nailing: form.nailing,
    headlapMm: length('headlapMm'),
    jointMinMm: length('jointMinMm'),
    jointMaxMm: length('jointMaxMm'),
    eaveOverhangMm: length('eaveOverhangMm'),
    vergeOverhangMm: length('vergeOverhangMm'),
    ...(isHead
      ? { headNailLineMm: length('headNailLineMm') }
      : {
          holeClearanceMm: length('holeClearanceMm'),
          undereaveHoleFromHeadMm: length('undereaveHoleFromHeadMm')
        }),
    narrowestCutMm: length('narrowestCutMm'),
    densityKgPerM3: reader.number('densityKgPerM3', form.densityKgPerM3)
  };
  const spec = slateForEngine(body);
  const troubles = reader.finish([
    ...slateSpecProblems(spec).filter(
      ({ field }) => field !== 'slateAndAHalfWidthMm' || field in body
    ),
    ...overhangProblems(body)
  ]);
  if (troubles.length > 0) return { troubles };
  const misfits = roofMisfits(body, spec, slopes);
  return misfits.length > 0 ? { troubles: misfits } : { troubles, body };
}

/** The overhangs are the engine's fields of a slope: a slope that any slate fits tells of them. */
function overhangProblems(body: SlateSpecBody): FieldProblem[] {
  const { eaveOverhangMm, vergeOverhangMm } = body;
  const ample = makeSlope({
    id: 'ample',
    rafterLengthMm: 50_000,
    eaveWidthMm: 50_000,
    pitchDegrees: 45,
    eaveOverhangMm,
    vergeOverhangMm
  });
  return slopeProblems(ample, slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 }));
}

/** A slate wider or longer than a slope of the job has room for, and the largest that fits. */
function roofMisfits(
  body: SlateSpecBody,
  spec: SlateSpec,
  slopes: readonly SlopeBody[]
): FieldTrouble[] {
  const troubles = new Map<string, FieldTrouble>();
  for (const slope of slopes)
    for (const { code, value, limit } of slopeProblems(slopeForEngine(slope, body), spec)) {
      if (value === null || limit === undefined) continue;
      const field =
        code === 'narrower-than-slate' ? 'widthMm' : code === 'no-course' ? 'lengthMm' : undefined;
      if (!field) continue;
      const nearest = Math.floor(spec[field] - (limit - value));
      const other = troubles.get(field);
      if (!other || nearest < (other.nearest ?? Infinity))
        troubles.set(field, {
          field,
          code: field === 'widthMm' ? 'wider-than-roof' : 'longer-than-roof',
          value: spec[field],
          limit: nearest,
          ...(nearest > 0 && { nearest })
        });
    }
  return [...troubles.values()];
}

/**
 * Reads a slope's form and judges it with the job's slate; without a slate only what can be read is
 * judged.
 */
export function readSlope(
  form: SlopeForm,
  unit: ShownUnit,
  slate: SlateSpecBody | undefined
): FormRead<SlopeBody> {
  const reader = new FormReader(unit);
  const name = form.name.trim();
  if (name === '') reader.troubles.push({ field: 'name', code: 'name-missing', value: null });
  const length = (field: (typeof SLOPE_LENGTHS)[number]) => reader.length(field, form[field]);
  const body: SlopeBody = {
    slopeId: form.slopeId,
    name,
    rafterLengthMm: length('rafterLengthMm'),
    eaveWidthMm: length('eaveWidthMm'),
    pitchDegrees: reader.number('pitchDegrees', form.pitchDegrees),
    eaveHeightMm: length('eaveHeightMm'),
    ridgeGapMm: length('ridgeGapMm'),
    setOutFrom: form.setOutFrom,
    left: readEdge(form.left, 'left', reader),
    right: readEdge(form.right, 'right', reader),
    openings: form.openings.map((opening, index) => {
      const at = (field: (typeof OPENING_LENGTHS)[number]) =>
        reader.length(`openings.${index}.${field}`, opening[field]);
      return {
        kind: opening.kind,
        fromLeftMm: at('fromLeftMm'),
        widthMm: at('widthMm'),
        fromEaveMm: at('fromEaveMm'),
        heightMm: at('heightMm')
      };
    })
  };
  const problems = slate
    ? slopeProblems(slopeForEngine(body, slate), slateForEngine(slate)).map((problem) =>
        asTyped(problem, form)
      )
    : [];
  const troubles = reader.finish(problems);
  return troubles.length > 0 ? { troubles } : { troubles, body };
}

function readEdge(form: EdgeForm, side: 'left' | 'right', reader: FormReader): SlopeBody['left'] {
  const { kind, way } = form;
  if (way === 'square') return { kind, insetAtTopMm: 0 };
  if (way === 'angle')
    return {
      kind,
      planAngleDegrees: reader.number(`${side}.planAngleDegrees`, form.planAngleDegrees)
    };
  const movedMm = reader.length(`${side}.insetAtTopMm`, form.insetAtTopMm);
  // A minus sign would turn the edge the other way: it is refused where it was typed.
  if (movedMm < 0)
    reader.troubles.push({
      field: `${side}.insetAtTopMm`,
      code: 'too-small',
      value: movedMm,
      limit: 0,
      nearest: -movedMm
    });
  return { kind, insetAtTopMm: way === 'outwards' ? -movedMm : movedMm };
}

/** An edge that moves outwards is typed without its sign: so are its limits. */
function asTyped(problem: FieldProblem, form: SlopeForm): FieldProblem {
  const side = SIDES.find((one) => problem.field === `${one}.insetAtTopMm`);
  if (!side || form[side].way !== 'outwards') return problem;
  const { value, limit, nearest } = problem;
  return {
    ...problem,
    value: value === null ? null : -value,
    ...(limit !== undefined && { limit: -limit }),
    ...(nearest !== undefined && { nearest: -nearest })
  };
}
