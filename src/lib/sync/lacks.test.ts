import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLacksCode, writeLacksCode } from './lacks.ts';

const JOB = '018f0000-0000-7000-8000-00000000000a';
const device = (number: number) => `018f0000-0000-7000-8000-${String(number).padStart(12, '0')}`;
const HAVE = { [device(1)]: 812, [device(2)]: 40, [device(3)]: 1 };

describe('the code of what a device has', () => {
  it('is short, and is read in small letters, with spaces and without dashes', () => {
    const code = writeLacksCode(JOB, HAVE);
    expect(code).toMatch(/^[2-9A-HJKMNP-TV-Z]{3}(-[2-9A-HJKMNP-TV-Z]{1,3})+$/);
    expect(code.replaceAll('-', '').length).toBeLessThanOrEqual(21);
    const own = { ...HAVE, [device(1)]: 900, [device(4)]: 7 };
    for (const said of [
      code,
      code.toLowerCase(),
      code.replaceAll('-', ' '),
      code.replaceAll('-', '')
    ])
      expect(readLacksCode(JOB, own, said)).toEqual(HAVE);
  });

  it('of nothing says so, and never claims more than the sender has', () => {
    expect(readLacksCode(JOB, HAVE, writeLacksCode(JOB, {}))).toEqual({});
    expect(readLacksCode(JOB, { [device(1)]: 5 }, writeLacksCode(JOB, HAVE))).toEqual({
      [device(1)]: 5
    });
  });

  it('with a slip is refused: one sign wrong, or two changed about, or of another job', () => {
    const signs = writeLacksCode(JOB, HAVE).replaceAll('-', '');
    let taken = 0;
    for (let at = 0; at < signs.length; at++)
      for (const sign of '23456789ABCDEFGHJKMNPQRSTVWXYZ') {
        if (sign === signs[at]) continue;
        if (readLacksCode(JOB, HAVE, signs.slice(0, at) + sign + signs.slice(at + 1))) taken++;
      }
    // Two signs of check let one slip in 900 through; a wrong count then only sends too much, or a
    // merge that lacks something is refused whole.
    expect(taken / (signs.length * 29)).toBeLessThan(4 / 900);
    expect(readLacksCode(JOB.replace(/a$/, 'b'), HAVE, signs)).toBeUndefined();
    for (const wrong of ['', '?', 'O', signs.slice(1), signs.slice(0, -1), `${signs}0`])
      expect(readLacksCode(JOB, HAVE, wrong), wrong).toBeUndefined();
  });

  it('tells what is had and no more, for any numbers of any devices', () => {
    const numbers = fc.dictionary(fc.nat(999).map(device), fc.integer({ min: 1, max: 9_999_999 }), {
      maxKeys: 9
    });
    fc.assert(
      fc.property(numbers, numbers, (have, more) => {
        const own = { ...have, ...more };
        const read = readLacksCode(JOB, own, writeLacksCode(JOB, have)) ?? {};
        for (const [one, last] of Object.entries(read))
          // A tag that two devices share may be taken for the other in one of 27,000.
          if (have[one] !== undefined) expect(last).toBe(Math.min(have[one], own[one]));
      }),
      { numRuns: 300, seed: 20 }
    );
  });
});
