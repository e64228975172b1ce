import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalJson, canonicalView, foldAll, readEvent } from '$lib/journal';
import { deliveryOf, readingCounts, slopesOf, stockOf, tallyPallets } from '$lib/job';
import { JOB_ID, journal } from '../support/journal-arbitraries.ts';

const SEED = 20_261_129;

/** Ids that the check of events lets through and every object of JavaScript knows. */
const HOSTILE = [
  'constructor',
  'valueOf',
  'hasOwnProperty',
  'isPrototypeOf',
  'propertyIsEnumerable',
  'toLocaleString'
];

function event(type: string, body: object, changes: object = {}) {
  return {
    id: '01900000-0000-7000-8000-000000000001',
    jobId: JOB_ID,
    deviceId: '018f0000-0000-7000-8000-0000000000d1',
    deviceSeq: 1,
    at: '2026-02-28T08:00:00.000Z',
    sorter: '',
    type,
    v: 1,
    body,
    ...changes
  };
}

const grades = (thresholdsMm: number[]) => event('gradesSet', { method: 'byHand', thresholdsMm });
const drawn = (places: [string, number, number][]) =>
  event('sampleDrawn', {
    seed: 1,
    plan: 'own',
    positions: places.map(([palletId, layer, place]) => ({ palletId, layer, place }))
  });
const ordered = (arrivedOn: string) => event('deliveryDeclared', { supplier: 'Quarry', arrivedOn });
const planned = (courses: [string, number][]) =>
  event(
    'planAdopted',
    {
      gradesId: null,
      kickAllowanceMm: 1.5,
      expectedKickers: 0,
      joints: 10,
      courses: courses.map(([slopeId, course]) => ({
        slopeId,
        course,
        piles: [{ pile: 1, pieces: 5 }]
      }))
    },
    { v: 2 }
  );

describe('events that keep to the form and break a screen', () => {
  it.each([
    ['falling thresholds', grades([7.2, 6.1]), 'known'],
    ['rising thresholds', grades([6.1, 7.2]), 'broken'],
    ['equal thresholds', grades([6.1, 6.1]), 'broken'],
    [
      'places of a sample',
      drawn([
        ['p1', 1, 2],
        ['p1', 2, 1],
        ['p2', 1, 2]
      ]),
      'known'
    ],
    [
      'a place of a sample twice',
      drawn([
        ['p1', 1, 2],
        ['p2', 1, 2],
        ['p1', 1, 2]
      ]),
      'broken'
    ],
    ['a leap day', ordered('2028-02-29'), 'known'],
    ['29 February of another year', ordered('2026-02-29'), 'broken'],
    ['30 February', ordered('2026-02-30'), 'broken'],
    ['31 April', ordered('2026-04-31'), 'broken'],
    [
      'a moment on 30 February',
      event('jobOpened', { name: 'Barn' }, { at: '2026-02-30T08:00:00.000Z' }),
      'broken'
    ],
    [
      'courses of a plan',
      planned([
        ['s1', 1],
        ['s1', 2],
        ['s2', 1]
      ]),
      'known'
    ],
    [
      'a course of a plan twice',
      planned([
        ['s1', 1],
        ['s1', 1]
      ]),
      'broken'
    ]
  ])('J12: %s', (_what, crafted, kind) => {
    expect(readEvent(crafted).kind).toBe(kind);
  });
});

describe('ids that every object of JavaScript knows', () => {
  it('J12: are ids like others: the same view and the same figures, but for the name', async () => {
    let met = 0;
    fc.assert(
      fc.property(
        journal,
        fc.constantFrom(...HOSTILE),
        fc.constantFrom('p1', 's1'),
        (events, hostile, id) => {
          const text = JSON.stringify(events)
            .replaceAll('"constructor"', '"p3"')
            .replaceAll('"valueOf"', '"Kite"');
          const renamed = text.replaceAll(`"${id}"`, `"${hostile}"`);
          if (renamed !== text) met++;
          const [plain, crafted] = [text, renamed].map((json) =>
            foldAll((JSON.parse(json) as object[]).map(readEvent))
          );
          const back = (value: unknown) =>
            canonicalJson(JSON.parse(canonicalJson(value).replaceAll(hostile, id)));
          expect(back(JSON.parse(canonicalView(crafted)))).toBe(canonicalView(plain));
          const figures = (view: typeof plain) => [
            slopesOf(view),
            readingCounts(view),
            deliveryOf(view) ?? null,
            stockOf(view).delivered,
            tallyPallets(view)
              .map((tally) => JSON.stringify(tally).replaceAll(hostile, id))
              .sort()
          ];
          expect(back(figures(crafted))).toBe(canonicalJson(figures(plain)));
        }
      ),
      { seed: SEED, numRuns: 300 }
    );
    expect(met).toBeGreaterThan(100);
  });
});
