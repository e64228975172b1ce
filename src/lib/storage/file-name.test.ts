import { expect, it } from 'vitest';
import { safeFileName } from './file-name.ts';

it.each([
  ['../Barn: north / "old"', 'Barn north old.csv'],
  ['', 'job.csv'],
  ['...', 'job.csv'],
  ['CON', 'job CON.csv'],
  ['Scheune Süd_2', 'Scheune Süd_2.csv'],
  ['a\u202Egpj.exe', 'a gpj exe.csv'],
  ['x'.repeat(300), `${'x'.repeat(80)}.csv`]
])('a job called %j goes to the file %j', (name, file) => {
  expect(safeFileName(name, 'csv')).toBe(file);
});
