/** A measured pace this far from the entered one, as a share of it, is told beside it. Ours. */
const WORTH_TELLING = 0.1;

/** The pace that hours and cost of sorting rest on, in slates an hour. */
export interface SortingPace {
  readonly perHour: number;
  readonly isEntered: boolean;
  /** The pace measured on the job, where it differs from the entered one by more than a tenth. */
  readonly measuredPerHour?: number;
}

/**
 * The pace to reckon with: the entered one, else the measured one.
 *
 * @param entered slates an hour, null or 0 where none is entered
 * @param measured slates an hour, null where there is not enough to tell
 * @returns undefined where there is neither
 * @example sortingPace(600, 356) // 600 as entered, 356 as measured
 */
export function sortingPace(
  entered: number | null,
  measured: number | null
): SortingPace | undefined {
  if (!entered) return measured ? { perHour: measured, isEntered: false } : undefined;
  const differs = measured !== null && Math.abs(measured - entered) > entered * WORTH_TELLING;
  return {
    perHour: entered,
    isEntered: true,
    ...(differs && measured > 0 && { measuredPerHour: measured })
  };
}
