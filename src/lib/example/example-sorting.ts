import { type Random, randomBelow, randomNormal } from '$lib/engine';
import { naturalBreaks, pileOf } from '$lib/engine/grading';
import { binsFromPairs } from '$lib/engine/thickness';
import { type BodyOf, type SetAsideReason, type SetAsideUse, meanHundredths } from '$lib/journal';
import { type InventedPallet, drawThickness } from './delivery.ts';
import type { ExampleAct } from './example-act.ts';

/** Spread of the hand that taps: what it feels differs from what a gauge reads. */
const HAND_SD_MM = 0.35;
const TAPS_PER_CHECK = 9;
const SET_ASIDE_SHARE = 0.035;

/** Why slates are set aside here, the likelier ones more often, and what they still serve for. */
const FAULTS: readonly (readonly [SetAsideReason, SetAsideUse])[] = [
  ['broken', 'cutPiece'],
  ['broken', 'scrap'],
  ['broken', 'undereave'],
  ['dullRing', 'scrap'],
  ['twisted', 'undereave'],
  ['tapered', 'cutPiece'],
  ['wrongSize', 'return'],
  ['inclusion', 'return'],
  ['colour', 'cutPiece']
];

/** A pallet of the example: as the delivery's, with an id and its bundles. */
export interface ExamplePallet extends InventedPallet {
  readonly palletId: string;
  readonly layers: number;
  readonly perLayer: number;
}

/** Grades as known while sorting: under the placeholder id, or none yet. */
export interface ExampleGrades {
  readonly gradesId: string | null;
  readonly thresholdsMm: readonly number[];
}

/** Sorts so many slates of a pallet with the gauge; one in thirty is set aside. */
export function gaugeSome(
  random: Random,
  pallet: ExamplePallet,
  slates: number,
  { gradesId, thresholdsMm }: ExampleGrades,
  sorter: string
): ExampleAct[] {
  const { palletId } = pallet;
  return Array.from({ length: slates }, (): ExampleAct => {
    const thickness = drawThickness(random, pallet);
    if (random() < SET_ASIDE_SHARE) return { sorter, act: setAside(random, palletId, [thickness]) };
    const pile = gradesId === null ? null : pileOf(thickness / 100, thresholdsMm);
    const body = { palletId, points: [thickness], gradesId, pile };
    return { sorter, act: { type: 'slateGauged', body } };
  });
}

/** Sorts so many slates by hand, with a spot check by gauge about every nine: a hand not known yet. */
export function tapSome(
  random: Random,
  pallet: ExamplePallet,
  slates: number,
  { gradesId, thresholdsMm }: ExampleGrades,
  sorter: string
): ExampleAct[] {
  const { palletId } = pallet;
  const acts: ExampleAct[] = [];
  let untilCheck = TAPS_PER_CHECK;
  for (let slate = 0; slate < slates; slate++) {
    const thickness = drawThickness(random, pallet);
    if (random() < SET_ASIDE_SHARE) {
      acts.push({ sorter, act: setAside(random, palletId) });
      continue;
    }
    const feltMm = thickness / 100 + HAND_SD_MM * randomNormal(random);
    const pile = pileOf(feltMm, thresholdsMm);
    acts.push({ sorter, act: { type: 'slateTapped', body: { palletId, pile, gradesId } } });
    if (--untilCheck > 0) continue;
    untilCheck = TAPS_PER_CHECK - 2 + randomBelow(random, 5);
    const body = { palletId, of: 'tap' as const, pile, gradesId, points: [thickness] };
    acts.push({ sorter, act: { type: 'slateChecked', body } });
  }
  return acts;
}

/** One slate of the sample drawn before sorting, gauged at three points, and sized where chance picked it. */
export function sampleSlate(
  random: Random,
  pallet: ExamplePallet,
  drawId: string,
  position: { readonly layer: number; readonly place: number },
  isSized: boolean
): BodyOf<'slateGauged'> {
  const thickness = drawThickness(random, pallet);
  const points = [-1, 0, 1].map(() => thickness + Math.round(8 * randomNormal(random)));
  const tenths = (mm: number) => Math.round(mm * 10) / 10;
  const dimensions = {
    lengthMm: tenths(500 + 1.6 * randomNormal(random)),
    widthMm: tenths(250 + 1.2 * randomNormal(random)),
    outOfSquareMm: tenths(3 * random()),
    edgeBowMm: tenths(3.5 * random()),
    flatnessMm: tenths(1 + 4 * random())
  };
  const ring = random() < 0.97 ? ('clear' as const) : ('dull' as const);
  const sample = { drawId, ...position, ring, ...(isSized ? dimensions : {}) };
  return { palletId: pallet.palletId, points, gradesId: null, pile: null, sample };
}

/** Boundaries of three piles by natural breaks over all that was gauged. */
export function breaksOf(acts: readonly ExampleAct[]): readonly number[] {
  const pairs = acts.flatMap(({ act }): [number, number][] =>
    act.type === 'slateGauged' ? [[meanHundredths(act.body.points), 1]] : []
  );
  const breaks = naturalBreaks(binsFromPairs(pairs), 3);
  if (!breaks.ok) throw new Error('the example has too few thicknesses');
  return breaks.thresholdsMm;
}

function setAside(random: Random, palletId: string, points?: number[]): ExampleAct['act'] {
  const [reason, use] = FAULTS[randomBelow(random, FAULTS.length)];
  return { type: 'slateSetAside', body: { palletId, reason, use, ...(points && { points }) } };
}
