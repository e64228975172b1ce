import { describe, expect, it } from 'vitest';
import type { SlopeBody } from '$lib/journal';
import { NumberWords } from '$lib/text';
import { roof as text } from '$lib/text/en/roof.ts';
import { lengthWriter } from '$lib/ui/length-words.ts';
import { exampleRoof } from '../../example/roofs/index.ts';
import {
  type SlateForm,
  type SlopeForm,
  blankOpening,
  blankSlopeForm,
  retypeSlate,
  retypeSlope,
  slateFormOf,
  slopeFormOf
} from './roof-forms.ts';
import { type FieldTrouble, readSlateForm, readSlopeForm } from './roof-reading.ts';
import { sayRoofTrouble } from './say-roof-trouble.ts';

const slateForm = (changes: Partial<SlateForm> = {}): SlateForm => ({
  ...slateFormOf(undefined, 'mm'),
  lengthMm: '500',
  widthMm: '250',
  headlapMm: '100',
  ...changes
});
const SLATE = readSlateForm(slateForm(), 'mm', []).body!;

const slopeForm = (changes: Partial<SlopeForm> = {}): SlopeForm => ({
  ...blankSlopeForm('a', 'South', 'mm'),
  rafterLengthMm: '5500',
  eaveWidthMm: '7900',
  pitchDegrees: '35',
  ...changes
});
const hip = (inset: string) =>
  ({ kind: 'hip', way: 'inwards', insetAtTopMm: inset, planAngleDegrees: '45' }) as const;

const told = (trouble: FieldTrouble, unit: 'mm' | 'ftIn' = 'mm') =>
  sayRoofTrouble(trouble, text, lengthWriter(unit, new NumberWords('en')), unit);

describe('reading the slate', () => {
  it('asks for size and headlap and nothing else of a fresh form', () => {
    const { troubles, body } = readSlateForm(slateFormOf(undefined, 'mm'), 'mm', []);
    expect(troubles.map(({ field, code }) => [field, code])).toEqual([
      ['lengthMm', 'empty'],
      ['widthMm', 'empty'],
      ['headlapMm', 'empty']
    ]);
    expect(body).toBeUndefined();
  });

  it('gives the body of a sound form; an empty slate-and-a-half is left to the engine', () => {
    expect(SLATE).toEqual({
      lengthMm: 500,
      widthMm: 250,
      nailing: 'centre',
      headlapMm: 100,
      jointMinMm: 3,
      jointMaxMm: 5,
      eaveOverhangMm: 50,
      vergeOverhangMm: 50,
      holeClearanceMm: 10,
      undereaveHoleFromHeadMm: 20,
      narrowestCutMm: 150,
      densityKgPerM3: 2800
    });
  });

  it.each([
    [{ headlapMm: '200' }, 'headlapMm', 'headlap-above-third', 167],
    [{ lengthMm: '-500' }, 'lengthMm', 'too-small', 150],
    [{ jointMaxMm: '2' }, 'jointMaxMm', 'range-reversed', 3],
    [{ slateAndAHalfWidthMm: '260' }, 'slateAndAHalfWidthMm', 'not-wider-than-slate', 313],
    [{ vergeOverhangMm: '400' }, 'vergeOverhangMm', 'too-large', 150],
    [{ lengthMm: '2,600' }, 'lengthMm', 'ambiguous', 2600],
    [{ densityKgPerM3: '28' }, 'densityKgPerM3', 'too-small', 2000]
  ] as const)(
    'refuses %o beside its field with the nearest that works',
    (changes, field, code, nearest) => {
      const { troubles } = readSlateForm(slateForm(changes), 'mm', []);
      expect(troubles).toEqual([expect.objectContaining({ field, code, nearest })]);
    }
  );

  it('refuses a slate wider or longer than a slope of the job, with the largest that fits', () => {
    const narrow: SlopeBody = {
      ...readSlopeForm(slopeForm(), 'mm', SLATE).body!,
      eaveWidthMm: 200
    };
    expect(readSlateForm(slateForm({ widthMm: '400' }), 'mm', [narrow]).troubles).toEqual([
      expect.objectContaining({ field: 'widthMm', code: 'wider-than-roof', nearest: 300 })
    ]);
    const short: SlopeBody = { ...narrow, eaveWidthMm: 7900, rafterLengthMm: 500 };
    const long = readSlateForm(slateForm({ lengthMm: '600' }), 'mm', [narrow, short]).troubles;
    expect(long).toEqual([
      expect.objectContaining({ field: 'lengthMm', code: 'longer-than-roof', nearest: 525 })
    ]);
    expect(readSlateForm(slateForm({ lengthMm: '525' }), 'mm', [short]).troubles).toEqual([]);
  });
});

