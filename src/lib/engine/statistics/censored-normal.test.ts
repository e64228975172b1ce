import { describe, expect, it } from 'vitest';
import { fitCensoredNormal } from './censored-normal.ts';

describe('fitCensoredNormal', () => {
  it('refuses ends that run backwards, NaN and negative counts', () => {
    expect(() => fitCensoredNormal([{ from: 6, to: 5, count: 1 }])).toThrow(/wrong-order/);
    expect(() => fitCensoredNormal([{ from: Infinity, to: Infinity, count: 1 }])).toThrow(
      /wrong-order/
    );
    expect(() => fitCensoredNormal([{ from: Number.NaN, to: 5, count: 1 }])).toThrow(/not-finite/);
    expect(() => fitCensoredNormal([{ from: 4, to: 5, count: -1 }])).toThrow(/out-of-range/);
  });

  it('passes over groups that say nothing', () => {
    const groups = [
      { from: -Infinity, to: 5, count: 30 },
      { from: 5, to: 7, count: 50 },
      { from: 7, to: Infinity, count: 20 }
    ];
    const saying = fitCensoredNormal(groups);
    const withMore = fitCensoredNormal([
      ...groups,
      { from: -Infinity, to: Infinity, count: 40 },
      { from: 1, to: 2, count: 0 }
    ]);
    expect(saying.ok).toBe(true);
    expect(withMore).toEqual(saying);
  });

  it('fits open ends at two thresholds that overlap', () => {
    // 20 % below 5 mm at one threshold, 80 % below 7 mm at another: the mean is midway
    const fit = fitCensoredNormal([
      { from: -Infinity, to: 5, count: 20 },
      { from: 5, to: Infinity, count: 80 },
      { from: -Infinity, to: 7, count: 80 },
      { from: 7, to: Infinity, count: 20 }
    ]);
    expect(fit).toMatchObject({
      ok: true,
      mean: expect.closeTo(6, 10),
      sd: expect.closeTo(1 / 0.8416212335729143, 10)
    });
  });

  it('refuses open ends that fall: more thick slates said to be below than above', () => {
    expect(
      fitCensoredNormal([
        { from: -Infinity, to: 5, count: 80 },
        { from: 5, to: Infinity, count: 20 },
        { from: -Infinity, to: 7, count: 20 },
        { from: 7, to: Infinity, count: 80 }
      ])
    ).toEqual({ ok: false, reason: 'no-inner-class' });
  });

  it('finds the top from classes far out in the tail', () => {
    const fit = fitCensoredNormal([
      { from: -Infinity, to: 5, count: 100_000 },
      { from: 5, to: 6, count: 9 },
      { from: 6, to: Infinity, count: 1 }
    ]);
    expect(fit).toMatchObject({ ok: true });
    if (!fit.ok) return;
    // the three shares are met exactly: check two of them by the standardised cuts
    expect((5 - fit.mean) / fit.sd).toBeCloseTo(3.718995, 4); // upper tail 10/100,010
    expect((6 - fit.mean) / fit.sd).toBeCloseTo(4.264915, 4); // upper tail 1/100,010
  });
});
