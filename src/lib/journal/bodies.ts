import type * as v from 'valibot';
import { COURSES_BODIES } from './bodies-courses.ts';
import { DELIVERY_BODIES } from './bodies-delivery.ts';
import { JOB_BODIES } from './bodies-job.ts';
import { ROOF_BODIES } from './bodies-roof.ts';
import { SORTING_BODIES } from './bodies-sorting.ts';

/**
 * What each type of event carries. Types are past tense; lengths are millimetres, readings whole
 * hundredths of a millimetre. To change a body, raise its version in {@link EVENT_VERSIONS} and add
 * an upcaster.
 */
export const BODIES = {
  ...JOB_BODIES,
  ...ROOF_BODIES,
  ...DELIVERY_BODIES,
  ...SORTING_BODIES,
  ...COURSES_BODIES
} as const;

export type EventType = keyof typeof BODIES;
export type BodyOf<T extends EventType> = v.InferOutput<(typeof BODIES)[T]>;
export type SlopeBody = BodyOf<'slopeSet'>;
export type SlateSpecBody = BodyOf<'slateSpecSet'>;

/** The present version of each body. Absent means 1. */
export const EVENT_VERSIONS: Partial<Record<EventType, number>> = {
  planAdopted: 2,
  pileCounted: 2,
  courseLaid: 2
};
