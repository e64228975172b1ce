import { describe, expect, it } from 'vitest';
import { type ReadingUnit, parseReading } from './reading-grammar.ts';
import { addToUnitTrial, isUnitInDoubt, startUnitTrial } from './units-plausibility.ts';

const trialOf = (declared: ReadingUnit, texts: readonly string[]) =>
  texts.reduce(
    (trial, text) => addToUnitTrial(trial, parseReading(text, declared)),
    startUnitTrial(declared)
  );

describe('unit trial', () => {
  it.each([
    ['mm', []],
    ['mm', ['0.25', '0.31']],
    ['mm', ['6.4', '6.5', '7.1']],
    ['inch', ['0.25', '0.31', '0.28']],
    ['mm', ['6.4', '0.25', '6.5', '0.31', '0.28']]
  ] as const)('under %s, %j leaves the unit out of doubt', (declared, texts) => {
    expect(isUnitInDoubt(trialOf(declared, texts))).toBe(false);
  });

  it.each([
    ['mm', ['0.25', '0.31', '0.28']],
    ['inch', ['6.4', '6.5', '7.1']],
    ['mm', ['6.4', '0.25', '0.31', '60', '0.28']]
  ] as const)('under %s, %j puts it in doubt', (declared, texts) => {
    expect(isUnitInDoubt(trialOf(declared, texts))).toBe(true);
  });

  it('counts no refused number that is a thickness in neither unit, nor a single slip', () => {
    expect(isUnitInDoubt(trialOf('mm', ['60', '1.2', '25', '60', '640', '655', '-6']))).toBe(false);
    expect(trialOf('mm', ['60', '640', '655', '710']).forOther).toBe(0);
    expect(trialOf('inch', ['60', '0.01', '99']).forOther).toBe(0);
  });

  it('is out of doubt again with the first reading that is taken', () => {
    const doubtful = ['0.25', '0.31', '0.28'];
    expect(isUnitInDoubt(trialOf('mm', [...doubtful, '6.4']))).toBe(false);
    expect(isUnitInDoubt(trialOf('mm', [...doubtful, '60']))).toBe(true);
  });

  it('learns nothing from a written unit, from no number, from zero', () => {
    const trial = trialOf('mm', ['0.25', '0.31']);
    for (const text of ['0.25 in', '6.4 mm', 'abc', '', '0', '-6'])
      expect(addToUnitTrial(trial, parseReading(text, 'mm'))).toBe(trial);
  });
});
