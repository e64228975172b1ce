import * as v from 'valibot';
import { BODIES, type BodyOf, EVENT_VERSIONS, type EventType } from './bodies.ts';
import { isCalendarDay } from './calendar.ts';
import { isEventId, isUuid } from './ids.ts';
import { liftBody } from './upcasters.ts';

/** What every event carries besides its body. */
const envelope = v.object({
  id: v.pipe(v.string(), v.check(isEventId, 'not an event id')),
  jobId: v.pipe(v.string(), v.check(isUuid, 'not a UUID in lower case')),
  deviceId: v.pipe(v.string(), v.check(isUuid, 'not a UUID in lower case')),
  deviceSeq: v.pipe(v.number(), v.integer(), v.minValue(1)),
  at: v.pipe(v.string(), v.isoTimestamp(), v.check(isCalendarDay, 'no such day in the calendar')),
  sorter: v.pipe(v.string(), v.maxLength(40), v.regex(/^(?!__proto__$)/)),
  type: v.pipe(v.string(), v.regex(/^[a-z][A-Za-z]{1,39}$/)),
  v: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(1000)),
  body: v.record(v.string(), v.unknown())
});

export type StoredEvent = v.InferOutput<typeof envelope>;

/** An event of a known type at its present version. */
export type JournalEvent = {
  [T in EventType]: Omit<StoredEvent, 'type' | 'body'> & { type: T; body: BodyOf<T> };
}[EventType];

/** What a command hands over; storage adds the envelope. */
export type NewEvent = { [T in EventType]: { type: T; body: BodyOf<T> } }[EventType];

/** The present version of a type's body. */
export function eventVersion(type: EventType): number {
  return EVENT_VERSIONS[type] ?? 1;
}

export type ReadEvent =
  | { kind: 'known'; event: JournalEvent }
  /** From a later release, or of a type this one does not know: kept, skipped and reported. */
  | { kind: 'unknown'; event: StoredEvent }
  | { kind: 'broken'; problem: string };

/**
 * Checks anything that claims to be an event, lifts it to the present version and tells what it is.
 * Never throws and never changes its input. What comes back as `known` has exactly the fields of
 * its body: extra fields are dropped from the lifted copy, never from storage.
 */
export function readEvent(input: unknown): ReadEvent {
  const outer = v.safeParse(envelope, input);
  if (!outer.success) return { kind: 'broken', problem: sayIssue(outer.issues[0]) };
  const event = outer.output;
  if (!isEventType(event.type) || event.v > eventVersion(event.type))
    return { kind: 'unknown', event };
  const body = liftBody(event.type, event.body, event.v, eventVersion(event.type));
  const inner = v.safeParse(BODIES[event.type], body);
  if (!inner.success)
    return { kind: 'broken', problem: `${event.type}: ${sayIssue(inner.issues[0])}` };
  const known = { ...event, v: eventVersion(event.type), body: inner.output };
  return { kind: 'known', event: known as JournalEvent };
}

export function isEventType(type: string): type is EventType {
  return Object.hasOwn(BODIES, type);
}

function sayIssue(issue: v.BaseIssue<unknown>): string {
  const path = v.getDotPath(issue);
  return path ? `${path}: ${issue.message}` : issue.message;
}
