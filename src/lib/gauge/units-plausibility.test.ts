import { describe, expect, it } from 'vitest';
import { type LengthUnit, parseReading } from './reading-grammar.ts';
import { addToUnitTrial, judgeUnitTrial, startUnitTrial } from './units-plausibility.ts';

const judge = (declared: LengthUnit, ...texts: string[]) =>
  judgeUnitTrial(
    texts.reduce(
      (trial, text) => addToUnitTrial(trial, parseReading(text, declared)),
      startUnitTrial(declared)
    )
  );

describe('unit trial', () => {
  it.each([
    ['mm', [], 'gathering'],
    ['mm', ['6.4', '6.5'], 'gathering'],
    ['mm', ['6.4', '6.5', '7.1'], 'plausible'],
    ['inch', ['0.25', '0.31', '0.28'], 'plausible'],
    ['mm', ['0.25', '0.31', '0.28'], 'other-unit'],
    ['inch', ['6.4', '6.5', '7.1'], 'other-unit'],
    ['mm', ['6.4', '0.25', '6.5'], 'mixed'],
    ['mm', ['640', '655', '710'], 'neither'],
    ['mm', ['1.5', '1.52', '1.55'], 'neither']
  ] as const)('declared %s, read %j: %s', (declared, texts, verdict) => {
    expect(judge(declared, ...texts)).toBe(verdict);
  });

  it('learns nothing from a written unit, from no number, from zero', () => {
    const trial = startUnitTrial('mm');
    for (const text of ['0.25 in', 'abc', '', '0', '-6'])
      expect(addToUnitTrial(trial, parseReading(text, 'mm'))).toBe(trial);
  });
});
