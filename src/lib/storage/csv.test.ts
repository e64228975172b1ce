import { describe, expect, it } from 'vitest';
import { readReadingsCsv } from './csv.ts';
import { readReadingsCsvFile } from './csv-file.ts';
import { type CsvProblem, MAX_CSV_BYTES } from './csv-types.ts';

const HEAD = 'pallet,thickness_mm\n';

function problemsOf(text: string): readonly CsvProblem[] {
  const result = readReadingsCsv(text);
  if (result.ok) throw new Error(`read ${result.rows.length} rows of a bad file`);
  return result.problems;
}

function rowsOf(text: string) {
  const result = readReadingsCsv(text);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result;
}

describe('readReadingsCsv, bad input', () => {
  it.each([
    ['an empty file', '', [{ code: 'empty' }]],
    ['blank lines only', '\r\n\n  \n', [{ code: 'empty' }]],
    ['headings only', HEAD, [{ code: 'no-rows' }]],
    [
      'no pallet column',
      'stack,thickness_mm\nA,6.4\n',
      [{ code: 'missing-column', column: 'pallet', found: ['stack', 'thickness_mm'] }]
    ],
    [
      'no thickness and no grade',
      'pallet,time\nA,9\n',
      [{ code: 'missing-column', column: 'thickness_mm or grade', found: ['pallet', 'time'] }]
    ],
    [
      'no headings',
      'A;6.4\nB;6.5\n',
      [
        { code: 'missing-column', column: 'pallet', found: ['A', '6.4'] },
        { code: 'missing-column', column: 'thickness_mm or grade', found: ['A', '6.4'] }
      ]
    ],
    [
      'one column twice',
      'pallet,thickness_mm,Thickness mm\nA,6.4,6.5\n',
      [{ code: 'duplicate-column', column: 'thickness_mm' }]
    ],
    ['zero', HEAD + 'A,6.4\nA,0\n', [{ code: 'zero', line: 3, text: '0' }]],
    ['−3', HEAD + 'A,-3\n', [{ code: 'negative', line: 2, text: '-3' }]],
    ['60 mm', HEAD + 'A,60\n', [{ code: 'too-thick', line: 2, text: '60', limitMm: 40 }]],
    ['1e9', HEAD + 'A,1e9\n', [{ code: 'too-thick', line: 2, text: '1e9', limitMm: 40 }]],
    ['1e300', HEAD + 'A,1e300\n', [{ code: 'too-thick', line: 2, text: '1e300', limitMm: 40 }]],
    [
      'one thin number among others',
      HEAD + 'A,6.4\nA,0.25\n',
      [{ code: 'too-thin', line: 3, text: '0.25', limitMm: 1.5 }]
    ],
    ['a word', HEAD + 'A,abc\n', [{ code: 'not-a-number', line: 2, text: 'abc' }]],
    ['NaN', HEAD + 'A,NaN\n', [{ code: 'not-a-number', line: 2, text: 'NaN' }]],
    ['a formula', HEAD + 'A,=6+1\n', [{ code: 'not-a-number', line: 2, text: '=6+1' }]],
    [
      '6,4,2 in one cell',
      'pallet;thickness_mm\nA;6,4,2\n',
      [{ code: 'several-decimals', line: 2, text: '6,4,2' }]
    ],
    [
      'thousands and decimals',
      'pallet;thickness_mm\nA;1.234,5\n',
      [{ code: 'several-decimals', line: 2, text: '1.234,5' }]
    ],
    [
      'the comma parts cells and marks decimals',
      HEAD + 'A,6,4\nA,6,5\n',
      [{ code: 'comma-twice', line: 2 }]
    ],
    [
      'two decimal marks in one column',
      'pallet;thickness_mm\nA;6.4\nA;7\nA;6,5\n',
      [{ code: 'mixed-decimals', pointLine: 2, commaLine: 4 }]
    ],
    ['1,234', HEAD + 'A,"1,234"\n', [{ code: 'ambiguous-decimal', line: 2, text: '1,234' }]],
    [
      '6.400 where the semicolon parts cells',
      'pallet;thickness_mm\nA;6.400\n',
      [{ code: 'ambiguous-decimal', line: 2, text: '6.400' }]
    ],
    [
      'inches typed as mm',
      HEAD + 'A,0.25\nB,0.31\n',
      [{ code: 'looks-like-inches', line: 2, text: '0.25', perhapsMm: 6.35 }]
    ],
    [
      'a grade nobody knows',
      'pallet,grade\nA,thick\nA,fat\nA,0\n',
      [
        { code: 'unknown-grade', line: 3, text: 'fat' },
        { code: 'unknown-grade', line: 4, text: '0' }
      ]
    ],
    [
      'three words and a fourth pile',
      'pallet,grade\nA,thin\nA,4\n',
      [{ code: 'mixed-grades', line: 3, text: '4' }]
    ],
    ['no pallet', HEAD + ' ,6.4\n', [{ code: 'missing-pallet', line: 2 }]],
    ['neither thickness nor grade', HEAD + 'A,\n', [{ code: 'no-reading', line: 2 }]],
    [
      'too many cells',
      HEAD + 'A,6.4\nA,6.4,x\nA,6.4\n',
      [{ code: 'columns-differ', line: 3, found: 3, expected: 2 }]
    ],
    ['an unclosed quote', HEAD + 'A,6.4\n"B,6.4\nC,7\n', [{ code: 'unclosed-quote', line: 3 }]],
    ['a stray quote', HEAD + '"A"x,6.4\n', [{ code: 'stray-quote', line: 2 }]],
    ['a torn last line', HEAD + 'A,6.4\nB', [{ code: 'torn-last-line', line: 3 }]],
    [
      'a last number cut short',
      HEAD + 'A,6.40\nA,6.55\nB,6.',
      [{ code: 'torn-last-line', line: 4 }]
    ],
    ['a last word cut short', 'pallet,grade\nA,thin\nA,med', [{ code: 'torn-last-line', line: 3 }]],
    [
      'five points',
      HEAD + 'A,6.1/6.2/6.3/6.4/6.5\n',
      [{ code: 'too-many-points', line: 2, found: 5 }]
    ],
    [
      'a point that is no number',
      HEAD + 'A,6.1/6.x\n',
      [{ code: 'not-a-number', line: 2, text: '6.1/6.x' }]
    ],
    [
      'inches under a heading in mm',
      HEAD + 'A,6.1\nA,0.25 in\n',
      [{ code: 'unit-differs', line: 3, text: '0.25 in' }]
    ],
    [
      'mm under a heading in inches',
      'pallet,thickness (inch)\nA,6.2\n',
      [{ code: 'too-thick', line: 2, text: '6.2 in', limitMm: 40 }]
    ],
    [
      'marks of a slate that nobody gauged',
      'pallet,grade,ring\nA,thin,clear\n',
      [{ code: 'marks-without-thickness', line: 2 }]
    ],
    [
      'a ring, a fault, a layer and a length nobody knows',
      'pallet,thickness_mm,layer,ring,faults,length\nA,6,top,loud,mossy,9000\n',
      [
        { code: 'bad-measure', line: 2, text: '9000', limitMm: 2000 },
        { code: 'not-whole', line: 2, text: 'top' },
        { code: 'unknown-ring', line: 2, text: 'loud' },
        { code: 'unknown-fault', line: 2, text: 'mossy' }
      ]
    ],
    [
      'two headings for one column',
      'Plt,Pal,Th\nA,B,6\n',
      [{ code: 'duplicate-column', column: 'Plt' }]
    ],
    [
      'a ragged last line of a whole file',
      HEAD + 'A,6.4\nB\n',
      [{ code: 'columns-differ', line: 3, found: 1, expected: 2 }]
    ],
    [
      'a blank pallet above all others',
      HEAD + ',6.4\nA,6.5\n',
      [{ code: 'missing-pallet', line: 2 }]
    ],
    ['NUL bytes', 'pallet,thick\0ness_mm\nA,6.4\n', [{ code: 'binary' }]],
    ['a picture', '\u0089PNG\r\n\u001a\n\u0000', [{ code: 'binary' }]]
  ])('%s', (_title, text, problems) => {
    expect(problemsOf(text)).toEqual(problems);
  });

  it('names the line on which a row begins, behind quoted line breaks', () => {
    expect(problemsOf(HEAD + '"A\nB",6.4\nC,x\n')).toEqual([
      { code: 'not-a-number', line: 4, text: 'x' }
    ]);
  });

  it('lists a hundred problems and counts the rest', () => {
    const problems = problemsOf(HEAD + 'A,7\n' + 'A,x\n'.repeat(1000));
    expect(problems).toHaveLength(101);
    expect(problems.at(-1)).toEqual({ code: 'more-problems', count: 900 });
  });

  it('refuses 200 MB before reading a byte', async () => {
    const reads: string[] = [];
    const file = {
      size: 200 * 1024 * 1024,
      arrayBuffer: () => {
        reads.push('read');
        return Promise.reject(new Error('read'));
      }
    } as unknown as Blob;
    expect(await readReadingsCsvFile(file)).toEqual({
      ok: false,
      problems: [{ code: 'too-large', bytes: 209_715_200, limitBytes: MAX_CSV_BYTES }]
    });
    expect(reads).toEqual([]);
  });
});

