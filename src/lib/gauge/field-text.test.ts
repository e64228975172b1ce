import { describe, expect, it } from 'vitest';
import { changeOfText } from './field-text.ts';

describe('changeOfText', () => {
  it.each([
    ['', '', 0, ''],
    ['', '6', 0, '6'],
    ['6.4', '6.4', 0, ''],
    ['6', '6.42', 0, '.42'],
    ['6.42', '6.4', 1, ''],
    ['6,4', '6.4', 2, '.4'],
    ['6.4', '', 3, '']
  ])('%j to %j erases %i and inserts %j', (before, after, erased, inserted) => {
    expect(changeOfText(before, after)).toEqual({ erased, inserted });
  });
});
