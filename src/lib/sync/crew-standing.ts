import type { DeviceNumbers } from '$lib/storage';
import type { CrewRecord } from './crew-state.ts';
import { numbersAtHub } from './renamed.ts';

/** How far the hub is known to have what this device wrote. */
export interface CrewStanding {
  /** Whether entries go out at all: not from a device that was removed or copied. */
  readonly goesOut: boolean;
  /** Entries of this device that the hub did not acknowledge. */
  readonly notShared: number;
  /** Whether the hub acknowledged all that this device wrote, photos too, and goes on taking it. */
  readonly hasAll: boolean;
}

/**
 * What a record of the crew tells without asking the hub: only what it acknowledged counts as shared.
 *
 * @param numbers the last number of each device here
 */
export function standingOf(record: CrewRecord, numbers: DeviceNumbers): CrewStanding {
  const { link, tips, held, renamed = [], photosToGive, isRemoved = false } = record;
  const written = numbersAtHub(numbers, renamed)[link.device] ?? 0;
  const notShared = Math.max(0, written - (tips[link.device]?.last ?? 0));
  const goesOut = !isRemoved && held[link.device] === undefined;
  return { goesOut, notShared, hasAll: goesOut && notShared === 0 && photosToGive.length === 0 };
}
