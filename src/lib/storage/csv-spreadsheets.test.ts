import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readReadingsCsvFile } from './csv-file.ts';
import type { CsvReadAs, CsvReading, CsvSum } from './csv-types.ts';

/** Files as people make them; the odd numbers came from outside, the even ones are our own. */
const FOLDER = 'tests/support/spreadsheets';

interface Taken {
  /** Pallet, then mm, points, grade, set aside and sample as far as the row has them. */
  rows: string[];
  sums?: string[];
  readAs?: Partial<CsvReadAs>;
}

const none = { filled: [], notes: [], headings: [], ignored: [] };

/** What is taken of each file. */
const TAKEN: Record<string, Taken> = {
  '01-plain': { rows: ['A 6.1', 'A 6.3', 'B 5.9'] },
  '02-pallet-no': {
    rows: ['12 6.1', '13 5.9'],
    readAs: { headings: [{ heading: 'Pallet No.', column: 'pallet' }] }
  },
  '03-blank-rows': { rows: ['A 6.12', 'B 5.92'] },
  '04-merged-pallets': {
    rows: ['North 6.1', 'North 6.3', 'North 6.2', 'South 5.9', 'South 6'],
    readAs: {
      filled: [3, 4, 6],
      headings: [
        { heading: 'Pallet No', column: 'pallet' },
        { heading: 'Th. (mm)', column: 'thickness_mm' }
      ]
    }
  },
  '05-title-row': {
    rows: ['A 6.14'],
    readAs: { notes: [{ line: 1, text: 'Slates measured 28 Nov' }] }
  },
  '06-titles-and-notes': {
    rows: ['A 6.1', 'A 6.2'],
    readAs: {
      notes: [
        { line: 1, text: 'Delivery of 3 March' },
        { line: 2, text: 'measured by the gate, calliper 2' },
        { line: 5, text: '# rain from here on' },
        { line: 7, text: '// lunch, back at one' }
      ],
      ignored: ['Remark']
    }
  },
  '07-header-caps': { rows: ['A 6.16'] },
  '08-mean-and-total': {
    rows: ['A 6.1', 'A 6.3', 'B 5.9'],
    sums: ['5 name Mean 6.10', '6 name Total 18.30']
  },
  '09-header-short': { rows: ['A 6.18'] },
  '10-subtotals': {
    rows: ['A 6.1', 'A 6.3', 'B 5.9', 'B 6.1'],
    sums: ['4 value 6.20', '7 value 6.00']
  },
  '11-unit-in-cell': { rows: ['A 6.2'] },
  '12-pallet-headings': {
    rows: ['Pallet 1 6.1', 'Pallet 1 6.3', 'Pallet 2 5.9'],
    readAs: { filled: [3, 4, 6] }
  },
  '13-thousands': { rows: ['A 6.22'], readAs: { ignored: ['price'] } },
  '14-units-row': {
    rows: ['A 6.1 {"lengthMm":500,"widthMm":250}'],
    readAs: { notes: [{ line: 2, text: 'mm mm mm' }] }
  },
  '15-grades-abbr': { rows: ['A grade 1', 'A grade 2'] },
  '16-left-middle-right': {
    rows: ['A 6.2 of 6.2/6.3/6.1', 'B 5.85 of 5.9/5.8'],
    readAs: {
      headings: [
        { heading: 'Left', column: 'points_mm' },
        { heading: 'Middle', column: 'points_mm' },
        { heading: 'Right', column: 'points_mm' },
        { heading: 'Mean', column: 'thickness_mm' }
      ]
    }
  },
  '17-points': {
    rows: ['A 6.2 of 6.2/6.3/6.1', 'B 5.9 of 5.9/6/5.8'],
    readAs: {
      headings: ['point1', 'point2', 'point3'].map((heading) => ({ heading, column: 'points_mm' }))
    }
  },
  '19-points-in-cell': { rows: ['A 6.2 of 6.2/6.3/6.1'] },
  // A last line without a pallet whose number is the mean of the lines above is asked about.
  '21-total-empty': { rows: ['A 6.24'], sums: ['3 value 6.24'] },
  '25-trailing-commas': { rows: ['A 6.3', 'B 6'] },
  '27-sep-line': { rows: ['A 6.32'] },
  '29-inch': {
    rows: ['A 6.22'],
    readAs: {
      headings: [{ heading: 'thickness_in', column: 'thickness_mm' }],
      inches: { text: '0.245', mm: 6.22 }
    }
  },
  '30-inch-signs': {
    rows: ['A 6.22', 'A 6.35', 'B 6.4'],
    readAs: { inches: { text: '0.245"', mm: 6.22 } }
  },
  '31-full-sample': {
    rows: [
      'A 6.35 {"layer":3,"place":81,"lengthMm":500,"widthMm":250,"ring":"clear","defects":[]}'
    ],
    readAs: {
      headings: [
        { heading: 'slate', column: 'place' },
        { heading: 'defects', column: 'faults' }
      ]
    }
  },
  '32-sample-by-hand': {
    rows: [
      'A 6.35 of 6.3/6.4 {"layer":3,"place":81,"lengthMm":500,"widthMm":250,"ring":"clear","defects":[]}',
      'A 6.1 {"layer":4,"place":12,"lengthMm":501,"widthMm":250,"ring":"dull","defects":["broken","tapered"]}',
      'B set aside broken/return {"layer":1,"place":7,"lengthMm":500,"widthMm":249,"ring":"clear","defects":["broken"]}'
    ],
    readAs: {
      headings: [
        { heading: 'Pallet No', column: 'pallet' },
        { heading: 'Slate No', column: 'place' },
        { heading: 'P1 (mm)', column: 'points_mm' },
        { heading: 'P2 (mm)', column: 'points_mm' },
        { heading: 'Rings', column: 'ring' },
        { heading: 'Defects', column: 'faults' }
      ]
    }
  },
  // Text that begins like a formula is a name like any other: nothing is worked out.
  '33-formula': { rows: ['=1+1 6.37'] },
  '34-heading-again': {
    rows: ['A 6.1', 'B 5.9'],
    readAs: { notes: [{ line: 3, text: 'pallet thickness_mm' }] }
  },
  '38-last-year': { rows: ['Grün 6.1', 'Grün 6.2'] },
  '40-pile-as-grade': {
    rows: ['A grade 1', 'A grade 3'],
    readAs: { headings: [{ heading: 'Pile', column: 'grade' }] }
  }
};

