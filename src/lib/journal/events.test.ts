import { describe, expect, it } from 'vitest';
import { BODIES, EVENT_VERSIONS } from './bodies.ts';
import { eventVersion, readEvent } from './events.ts';
import { UPCASTERS, liftBody } from './upcasters.ts';

const event = {
  id: '018f0000-0000-7000-8000-000000000002',
  jobId: '018f0000-0000-7000-8000-000000000001',
  deviceId: '018f0000-0000-7000-8000-000000000001',
  deviceSeq: 1,
  at: '2026-03-02T08:00:00.000Z',
  sorter: 'Wren',
  type: 'slateTapped',
  v: 1,
  body: { palletId: 'p1', pile: 2, gradesId: null }
};

describe('readEvent', () => {
  it('J12: knows an event, drops extra fields from the copy and never from its input', () => {
    const given = Object.freeze({ ...event, body: Object.freeze({ ...event.body, note: 'x' }) });
    const read = readEvent(given);
    expect(read.kind === 'known' && read.event.body).toEqual(event.body);
    expect(given.body.note).toBe('x');
  });

  it.each([
    ['nothing', undefined],
    ['null', null],
    ['a list', []],
    ['no id', { ...event, id: undefined }],
    ['an id in capitals', { ...event, id: event.id.toUpperCase() }],
    ['an id at the end of time', { ...event, id: 'ffffffff-ffff-7fff-bfff-ffffffffffff' }],
    ['number 0', { ...event, deviceSeq: 0 }],
    ['number 1.5', { ...event, deviceSeq: 1.5 }],
    ['no time', { ...event, at: 'yesterday' }],
    ['a hostile nickname', { ...event, sorter: '__proto__' }],
    ['a long nickname', { ...event, sorter: 'x'.repeat(41) }],
    ['version 0', { ...event, v: 0 }],
    ['a type with a space', { ...event, type: 'slate tapped' }],
    ['a body that is a list', { ...event, body: [] }],
    ['no pile', { ...event, body: { palletId: 'p1', gradesId: null } }],
    ['pile 100', { ...event, body: { ...event.body, pile: 100 } }],
    ['a pallet called __proto__', { ...event, body: { ...event.body, palletId: '__proto__' } }]
  ])('J12: calls %s broken', (_title, input) => {
    expect(readEvent(input).kind).toBe('broken');
  });

  it.each([
    ['a reading too thin', [149]],
    ['a reading too thick', [4001]],
    ['half a hundredth', [600.5]],
    ['NaN', [Number.NaN]],
    ['no point', []],
    ['five points', [600, 600, 600, 600, 600]]
  ])('J12: calls %s broken', (_title, points) => {
    const body = { palletId: 'p1', points, gradesId: null, pile: null };
    expect(readEvent({ ...event, type: 'slateGauged', body }).kind).toBe('broken');
  });

  it('J12: takes no number that JSON cannot hold', () => {
    const body = { readings: [], sorters: [], repeatabilitySdMm: Infinity };
    expect(readEvent({ ...event, type: 'gaugeStudied', body }).kind).toBe('broken');
  });

  it.each([
    ['another type', { ...event, type: 'slateWashed' }],
    ['a later version', { ...event, v: 2, body: {} }],
    ['a type that names a part of JavaScript', { ...event, type: 'constructor' }]
  ])('J10: keeps %s as unknown', (_title, input) => {
    expect(readEvent(input)).toEqual({ kind: 'unknown', event: input });
  });
});

describe('upcasters', () => {
  it('J11: there is one for each step up to the present version of each body, and no other', () => {
    for (const type of Object.keys(BODIES) as (keyof typeof BODIES)[])
      expect(UPCASTERS[type]?.length ?? 0, type).toBe(eventVersion(type) - 1);
    for (const type of [...Object.keys(UPCASTERS), ...Object.keys(EVENT_VERSIONS)])
      expect(Object.keys(BODIES)).toContain(type);
  });

  it('J11: lift a body step by step from whatever version it has', () => {
    const table = {
      stackMeasured: [
        ({ mm, ...rest }: Record<string, unknown>) => ({ ...rest, totalMm: mm }),
        (body: Record<string, unknown>) => ({ ...body, palletId: null })
      ]
    };
    const first = Object.freeze({ slates: 100, mm: 612 });
    const lift = (body: Record<string, unknown>, version: number) =>
      liftBody('stackMeasured', body, version, 3, table);
    expect(lift(first, 1)).toEqual({ slates: 100, totalMm: 612, palletId: null });
    expect(lift({ slates: 100, totalMm: 612 }, 2)).toEqual({
      slates: 100,
      totalMm: 612,
      palletId: null
    });
    expect(lift(first, 3)).toBe(first);
    expect(first).toEqual({ slates: 100, mm: 612 });
  });
});
