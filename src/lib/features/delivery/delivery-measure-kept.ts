import { type KeptPoints, isKeptPoints } from '$lib/app';
import type { GaugedSlate } from '$lib/gauge';
import { SET_ASIDE_REASONS, type SetAsideReason } from '$lib/journal';

/** The slate of the sample in hand: gauged, in part or to the end, or marked, and not saved yet. */
export interface KeptSlate {
  /** The key of its place on the list. */
  readonly place: string;
  readonly gauged?: GaugedSlate;
  /** The points read so far of one that is not gauged to the end. */
  readonly begun?: KeptPoints;
  /** What was typed into the fields of its size. */
  readonly fields: Readonly<Record<string, string>>;
  readonly ring?: 'clear' | 'dull';
  readonly defects?: readonly SetAsideReason[];
  /** Whether it is on the list already and gets its sizes. */
  readonly isAgain?: boolean;
  /** Whether it is measured left and right; left out by older releases, which kept `rocks` then. */
  readonly isSides?: boolean;
  /** Whether it rocks on a flat board; undefined where it was not tried. */
  readonly rocks?: boolean;
}

const keyOf = (jobId: string): string => `evencourse.slate-in-hand.${jobId}`;

/**
 * Keeps a job's slate in hand on this device, so that leaving the page loses nothing; undefined
 * drops it. Where the browser keeps nothing it lasts as long as the page.
 */
export function keepSlate(jobId: string, slate: KeptSlate | undefined): void {
  try {
    if (slate) localStorage.setItem(keyOf(jobId), JSON.stringify(slate));
    else localStorage.removeItem(keyOf(jobId));
  } catch {
    // Full or forbidden: the slate stays on the screen.
  }
}

/** The slate kept of a job; undefined where there is none or it cannot be read. */
export function keptSlate(jobId: string): KeptSlate | undefined {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(keyOf(jobId)) ?? 'null');
    return isSlate(kept) ? kept : undefined;
  } catch {
    return undefined;
  }
}

function isSlate(kept: unknown): kept is KeptSlate {
  if (typeof kept !== 'object' || kept === null) return false;
  const { place, gauged, begun, fields } = kept as Partial<KeptSlate>;
  const { ring, defects, rocks, isSides, isAgain } = kept as Partial<KeptSlate>;
  const isNumber = (value: unknown): boolean => typeof value === 'number' && Number.isFinite(value);
  return (
    typeof place === 'string' &&
    (gauged === undefined ||
      (Array.isArray(gauged.pointsMm) &&
        gauged.pointsMm.length > 0 &&
        [...gauged.pointsMm, gauged.thicknessMm, gauged.taperMm].every(isNumber))) &&
    (begun === undefined || isKeptPoints(begun)) &&
    typeof fields === 'object' &&
    Object.values(fields).every((text) => typeof text === 'string') &&
    [rocks, isSides, isAgain].every((flag) => flag === undefined || typeof flag === 'boolean') &&
    (ring === undefined || ring === 'clear' || ring === 'dull') &&
    (defects === undefined ||
      (Array.isArray(defects) && defects.every((each) => SET_ASIDE_REASONS.includes(each))))
  );
}
