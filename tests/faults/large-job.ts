import { createRandom } from '../../src/lib/engine/random.ts';
import type { SeedAct } from '../e2e/seed-job.ts';
import { IN_FORCE } from '../e2e/seed-job.ts';

/** How large a job is. */
export interface JobSize {
  readonly pallets: number;
  readonly slopes: number;
  /** Slates sorted of each pallet. */
  readonly sorted: number;
}

const THRESHOLDS_MM = [7.6, 7.1, 6.7, 6.3, 5.9, 5.5, 5.0];

/** Acts of a large job: pallets measured, graded into 8 piles, part sorted by gauge and by four hands. */
export function largeJob({ pallets, slopes, sorted }: JobSize): SeedAct[] {
  const random = createRandom(20_261_128);
  const normal = (): number =>
    Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const idOf = (at: number): string => `p${String(at + 1).padStart(2, '0')}`;
  const slate = (pallet: number): number =>
    Math.round(Math.min(1000, Math.max(350, 620 + 18 * ((pallet % 9) - 4) + 85 * normal())));
  const pileOf = (hundredths: number): number =>
    1 + THRESHOLDS_MM.filter((mm) => hundredths < mm * 100).length;
  const each = <T>(count: number, make: (at: number) => T): T[] =>
    Array.from({ length: count }, (_, at) => make(at));
  const gauged = (pallet: number, gradesId: string | null): SeedAct => {
    const hundredths = slate(pallet);
    const pile = gradesId === null ? null : pileOf(hundredths);
    const body = { palletId: idOf(pallet), points: [hundredths], gradesId, pile };
    return { type: 'slateGauged', body };
  };
  const told = (pallet: number, at: number): SeedAct => {
    const sorter = ['Wren', 'Finch', 'Rook', 'Swift'][at % 4];
    const pile = pileOf(slate(pallet) + 40 * normal());
    const body = { palletId: idOf(pallet), pile, gradesId: IN_FORCE };
    return { type: 'slateTapped', body, sorter };
  };
  const checked = (pallet: number, at: number): SeedAct => {
    const hundredths = slate(pallet);
    const sorter = ['Wren', 'Finch', 'Rook', 'Swift'][at % 4];
    const pile = pileOf(hundredths + 40 * normal());
    const body = {
      palletId: idOf(pallet),
      of: 'tap',
      pile,
      gradesId: IN_FORCE,
      points: [hundredths]
    };
    return { type: 'slateChecked', body, sorter };
  };
  return [
    { type: 'jobOpened', body: { name: 'Long row' } },
    { type: 'jobSettingsSet', body: { kickAllowanceMm: 1.5, piles: 8 } },
    ...each(pallets, (at) => ({
      type: 'palletAdded',
      body: { palletId: idOf(at), label: `P${at + 1}`, slates: 400 }
    })),
    ...each(pallets, (pallet) => each(12, () => gauged(pallet, null))).flat(),
    { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: THRESHOLDS_MM } },
    ...each(pallets, (pallet) =>
      each(sorted, (at) =>
        at % 3 === 0
          ? gauged(pallet, IN_FORCE)
          : at % 10 === 1
            ? checked(pallet, at)
            : told(pallet, at)
      )
    ).flat(),
    {
      type: 'slateSpecSet',
      body: {
        ...{ lengthMm: 500, widthMm: 250, nailing: 'centre', headlapMm: 100 },
        ...{ jointMinMm: 3, jointMaxMm: 5, eaveOverhangMm: 50, vergeOverhangMm: 50 }
      }
    },
    ...each(slopes, (at) => ({
      type: 'slopeSet',
      body: {
        ...{ slopeId: `s${at + 1}`, name: `Slope ${at + 1}`, rafterLengthMm: 5200 },
        ...{ eaveWidthMm: 12_000, pitchDegrees: 35, eaveHeightMm: 0, openings: [] },
        ...{ left: { kind: 'verge' }, right: { kind: 'verge' } }
      }
    }))
  ];
}
