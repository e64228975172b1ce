import {
  type LinePattern,
  type WedgeEnding,
  type WedgeEvent,
  type WedgeOutcome,
  IDLE_WEDGE,
  PAUSE_ENDS_LINE_MS,
  changeOfText,
  learnLinePattern,
  parseReading,
  passTime,
  readLine,
  startLines,
  takeBytes,
  wedgeStep
} from '$lib/gauge';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const SEED = { seed: 20260301 };

/** A gauge's number: its text as sent, and the thickness it stands for. */
interface Sent {
  readonly text: string;
  readonly hundredths: number;
}

const mark = fc.constantFrom('.', ',');
const hundredths = fc.integer({ min: 150, max: 4000 });
const textOf = (value: number, decimalMark: string) =>
  (value / 100).toFixed(2).replace('.', decimalMark);
const sent: fc.Arbitrary<Sent> = fc
  .tuple(hundredths, mark, fc.constantFrom('', '+', ' ', '00'), fc.constantFrom('', 'mm', ' mm'))
  .map(([value, decimalMark, before, after]) => ({
    text: before + textOf(value, decimalMark) + after,
    hundredths: value
  }));
const bare: fc.Arbitrary<Sent> = fc
  .tuple(hundredths, mark)
  .map(([value, decimalMark]) => ({ text: textOf(value, decimalMark), hundredths: value }));

const gap = fc.integer({ min: 0, max: 120 });
const gaps = fc.array(gap, { minLength: 24, maxLength: 24 });
/** A burst torn in two: where, as a share of its length, and for how long. */
const tear = fc.option(
  fc.record({
    share: fc.double({ min: 0, max: 1, noNaN: true }),
    ms: fc.integer({ min: 200, max: 2000 })
  }),
  { nil: undefined }
);

interface Burst {
  readonly sent: Sent;
  readonly ends: readonly string[];
  readonly gaps: readonly number[];
  readonly tear?: { readonly share: number; readonly ms: number };
  readonly quietMs: number;
}

const burstWith = (number: fc.Arbitrary<Sent>, ends: fc.Arbitrary<string[]>) =>
  fc.record({
    sent: number,
    ends,
    gaps,
    tear,
    quietMs: fc.integer({ min: 500, max: 4000 })
  });

const keyEnds = fc.constantFrom<string[]>(['Enter'], ['Tab'], ['Enter', 'Tab'], ['Tab', 'Enter']);

/** Key names of bursts with their times. A tear falls between characters of the number. */
function timed(
  bursts: readonly Burst[],
  startAt = 1000
): { key: string; at: number; burst: number }[] {
  let at = startAt;
  return bursts.flatMap((burst, index) => {
    const names = [...burst.sent.text, ...burst.ends];
    const digits = burst.sent.text.trimStart().length;
    const lead = burst.sent.text.length - digits;
    const tornAt = burst.tear ? lead + 1 + Math.floor(burst.tear.share * (digits - 2)) : -1;
    const keys = names.map((key, place) => {
      at += place === tornAt ? (burst.tear?.ms ?? 0) : burst.gaps[place];
      return { key, at, burst: index };
    });
    at += burst.quietMs;
    return keys;
  });
}

function keyEvent(key: string, at: number): WedgeEvent {
  const code = /\d/.test(key) ? `Digit${key}` : key === '.' ? 'Period' : key;
  return { kind: 'key', key, code, at, isOnControl: false };
}

/** The same keys as Android tells them: text appearing in a field, ends as line break or tab. */
function fieldEvents(keys: readonly { key: string; at: number }[]): WedgeEvent[] {
  let before = '';
  return keys.map(({ key, at }): WedgeEvent => {
    if (key === 'Enter') return keyEvent(key, at);
    if (key === 'Tab') return { kind: 'text', inserted: '\t', at };
    const after = before + key;
    const change = changeOfText(before, after);
    before = after;
    return { kind: 'text', ...change, at };
  });
}

function run(events: readonly WedgeEvent[], ending: WedgeEnding, withTicks: boolean) {
  let state = IDLE_WEDGE;
  let wakeAt: number | null = null;
  const outcomes: WedgeOutcome[] = [];
  const passed: string[] = [];
  const take = (event: WedgeEvent) => {
    const step = wedgeStep(state, event, { unit: 'mm', ending });
    ({ state, wakeAt } = step);
    outcomes.push(...step.outcomes);
    if (event.kind === 'key' && !step.isSwallowed) passed.push(event.key);
  };
  for (const event of events) {
    if (withTicks && wakeAt !== null && event.at >= wakeAt) take({ kind: 'tick', at: wakeAt });
    take(event);
  }
  take({ kind: 'tick', at: (events.at(-1)?.at ?? 0) + 60_000 });
  return { outcomes, passed };
}

