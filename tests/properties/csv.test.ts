import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SET_ASIDE_REASONS, SET_ASIDE_USES } from '$lib/journal';
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
const awkward = fc.constantFrom('=1+1', "'=x", '-5', '@a', 'a,b', 'c;d', 'say "no"', "'", '+', '0');
const row: fc.Arbitrary<CsvExportRow> = fc
  .record({
    pallet: fc.oneof(text, awkward),
    slate: fc.oneof(
      fc.record({ thicknessHundredths: fc.integer({ min: 150, max: 4000 }) }),
      fc.record({ grade: fc.integer({ min: 1, max: 8 }) }),
      fc.record({
        setAside: fc.record({
          reason: fc.constantFrom(...SET_ASIDE_REASONS),
          use: fc.constantFrom(...SET_ASIDE_USES)
        })
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
      }),
      { seed: SEED, numRuns: 500 }
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
    const gauged = row.filter(({ thicknessHundredths }) => thicknessHundredths !== undefined);
    fc.assert(
      fc.property(
        fc.array(gauged, { minLength: 2, maxLength: 8 }),
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