/** Why nothing is taken of the others. */
const REFUSED: Record<string, unknown[]> = {
  '18-points-and-wrong-mean': [{ code: 'mean-differs', line: 3, text: '6.9', meanMm: 6.2 }],
  '20-one-column-a-slate': [{ code: 'too-many-point-columns', found: 6 }],
  '22-fraction': [{ code: 'like-a-fraction', line: 2, text: '3/8' }],
  '24-centimetres': [{ code: 'unknown-unit', column: 'thickness (cm)' }],
  '26-ragged': [
    { code: 'columns-differ', line: 3, found: 4, expected: 3 },
    { code: 'columns-differ', line: 4, found: 2, expected: 3 }
  ],
  '28-letters-for-grades': [{ code: 'ambiguous-grade', line: 3, text: 'T' }],
  '35-err-ref': [{ code: 'spreadsheet-error', line: 3, text: '#DIV/0!' }],
  '36-sep-bar': [{ code: 'unknown-separator', text: '|' }]
};

const read = (name: string, takesSums = false) =>
  readReadingsCsvFile(new Blob([readFileSync(`${FOLDER}/${name}.csv`)]), takesSums);

const shortRow = (row: CsvReading): string =>
  [
    row.pallet,
    row.thicknessHundredths && String(row.thicknessHundredths / 100),
    row.pointsHundredths && `of ${row.pointsHundredths.map((point) => point / 100).join('/')}`,
    row.grade && `grade ${row.grade}`,
    row.setAside && `set aside ${row.setAside.reason}/${row.setAside.use}`,
    row.sample && JSON.stringify(row.sample)
  ]
    .filter(Boolean)
    .join(' ');
const shortSum = ({ line, why, text }: CsvSum): string => `${line} ${why} ${text}`;

describe('spreadsheets as people type them', () => {
  it('has an answer for every file of the folder', () => {
    const files = readdirSync(FOLDER).map((file) => file.replace('.csv', ''));
    expect([...Object.keys(TAKEN), ...Object.keys(REFUSED)].sort()).toEqual(files.sort());
    expect(files.filter((file) => Number(file.slice(0, 2)) % 2 === 0).length).toBeGreaterThan(16);
  });

  it.each(Object.entries(TAKEN))('%s: what is taken', async (name, { rows, sums, readAs }) => {
    const result = await read(name);
    if (!result.ok) throw new Error(JSON.stringify(result.problems));
    expect(result.rows.map(shortRow)).toEqual(rows);
    expect(result.sums.map(shortSum)).toEqual(sums ?? []);
    expect(result.readAs).toEqual({ ...none, ...readAs });
  });

  it.each(Object.entries(REFUSED))('%s: why nothing is taken', async (name, problems) => {
    expect(await read(name)).toEqual({ ok: false, problems });
  });

  it('takes means and totals for slates only where a person says so', async () => {
    const blank = await read('21-total-empty', true);
    expect(blank.ok && blank.rows.map(shortRow)).toEqual(['A 6.24', 'A 6.24']);
    expect(blank.ok && blank.readAs.filled).toEqual([3]);
    const named = await read('08-mean-and-total', true);
    expect(named.ok && named.rows.map(shortRow)).toContain('Mean 6.1');
  });
});
