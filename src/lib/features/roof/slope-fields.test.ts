import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type SlopeInput, makeSlope } from '$lib/engine/roof';
import { BODIES, type SlopeBody } from '$lib/journal';
import {
  SLOPE_FIELDS,
  SLOPE_FIELD_NAMES,
  type SlopeField,
  choicesOf,
  slopeBody,
  slopeForEngine
} from '$lib/job';
import { roof } from '$lib/text/en/roof.ts';
import { keptDrafts } from './roof-drafts-kept.ts';
import { blankSlopeForm, retypeSlope, slopeFormOf } from './roof-forms.ts';
import { readSlopeForm } from './roof-reading.ts';

/** Beside the table: who the slope is, and the parts that have fields of their own. */
const PARTS = ['slopeId', 'name', 'left', 'right', 'openings'];
/** Two values of every field, neither of them customary. */
const VALUES: Readonly<Record<SlopeField, readonly [number | string, number | string]>> = {
  rafterLengthMm: [5200, 4800],
  eaveWidthMm: [8000, 6000],
  pitchDegrees: [35, 42.5],
  eaveHeightMm: [300, 2400],
  ridgeGapMm: [40, 60],
  setOutFrom: ['right', 'right'],
  rafterLeftMm: [5190, 4810],
  rafterRightMm: [5205, 4790],
  ridgeWidthMm: [8012, 5990],
  diagonalMm: [9550, 7680]
};
const OVERHANGS = { eaveOverhangMm: 45, vergeOverhangMm: 60 };

function slope(at: 0 | 1 = 0): SlopeInput {
  const measures = Object.fromEntries(SLOPE_FIELD_NAMES.map((field) => [field, VALUES[field][at]]));
  const opening = { fromLeftMm: 2000, widthMm: 600, fromEaveMm: 2500, heightMm: 900 };
  return {
    ...(measures as unknown as SlopeInput),
    ...{ id: 'south', name: 'South', ...OVERHANGS },
    openings: [{ kind: 'chimney', ...opening }]
  };
}

describe("the table of a slope's fields", () => {
  it('has every field that the journal stores of a slope, and no other', () => {
    const stored = Object.keys(BODIES.slopeSet.entries).filter((name) => !PARTS.includes(name));
    expect([...SLOPE_FIELD_NAMES].sort()).toEqual(stored.sort());
  });

  it('has every field that the engine takes of a slope; the slate brings its overhangs', () => {
    const taken = Object.keys(makeSlope(slope())).filter(
      (name) => ![...PARTS, 'id', ...Object.keys(OVERHANGS)].includes(name)
    );
    expect([...SLOPE_FIELD_NAMES].sort()).toEqual(taken.sort());
  });

  it('an example comes to the engine with every field that it names', () => {
    expect(slopeForEngine(slopeBody(slope(), 'south'), OVERHANGS)).toEqual(makeSlope(slope()));
  });

  it.each(SLOPE_FIELD_NAMES)('%s comes back through form, units and reading', (field) => {
    const stored = slopeBody(slope(), 'south');
    for (const unit of ['mm', 'ftIn'] as const) {
      const other = unit === 'mm' ? 'ftIn' : 'mm';
      const form = slopeFormOf(stored, unit);
      expect(readSlopeForm(form, unit, undefined).body).toEqual(stored);
      const there = retypeSlope(form, unit, other);
      expect(readSlopeForm(there, other, undefined).body).toEqual(stored);
    }
    const typed = slopeFormOf(slopeBody(slope(1), 'south'), 'mm');
    const form = { ...slopeFormOf(stored, 'mm'), [field]: typed[field] };
    const [, value] = VALUES[field];
    expect(readSlopeForm(form, 'mm', undefined).body).toEqual({ ...stored, [field]: value });
  });

  it.each(SLOPE_FIELD_NAMES)('%s left out of an old event has the customary value', (field) => {
    const old = { ...slopeBody(slope(), 'south'), [field]: undefined } as unknown as SlopeBody;
    const form = slopeFormOf(old, 'mm');
    expect(form[field]).toBe(blankSlopeForm('south', '', 'mm')[field]);
    expect(form[field] === '').toBe(SLOPE_FIELDS[field].isGiven);
  });

  it.each(SLOPE_FIELD_NAMES)('%s has its words, as has each of its choices', (field) => {
    const text = roof.slope;
    expect(text[field]).toMatch(/\w/);
    for (const choice of choicesOf(field) ?? [])
      expect(Object.keys(text.choices), field).toContain(choice);
  });
});

describe('a draft kept by another version', () => {
  let kept: string | null = null;
  beforeEach(() => vi.stubGlobal('localStorage', { getItem: () => kept }));
  afterEach(() => vi.unstubAllGlobals());

  it.each(SLOPE_FIELD_NAMES.flatMap((field) => [undefined, 7, 'odd'].map((odd) => [field, odd])))(
    'that holds for %s the value %s starts that field anew, or shows it as typed',
    (name, odd) => {
      const field = name as SlopeField;
      const typed = slopeFormOf(slopeBody(slope(), 'south'), 'mm');
      kept = JSON.stringify({ unit: 'mm', slopes: [{ ...typed, [field]: odd }] });
      const [form] = keptDrafts('one')?.slopes ?? [];
      const isShown = odd === 'odd' && !choicesOf(field);
      const expected = isShown ? odd : blankSlopeForm('', '', 'mm')[field];
      expect(form).toEqual({ ...typed, [field]: expected });
      const { body, troubles } = readSlopeForm(form, 'mm', undefined);
      const isRead = !isShown && !SLOPE_FIELDS[field].isGiven;
      expect(body !== undefined).toBe(isRead);
      expect(troubles.map((trouble) => trouble.field)).toEqual(isRead ? [] : [field]);
      expect(retypeSlope(form, 'mm', 'ftIn').name).toBe('South');
    }
  );
});
