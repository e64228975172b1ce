/** Heavy: import it with `await import()` only. */
import { type GradeFigures, type GradingGround, gradeFigures } from '$lib/engine/grading';
import { normalMisgrading } from '$lib/engine/grading/misgrading';
import type { Hand } from '$lib/engine/statistics';
import type { SorterHand } from '$lib/job/sorted';
import { ASSUMED_HAND_SD_MM } from '$lib/job';

/** A way of sorting as it goes, with what the piles then come to. */
export interface AsSorted {
  /** By gauge, by a hand that is known, or by one that is not, for which an error is assumed. */
  readonly by: 'gauge' | 'hand' | 'assumed';
  /** Nickname of who sorts by a known hand. */
  readonly sorter: string;
  /** SD of the error with which a slate meets a boundary, mm. */
  readonly sdMm: number;
  /** Whether the hand's own boundaries were reckoned with, not its spread alone. */
  readonly isBiasCounted: boolean;
  readonly figures: GradeFigures;
}

/** One sorter under one set of grades. */
type LearntHand = Pick<SorterHand, 'sorter' | 'hand' | 'thresholdsMm'>;

/** The figures when slates are sorted by a gauge of a given repeatability. */
export function sortedByGauge(
  ground: GradingGround,
  thresholdsMm: readonly number[],
  gaugeSdMm: number
): AsSorted {
  const figures = gradeFigures({ ...ground, chanceAbove: normalMisgrading(gaugeSdMm) });
  return {
    by: 'gauge',
    sorter: '',
    sdMm: gaugeSdMm,
    isBiasCounted: false,
    figures: figures(thresholdsMm)
  };
}

/**
 * The figures when slates are sorted by each hand that is known, by what was learnt of it last, and
 * once for those that are not, with an assumed error. A hand strays about its own boundaries; where
 * those were learnt under the very boundaries asked about they are reckoned with, else the hand is taken
 * to cut where it should.
 *
 * @param hands oldest grades first
 */
export function sortedByHands(
  ground: GradingGround,
  thresholdsMm: readonly number[],
  hands: readonly LearntHand[]
): AsSorted[] {
  const latest = new Map<string, { hand: Hand; learntUnderMm: readonly number[] | undefined }>();
  for (const { sorter, hand, thresholdsMm: learntUnderMm } of hands)
    if (hand.ok) latest.set(sorter, { hand, learntUnderMm });
  const known = [...latest].map(([sorter, { hand, learntUnderMm }]) =>
    sortedByHand(ground, thresholdsMm, hand, sorter, learntUnderMm)
  );
  if (hands.every(({ sorter }) => latest.has(sorter))) return known;
  const assumed = sortedByGauge(ground, thresholdsMm, ASSUMED_HAND_SD_MM);
  return [...known, { ...assumed, by: 'assumed' }];
}

function sortedByHand(
  ground: GradingGround,
  thresholdsMm: readonly number[],
  hand: Hand,
  sorter: string,
  learntUnderMm: readonly number[] | undefined
): AsSorted {
  const { sdMm } = hand;
  const chance = normalMisgrading(sdMm);
  const isBiasCounted =
    learntUnderMm?.length === thresholdsMm.length &&
    learntUnderMm.every((mm, index) => mm === thresholdsMm[index]);
  const feltAt = new Map(
    thresholdsMm.map((mm, index) => [mm, isBiasCounted ? hand.thresholdsMm[index] : mm])
  );
  const figures = gradeFigures({
    ...ground,
    chanceAbove: (thicknessMm, thresholdMm) =>
      chance(thicknessMm, feltAt.get(thresholdMm) ?? thresholdMm)
  });
  return { by: 'hand', sorter, sdMm, isBiasCounted, figures: figures(thresholdsMm) };
}