describe('readReadingsCsv', () => {
  it('reads thickness and grade, with commas', () => {
    const { rows, separator, decimal } = rowsOf('pallet,thickness_mm,grade\nA,6.4,\nB,,Thin\n');
    expect(rows).toEqual([
      { line: 2, pallet: 'A', thicknessHundredths: 640 },
      { line: 3, pallet: 'B', grade: 3 }
    ]);
    expect({ separator, decimal }).toEqual({ separator: ',', decimal: '.' });
  });

  it('reads semicolons and decimal commas, a byte order mark, CR LF', () => {
    const { rows, separator, decimal } = rowsOf('\uFEFFPallet;Thickness (mm)\r\nA;6,285\r\nA;7,1');
    expect(rows.map((row) => row.thicknessHundredths)).toEqual([629, 710]);
    expect({ separator, decimal }).toEqual({ separator: ';', decimal: ',' });
  });

  it('reads tabs, old line ends, headings in any case and spacing, other columns aside', () => {
    const result = rowsOf('Note\t PALLET \tThickness mm\r x\tA 1\t6.40 mm\r');
    expect(result.rows).toEqual([{ line: 2, pallet: 'A 1', thicknessHundredths: 640 }]);
    expect(result.readAs.ignored).toEqual(['Note']);
  });

  it('takes three decimals where another cell shows what the comma means', () => {
    const { rows } = rowsOf('pallet;thickness_mm\nA;6,400\nA;6,4\n');
    expect(rows.map((row) => row.thicknessHundredths)).toEqual([640, 640]);
  });

  it('is told the separator by a first line, and keeps the numbers of lines', () => {
    for (const [line, separator] of [
      ['sep=;', ';'],
      ['"sep=,"', ','],
      ['SEP=\\t', '\t'],
      ['sep=\t', '\t']
    ] as const) {
      const { rows, separator: found } = rowsOf(
        `${line}\npallet${separator}thickness_mm\nA${separator}6\n`
      );
      expect([found, rows[0].line]).toEqual([separator, 3]);
    }
  });

  it('leaves other headings alone where the one of the export is there', () => {
    const { rows, readAs } = rowsOf('pallet,Pallet No,thickness_mm,Mean,slate\nA,7,6.4,9,12\n');
    expect(rows).toEqual([{ line: 2, pallet: 'A', thicknessHundredths: 640 }]);
    expect(readAs.ignored).toEqual(['Pallet No', 'Mean', 'slate']);
  });

  it('leaves a column alone that calls itself sample and numbers something', () => {
    const { rows, readAs } = rowsOf('pallet,thickness_mm,sample\nA,6.4,S1\nA,6.5,S2\n');
    expect(rows.map((row) => row.sample)).toEqual([undefined, undefined]);
    expect(readAs.ignored).toEqual(['sample']);
  });

  it('asks about no merged cell that happens to equal the one above', () => {
    const { rows, sums } = rowsOf(HEAD + 'A,6.1\n,6.2\n,6.3\nB,5.9\n,5.9\n');
    expect(rows.map(({ pallet }) => pallet)).toEqual(['A', 'A', 'A', 'B', 'B']);
    expect(sums).toEqual([]);
  });

  it('takes a name of many lines for a pallet, whatever it says', () => {
    expect(rowsOf(HEAD + 'Max,6.1\nMax,6.2\nMax,6.3\n').sums).toEqual([]);
  });

  it('takes both ends of the accepted range, after rounding', () => {
    const { rows } = rowsOf(HEAD + 'A,1.495\nA,40.004\n');
    expect(rows.map((row) => row.thicknessHundredths)).toEqual([150, 4000]);
  });

  it('skips blank lines and blank rows, and counts them as lines', () => {
    expect(rowsOf('\n' + HEAD + '\n,\nA,6.4\n').rows[0].line).toBe(5);
  });

  it('takes a whole last line without a line break', () => {
    expect(rowsOf(HEAD + 'A,6.40\nA,6.55\nB,6.45').rows).toHaveLength(3);
    expect(rowsOf(HEAD + 'A,6.4\nA,6.55\nB,6').rows).toHaveLength(3);
  });

  it('reads a pallet that is called Total in time with its lines, however many', () => {
    const { rows } = rowsOf(HEAD + 'Total,6.4\n'.repeat(100_000));
    expect(rows).toHaveLength(100_000);
  });

  it('keeps headings and pallets that name things of JavaScript', () => {
    const { rows, readAs } = rowsOf('__proto__,pallet,grade\nx,constructor,1\n');
    expect(rows).toEqual([{ line: 2, pallet: 'constructor', grade: 1 }]);
    expect(readAs.ignored).toEqual(['__proto__']);
  });

  it('reads UTF-8, UTF-16 and Windows-1252', async () => {
    const text = 'pallet;thickness_mm\nGrün;6,4\n';
    const utf16 = new Uint8Array(2 + 2 * text.length);
    utf16.set([0xff, 0xfe]);
    for (let at = 0; at < text.length; at++) utf16[2 + 2 * at] = text.charCodeAt(at);
    const windows = Uint8Array.from(text, (letter) => letter.charCodeAt(0));
    for (const bytes of [text, utf16, windows]) {
      const result = await readReadingsCsvFile(new Blob([bytes]));
      expect(result.ok && result.rows[0].pallet).toBe('Grün');
    }
  });
});
