import { describe, expect, it } from 'vitest';
import {
  ATTRIBUTES_AQLS,
  CODE_LETTERS,
  attributesPlan,
  codeLetter,
  sampleSizeOf,
  type CodeLetter,
  type InspectionLevel,
  type Severity
} from '$lib/engine/delivery';

describe('code letters: MIL-STD-105E, table I, level II', () => {
  const rows: readonly (readonly [number, number, CodeLetter, number])[] = [
    [2, 8, 'A', 2],
    [9, 15, 'B', 3],
    [16, 25, 'C', 5],
    [26, 50, 'D', 8],
    [51, 90, 'E', 13],
    [91, 150, 'F', 20],
    [151, 280, 'G', 32],
    [281, 500, 'H', 50],
    [501, 1200, 'J', 80],
    [1201, 3200, 'K', 125],
    [3201, 10000, 'L', 200],
    [10001, 35000, 'M', 315],
    [35001, 150000, 'N', 500],
    [150001, 500000, 'P', 800],
    [500001, 9000000, 'Q', 1250]
  ];
  it.each(rows)('lots of %i to %i take letter %s, %i slates', (from, to, letter, sampleSize) => {
    for (const lotSize of [from, to])
      expect(codeLetter(lotSize, 'II')).toEqual({
        ok: true,
        letter,
        basis: { standing: 'published', source: 'MIL-STD-105E, table I, level II' }
      });
    expect(sampleSizeOf(letter)).toBe(sampleSize);
  });

  it('letter R draws 2000', () => {
    expect(sampleSizeOf('R')).toBe(2000);
  });

  // Remembered, not read: the test pins what the program says and that it says so.
  it.each<[InspectionLevel, string]>([
    ['I', 'AABCCDEFGHJKLMN'],
    ['III', 'BCDEFGHJKLMNPQR']
  ])('level %s from memory, and called that', (level, letters) => {
    for (const [row, [from]] of rows.entries()) {
      const result = codeLetter(from, level);
      expect(result.ok && result.letter).toBe(letters[row]);
      expect(result.ok && result.basis.standing).toBe('from memory');
    }
  });
});

/**
 * MIL-STD-105E, tables II-A and II-B (single sampling), AQL 0.65 to 15: acceptance numbers; v and ^
 * are the arrows down and up.
 */
const NORMAL: Partial<Record<CodeLetter, string>> = {
  A: 'v v v v v 0 ? v',
  B: 'v v v v 0 ^ v 1',
  C: 'v v v 0 ^ v 1 2',
  D: 'v v 0 ^ v 1 2 3',
  E: 'v 0 ^ v 1 2 3 5',
  F: '0 ^ v 1 2 3 5 7',
  G: '^ v 1 2 3 5 7 10',
  H: 'v 1 2 3 5 7 10 14',
  J: '1 2 3 5 7 10 14 21',
  K: '2 3 5 7 10 14 21 ^',
  L: '3 5 7 10 14 21 ^ ^',
  M: '5 7 10 14 21 ^ ^ ^',
  N: '7 10 14 21 ^ ^ ^ ^',
  P: '10 14 21 ^ ^ ^ ^ ^',
  Q: '14 21 ^ ^ ^ ^ ^ ^'
};
const TIGHTENED: Partial<Record<CodeLetter, string>> = {
  A: 'v v v v v v ? v',
  B: 'v v v v v 0 v v',
  C: 'v v v v 0 v v 1',
  D: 'v v v 0 v v 1 2',
  E: 'v v 0 v v 1 2 3',
  F: 'v 0 v v 1 2 3 5',
  G: '0 v v 1 2 3 5 8',
  H: 'v v 1 2 3 5 8 12',
  J: 'v 1 2 3 5 8 12 18',
  K: '1 2 3 5 8 12 18 ^',
  L: '2 3 5 8 12 18 ^ ^'
};
const LOT_OF: Partial<Record<CodeLetter, number>> = {
  A: 8, B: 15, C: 25, D: 50, E: 90, F: 150, G: 280, H: 500, J: 1200, K: 3200, L: 10000,
  M: 35000, N: 150000, P: 500000, Q: 1000000
}; // prettier-ignore

describe.each<[Severity, Partial<Record<CodeLetter, string>>]>([
  ['normal', NORMAL],
  ['tightened', TIGHTENED]
])('master table, %s: MIL-STD-105E table II-A / II-B', (severity, table) => {
  const cells = Object.entries(table).flatMap(([letter, row]) =>
    row.split(' ').map((cell, column) => ({ letter: letter as CodeLetter, column, cell }))
  );

  it.each(cells)('letter $letter, column $column: $cell', ({ letter, column, cell }) => {
    const result = attributesPlan(LOT_OF[letter]!, 'II', ATTRIBUTES_AQLS[column], severity);
    if (cell === '?') {
      // Letter A, AQL 10. Normal: the diagonal's arrow up leaves the table. Tightened: the diagonal
      // gives 0 of 2, a printed table shows no plan. Refused, not guessed.
      expect(result).toEqual({ ok: false, reason: 'cell-in-doubt' });
      return;
    }
    let row = CODE_LETTERS.indexOf(letter);
    let found = cell;
    while (found === 'v' || found === '^') {
      row += found === 'v' ? 1 : -1;
      found = table[CODE_LETTERS[row]]!.split(' ')[column];
    }
    const planLetter = CODE_LETTERS[row];
    const lotSize = LOT_OF[letter]!;
    expect(result).toMatchObject({
      ok: true,
      plan: {
        lotLetter: letter,
        planLetter,
        acceptAtMost: Number(found),
        refuseFrom: Number(found) + 1,
        sampleSize: Math.min(sampleSizeOf(planLetter), lotSize),
        everySlate: sampleSizeOf(planLetter) >= lotSize
      }
    });
  });
});

it('lot 3201 to 10,000, level II, 1.5 %: 200 / 7 / 8, tightened 5 (AQLSchemes vignette)', () => {
  const normal = attributesPlan(5000, 'II', 1.5, 'normal');
  const tightened = attributesPlan(5000, 'II', 1.5, 'tightened');
  expect(normal.ok && normal.plan).toMatchObject({
    sampleSize: 200,
    acceptAtMost: 7,
    refuseFrom: 8
  });
  expect(tightened.ok && tightened.plan).toMatchObject({ sampleSize: 200, acceptAtMost: 5 });
});
