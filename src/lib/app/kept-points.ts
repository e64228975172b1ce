/** Points of a slate measured so far, and a reading that waits for its repeat, mm. */
export interface KeptPoints {
  readonly pointsMm: readonly number[];
  readonly waitingMm: number | null;
}

const keyOf = (place: string): string => `evencourse.points.${place}`;

/**
 * Keeps the points of a slate in hand on this device, so that leaving the page loses none; undefined
 * drops them. Where the browser keeps nothing they last as long as the page.
 *
 * @param place what the slate belongs to: a job
 */
export function keepPoints(place: string, points: KeptPoints | undefined): void {
  try {
    if (points) localStorage.setItem(keyOf(place), JSON.stringify(points));
    else localStorage.removeItem(keyOf(place));
  } catch {
    // Full or forbidden: the points stay on the screen.
  }
}

/** The points kept of a slate; undefined where there are none or they cannot be read. */
export function keptPoints(place: string): KeptPoints | undefined {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(keyOf(place)) ?? 'null');
    return isKeptPoints(kept) ? kept : undefined;
  } catch {
    return undefined;
  }
}

/** Whether what was kept can be read as points of a slate. */
export function isKeptPoints(kept: unknown): kept is KeptPoints {
  if (typeof kept !== 'object' || kept === null) return false;
  const { pointsMm, waitingMm } = kept as Partial<KeptPoints>;
  const isReading = (mm: unknown): boolean => typeof mm === 'number' && mm >= 1.5 && mm <= 40;
  return (
    Array.isArray(pointsMm) &&
    pointsMm.length <= 3 &&
    pointsMm.every(isReading) &&
    (waitingMm === null || isReading(waitingMm))
  );
}
