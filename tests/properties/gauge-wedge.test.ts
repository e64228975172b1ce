import type { WedgeEnding, WedgeEvent } from '$lib/gauge';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  SEED,
  sent,
  bare,
  keyEnds,
  burstWith,
  timed,
  keyEvent,
  fieldEvents,
  run,
  taken,
  expected
} from '../support/gauge-arbitraries.ts';

describe('a gauge that types', () => {
  it('loses, doubles and invents nothing: any gap, terminator, mark and tear; presses no button', () => {
    let torn = 0;
    fc.assert(
      fc.property(
        fc.array(burstWith(sent, keyEnds), { minLength: 1, maxLength: 12 }),
        fc.boolean(),
        (bursts, withTicks) => {
          torn += bursts.filter((burst) => burst.tear).length;
          const events = timed(bursts).map(({ key, at }) => keyEvent(key, at));
          const { outcomes, passed } = run(events, { kind: 'key' }, withTicks);
          expect(taken(outcomes)).toEqual(expected(bursts));
          expect(passed).toEqual([]);
        }
      ),
      { ...SEED, numRuns: 400 }
    );
    expect(torn).toBeGreaterThan(100);
  });

  it('reads the same from Android text in a field', () => {
    fc.assert(
      fc.property(
        fc.array(burstWith(sent, keyEnds), { minLength: 1, maxLength: 12 }),
        fc.boolean(),
        (bursts, withTicks) => {
          const { outcomes } = run(fieldEvents(timed(bursts)), { kind: 'key' }, withTicks);
          expect(taken(outcomes)).toEqual(expected(bursts));
        }
      ),
      { ...SEED, numRuns: 300 }
    );
  });

  it('reads bursts without terminator by the pause, torn ones too, as keys and as field text', () => {
    fc.assert(
      fc.property(
        fc.array(burstWith(bare, fc.constant([])), { minLength: 1, maxLength: 12 }),
        fc.boolean(),
        fc.boolean(),
        (bursts, isAndroid, withTicks) => {
          const keys = timed(bursts);
          const events = isAndroid ? fieldEvents(keys) : keys.map((k) => keyEvent(k.key, k.at));
          const { outcomes } = run(events, { kind: 'pause', decimals: 2 }, withTicks);
          expect(taken(outcomes)).toEqual(expected(bursts));
        }
      ),
      { ...SEED, numRuns: 400 }
    );
  });

  it('keeps 500 readings in a row, equal ones among them, one for one', () => {
    fc.assert(
      fc.property(
        fc.array(
          burstWith(fc.oneof(sent, fc.constant({ text: '6.40', hundredths: 640 })), keyEnds),
          {
            minLength: 500,
            maxLength: 500
          }
        ),
        (bursts) => {
          const events = timed(bursts).map(({ key, at }) => keyEvent(key, at));
          const { outcomes, passed } = run(events, { kind: 'key' }, true);
          expect(taken(outcomes)).toEqual(expected(bursts));
          expect(passed).toEqual([]);
        }
      ),
      { ...SEED, numRuns: 4 }
    );
  });

  it('makes no thickness of a burst that lost the focus on the way, and reads the next', () => {
    let touched = 0;
    fc.assert(
      fc.property(
        burstWith(sent, keyEnds),
        burstWith(sent, keyEnds),
        fc.integer({ min: 0, max: 2500 }),
        fc.integer({ min: 0, max: 600 }),
        (first, second, blurAfter, awayMs) => {
          const calm = { ...first, quietMs: 9_000 };
          const keys = timed([calm, second]);
          const blurAt = 1000 + blurAfter;
          const focusAt = blurAt + awayMs;
          const own = keys.filter(({ burst }) => burst === 0);
          const digits = own.slice(0, own.length - first.ends.length);
          // Where the head went elsewhere and a long pause followed, nobody can know it from the tail.
          fc.pre(!first.tear || blurAt >= digits[0].at);
          const isTorn = blurAt < digits[digits.length - 1].at && focusAt > digits[0].at;
          const seen = keys.filter(({ at }) => at <= blurAt || at >= focusAt);
          const events: WedgeEvent[] = [
            ...seen.map(({ key, at }) => keyEvent(key, at)),
            { kind: 'blur' as const, at: blurAt + 0.25 },
            { kind: 'focus' as const, at: focusAt - 0.25 + 0.5 * Number(awayMs === 0) }
          ].sort((one, other) => one.at - other.at);
          const { outcomes, passed } = run(events, { kind: 'key' }, true);
          const values = taken(outcomes);
          expect(values.at(-1)).toBe(second.sent.hundredths);
          const others = values.slice(0, -1).filter((value) => typeof value === 'number');
          expect(passed).toEqual([]);
          if (isTorn) {
            touched++;
            expect(others).toEqual([]);
          } else {
            expect(others.every((value) => value === first.sent.hundredths)).toBe(true);
            expect(others.length).toBeLessThanOrEqual(1);
          }
        }
      ),
      { ...SEED, numRuns: 1500 }
    );
    expect(touched).toBeGreaterThan(100);
  });

  it('reports a burst with noise in it, and takes nothing from it', () => {
    fc.assert(
      fc.property(
        burstWith(bare, keyEnds),
        fc.constantFrom('k', 'Q', '#', 'é', '/', '\uFFFD', 'Dead'),
        fc.nat(),
        burstWith(bare, keyEnds),
        (noisy, noise, place, clean) => {
          const keys = timed([noisy, clean]).map(({ key, at }) => keyEvent(key, at));
          const inside = place % (noisy.sent.text.length + 1);
          const at = keys[inside].at;
          keys.splice(inside, 0, { kind: 'key', key: noise, code: 'IntlBackslash', at });
          const { outcomes } = run(keys, { kind: 'key' }, true);
          expect(outcomes).toHaveLength(2);
          expect(outcomes[0].reading.ok).toBe(false);
          expect(taken(outcomes)[1]).toBe(clean.sent.hundredths);
        }
      ),
      { ...SEED, numRuns: 400 }
    );
  });

  it('survives any keys at any times: every outcome is a thickness in range or a refusal', () => {
    const anyKey = fc.oneof(
      fc.constantFrom('Enter', 'Tab', 'Backspace', 'Escape', 'Shift', ' ', '.', ',', '-', 'Dead'),
      fc.integer({ min: 0, max: 9 }).map(String),
      fc.string({ minLength: 1, maxLength: 1, unit: 'binary' })
    );
    fc.assert(
      fc.property(
        fc.array(fc.tuple(anyKey, fc.integer({ min: 0, max: 12_000 })), { maxLength: 60 }),
        fc.constantFrom<WedgeEnding>({ kind: 'key' }, { kind: 'pause', decimals: 1 }),
        (keys, ending) => {
          let at = 0;
          const events = keys.map(([key, wait]) => keyEvent(key, (at += wait)));
          for (const { reading } of run(events, ending, true).outcomes)
            if (reading.ok) {
              expect(reading.hundredths).toBeGreaterThanOrEqual(150);
              expect(reading.hundredths).toBeLessThanOrEqual(4000);
            } else expect(reading.text).not.toBe('');
        }
      ),
      { ...SEED, numRuns: 500 }
    );
  });
});
