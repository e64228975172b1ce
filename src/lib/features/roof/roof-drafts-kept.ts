import { SLOPE_FIELD_NAMES, choicesOf } from '$lib/job';
import type { ShownUnit } from '$lib/ui';
import {
  type SlateForm,
  type SlopeForm,
  blankOpening,
  blankSlopeForm,
  slateFormOf
} from './roof-forms.ts';

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

/**
 * The drafts kept of a job; undefined where there are none or they cannot be read. A field that an
 * earlier version did not know, or that is no text, starts as in a new form; the others stay as typed.
 */
export function keptDrafts(jobId: string): KeptDrafts | undefined {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(keyOf(jobId)) ?? 'null');
    return draftsIn(kept);
  } catch {
    return undefined;
  }
}

function draftsIn(kept: unknown): KeptDrafts | undefined {
  if (!isRecord(kept) || !Array.isArray(kept.slopes)) return undefined;
  const { unit, slate, slopes, openId } = kept;
  if (unit !== 'mm' && unit !== 'ftIn') return undefined;
  const forms = slopes.map((slope) => slopeIn(slope, unit));
  if (!forms.every((form) => form !== undefined)) return undefined;
  return {
    unit,
    ...(isRecord(slate) && { slate: completed(slate, slateFormOf(undefined, unit)) }),
    slopes: forms,
    ...(typeof openId === 'string' && { openId })
  };
}

function slopeIn(slope: unknown, unit: ShownUnit): SlopeForm | undefined {
  if (!isRecord(slope) || typeof slope.slopeId !== 'string') return undefined;
  const blank = blankSlopeForm(slope.slopeId, '', unit);
  const openings = (Array.isArray(slope.openings) ? slope.openings : []).filter(isRecord);
  return {
    ...completed(withoutOddChoices(slope), blank),
    left: completed(slope.left, blank.left),
    right: completed(slope.right, blank.right),
    openings: openings.map((opening) => completed(opening, blankOpening('rooflight')))
  };
}

/** Without a word that its field does not offer, which an edited or later draft may hold. */
function withoutOddChoices(slope: Record<string, unknown>): Record<string, unknown> {
  const odd = SLOPE_FIELD_NAMES.filter((field) => {
    const choices = choicesOf(field);
    return choices && !choices.includes(String(slope[field]));
  });
  return Object.fromEntries(Object.entries(slope).filter(([name]) => !odd.some((o) => o === name)));
}

/** A form with the texts of a kept one where it has them. */
function completed<Form extends object>(kept: unknown, blank: Form): Form {
  const texts = isRecord(kept) ? kept : {};
  return Object.fromEntries(
    Object.entries(blank).map(([field, value]) => {
      const isText = Object.hasOwn(texts, field) && typeof texts[field] === typeof value;
      return [field, isText ? texts[field] : value];
    })
  ) as Form;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
