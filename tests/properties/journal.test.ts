import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  BODIES,
  EMPTY_VIEW,
  type JobView,
  type JournalEvent,
  type NewEvent,
  type StoredEvent,
  ViewDraft,
  canonicalJson,
  canonicalView,
  createIdSource,
  eventVersion,
  foldAll,
  applyEvent,
  isEventId,
  readEvent
} from '$lib/journal';
import {
  BODY,
  COUNTED_TYPES,
  JOB_ID,
  act,
  deviceAt,
  idAt,
  journal
} from '../support/journal-arbitraries.ts';

const SEED = 20_260_703;

function eventOf({ type, body }: NewEvent, place: number, sorter = 'Wren'): StoredEvent {
  return {
    id: idAt(place),
    jobId: JOB_ID,
    deviceId: deviceAt(0),
    deviceSeq: place + 1,
    at: '2026-03-02T08:00:00.000Z',
    sorter,
    type,
    v: eventVersion(type),
    body: { ...body }
  };
}

const viewOf = (events: readonly StoredEvent[]) => canonicalView(foldAll(events.map(readEvent)));
const undo = (place: number, of: number) =>
  eventOf({ type: 'entryVoided', body: { voids: idAt(of) } }, place);

describe('the fold', () => {
  it('J8: knows an example of every type of event', () => {
    expect([...COUNTED_TYPES, 'entryVoided'].sort()).toEqual(Object.keys(BODIES).sort());
  });

  it.each(COUNTED_TYPES)('J8: %s in and out leaves the same bytes, and in again', (type) => {
    const body = BODY[type] as fc.Arbitrary<object>;
    fc.assert(
      fc.property(fc.array(act, { maxLength: 12 }), body, (others, one) => {
        const before = others.map((other, place) => eventOf(other, place));
        const made = eventOf({ type, body: one } as NewEvent, before.length);
        const out = undo(before.length + 1, before.length);
        const backIn = undo(before.length + 2, before.length + 1);
        expect(readEvent(made).kind).toBe('known');
        const withIt = foldAll([...before, made].map(readEvent));
        // A check of a piled slate is kept and counted nowhere.
        const isCounted = !('of' in one && one.of === 'pile');
        expect(canonicalView(withIt) !== viewOf(before)).toBe(isCounted);
        expect(withoutVoids([...before, made, out])).toBe(withoutVoids(before));
        expect(withoutVoids([...before, made, out, backIn])).toBe(canonicalView(withIt));
      }),
      { seed: SEED, numRuns: 60 }
    );
  });

  it('J7: gives the same bytes in whatever order events come, undos before acts included', () => {
    let undos = 0;
    fc.assert(
      fc.property(
        journal.chain((events) =>
          fc.tuple(
            fc.constant(events),
            fc.shuffledSubarray(events, { minLength: events.length, maxLength: events.length })
          )
        ),
        ([events, shuffled]) => {
          undos += events.filter(({ type }) => type === 'entryVoided').length;
          expect(viewOf(shuffled)).toBe(viewOf(events));
        }
      ),
      { seed: SEED, numRuns: 400 }
    );
    expect(undos).toBeGreaterThan(1000);
  });

  it('J7: gives the same bytes in one go and in two, undos across the cut included', () => {
    fc.assert(
      fc.property(journal, fc.nat(40), (events, cut) => {
        const known = new Map<string, JournalEvent>();
        let view: JobView = EMPTY_VIEW;
        for (const half of [events.slice(0, cut), events.slice(cut)]) {
          const draft = new ViewDraft(view);
          for (const read of half.map(readEvent)) {
            applyEvent(draft, read, (id) => known.get(id));
            if (read.kind === 'known') known.set(read.event.id, read.event);
          }
          view = draft.finish();
        }
        expect(canonicalView(view)).toBe(viewOf(events));
      }),
      { seed: SEED, numRuns: 200 }
    );
  });

  it('J9: counts only whole numbers above zero', () => {
    fc.assert(
      fc.property(journal, (events) => {
        for (const [key, part] of foldAll(events.map(readEvent)))
          if (key.startsWith('pallet:') || key.startsWith('sorter:'))
            for (const number of countsIn(part)) expect(number).toBeGreaterThan(0);
      }),
      { seed: SEED, numRuns: 200 }
    );
  });

  it('J10: skips and counts events of other types and later versions, in any order', () => {
    fc.assert(
      fc.property(journal, fc.nat(39), (events, at) => {
        const place = at % events.length;
        const later = events.map((event, index) =>
          index === place
            ? { ...event, v: event.v + 1, type: index % 2 ? 'slateWashed' : event.type }
            : event
        );
        const read = readEvent(later[place]);
        expect(read.kind).toBe('unknown');
        expect(viewOf([...later].reverse())).toBe(viewOf(later));
      }),
      { seed: SEED, numRuns: 100 }
    );
  });
});

describe('readEvent', () => {
  it('J12: never throws and never changes its input', () => {
    fc.assert(
      fc.property(fc.oneof(fc.anything(), fc.jsonValue()), (input) => {
        expect(readEvent(input).kind).toBe('broken');
      }),
      { seed: SEED, numRuns: 500 }
    );
  });

  it('J12: gives back as known what it read, from JSON and back', () => {
    fc.assert(
      fc.property(act, (made) => {
        const event = eventOf(made, 0);
        const before = canonicalJson(event);
        const read = readEvent(JSON.parse(before));
        if (read.kind !== 'known') throw new Error(JSON.stringify(read));
        expect(canonicalJson(read.event)).toBe(before);
        expect(canonicalJson(event)).toBe(before);
      }),
      { seed: SEED, numRuns: 500 }
    );
  });
});

describe('ids and bytes', () => {
  it('J5: ids rise strictly though the clock jumps about, over restarts', () => {
    const clock = fc.array(fc.integer({ min: 0, max: 2e12 }), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(clock, fc.infiniteStream(fc.nat(0xffff)), (times, chance) => {
        const random = () =>
          [...chance.take(4)].map((word) => word.toString(16).padStart(4, '0')).join('');
        let last: string | undefined;
        let source = createIdSource(() => times[0], random, last);
        for (const [step, time] of times.entries()) {
          if (step % 5 === 0) source = createIdSource(() => time, random, last);
          const id = source();
          expect(isEventId(id)).toBe(true);
          if (last !== undefined) expect(id > last).toBe(true);
          last = id;
        }
      }),
      { seed: SEED, numRuns: 300 }
    );
  });

  it('J13: the same value has the same bytes in whatever order its keys stand', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const text = canonicalJson(value);
        const again: unknown = JSON.parse(text);
        expect(canonicalJson(again)).toBe(text);
        expect(canonicalJson(reversed(value))).toBe(text);
      }),
      { seed: SEED, numRuns: 500 }
    );
  });
});

/** The bytes of a view but for the record of undos itself. */
function withoutVoids(events: readonly StoredEvent[]): string {
  const view = new Map(foldAll(events.map(readEvent)));
  view.delete('voids');
  return canonicalView(view);
}

function countsIn(part: unknown): number[] {
  if (typeof part === 'number') return [part];
  if (Array.isArray(part) || typeof part !== 'object' || part === null) return [];
  return Object.values(part).flatMap(countsIn);
}

/** The same value with the keys of its objects the other way round. */
function reversed(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(reversed);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, field]) => [key, reversed(field)])
  );
}
