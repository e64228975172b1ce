/** What is typed and measured for a quick split, as this device keeps it. */
export interface QuickDraft {
  readonly stage: 'numbers' | 'measure' | 'answer';
  readonly knows: 'courses' | 'size';
  readonly fields: Readonly<Record<QuickField, string>>;
  readonly readingsMm: readonly number[];
}

export const QUICK_FIELDS = [
  'slates',
  'courses',
  'rafterMm',
  'widthMm',
  'slateLengthMm',
  'slateWidthMm',
  'headlapMm'
] as const;
export type QuickField = (typeof QUICK_FIELDS)[number];

/** Nothing typed but a customary headlap; ours, no source: local codes and the slate decide. */
export const EMPTY_DRAFT: QuickDraft = {
  stage: 'numbers',
  knows: 'courses',
  fields: {
    slates: '',
    courses: '',
    rafterMm: '',
    widthMm: '',
    slateLengthMm: '500',
    slateWidthMm: '250',
    headlapMm: '90'
  },
  readingsMm: []
};

const KEY = 'evencourse.quick';

/** Keeps the draft on this device; where the browser keeps nothing it lasts as long as the page. */
export function keepDraft(draft: QuickDraft): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(draft));
  } catch {
    // Full or forbidden: it stays on the screen.
  }
}

/** The draft as kept; an empty one where there is none or it cannot be read. */
export function keptDraft(): QuickDraft {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? 'null') as Partial<QuickDraft> | null;
    if (!kept || typeof kept !== 'object') return EMPTY_DRAFT;
    const readings = Array.isArray(kept.readingsMm) ? kept.readingsMm : [];
    const isReading = (mm: unknown): boolean => typeof mm === 'number' && mm >= 1.5 && mm <= 40;
    const fields = { ...EMPTY_DRAFT.fields };
    for (const field of QUICK_FIELDS) {
      const typed: unknown = kept.fields?.[field];
      if (typeof typed === 'string') fields[field] = typed;
    }
    return {
      stage: kept.stage === 'measure' || kept.stage === 'answer' ? kept.stage : 'numbers',
      knows: kept.knows === 'size' ? 'size' : 'courses',
      fields,
      readingsMm: readings.every(isReading) ? readings : []
    };
  } catch {
    return EMPTY_DRAFT;
  }
}
