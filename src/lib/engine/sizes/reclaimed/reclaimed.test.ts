import { describe, expect, it } from 'vitest';
import { createRandom, shuffled } from '$lib/engine';
import { EngineError } from '../../errors.ts';
import { soundStock } from './index.ts';

describe('sound slates of a reclaimed lot', () => {
  it('the interval holds the true number at least as often as it says', () => {
    const random = createRandom(8);
    const lot = [...new Array<boolean>(380).fill(true), ...new Array<boolean>(220).fill(false)];
    let held = 0;
    const rounds = 1500;
    for (let round = 0; round < rounds; round++) {
      const found = shuffled(lot, random).slice(0, 60).filter(Boolean).length;
      const stock = soundStock({ found, sampled: 60, lotSize: 600 }, 300);
      if (stock.ok && stock.low <= 380 && 380 <= stock.high) held++;
    }
    expect(held / rounds).toBeGreaterThanOrEqual(0.945);
  });

  it('says how many roofs they are', () => {
    const stock = soundStock({ found: 30, sampled: 60, lotSize: 600 }, 300);
    expect(stock).toMatchObject({ ok: true, sound: 300, roofs: { likely: 1 } });
    if (stock.ok) expect(stock.roofs.low).toBeLessThan(1);
  });

  it('the whole lot tried leaves no doubt', () => {
    expect(soundStock({ found: 40, sampled: 60, lotSize: 60 }, 20)).toMatchObject({
      low: 40,
      high: 40,
      roofs: { low: 2, high: 2 }
    });
  });

  it('nothing tried, an empty lot and more tried than there are say why', () => {
    const reason = (found: number, sampled: number, lotSize: number) => {
      const stock = soundStock({ found, sampled, lotSize }, 10);
      return stock.ok ? undefined : stock.reason;
    };
    expect(reason(0, 0, 100)).toBe('nothing-sampled');
    expect(reason(0, 0, 0)).toBe('lot-empty');
    expect(reason(5, 20, 10)).toBe('sample-exceeds-lot');
    expect(() => soundStock({ found: 21, sampled: 20, lotSize: 100 }, 10)).toThrow(EngineError);
  });
});
