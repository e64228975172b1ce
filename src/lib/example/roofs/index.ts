import { type SlateSpecInput, type SlopeInput, slateSpec } from '$lib/engine/roof';
import type { NewEvent, SlateSpecBody } from '$lib/journal';
import { CUSTOMARY_OVERHANGS, slopeBody } from '$lib/job';
import seeds from '../../../../seeds/roofs.json';

interface SeedRoof {
  readonly id: string;
  readonly name: string;
  readonly slate: SlateSpecInput;
  readonly slopes: readonly SlopeInput[];
}

const ROOFS = seeds.roofs as readonly SeedRoof[];

/**
 * The acts that enter one of the invented roofs: its slate, then its slopes.
 *
 * @param newSlopeId gives a fresh id for every slope, so that two examples never meet
 */
export function exampleRoof(roofId: string, newSlopeId: () => string): NewEvent[] {
  const roof = ROOFS.find(({ id }) => id === roofId);
  if (!roof) return [];
  const { nailing, jointMinMm, jointMaxMm } = slateSpec(roof.slate);
  const slate: SlateSpecBody = {
    nailing,
    jointMinMm,
    jointMaxMm,
    ...CUSTOMARY_OVERHANGS,
    ...roof.slate
  };
  return [
    { type: 'slateSpecSet', body: slate },
    ...roof.slopes.map((slope): NewEvent => ({
      type: 'slopeSet',
      body: slopeBody(slope, newSlopeId())
    }))
  ];
}
