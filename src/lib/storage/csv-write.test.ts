import { describe, expect, it } from 'vitest';
import { SPREADSHEET_STYLE, csvLine, withoutGuard, writeReadingsCsv } from './csv-write.ts';

describe('csvLine', () => {
  it.each([
    ['=1+1', "'=1+1"],
    ['+44', "'+44"],
    ['-5', "'-5"],
    ['@SUM(A1)', "'@SUM(A1)"],
    ['\tx', "'\tx"],
    ["'=x", "''=x"],
    ["'quoted'", "'quoted'"],
    ['a,b', '"a,b"'],
    ['say "no"', '"say ""no"""'],
    ['two\nlines', '"two\nlines"'],
    ['plain', 'plain']
  ])('writes the text %j as %j, and it is given back', (text, written) => {
    expect(csvLine([text])).toBe(`${written}\r\n`);
    if (!written.startsWith('"')) expect(withoutGuard(written)).toBe(text);
  });

  it('never guards a number', () => {
    const cells = [{ value: -1.5, decimals: 2 }, undefined];
    expect(csvLine(cells)).toBe('-1.50,\r\n');
    expect(csvLine(cells, SPREADSHEET_STYLE)).toBe('-1,50;\r\n');
  });

  it('quotes a decimal comma between commas', () => {
    const style = { separator: ',', decimal: ',', bom: false } as const;
    expect(csvLine([{ value: 6.4, decimals: 2 }], style)).toBe('"6,40"\r\n');
  });
});

describe('writeReadingsCsv', () => {
  const rows = [
    {
      pallet: 'North; 1',
      thicknessHundredths: 640,
      time: '2026-03-02T08:00:00.000Z',
      sorter: 'Wren',
      pile: 2
    },
    { pallet: 'B', grade: 3 },
    { pallet: 'B', setAside: { reason: 'broken', use: 'scrap' } as const },
    {
      pallet: 'B',
      thicknessHundredths: 620,
      pointsHundredths: [610, 630],
      rocks: false,
      sample: {
        drawId: 'list-1',
        layer: 3,
        place: 81,
        ring: 'dull' as const,
        defects: ['broken' as const, 'tapered' as const],
        lengthMm: 500,
        widthMm: 249.5,
        edgeBowMm: 0
      }
    },
    { pallet: 'B', thicknessHundredths: 600, sample: { drawId: 'list-1', defects: [] } }
  ];

  it('writes the standard', () => {
    expect(writeReadingsCsv(rows)).toBe(
      'pallet,thickness_mm,grade,time,sorter,pile,set_aside,points_mm,sample_list,layer,place,' +
        'ring,faults,length_mm,width_mm,out_of_square_mm,edge_bow_mm,flatness_mm,rocks,sample\r\n' +
        'North; 1,6.40,,2026-03-02T08:00:00.000Z,Wren,2,,,,,,,,,,,,,,\r\n' +
        'B,,3,,,,,,,,,,,,,,,,,\r\n' +
        'B,,,,,,broken/scrap,,,,,,,,,,,,,\r\n' +
        'B,6.20,,,,,,6.10/6.30,list-1,3,81,dull,broken/tapered,500,249.5,,0,,no,yes\r\n' +
        'B,6.00,,,,,,,list-1,,,,none,,,,,,,yes\r\n'
    );
  });

  it('writes for a spreadsheet with a decimal comma', () => {
    const written = writeReadingsCsv([rows[0], rows[3]], SPREADSHEET_STYLE);
    expect(written.slice(0, 29)).toBe('\uFEFFpallet;thickness_mm;grade;ti');
    expect(written.split('\r\n').slice(1)).toEqual([
      '"North; 1";6,40;;2026-03-02T08:00:00.000Z;Wren;2;;;;;;;;;;;;;;',
      'B;6,20;;;;;;6,10/6,30;list-1;3;81;dull;broken/tapered;500;249,5;;0;;no;yes',
      ''
    ]);
  });
});
