import { describe, expect, it } from 'vitest';
import { csvActs } from './csv-acts.ts';

describe('csvActs', () => {
  let next = 0;
  const newId = () => `id${++next}`;

  it('adds each new pallet once with its rows as size, before its slates', () => {
    const rows = Object.freeze([
      { line: 2, pallet: 'A', thicknessHundredths: 640 },
      { line: 3, pallet: 'A', grade: 2 },
      { line: 4, pallet: 'B', thicknessHundredths: 500 }
    ]);
    const { acts, pallets, added } = csvActs(rows, [], {}, newId);
    expect(pallets).toBe(2);
    expect(added).toEqual([
      { label: 'A', slates: 2 },
      { label: 'B', slates: 1 }
    ]);
    expect(acts.map(({ type }) => type)).toEqual([
      'palletAdded',
      'palletAdded',
      'slateGauged',
      'slateTapped',
      'slateGauged'
    ]);
    expect(acts[0].body).toMatchObject({ label: 'A', slates: 2 });
  });

  it('puts slates on the pallet that has the label already, under the grades in force', () => {
    const rows = [{ line: 2, pallet: 'A', grade: 3 }];
    const { acts } = csvActs(rows, [{ label: 'A', palletId: 'p1' }], { gradesId: 'g1' }, newId);
    expect(acts).toEqual([
      { type: 'slateTapped', body: { palletId: 'p1', pile: 3, gradesId: 'g1' } }
    ]);
  });

  it('puts slates of "Pallet 1" on the pallet called 1, and adds none', () => {
    const rows = [{ line: 2, pallet: 'Pallet 1', grade: 3 }];
    const { acts, added } = csvActs(rows, [{ label: '1', palletId: 'p1' }], {}, newId);
    expect(added).toEqual([]);
    expect(acts).toMatchObject([{ type: 'slateTapped', body: { palletId: 'p1' } }]);
  });

  it('sets aside with the reading where there is one', () => {
    const setAside = { reason: 'broken', use: 'scrap' } as const;
    const rows = [{ line: 2, pallet: 'A', thicknessHundredths: 510, setAside }];
    const { acts } = csvActs(rows, [{ label: 'A', palletId: 'p1' }], {}, newId);
    expect(acts).toEqual([
      {
        type: 'slateSetAside',
        body: { palletId: 'p1', reason: 'broken', use: 'scrap', points: [510] }
      }
    ]);
  });

  it('keeps points and what was seen of a slate of the sample, on the list in force', () => {
    const sample = { layer: 3, place: 81, ring: 'clear' as const, defects: [] };
    const rows = [
      { line: 2, pallet: 'A', thicknessHundredths: 620, pointsHundredths: [610, 630], sample },
      { line: 3, pallet: 'A', thicknessHundredths: 500, sample: { drawId: 'list-7' }, rocks: true }
    ];
    const known = [{ label: 'A', palletId: 'p1' }];
    const bodiesOf = (drawId?: string) =>
      csvActs(rows, known, drawId === undefined ? {} : { drawId }, newId).acts.map(
        ({ body }) => body
      );
    expect(bodiesOf('list-1')).toEqual([
      {
        palletId: 'p1',
        points: [610, 630],
        gradesId: null,
        pile: null,
        sample: { ...sample, drawId: 'list-1' }
      },
      {
        palletId: 'p1',
        points: [500],
        gradesId: null,
        pile: null,
        sample: { drawId: 'list-7' },
        rocks: true
      }
    ]);
    expect(bodiesOf()[0]).toMatchObject({ sample: { drawId: 'file' } });
  });
});
