import type { BodyOf } from '$lib/journal';

/** A form of many texts, and choices in records of their own. */
interface TypedOrder {
  texture: NonNullable<BodyOf<'deliveryDeclared'>['texture']>;
}

const TEXTURES: readonly string[] = ['verySmooth', 'smooth', 'normal', 'textured'];

const keyOf = (jobId: string): string => `evencourse.order-draft.${jobId}`;

/**
 * Keeps a job's order as typed on this device until it is saved; undefined drops it. Where the browser
 * keeps nothing it lasts as long as the page.
 */
export function keepOrder(jobId: string, form: TypedOrder | undefined): void {
  try {
    if (form) localStorage.setItem(keyOf(jobId), JSON.stringify(form));
    else localStorage.removeItem(keyOf(jobId));
  } catch {
    // Full or forbidden: what is typed stays on the screen.
  }
}

/**
 * The order as it was typed and not saved; undefined where there is none. A field that is unknown or
 * of another kind reads as stored.
 */
export function keptOrder<Form extends TypedOrder>(jobId: string, stored: Form): Form | undefined {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(keyOf(jobId)) ?? 'null');
    if (!isRecord(kept)) return undefined;
    const form = completed(kept, stored);
    return TEXTURES.includes(form.texture) ? form : { ...form, texture: stored.texture };
  } catch {
    return undefined;
  }
}

function completed<Form extends object>(kept: Record<string, unknown>, stored: Form): Form {
  return Object.fromEntries(
    Object.entries(stored).map(([field, value]: [string, unknown]) => {
      const typed = Object.hasOwn(kept, field) ? kept[field] : undefined;
      if (isRecord(value)) return [field, isRecord(typed) ? completed(typed, value) : value];
      return [field, typeof typed === typeof value ? typed : value];
    })
  ) as Form;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
