import type { ColumnCell } from './csv-cells.ts';
import type { Column } from './csv-headings.ts';
import {
  LARGEST_DEVIATION_MM,
  LARGEST_SIDE_MM,
  readFaults,
  readMeasure,
  readRing,
  readWhole,
  readYesNo
} from './csv-marks.ts';
import type { CsvProblem, CsvReading, CsvSample } from './csv-types.ts';

/** The lengths of a slate of the sample: the column, the name in the journal, the largest taken. */
const MEASURES = [
  ['length', 'lengthMm', LARGEST_SIDE_MM],
  ['width', 'widthMm', LARGEST_SIDE_MM],
  ['outOfSquare', 'outOfSquareMm', LARGEST_DEVIATION_MM],
  ['edgeBow', 'edgeBowMm', LARGEST_DEVIATION_MM],
  ['flatness', 'flatnessMm', LARGEST_DEVIATION_MM]
] as const;
/** The id of a list of places, as the journal makes it. */
const LIST_ID = /^[A-Za-z0-9.-]{1,64}$/;

/** Whether a cell answers yes or no. */
export function holdsYesNo(cell: ColumnCell): boolean {
  return typeof readYesNo(cell) === 'boolean';
}

/**
 * What a row says of its slate as one of the sample: where it was drawn, ring, faults, sizes. A row
 * with none of these is no slate of the sample.
 */
export function readSample(
  cellOf: (column: Column) => ColumnCell | undefined,
  take: <T>(
    cell: ColumnCell | undefined,
    read: (cell: ColumnCell) => T | CsvProblem
  ) => T | undefined
): Pick<CsvReading, 'sample' | 'rocks'> {
  const rocks = take(cellOf('rocks'), readYesNo);
  const isMarked = take(cellOf('sample'), readYesNo) === true;
  const list = cellOf('list')?.text;
  const measures = MEASURES.map(([column, name, limitMm]) => [
    name,
    take(cellOf(column), (cell) => readMeasure(cell, limitMm))
  ]);
  const found = Object.fromEntries(
    [
      ['drawId', list && LIST_ID.test(list) ? list : undefined],
      ['layer', take(cellOf('layer'), readWhole)],
      ['place', take(cellOf('place'), readWhole)],
      ...measures,
      ['ring', take(cellOf('ring'), readRing)],
      ['defects', take(cellOf('faults'), readFaults)]
    ].filter(([, value]) => value !== undefined)
  ) as CsvSample;
  const isSample = isMarked || Object.keys(found).length > 0;
  return { ...(isSample && { sample: found }), ...(rocks !== undefined && { rocks }) };
}
