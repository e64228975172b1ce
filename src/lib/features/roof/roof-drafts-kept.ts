import type { ShownUnit } from '$lib/ui';
import type { SlateForm, SlopeForm } from './roof-forms.ts';

/** What was typed on a job's roof screen and not saved. */
export interface KeptDrafts {
  readonly unit: ShownUnit;
  readonly slate?: SlateForm;
  readonly slopes: readonly SlopeForm[];
  /** The slope that was open. */
  readonly openId?: string;
}

const keyOf = (jobId: string): string => `evencourse.roof-draft.${jobId}`;

/**
 * Keeps a job's half-entered slate and slopes on this device, so that a reload or a closed browser
 * loses nothing. Where the browser keeps nothing (a private window may not) they last as long as the
 * page.
 */
export function keepDrafts(jobId: string, drafts: KeptDrafts): void {
  try {
    if (drafts.slate || drafts.slopes.length > 0)
      localStorage.setItem(keyOf(jobId), JSON.stringify(drafts));
    else localStorage.removeItem(keyOf(jobId));
  } catch {
    // Full or forbidden: what is typed stays on the screen.
  }
}

/** The drafts kept of a job; undefined where there are none or they cannot be read. */
export function keptDrafts(jobId: string): KeptDrafts | undefined {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(keyOf(jobId)) ?? 'null');
    return isDrafts(kept) ? kept : undefined;
  } catch {
    return undefined;
  }
}

function isDrafts(kept: unknown): kept is KeptDrafts {
  if (typeof kept !== 'object' || kept === null) return false;
  const { unit, slate, slopes } = kept as Partial<KeptDrafts>;
  return (
    (unit === 'mm' || unit === 'ftIn') &&
    (slate === undefined || isForm(slate, ['lengthMm', 'headlapMm', 'jointMinMm'])) &&
    Array.isArray(slopes) &&
    slopes.every(
      (slope) =>
        isForm(slope, ['slopeId', 'name', 'rafterLengthMm', 'ridgeGapMm']) &&
        isForm(slope.left, ['kind', 'way', 'insetAtTopMm']) &&
        isForm(slope.right, ['kind', 'way', 'insetAtTopMm']) &&
        Array.isArray(slope.openings)
    )
  );
}

/** Whether something has these fields as text. */
function isForm(form: unknown, fields: readonly string[]): boolean {
  return (
    typeof form === 'object' &&
    form !== null &&
    fields.every((field) => typeof (form as Record<string, unknown>)[field] === 'string')
  );
}