describe('reading a slope', () => {
  it('asks whether metres were meant where millimetres would be far too few', () => {
    const [trouble] = readSlopeForm(slopeForm({ rafterLengthMm: '4.5' }), 'mm', SLATE).troubles;
    expect(told(trouble)).toEqual({
      sentence: '4.5 mm is too small. If you mean 4.5 metres, the field wants millimetres.',
      mend: { label: 'Use 4,500 mm', text: '4500' }
    });
    const [tiny] = readSlopeForm(slopeForm({ rafterLengthMm: '0.3' }), 'mm', SLATE).troubles;
    expect(told(tiny).sentence).not.toContain('metres');
  });

  it('a fresh slope asks for its three measures', () => {
    const { troubles } = readSlopeForm(blankSlopeForm('a', '', 'mm'), 'mm', SLATE);
    expect(troubles.map(({ field }) => field)).toEqual([
      'name',
      'rafterLengthMm',
      'eaveWidthMm',
      'pitchDegrees'
    ]);
  });

  it.each([
    [{ rafterLengthMm: '300' }, 'rafterLengthMm', 'no-course', 475],
    [{ rafterLengthMm: '-5' }, 'rafterLengthMm', 'no-course', 475],
    [{ eaveWidthMm: '100' }, 'eaveWidthMm', 'narrower-than-slate', 150],
    [{ eaveWidthMm: '1000000' }, 'eaveWidthMm', 'too-large', 100_000],
    [{ pitchDegrees: '95' }, 'pitchDegrees', 'too-large', 90],
    [{ left: hip('9000') }, 'left.insetAtTopMm', 'closes-before-ridge', 7900],
    [{ left: hip('-9') }, 'left.insetAtTopMm', 'too-small', 9]
  ] as const)('refuses %o with the nearest that works', (changes, field, code, nearest) => {
    const { troubles } = readSlopeForm(slopeForm(changes), 'mm', SLATE);
    expect(troubles).toEqual([expect.objectContaining({ field, code, nearest })]);
  });

  it('what the nearest value replaces is a slope that stands', () => {
    for (const [changes, key] of [
      [{ rafterLengthMm: '300' }, 'rafterLengthMm'],
      [{ eaveWidthMm: '100' }, 'eaveWidthMm']
    ] as const) {
      const form = slopeForm(changes);
      const mend = told(readSlopeForm(form, 'mm', SLATE).troubles[0]).mend!;
      expect(readSlopeForm({ ...form, [key]: mend.text }, 'mm', SLATE).troubles).toEqual([]);
    }
  });

  it('types a valley without a sign and stores it outwards', () => {
    const valley = {
      kind: 'valley',
      way: 'outwards',
      insetAtTopMm: '2000',
      planAngleDegrees: ''
    } as const;
    const { body } = readSlopeForm(slopeForm({ right: valley }), 'mm', SLATE);
    expect(body?.right).toEqual({ kind: 'valley', insetAtTopMm: -2000 });
    expect(slopeFormOf(body!, 'mm').right).toMatchObject({ way: 'outwards', insetAtTopMm: '2000' });
    const far = readSlopeForm(
      slopeForm({ right: { ...valley, insetAtTopMm: '500000' } }),
      'mm',
      SLATE
    );
    expect(far.troubles).toEqual([
      expect.objectContaining({ field: 'right.insetAtTopMm', value: 500_000, nearest: 100_000 })
    ]);
  });

  it('tells every empty field of an opening, then an opening outside the slope', () => {
    const empty = readSlopeForm(slopeForm({ openings: [blankOpening('chimney')] }), 'mm', SLATE);
    expect(empty.troubles.map(({ field }) => field)).toEqual([
      'openings.0.fromLeftMm',
      'openings.0.widthMm',
      'openings.0.fromEaveMm',
      'openings.0.heightMm'
    ]);
    const high = {
      kind: 'rooflight',
      fromLeftMm: '100',
      widthMm: '800',
      fromEaveMm: '5000',
      heightMm: '900'
    } as const;
    expect(readSlopeForm(slopeForm({ openings: [high] }), 'mm', SLATE).troubles).toEqual([
      expect.objectContaining({ field: 'openings.0.heightMm', code: 'outside-slope', nearest: 500 })
    ]);
  });

  it('without a slate judges only what can be read', () => {
    expect(readSlopeForm(slopeForm({ rafterLengthMm: '300' }), 'mm', undefined).troubles).toEqual(
      []
    );
    expect(
      readSlopeForm(slopeForm({ rafterLengthMm: 'x' }), 'mm', undefined).troubles
    ).toHaveLength(1);
  });
});

