import {
  type FieldProblem,
  type FieldProblemCode,
  type SlateSpec,
  makeSlope,
  slateSpec,
  slateSpecProblems,
  slopeProblems
} from '$lib/engine/roof';
import type { SlateSpecBody, SlopeBody } from '$lib/journal';
import {
  SLOPE_FIELDS,
  type SlopeField,
  eachSlopeField,
  slateForEngine,
  slopeForEngine
} from '$lib/job';
import { type FieldReading, type ShownUnit, readLength, readNumber } from '$lib/ui';
import type {
  EdgeForm,
  OPENING_LENGTHS,
  SLATE_LENGTHS,
  SlateForm,
  SlopeForm
} from './roof-forms.ts';

/** One field that cannot stand: as the engine found it, or unreadable as typed. */
export interface FieldTrouble extends Omit<FieldProblem, 'code'> {
  readonly code:
    | FieldProblemCode
    | Exclude<FieldReading, { ok: true }>['reason']
    | 'name-missing'
    | 'wider-than-roof'
    | 'longer-than-roof';
}

const SIDES = ['left', 'right'] as const;

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
export function readSlateForm(
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
export function readSlopeForm(
  form: SlopeForm,
  unit: ShownUnit,
  slate: SlateSpecBody | undefined
): FormRead<SlopeBody> {
  const reader = new FormReader(unit);
  const name = form.name.trim();
  if (name === '') reader.troubles.push({ field: 'name', code: 'name-missing', value: null });
  const measures = eachSlopeField((field) => {
    const { kind } = SLOPE_FIELDS[field];
    return kind === 'choice' ? form[field] : reader[kind](field, form[field]);
  });
  const body: SlopeBody = {
    slopeId: form.slopeId,
    name,
    ...(measures as Pick<SlopeBody, SlopeField>),
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
