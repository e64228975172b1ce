import { describe, expect, it } from 'vitest';
import { type LineEnding, passTime, startLines, takeBytes } from './serial-lines.ts';

const LINES: LineEnding = { kind: 'line' };
const bytes = (text: string) => Uint8Array.from(text, (sign) => sign.charCodeAt(0));

/** Feeds chunks at their times, after opening at 0. */
function feed(chunks: readonly (readonly [string, number])[], ending = LINES) {
  let state = startLines(0);
  const lines = chunks.flatMap(([text, at]) => {
    const step = takeBytes(state, bytes(text), at, ending);
    state = step.state;
    return step.lines;
  });
  return { state, lines, told: lines.map(({ text, isWhole }) => (isWhole ? text : `${text}?`)) };
}

describe('lines from chunks', () => {
  it.each([
    ['CR', '6.40\r7.10\r', ['6.40', '7.10']],
    ['LF', '6.40\n7.10\n', ['6.40', '7.10']],
    ['CR LF', '6.40\r\n7.10\r\n', ['6.40', '7.10']],
    ['empty lines', '\r\n\r\n', []],
    ['frame signs and NUL', '\u0002 6.40\u0000 \u0003\r', ['6.40']],
    ['high bytes stay visible', '6\u00b2\u00ff\r', ['6\u00b2\u00ff']],
    ['no end yet', '6.40', []]
  ])('%s', (_name, text, told) => {
    expect(feed([[text, 1000]]).told).toEqual(told);
  });

  it('puts a line torn between chunks together, also between CR and LF', () => {
    expect(
      feed([
        ['6.', 1000],
        ['40\r', 3000],
        ['\n7.1', 3010],
        ['0\r\n', 3020]
      ]).told
    ).toEqual(['6.40', '7.10']);
  });

  it('distrusts what comes at once after opening, to the end of its line', () => {
    expect(feed([['0\r6.40\r', 100]]).told).toEqual(['0?', '6.40']);
    expect(
      feed([
        ['\r', 100],
        ['6.40\r', 110]
      ]).told
    ).toEqual(['6.40']);
  });

  it('distrusts a line with a long pause inside', () => {
    expect(
      feed([
        ['1', 1000],
        ['5.20\r', 4600]
      ]).told
    ).toEqual(['15.20?']);
  });

  it('gives a line up after ten seconds without an end', () => {
    const { state } = feed([['6.40', 1000]]);
    expect(passTime(state, 10_999, LINES).lines).toEqual([]);
    expect(passTime(state, 11_000, LINES).lines).toEqual([{ text: '6.40', isWhole: false }]);
  });

  it('reports endless noise in pieces and reads none of it', () => {
    const { lines } = feed([['6'.repeat(600) + '\r', 1000]]);
    expect(lines.map(({ text, isWhole }) => [text.length, isWhole])).toEqual([
      [256, false],
      [256, false],
      [88, false]
    ]);
  });

  it('ends a line by a pause where the gauge sends no end', () => {
    const pause: LineEnding = { kind: 'pause', isComplete: (text) => /\.\d\d$/.test(text) };
    const { told, state } = feed(
      [
        ['6.4', 1000],
        ['0', 2000],
        ['7.10', 3000]
      ],
      pause
    );
    expect(told).toEqual(['6.40']);
    expect(passTime(state, 3200, pause).lines).toEqual([{ text: '7.10', isWhole: true }]);
    expect(
      feed(
        [
          ['6', 1000],
          ['7', 1500]
        ],
        { kind: 'pause' }
      ).told
    ).toEqual(['6']);
  });
});
