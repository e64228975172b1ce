import type { JobView, NewEvent } from '$lib/journal';
import { sizesOf } from '../queries.ts';
import { sizesLaidOut } from './size-roof.ts';

/** Events that belong to one size of several. */
const OF_SIZE: ReadonlySet<NewEvent['type']> = new Set([
  'gradesSet',
  'palletAdded',
  'pileCounted',
  'planAdopted',
  'sampleDrawn',
  'slatesLost',
  'slatesMoved'
]);

/** Events after which the courses of each size must not move any more. */
const FIXING: ReadonlySet<NewEvent['type']> = new Set([
  'planAdopted',
  'courseLaid',
  'coursePartLaid'
]);

/**
 * An act as it is written in a job of several sizes: each event that belongs to a size says which.
 * A plan and a course laid rest on how many courses each size takes: where nobody chose them, those
 * proposed are chosen with the act, so that they stay. A slate saved with another length or width
 * changes the size in hand.
 *
 * @param view the whole job
 * @param sizeId the size in hand
 * @returns the events in the order in which they are to be saved
 */
export function actOfSize(
  view: JobView,
  sizeId: string,
  act: readonly NewEvent[]
): readonly NewEvent[] {
  const stamped = act.map((event) =>
    OF_SIZE.has(event.type) && !('sizeId' in event.body)
      ? ({ ...event, body: { ...event.body, sizeId } } as NewEvent)
      : event
  );
  const fixes = act.some(({ type }) => FIXING.has(type));
  const laid = fixes ? sizesLaidOut(view) : undefined;
  if (laid?.ok && laid.standing === 'proposed') {
    const courses = laid.sets.map(({ set, courses: n }) => ({ sizeId: set.id, courses: n }));
    return [{ type: 'setCoursesChosen', body: { courses } }, ...stamped];
  }
  const slate = act.find((event) => event.type === 'slateSpecSet');
  const size = sizesOf(view).find((other) => other.sizeId === sizeId);
  if (!slate || !size) return stamped;
  const { lengthMm, widthMm } = slate.body;
  const changed = {
    ...size,
    lengthMm,
    ...(size.widthMm !== undefined && { widthMm })
  };
  if (changed.lengthMm === size.lengthMm && changed.widthMm === size.widthMm) return stamped;
  const sizes = sizesOf(view).map((other) => (other === size ? changed : other));
  return [...stamped, { type: 'slateSizesSet', body: { sizes } }];
}
