import { describe, expect, it } from 'vitest';
import { readPoints } from './read-points.ts';

describe('readPoints', () => {
  it.each([
    ['6.20/6.30/6.10', [6.2, 6.3, 6.1]],
    ['6,2 6,4', [6.2, 6.4]],
    [' 6.2 | 6.3;6.1+6 ', [6.2, 6.3, 6.1, 6]],
    ['6.2 mm/6.4 mm', [6.2, 6.4]]
  ])('reads %j', (text, pointsMm) => {
    expect(readPoints(text, 'mm')).toEqual(pointsMm);
  });

  it('takes inches for what they are', () => {
    expect(readPoints('0.25/0.26', 'inch')).toEqual([6.35, 6.6]);
  });

  it.each(['', '6.2', '3/8', '6.2/', '6.2/x', '6.2/60', '6/6.1/6.2/6.3/6.4', 'left right'])(
    'leaves %j to be refused',
    (text) => {
      expect(readPoints(text, 'mm')).toBeUndefined();
    }
  );
});
