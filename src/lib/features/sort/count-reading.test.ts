import { describe, expect, it } from 'vitest';
import { packedThickness } from '$lib/engine/thickness';
import { readCountByHeight, readHeights, readSlates } from './count-reading.ts';

const packed = packedThickness(1, [undefined], [{ pile: 1, slates: 50, totalMm: 360 }]);

describe('a number of slates', () => {
  it.each([
    ['', { kind: 'empty' }],
    ['0', { kind: 'counted', slates: 0 }],
    [' 310 ', { kind: 'counted', slates: 310 }],
    ['1,200', { kind: 'counted', slates: 1200 }],
    ['1 200', { kind: 'counted', slates: 1200 }],
    ['12.5', { kind: 'wrong', problem: 'not-whole' }],
    ['-3', { kind: 'wrong', problem: 'not-whole' }],
    ['8x', { kind: 'wrong', problem: 'not-whole' }],
    ['2001', { kind: 'wrong', problem: 'too-many' }]
  ])('%j', (typed, read) => {
    expect(readSlates(typed, 2000)).toEqual(read);
  });
});

describe('heights of stacks', () => {
  it.each([
    ['640', [640]],
    ['420 + 380', [420, 380]],
    ['420+380+95', [420, 380, 95]],
    ['64 cm', [640]],
    ['1,200', [1200]]
  ])('%j', (typed, heightsMm) => {
    expect(readHeights(typed, 'mm')).toEqual({ ok: true, heightsMm });
  });

  it('in inches where the job is in feet and inches', () => {
    expect(readHeights('10 + 1′ 2″', 'ftIn')).toEqual({ ok: true, heightsMm: [254, 355.6] });
  });

  it.each([
    ['0', 'height-zero'],
    ['420 + 0', 'height-zero'],
    ['420 +', 'not-a-height'],
    ['-5', 'not-a-height'],
    ['high', 'not-a-height'],
    ['64000', 'too-high']
  ])('%j: %s', (typed, problem) => {
    expect(readHeights(typed, 'mm')).toEqual({ ok: false, problem });
  });
});

describe('a count by height', () => {
  it('is height ÷ packed thickness, with its interval', () => {
    expect(readCountByHeight('400 + 320', 'mm', packed)).toMatchObject({
      kind: 'counted',
      slates: 100,
      byHeight: { heightMm: 720, slates: 100 }
    });
  });

  it('waits for a stack of known count, and tells a bad height first', () => {
    const unknown = { ok: false, reason: 'no-stack' } as const;
    expect(readCountByHeight('', 'mm', unknown)).toEqual({ kind: 'empty' });
    expect(readCountByHeight('640', 'mm', unknown)).toEqual({ kind: 'wrong', problem: 'no-stack' });
    expect(readCountByHeight('0', 'mm', unknown)).toEqual({
      kind: 'wrong',
      problem: 'height-zero'
    });
  });
});
