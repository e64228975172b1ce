import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { FormDraft } from './roof-draft.svelte.ts';
import { type KeptDrafts, keepDrafts, keptDrafts } from './roof-drafts-kept.ts';
import { blankSlopeForm, retypeSlope, slateFormOf } from './roof-forms.ts';
import { type FieldTrouble, readSlopeForm } from './roof-reading.ts';

const empty: FieldTrouble = { field: 'widthMm', code: 'empty', value: null };
const small: FieldTrouble = { field: 'lengthMm', code: 'too-small', value: 5, limit: 150 };

describe('a form being filled in', () => {
  it('does not blame an empty field before somebody asks to save', () => {
    const draft = new FormDraft({ lengthMm: '', widthMm: '' });
    expect(draft.told([empty])).toEqual([]);
    draft.ask();
    expect(draft.told([empty])).toEqual([empty]);
  });

  it('does not blame a field while it is being typed in, nor others because of it', () => {
    const draft = new FormDraft({ lengthMm: '', widthMm: '' });
    draft.type('lengthMm', []);
    const other: FieldTrouble = { field: 'headlapMm', code: 'headlap-above-third', value: 100 };
    expect(draft.told([small, other])).toEqual([]);
    draft.settle();
    expect(draft.told([small, other])).toEqual([small, other]);
    draft.type('lengthMm', [small, other]);
    expect(draft.told([small, other])).toEqual([other]);
  });

  it('follows what is stored unless it holds changes of its own', () => {
    const draft = new FormDraft({ lengthMm: '500' });
    draft.follow({ lengthMm: '450' });
    expect(draft.form.lengthMm).toBe('450');
    draft.form.lengthMm = '400';
    expect(draft.isChanged).toBe(true);
    draft.follow({ lengthMm: '350' });
    expect(draft.form.lengthMm).toBe('400');
    draft.discard();
    expect(draft.form.lengthMm).toBe('350');
    expect(draft.isChanged).toBe(false);
  });

  it('reads as stored once it is, however it was typed', () => {
    const draft = new FormDraft({ lengthMm: '' });
    draft.form.lengthMm = '20 in';
    draft.stored({ lengthMm: '508' });
    expect(draft.form.lengthMm).toBe('508');
    expect(draft.isChanged).toBe(false);
  });
});

describe('drafts kept on the device', () => {
  const kept = new Map<string, string>();
  beforeEach(() => {
    kept.clear();
    vi.stubGlobal('localStorage', {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => void kept.set(key, value),
      removeItem: (key: string) => void kept.delete(key)
    });
  });
  afterEach(() => vi.unstubAllGlobals());

  const drafts: KeptDrafts = {
    unit: 'mm',
    slate: slateFormOf(undefined, 'mm'),
    slopes: [blankSlopeForm('a', 'South', 'mm')],
    openId: 'a'
  };

  it('come back as they were, by job', () => {
    keepDrafts('one', drafts);
    expect(keptDrafts('one')).toEqual(drafts);
    expect(keptDrafts('other')).toBeUndefined();
  });

  it('go once nothing is unsaved', () => {
    keepDrafts('one', drafts);
    keepDrafts('one', { unit: 'mm', slopes: [] });
    expect(kept.size).toBe(0);
  });

  it.each([
    '',
    'null',
    '{',
    '{"unit":"mm"}',
    '{"unit":"mm","slopes":[{}]}',
    '[]',
    '{"unit":"cm","slopes":[]}'
  ])('count as none where %s stands', (text) => {
    kept.set('evencourse.roof-draft.one', text);
    expect(keptDrafts('one')).toBeUndefined();
  });

  it('of an earlier version, without a field that came since, keep what was typed', () => {
    const fields = Object.keys(blankSlopeForm('a', '', 'mm')).filter((name) => name !== 'slopeId');
    for (const field of fields) {
      const slope: Record<string, unknown> = {
        ...blankSlopeForm('a', 'South', 'mm'),
        eaveWidthMm: '6000',
        left: { kind: 'hip' }
      };
      delete slope[field];
      kept.set('evencourse.roof-draft.one', JSON.stringify({ unit: 'mm', slopes: [slope] }));
      const [form] = keptDrafts('one')?.slopes ?? [];
      if (field !== 'eaveWidthMm') expect(form.eaveWidthMm, field).toBe('6000');
      if (field !== 'left') expect(form.left.kind, field).toBe('hip');
      expect(() => readSlopeForm(form, 'mm', undefined), field).not.toThrow();
      expect(retypeSlope(form, 'mm', 'ftIn').eaveWidthMm, field).toBeTypeOf('string');
    }
    const opening = { kind: 'chimney', widthMm: '600' };
    const slope = { ...blankSlopeForm('a', 'South', 'mm'), openings: [opening] };
    const slate = { lengthMm: '500' };
    kept.set('evencourse.roof-draft.one', JSON.stringify({ unit: 'mm', slate, slopes: [slope] }));
    const drafts = keptDrafts('one');
    expect(drafts?.slopes[0].openings[0]).toMatchObject({ ...opening, heightMm: '' });
    expect(drafts?.slate).toEqual({ ...slateFormOf(undefined, 'mm'), lengthMm: '500' });
  });

  it('last as long as the page where the browser keeps nothing', () => {
    vi.stubGlobal('localStorage', {
      getItem: () => {
        throw new Error('denied');
      },
      setItem: () => {
        throw new Error('full');
      },
      removeItem: () => undefined
    });
    expect(() => keepDrafts('one', drafts)).not.toThrow();
    expect(keptDrafts('one')).toBeUndefined();
  });
});