const taken = (outcomes: readonly WedgeOutcome[]) =>
  outcomes.map(({ reading }) => (reading.ok ? reading.hundredths : reading.reason));
const expected = (bursts: readonly Burst[]) => bursts.map((burst) => burst.sent.hundredths);

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

describe('the grammar', () => {
  it('takes exactly what it is given, or refuses, for any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), fc.constantFrom('mm', 'inch'), (text, unit) => {
        const reading = parseReading(text, unit);
        if (reading.ok) expect(Number.isInteger(reading.hundredths)).toBe(true);
        else expect(reading.reason).not.toBe('');
      }),
      { ...SEED, numRuns: 1000 }
    );
  });

  it('gives a number and its inches the same thickness within the rounding', () => {
    fc.assert(
      fc.property(hundredths, (value) => {
        const inches = parseReading(`${(value / 2540).toFixed(5)} in`, 'mm');
        const mm = parseReading((value / 100).toFixed(2), 'mm');
        if (!mm.ok || !inches.ok) throw new Error('refused');
        expect(mm.hundredths).toBe(value);
        expect(Math.abs(inches.hundredths - value)).toBeLessThanOrEqual(1);
      }),
      { ...SEED, numRuns: 1000 }
    );
  });
});

describe('a serial gauge', () => {
  const lesson = learnLinePattern(['01A+006.40', '01A+005.95', '01A+017.10']);
  if (!lesson.ok) throw new Error(lesson.reason);
  const pattern: LinePattern = lesson.pattern;
  const lineOf = (value: number) => `01A+${(value / 100).toFixed(2).padStart(6, '0')}`;
  const isComplete = (text: string) => readLine(pattern, text, 'mm').ok;
  const bytesOf = (text: string) => Uint8Array.from(text, (sign) => sign.charCodeAt(0));
  const read = (lines: readonly { text: string; isWhole: boolean }[]) =>
    lines.map(({ text, isWhole }) => {
      const reading = readLine(pattern, text, 'mm');
      return isWhole && reading.ok ? reading.hundredths : text;
    });

  it('reads 500 lines however the port cuts them, with any line end and noise between', () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof({ weight: 9, arbitrary: hundredths }, fc.constant('low battery')), {
          minLength: 500,
          maxLength: 500
        }),
        fc.constantFrom('\r', '\n', '\r\n'),
        fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 50 }),
        (items, end, cuts) => {
          const stream = bytesOf(
            items.map((item) => (typeof item === 'number' ? lineOf(item) : item) + end).join('')
          );
          let state = startLines(0);
          const lines = [];
          for (let from = 0, cut = 0; from < stream.length; cut++) {
            const to = from + cuts[cut % cuts.length];
            const step = takeBytes(state, stream.subarray(from, to), 1000 + cut * 15, {
              kind: 'line'
            });
            state = step.state;
            lines.push(...step.lines);
            from = to;
          }
          expect(read(lines)).toEqual(items);
        }
      ),
      { ...SEED, numRuns: 40 }
    );
  });

  it('reads lines without any end by the pause, torn ones too', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            value: hundredths,
            cut: fc.nat(20),
            waitMs: fc.integer({ min: 0, max: 2000 })
          }),
          { minLength: 1, maxLength: 30 }
        ),
        fc.boolean(),
        (items, withTicks) => {
          const ending = { kind: 'pause', isComplete } as const;
          let state = startLines(0);
          let at = 1000;
          const lines = [];
          for (const { value, cut, waitMs } of items) {
            const text = lineOf(value);
            const place = cut % text.length;
            for (const part of [text.slice(0, place), text.slice(place)]) {
              const step = takeBytes(state, bytesOf(part), at, ending);
              state = step.state;
              lines.push(...step.lines);
              at += waitMs;
            }
            at += PAUSE_ENDS_LINE_MS;
            if (!withTicks) continue;
            const step = passTime(state, at, ending);
            state = step.state;
            lines.push(...step.lines);
          }
          lines.push(...passTime(state, at + 60_000, ending).lines);
          expect(read(lines)).toEqual(items.map(({ value }) => value));
        }
      ),
      { ...SEED, numRuns: 400 }
    );
  });

  it('takes no thickness from a line that lost a character', () => {
    fc.assert(
      fc.property(hundredths, fc.nat(9), (value, place) => {
        const line = lineOf(value);
        const short = line.slice(0, place) + line.slice(place + 1);
        const reading = readLine(pattern, short, 'mm');
        if (reading.ok) expect(reading.hundredths).toBe(value);
      }),
      { ...SEED, numRuns: 1000 }
    );
  });
});
