import { describe, expect, it } from 'vitest';
import { learnLinePattern, readLine } from './line-pattern.ts';

function learnt(...lines: string[]) {
  const lesson = learnLinePattern(Object.freeze(lines));
  if (!lesson.ok) throw new Error(lesson.reason);
  return lesson.pattern;
}

describe('learnLinePattern', () => {
  it('needs three lines with a number', () => {
    expect(learnLinePattern([])).toEqual({ ok: false, reason: 'too-few' });
    expect(learnLinePattern(['6.40', '6.41'])).toEqual({ ok: false, reason: 'too-few' });
    expect(learnLinePattern(['ready', 'ready', 'ready'])).toEqual({
      ok: false,
      reason: 'no-number'
    });
  });

  it.each([
    [['6.40', '5.95', '7.10'], { position: 0, before: '', mark: '.', unit: null, decimals: 2 }],
    [['6,40', '5,95', '7,10'], { position: 0, mark: ',', decimals: 2 }],
    [['01A+006.40', '01A+005.95', '01A-000.10'], { position: 1, before: '#A', paddedTo: 3 }],
    [['01A+006,40', '01A+005,95', '01A+007,10'], { position: 1, before: '#A', mark: ',' }],
    [['t 12:30:05 6.40 mm', 't 12:30:09 5.95 mm', 't 12:31:00 7.10 mm'], { position: 3 }],
    [['6.40 mm GO', '5.95 mm NG', '7.10 mm GO'], { unit: 'mm', position: 0 }],
    [['0.252"', '0.234"', '0.280"'], { unit: 'inch', decimals: 3 }],
    [['21.5C 6.40mm', '21.5C 5.95mm', '21.6C 7.10mm'], { position: 1, unit: 'mm' }],
    [['6.4', '5.95', '7'], { decimals: null }],
    [['6.40', 'low battery', '5.95', '7.10'], { position: 0, decimals: 2 }]
  ])('%j', (lines, pattern) => {
    expect(learnt(...lines)).toMatchObject(pattern);
  });

  it.each([
    [
      ['21.5 6.40', '21.5 5.95', '21.6 7.10'],
      [
        ['21.5', '21.5', '21.6'],
        ['6.40', '5.95', '7.10']
      ]
    ],
    [
      ['1,6.40', '1,5.95', '1,7.10'],
      [
        ['6.40', '5.95', '7.10'],
        ['1,6', '1,5', '1,7']
      ]
    ]
  ])('leaves the choice to the sorter in %j', (lines, samples) => {
    const lesson = learnLinePattern(lines);
    expect(lesson).toMatchObject({ ok: false, reason: 'ambiguous' });
    if (!('candidates' in lesson)) throw new Error('no candidates');
    expect(lesson.candidates.map((candidate) => candidate.samples)).toEqual(samples);
  });
});

describe('readLine', () => {
  const pattern = learnt('01A+006.40', '01A+005.95', '01A+007.10');

  it('reads the number at its place, in the unit of the session or of the line', () => {
    expect(readLine(pattern, '01A+006.45', 'mm')).toMatchObject({ ok: true, valueMm: 6.45 });
    expect(readLine(learnt('1.0 in', '0.5 in', '0.2 in'), '0.3 in', 'mm')).toMatchObject({
      ok: true,
      valueMm: 7.62
    });
  });

  it.each([
    ['low battery', 'other-line'],
    ['02B', 'other-line'],
    ['01B+006.40', 'other-line'],
    ['01A+006.4', 'other-shape'],
    ['01A+06.40', 'other-shape'],
    ['01A+006.40 mm', 'other-shape'],
    ['01A+006.4.0', 'several-decimals'],
    ['01A-006.40', 'negative'],
    ['01A+000.00', 'zero']
  ])('takes no thickness from %s: %s', (line, reason) => {
    expect(readLine(pattern, line, 'mm')).toMatchObject({ ok: false, reason });
  });
});
