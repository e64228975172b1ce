import { type BodyOf, type JobView, type NewEvent, palletIds, partOf } from '$lib/journal';

/** A reading that fits no slate of the job, until the sorter says what it is. */
export interface HeldReading {
  /** Id of its event. */
  readonly id: string;
  /** The device on which it was read. */
  readonly deviceId: string;
  readonly body: BodyOf<'readingHeld'>;
}

/** What the sorter says of a reading that was held. */
export type HeldAnswer = 'again' | 'aside' | 'keep';

/** The readings of a job that wait for an answer, oldest first, of every device. */
export function heldReadings(view: JobView): HeldReading[] {
  return palletIds(view)
    .flatMap((palletId) => partOf(view, `pallet:${palletId}`).held)
    .map(({ id, value: { deviceId, ...body } }) => ({ id, deviceId, body }))
    .sort((one, other) => (one.id < other.id ? -1 : 1));
}

/**
 * The act that answers a reading: it waits no longer, and counts as what it was said to be. Kept, it
 * goes on the pile that it was told; measured again, it counts nowhere; set aside, it goes back to the
 * supplier with what was read of it.
 */
export function answerHeld({ id, body }: HeldReading, answer: HeldAnswer): NewEvent[] {
  const { palletId, points } = body;
  const waitsNoLonger: NewEvent = { type: 'entryVoided', body: { voids: id } };
  if (answer === 'again') return [waitsNoLonger];
  if (answer === 'keep') return [waitsNoLonger, { type: 'slateGauged', body }];
  const aside = { palletId, reason: 'other' as const, use: 'return' as const, points };
  return [waitsNoLonger, { type: 'slateSetAside', body: aside }];
}
