import { slateSpec } from '$lib/engine/roof';
import type { SlateSpecBody, SlopeBody } from '$lib/journal';
import {
  CUSTOMARY_OVERHANGS,
  SLOPE_FIELDS,
  SLOPE_FIELD_NAMES,
  type SlopeField,
  type SlopeTexts,
  customaryOf,
  eachSlopeField
} from '$lib/job';
import { type ShownUnit, fieldText, retypeLength } from '$lib/ui';

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

/** A slope as typed: the fields of the table, its name, edges and openings. */
export interface SlopeForm extends SlopeTexts {
  slopeId: string;
  name: string;
  left: EdgeForm;
  right: EdgeForm;
  openings: OpeningForm[];
}

/** Fields of the slate that are lengths. */
export const SLATE_LENGTHS = [
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
/** Fields of a slope itself that are lengths. */
const SLOPE_LENGTHS = SLOPE_FIELD_NAMES.filter((field) => SLOPE_FIELDS[field].kind === 'length');
/** Fields of an opening, all lengths. */
export const OPENING_LENGTHS = ['fromLeftMm', 'widthMm', 'fromEaveMm', 'heightMm'] as const;

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
  return {
    slopeId,
    name,
    ...slopeTexts({}, unit),
    left: edgeFormOf({ kind: 'verge' }, unit),
    right: edgeFormOf({ kind: 'verge' }, unit),
    openings: []
  };
}

/** The form of a stored slope. */
export function slopeFormOf(body: SlopeBody, unit: ShownUnit): SlopeForm {
  return {
    slopeId: body.slopeId,
    name: body.name,
    ...slopeTexts(body, unit),
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

/** Every field of the table as text; one that is not given starts with its customary value. */
function slopeTexts(given: Partial<SlopeBody>, unit: ShownUnit): SlopeTexts {
  const text = (field: SlopeField): string => {
    const value = given[field] === undefined ? customaryOf(field) : given[field];
    if (value === undefined || value === null) return '';
    const isLength = SLOPE_FIELDS[field].kind === 'length' && value !== 0;
    return isLength ? fieldText(Number(value), unit) : String(value);
  };
  return eachSlopeField(text) as SlopeTexts;
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
