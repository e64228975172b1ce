import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SET_ASIDE_REASONS, SET_ASIDE_USES, meanHundredths } from '$lib/journal';
import {
  type CsvExportRow,
  type CsvStyle,
  SPREADSHEET_STYLE,
  readReadingsCsv,
  writeReadingsCsv
} from '$lib/storage';

const SEED = 20_260_702;

const text = fc
  .string({ unit: 'grapheme', minLength: 1, maxLength: 20 })
  .map((raw) => raw.replace(/\p{Cc}/gu, ' ').trim())
  .filter((trimmed) => trimmed !== '');
/** Points of a slate with their mean, as the export writes them. */
const gauged = fc
  .array(fc.integer({ min: 150, max: 4000 }), { minLength: 1, maxLength: 4 })
  .map((points) => ({
    thicknessHundredths: meanHundredths(points),
    ...(points.length > 1 && { pointsHundredths: points })
  }));
const some = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });
const mm = fc.double({ min: 0, max: 200, noNaN: true });
const sample = fc.record(
  {
    drawId: fc.constantFrom('018f0000-0000-7000-8000-00000000000a', 'file'),
    layer: fc.nat(500),
    place: fc.nat(500),
    lengthMm: mm,
    widthMm: mm,
    outOfSquareMm: mm,
    edgeBowMm: mm,
    flatnessMm: mm,
    ring: fc.constantFrom('clear' as const, 'dull' as const),
    defects: fc.uniqueArray(fc.constantFrom(...SET_ASIDE_REASONS), { maxLength: 8 })
  },
  { requiredKeys: [] }
);
const awkward = fc.constantFrom(
  '# 3 north',
  '=1+1',
  "'=x",
  '-5',
  '@a',
  'a,b',
  'c;d',
  'say "no"',
  "'",
  '+',
  '0'
);
const row: fc.Arbitrary<CsvExportRow> = fc
  .record({
    pallet: fc.oneof(text, awkward),
    slate: fc.oneof(
      fc
        .record({ gauged, sample: some(sample), rocks: some(fc.boolean()) })
        .map(({ gauged: slate, ...seen }) => ({ ...slate, ...seen })),
      fc.record({ grade: fc.integer({ min: 1, max: 8 }) }),
      fc.record({
        setAside: fc.record({
          reason: fc.constantFrom(...SET_ASIDE_REASONS),
          use: fc.constantFrom(...SET_ASIDE_USES)
        }),
        sample: some(sample)
      })
    ),
    sorter: fc.option(fc.oneof(text, awkward), { nil: undefined })
  })
  .map(({ pallet, slate, sorter }) => ({ pallet, sorter, ...slate }));
const style = fc.constantFrom<CsvStyle>(
  'standard',
  SPREADSHEET_STYLE,
  { separator: '\t', decimal: ',', bom: false },
  { separator: ',', decimal: ',', bom: true }
);

describe('files of readings', () => {
  it('give back every row that was written, in every style', () => {
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 30 }), style, (rows, chosen) => {
        const result = readReadingsCsv(writeReadingsCsv(rows, chosen));
        if (!result.ok) throw new Error(JSON.stringify(result.problems));
        const wanted = rows.map(({ sorter: _sorter, ...kept }) => kept);
        expect(result.rows.map(({ line: _line, ...kept }) => kept)).toEqual(wanted);
        expect(result.readAs).toMatchObject({ notes: [], filled: [], headings: [] });
        expect(result.sums).toEqual([]);
      }),
      { seed: SEED, numRuns: 500 }
    );
  });

  it('say the same with each pallet named once, as merged cells leave it', () => {
    const measured = row.filter(({ setAside }) => setAside === undefined);
    fc.assert(
      fc.property(fc.array(measured, { minLength: 1, maxLength: 20 }), (rows) => {
        const whole = writeReadingsCsv(rows.map((one) => ({ ...one, pallet: 'A;b' })));
        const other = writeReadingsCsv(rows.map((one) => ({ ...one, pallet: 'C' })));
        const named = whole + other.slice(other.indexOf('\n') + 1);
        const merged = named
          .split('\r\n')
          .map((line, at) =>
            at === 1 || at === rows.length + 1 ? line : line.replace(/^(A;b|C),/, ',')
          )
          .join('\r\n');
        const [full, blank] = [named, merged].map((file) => readReadingsCsv(file, true));
        if (!full.ok || !blank.ok) throw new Error(JSON.stringify([full, blank]));
        expect(blank.rows).toEqual(full.rows);
        expect(blank.readAs.filled).toHaveLength(2 * (rows.length - 1));
      }),
      { seed: SEED, numRuns: 200 }
    );
  });

  it('never let a spreadsheet start a formula from a text', () => {
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 10 }), (rows) => {
        for (const line of writeReadingsCsv(rows).split('\r\n').slice(1))
          expect(line).not.toMatch(/^"?[=+\-@\t\r]/);
      }),
      { seed: SEED, numRuns: 300 }
    );
  });

  it('are read or refused, never thrown at, whatever the text', () => {
    const junk = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 300 }),
      fc
        .array(fc.constantFrom('pallet', ',', ';', '\t', '\n', '\r', '"', '6', '.', 'grade', '-'), {
          maxLength: 60
        })
        .map((parts) => parts.join(''))
    );
    fc.assert(
      fc.property(junk, (raw) => {
        for (const head of ['', 'pallet,thickness_mm\n', 'pallet;grade;x\n']) {
          const result = readReadingsCsv(head + raw);
          if (!result.ok) expect(result.problems.length).toBeGreaterThan(0);
        }
      }),
      { seed: SEED, numRuns: 1000 }
    );
  });

  it('cut anywhere, give either a refusal or the rows before the cut', () => {
    const measured = row.filter(({ thicknessHundredths }) => thicknessHundredths !== undefined);
    fc.assert(
      fc.property(
        fc.array(measured, { minLength: 2, maxLength: 8 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (rows, share) => {
          const whole = writeReadingsCsv(rows);
          const result = readReadingsCsv(whole.slice(0, Math.floor(whole.length * share)));
          if (!result.ok) return;
          const wanted = rows.map(({ thicknessHundredths }) => thicknessHundredths);
          const read = result.rows.map(({ thicknessHundredths }) => thicknessHundredths);
          expect(read).toEqual(wanted.slice(0, read.length));
        }
      ),
      { seed: SEED, numRuns: 1000 }
    );
  });
});
