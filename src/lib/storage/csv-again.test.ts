import { describe, expect, it } from 'vitest';
import type { NewEvent } from '$lib/journal';
import { compareReadings } from './csv-again.ts';
import { exportReadingsCsv } from './csv-export.ts';
import { readReadingsCsv } from './csv.ts';
import type { CsvReading } from './csv-types.ts';
import { MemoryStore } from '../../../tests/support/memory-store.ts';
import { testSurroundings } from '../../../tests/support/store-contract/test-surroundings.ts';

const JOB = '018f0000-0000-7000-8000-00000000000a';

const gauged = (hundredths: number, palletId = 'p1'): NewEvent => ({
  type: 'slateGauged',
  body: { palletId, points: [hundredths], gradesId: null, pile: null }
});
const row = (thicknessHundredths: number, pallet = 'A'): CsvReading => ({
  line: 2,
  pallet,
  thicknessHundredths
});

async function jobWith(...acts: NewEvent[]): Promise<MemoryStore> {
  const store = new MemoryStore(testSurroundings(7));
  await store.append(JOB, [
    { type: 'jobOpened', body: { name: 'Barn' } },
    { type: 'palletAdded', body: { palletId: 'p1', label: 'A', slates: 500 } },
    { type: 'palletAdded', body: { palletId: 'p2', label: 'B', slates: 500 } },
    ...acts
  ]);
  return store;
}

describe('compareReadings', () => {
  it('knows nothing of a job without readings, of other pallets, or of no job', async () => {
    const store = await jobWith();
    const rows = Object.freeze([row(640), row(640, 'Z')]);
    const asNew = { known: 0, fresh: rows, isLikelyAgain: false };
    expect(await compareReadings(store, JOB, rows)).toEqual(asNew);
    expect(await compareReadings(store, JOB.replace(/a$/, 'b'), rows)).toEqual(asNew);
    await store.append(JOB, [gauged(640, 'p2')]);
    expect(await compareReadings(store, JOB, rows)).toEqual(asNew);
  });

  it('takes each reading of the job for one row, so that equal slates stay several', async () => {
    const store = await jobWith(gauged(640), gauged(640));
    const rows = [row(640), row(640), row(640), row(641)].map((one, at) => ({ ...one, line: at }));
    const found = await compareReadings(store, JOB, rows);
    expect(found).toEqual({ known: 2, fresh: [rows[2], rows[3]], isLikelyAgain: true });
  });

  it('takes "Pallet A" of a file for the pallet called A', async () => {
    const store = await jobWith(gauged(640));
    const found = await compareReadings(store, JOB, [row(640, 'Pallet A')]);
    expect(found).toMatchObject({ known: 1, isLikelyAgain: true });
  });

  it('does not count what was undone', async () => {
    const store = await jobWith(gauged(640));
    const { events } = await store.append(JOB, [gauged(650)]);
    await store.append(JOB, [{ type: 'entryVoided', body: { voids: events[0].id } }]);
    expect((await compareReadings(store, JOB, [row(650), row(640)])).known).toBe(1);
  });

  it('judges by pallet: a whole pallet again is seen in a file that is mostly new', async () => {
    const store = await jobWith(gauged(640), gauged(650));
    const others = Array.from({ length: 50 }, (_, at) => row(500 + at, 'B'));
    const found = await compareReadings(store, JOB, [row(650), row(640), ...others]);
    expect(found).toMatchObject({ known: 2, isLikelyAgain: true });
  });

  it('takes a few equal ones for chance, half of them no longer', async () => {
    const store = await jobWith(gauged(640));
    const found = await compareReadings(store, JOB, [row(640), row(641), row(642)]);
    expect(found).toMatchObject({ known: 1, isLikelyAgain: false });
    const half = await compareReadings(store, JOB, [row(640), row(641)]);
    expect(half.isLikelyAgain).toBe(true);
  });

  it('tells taps by grade, and slates set aside by reason, use and thickness', async () => {
    const store = await jobWith(
      { type: 'slateTapped', body: { palletId: 'p1', pile: 2, gradesId: null } },
      {
        type: 'slateSetAside',
        body: { palletId: 'p1', reason: 'broken', use: 'scrap', points: [510] }
      }
    );
    const aside = { reason: 'broken', use: 'scrap' } as const;
    const known = async (one: Omit<CsvReading, 'line' | 'pallet'>) =>
      (await compareReadings(store, JOB, [{ line: 2, pallet: 'A', ...one }])).known;
    expect(await known({ grade: 2 })).toBe(1);
    expect(await known({ grade: 1 })).toBe(0);
    expect(await known({ thicknessHundredths: 510 })).toBe(0);
    expect(await known({ thicknessHundredths: 510, setAside: aside })).toBe(1);
    expect(await known({ thicknessHundredths: 520, setAside: aside })).toBe(0);
    expect(await known({ setAside: aside })).toBe(0);
    expect(await known({ setAside: { ...aside, use: 'cutPiece' } })).toBe(0);
  });

  it('knows every row of the job’s own file of readings', async () => {
    const store = await jobWith(
      {
        type: 'slateGauged',
        body: { palletId: 'p1', points: [640, 651], gradesId: null, pile: 1 }
      },
      { type: 'slateTapped', body: { palletId: 'p2', pile: 3, gradesId: null } },
      { type: 'slateSetAside', body: { palletId: 'p2', reason: 'broken', use: 'scrap' } }
    );
    const file = readReadingsCsv((await (await exportReadingsCsv(store, JOB))?.text()) ?? '');
    expect(file.ok && (await compareReadings(store, JOB, file.rows))).toEqual({
      known: 3,
      fresh: [],
      isLikelyAgain: true
    });
  });
});