describe('forms and bodies', () => {
  it.each(['gable', 'hipped', 'l-with-valley', 'gable-with-rooflight'])(
    'every slope and the slate of the invented roof %s come back through their forms, in either unit',
    (roofId) => {
      let next = 0;
      const acts = exampleRoof(roofId, () => `s${next++}`);
      const [first, ...slopes] = acts;
      if (first.type !== 'slateSpecSet') throw new Error(first.type);
      for (const unit of ['mm', 'ftIn'] as const) {
        const slate = readSlateForm(slateFormOf(first.body, unit), unit, []);
        expect(slate.troubles).toEqual([]);
        expect(slate.body).toMatchObject(first.body);
        for (const act of slopes) {
          if (act.type !== 'slopeSet') throw new Error(act.type);
          const read = readSlopeForm(slopeFormOf(act.body, unit), unit, slate.body);
          expect(read.troubles).toEqual([]);
          expect(read.body).toMatchObject(act.body);
        }
      }
    }
  );

  it('a change of unit and back leaves every length as it was', () => {
    const slope = slopeForm({ left: hip('2000'), openings: [blankOpening('chimney')] });
    const there = retypeSlope(slope, 'mm', 'ftIn');
    expect(retypeSlope(there, 'ftIn', 'mm')).toEqual(slope);
    const slate = slateForm();
    expect(retypeSlate(retypeSlate(slate, 'mm', 'ftIn'), 'ftIn', 'mm')).toEqual(slate);
  });
});

describe('saying what is wrong', () => {
  it('names the limit and offers it as it is typed', () => {
    const [trouble] = readSlateForm(slateForm({ headlapMm: '200' }), 'mm', []).troubles;
    expect(told(trouble)).toEqual({
      sentence: 'The headlap is more than a third of the slate. At most 167 mm works.',
      mend: { label: 'Use 167 mm', text: '167' }
    });
  });

  it('says that a measure below zero is one', () => {
    const [trouble] = readSlopeForm(slopeForm({ rafterLengthMm: '-5' }), 'mm', SLATE).troubles;
    expect(told(trouble).sentence).toMatch(/cannot be below zero/);
  });

  it('in feet and inches offers a whole sixteenth on the side that works', () => {
    const [trouble] = readSlateForm(slateForm({ headlapMm: '200' }), 'mm', []).troubles;
    const { mend } = told(trouble, 'ftIn');
    expect(mend?.text).toBe('6 9/16″'); // 166.69 mm; 6 5/8″ would be 168.3 mm, too much
    const [short] = readSlopeForm(slopeForm({ rafterLengthMm: '300' }), 'mm', SLATE).troubles;
    expect(told(short, 'ftIn').mend?.text).toBe('1′ 6 3/4″'); // 476.25 mm, just above 475
  });

  it('writes pitches in degrees and density in kg/m³', () => {
    const [pitch] = readSlopeForm(slopeForm({ pitchDegrees: '95' }), 'mm', SLATE).troubles;
    expect(told(pitch).mend).toEqual({ label: 'Use 90°', text: '90' });
    const [density] = readSlateForm(slateForm({ densityKgPerM3: '28' }), 'mm', []).troubles;
    expect(told(density).mend).toEqual({ label: 'Use 2000 kg/m³', text: '2000' });
  });
});
