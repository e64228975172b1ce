import type { NewEvent } from '../../src/lib/journal/index.ts';

type Of<T extends NewEvent['type']> = Extract<NewEvent, { type: T }>;

/** The slate of a small job and one slope between two verges, of the size asked for. */
export function smallRoof({
  slopeId = 'south',
  name = 'South',
  rafterLengthMm,
  eaveWidthMm
}: {
  readonly slopeId?: string;
  readonly name?: string;
  readonly rafterLengthMm: number;
  readonly eaveWidthMm: number;
}): [Of<'slateSpecSet'>, Of<'slopeSet'>] {
  return [
    {
      type: 'slateSpecSet',
      body: {
        ...{ lengthMm: 500, widthMm: 250, nailing: 'centre', headlapMm: 100 },
        ...{ jointMinMm: 3, jointMaxMm: 5, eaveOverhangMm: 50, vergeOverhangMm: 50 }
      }
    },
    {
      type: 'slopeSet',
      body: {
        ...{ slopeId, name, rafterLengthMm, eaveWidthMm },
        ...{ pitchDegrees: 35, eaveHeightMm: 0, openings: [] },
        ...{ left: { kind: 'verge' }, right: { kind: 'verge' } }
      }
    }
  ];
}
