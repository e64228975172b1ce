import {
  type LinePattern,
  PAUSE_ENDS_LINE_MS,
  learnLinePattern,
  parseReading,
  passTime,
  readLine,
  startLines,
  takeBytes
} from '$lib/gauge';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SEED, hundredths } from '../support/gauge-arbitraries.ts';

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
