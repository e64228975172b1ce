import type { RoofLayout } from '$lib/engine/roof';
import type { RoofOfJob } from './roof-of.ts';

/**
 * A roof on its way from a worker: each slope as a text of its own, which a page reads when it has
 * time. A copy of the whole would be read in one long task.
 */
export interface RoofAsText {
  readonly whole: Omit<RoofLayout, 'slopes'> | Exclude<RoofOfJob, RoofLayout>;
  /** JSON, in the order of the slopes. */
  readonly slopes: readonly string[];
}

/** A roof as it is handed over. */
export function roofAsText(roof: RoofOfJob): RoofAsText {
  if (!roof.ok) return { whole: roof, slopes: [] };
  const { slopes, ...whole } = roof;
  return { whole, slopes: slopes.map((slope) => JSON.stringify(slope)) };
}

/**
 * The roof that was handed over, not frozen.
 *
 * @param pause waited for between two slopes
 */
export async function readRoof(
  { whole, slopes }: RoofAsText,
  pause: () => Promise<void>
): Promise<RoofOfJob> {
  if (!whole.ok) return whole;
  const read: RoofLayout['slopes'][number][] = [];
  for (const slope of slopes) {
    await pause();
    read.push(JSON.parse(slope) as RoofLayout['slopes'][number]);
  }
  return { ...whole, slopes: read };
}
