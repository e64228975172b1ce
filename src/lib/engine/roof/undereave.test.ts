import { describe, expect, it } from 'vitest';
import { slateSpec } from './slate-spec.ts';
import { type FaultOfSlate, undereavePattern, usableForUndereave } from './undereave.ts';

const PATTERN = undereavePattern(slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 }), 200);
const LONG = { lengthMm: 300, widthMm: 250 };
const SHORT = { lengthMm: 299.9, widthMm: 250 };
const NARROW = { lengthMm: 500, widthMm: 249 };

describe('undereavePattern', () => {
  it('is the slate less its gauge, holed 20 mm below its head when centre-nailed', () => {
    expect(PATTERN).toEqual({
      lengthMm: 300,
      widthMm: 250,
      holeFromTailMm: 280,
      holeFromHeadMm: 20
    });
  });
});

describe('usableForUndereave', () => {
  it.each<[FaultOfSlate, typeof LONG | undefined, object]>([
    ['broken', LONG, { use: 'yes' }],
    ['broken', undefined, { use: 'look', because: 'measure' }],
    ['broken', SHORT, { use: 'no', because: 'too-short' }],
    ['wrong-size', NARROW, { use: 'no', because: 'too-narrow' }],
    ['wrong-size', LONG, { use: 'yes' }],
    ['colour', undefined, { use: 'yes' }],
    ['colour', SHORT, { use: 'no', because: 'too-short' }],
    ['dull-ring', LONG, { use: 'no', because: 'unsound' }],
    ['twisted', LONG, { use: 'no', because: 'bends' }],
    ['tapered', undefined, { use: 'look', because: 'thickness' }],
    ['inclusion', LONG, { use: 'look', because: 'inclusion' }],
    ['other', undefined, { use: 'look', because: 'unknown' }]
  ])('%s, sound part %o: %o', (reason, sound, answer) => {
    expect(usableForUndereave(reason, sound, PATTERN)).toEqual(answer);
  });
});
