import { describe, expect, it } from 'vitest';
import { parseReading } from './reading-grammar.ts';
import type { WedgeOutcome } from './wedge-state.ts';
import { learnWedgeEnding } from './wedge-setup.ts';

const trial = (endedBy: WedgeOutcome['endedBy'], ...texts: string[]) =>
  texts.map((text): WedgeOutcome => ({ reading: parseReading(text, 'mm'), endedBy }));

describe('learnWedgeEnding', () => {
  it.each([
    ['none', [], 'too-few'],
    ['refused ones do not count', trial('enter', '6.4', 'abc', '6.5', '99'), 'too-few'],
    ['mixed', [...trial('enter', '6.4', '6.5'), ...trial('accept', '6.4')], 'endings-differ'],
    ['whole numbers', trial('accept', '6', '7', '8'), 'no-decimals'],
    ['decimals vary', trial('accept', '6.4', '6.42', '6.5'), 'decimals-differ']
  ] as const)('%s: %s', (_name, outcomes, reason) => {
    expect(learnWedgeEnding(outcomes)).toEqual({ ok: false, reason });
  });

  it('learns a key, whatever the decimals', () => {
    expect(learnWedgeEnding(trial('tab', '6.4', '6', '6.42'))).toEqual({
      ok: true,
      ending: { kind: 'key' }
    });
  });

  it('learns a pause with its decimals', () => {
    expect(learnWedgeEnding(trial('accept', '6.40', '6.42', '7.10'))).toEqual({
      ok: true,
      ending: { kind: 'pause', decimals: 2 }
    });
  });
});
