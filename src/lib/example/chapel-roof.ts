import { type Random, createRandom, randomBelow } from '$lib/engine';
import { pileOf } from '$lib/engine/grading';
import type { BodyOf, NewEvent, SetAsideReason } from '$lib/journal';
import seeds from '../../../seeds/chapel.json';
import { drawThickness } from './delivery.ts';
import type { ExampleAct } from './example-act.ts';
import { breaksOf } from './example-sorting.ts';
import { EXAMPLE_GRADES_ID } from './worked-example.ts';

const SEED = 1871;
const GAUGER = 'Wren';
/** Slates of each pallet gauged before there are grades, and sorted after. */
const SAMPLED = 40;
const SORTED = 70;
const FAULTS: readonly SetAsideReason[] = ['dullRing', 'broken', 'broken', 'wrongSize', 'twisted'];

type ChapelPallet = (typeof seeds.pallets)[number];

/**
 * The second worked example: an invented chapel with three lengths in random widths, half of them
 * reclaimed, of which many are set aside. Each length is sampled, graded and sorted in part; the
 * courses of each are left to be chosen.
 */
export function chapelRoof(): { acts: ExampleAct[] } {
  const random = createRandom(SEED);
  const acts: ExampleAct[] = [
    by('jobOpened', { name: seeds.name }),
    by('jobSettingsSet', { piles: 3, breakageShare: 0.05, sparesShare: 0.02, gaugeSdMm: 0.03 }),
    by('slateSpecSet', seeds.slate as BodyOf<'slateSpecSet'>),
    by('slateSizesSet', { sizes: seeds.sizes }),
    ...seeds.pallets.map(({ label, slates, sizeId }) =>
      by('palletAdded', { palletId: idOf(label), label, slates, sizeId })
    ),
    ...seeds.slopes.map((slope) =>
      by('slopeSet', {
        ...slope,
        pitchDegrees: 45,
        eaveHeightMm: 0,
        left: { kind: 'verge' },
        right: { kind: 'verge' },
        openings: []
      })
    )
  ];
  for (const { sizeId } of seeds.sizes) {
    const pallets = seeds.pallets.filter((pallet) => pallet.sizeId === sizeId);
    const sampled = pallets.flatMap((pallet) => sortSome(random, pallet, SAMPLED));
    const thresholdsMm = [...breaksOf(sampled)];
    acts.push(...sampled, by('gradesSet', { method: 'naturalBreaks', thresholdsMm, sizeId }));
    acts.push(...pallets.flatMap((pallet) => sortSome(random, pallet, SORTED, thresholdsMm)));
  }
  return { acts };
}

/** Slates of a pallet, gauged: on to piles where there are boundaries; the unsound set aside. */
function sortSome(
  random: Random,
  pallet: ChapelPallet,
  slates: number,
  thresholdsMm?: readonly number[]
): ExampleAct[] {
  const palletId = idOf(pallet.label);
  return Array.from({ length: slates }, (): ExampleAct => {
    const thickness = drawThickness(random, pallet);
    if (thresholdsMm && random() < pallet.setAsideShare) {
      const reason = FAULTS[randomBelow(random, FAULTS.length)];
      return by('slateSetAside', { palletId, reason, use: 'scrap' });
    }
    const pile = thresholdsMm ? pileOf(thickness / 100, thresholdsMm) : null;
    const gradesId = thresholdsMm ? EXAMPLE_GRADES_ID : null;
    return by('slateGauged', { palletId, points: [thickness], gradesId, pile });
  });
}

function idOf(label: string): string {
  return label.toLowerCase().replace(', ', '-');
}

function by<T extends NewEvent['type']>(
  type: T,
  body: Extract<NewEvent, { type: T }>['body']
): ExampleAct {
  return { sorter: GAUGER, act: { type, body } as NewEvent };
}
