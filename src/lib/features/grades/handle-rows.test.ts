import { expect, it } from 'vitest';
import { handleRows } from './handle-rows.ts';

it('puts handles that would overlap into rows below', () => {
  expect(handleRows([], 50)).toEqual([]);
  expect(handleRows([10, 60, 110], 50)).toEqual([0, 0, 0]);
  expect(handleRows([10, 30, 80], 50)).toEqual([0, 1, 0]);
  expect(handleRows([10, 20, 30, 60, 70], 50)).toEqual([0, 1, 2, 0, 1]);
});
