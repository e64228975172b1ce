import { describe, expect, it } from 'vitest';
import { holesIn, slatesIn } from './reclaimed.svelte.ts';

describe('sizes of reclaimed slates as they are typed', () => {
  it('takes x, × and *, with or without millimetres, one after another', () => {
    expect(slatesIn('502 x 248, 405×200;\n 330 mm * 180.5 mm')).toEqual([
      { lengthMm: 502, widthMm: 248 },
      { lengthMm: 405, widthMm: 200 },
      { lengthMm: 330, widthMm: 180.5 }
    ]);
  });

  it.each(['', ' , ', '502', '502 x', '502 x 0', '502 x 248, abc', '-5 x 20', '5 x 20 x 30'])(
    'refuses %j whole',
    (text) => {
      expect(slatesIn(text)).toBeUndefined();
    }
  );

  it('old holes are numbers, or there are none to speak of', () => {
    expect(holesIn('304, 306')).toEqual([304, 306]);
    expect(holesIn('304, hole')).toBeUndefined();
  });
});
