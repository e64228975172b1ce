import { describe, expect, it } from 'vitest';
import { MOST_READINGS, readPasted } from './pasted-readings.ts';

describe('readPasted', () => {
  it.each([
    ['6.2 6.4 7.1', [6.2, 6.4, 7.1]],
    ['6.2\n6.4\r\n7.1\n', [6.2, 6.4, 7.1]],
    ['6,2; 6,4;7,1', [6.2, 6.4, 7.1]],
    ['6.2, 6.4, 7.1,', [6.2, 6.4, 7.1]],
    ['6.2,6.4,7.1', [6.2, 6.4, 7.1]],
    ['6.2 mm\t6.4mm', [6.2, 6.4]]
  ])('reads %j', (text, readingsMm) => {
    expect(readPasted(text)).toEqual({ ok: true, readingsMm });
  });

  it('finds the points of whole numbers where the readings so far say so', () => {
    expect(readPasted('62 65', { lowMm: 3, highMm: 13 })).toEqual({
      ok: true,
      readingsMm: [6.2, 6.5]
    });
  });

  it.each([
    ['6.2 abc 7', 'abc'],
    ['6.2 0.1', '0.1'],
    ['thickness 6.2', 'thickness'],
    ['6,2,6,4', '6,2,6,4']
  ])('takes nothing of %j and names %j', (text, bad) => {
    expect(readPasted(text)).toEqual({ ok: false, reason: 'not-a-reading', text: bad });
  });

  it('says when there is nothing, or too much', () => {
    expect(readPasted(' \n;')).toEqual({ ok: false, reason: 'empty' });
    expect(readPasted('6.2 '.repeat(MOST_READINGS + 1))).toEqual({ ok: false, reason: 'too-many' });
  });
});
