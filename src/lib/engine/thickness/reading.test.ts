import { describe, expect, it } from 'vitest';
import { readSlate } from './reading.ts';

const frozen = (...points: number[]) => Object.freeze(points);

describe('readSlate', () => {
  it('refuses no point and five points as misuse', () => {
    expect(() => readSlate([])).toThrow(/wrong-length/);
    expect(() => readSlate(frozen(5, 5, 5, 5, 5))).toThrow(/wrong-length/);
  });

  it.each([Number.NaN, Infinity, -Infinity])('asks again for %f', (value) => {
    expect(readSlate(frozen(6, value))).toEqual({
      ok: false,
      reason: 'not-a-number',
      point: 1,
      hints: []
    });
  });

  it('takes one point as it is, without taper', () => {
    expect(readSlate(frozen(6.4))).toEqual({
      ok: true,
      pointsMm: [6.4],
      thicknessMm: 6.4,
      hundredths: 640,
      taperMm: 0
    });
  });

  it('takes the mean and the taper of four points', () => {
    const reading = readSlate(frozen(6.1, 6.3, 6.8, 6.4));
    expect(reading).toMatchObject({ thicknessMm: 6.4, taperMm: 0.7 });
  });

  it('rounds a half hundredth up, whatever its binary form', () => {
    expect(readSlate(frozen(5.0, 5.01))).toMatchObject({ hundredths: 501 });
    expect(readSlate(frozen(1.505))).toMatchObject({ hundredths: 151 });
  });

  it.each([
    [1.49, 'too-thin'],
    [1.5, undefined],
    [40, undefined],
    [40.01, 'too-thick']
  ])('at the edge of the range, %f mm: %s', (lengthMm, reason) => {
    const reading = readSlate(frozen(lengthMm));
    expect(reading.ok ? undefined : reading.reason).toBe(reason);
  });

  it.each([
    [0.25, [{ meantAs: 'inches', lengthMm: 6.35 }]],
    [
      0.64,
      [
        { meantAs: 'inches', lengthMm: 16.26 },
        { meantAs: 'centimetres', lengthMm: 6.4 }
      ]
    ],
    [64, [{ meantAs: 'tenths', lengthMm: 6.4 }]],
    [640, [{ meantAs: 'hundredths', lengthMm: 6.4 }]],
    [0, []],
    [-6, []],
    [6400, []]
  ])('guesses what %f may have meant', (value, hints) => {
    expect(readSlate(frozen(value))).toMatchObject({ ok: false, hints });
  });
});
