import { expect, it } from 'vitest';
import { NumberWords } from '$lib/text/numbers.ts';
import { sheetName } from './sheet-name.ts';

const numbers = new NumberWords('en-GB');
const sizes = [
  { sizeId: 'long', lengthMm: 500 },
  { sizeId: 'short', lengthMm: 400 }
];
const settings = { lengthUnit: 'mm' } as const;

it('a sheet of several lengths says which one it is about; a sheet of one does not', () => {
  const barn = { name: 'Barn', settings };
  expect(sheetName({ ...barn, sizes, sizeId: 'short' }, numbers)).toBe('Barn, 400 mm');
  expect(sheetName({ ...barn, sizes: [] }, numbers)).toBe('Barn');
  expect(sheetName({ ...barn, sizes: sizes.slice(0, 1), sizeId: 'long' }, numbers)).toBe('Barn');
});
