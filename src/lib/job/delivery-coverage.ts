import type { JobView } from '$lib/journal';
import {
  type ListProgress,
  type OfferedSlate,
  type SampleDraw,
  drawsOf,
  progressOf,
  sortingBegan
} from './delivery-sample.ts';
import { placeKey } from './sample-place.ts';

/** How many slates of one pallet of the list are still to be measured. */
export interface OpenPallet {
  readonly label: string;
  readonly slates: number;
}

/**
 * Whether a list of places may speak for the delivery. It is walked in order, so until its end what
 * is measured is no random sample.
 *
 * - `some-pallets`: on some pallet of the list no slate judges yet.
 * - `all-pallets`: every pallet is reached, and places are still open.
 */
export interface ListCoverage {
  readonly state: 'finished' | 'some-pallets' | 'all-pallets';
  /** The list that speaks. */
  readonly draw: SampleDraw;
  readonly places: number;
  readonly measured: number;
  /** Whether the measured places are the first ones of the walk. */
  readonly isFirst: boolean;
  /** Labels of the pallets of the list on which a slate judges, and of the others; in order. */
  readonly reached: readonly string[];
  readonly unreached: readonly string[];
  /** Of the others, those that can judge no more: sorting began before they were measured. */
  readonly lost: readonly string[];
  readonly open: readonly OpenPallet[];
}

/**
 * How far the list in force is measured, pallet by pallet; undefined before one is drawn.
 *
 * A list drawn on top of a finished one, and not begun yet, leaves the finished one to speak.
 */
export function listCoverage(
  view: JobView,
  offered: readonly OfferedSlate[]
): ListCoverage | undefined {
  const lists = drawsOf(view).map((draw) => progressOf(view, draw, offered));
  const inForce = lists.at(-1);
  if (!inForce) return undefined;
  const finished = lists.slice(0, -1).filter(({ places, measured }) => places.length === measured);
  const known = new Set(finished.flatMap(({ places }) => places.map(placeKey)));
  const isBegun = inForce.places.some((place) => place.isMeasured && !known.has(placeKey(place)));
  return coverageOf(view, (!isBegun && finished.at(-1)) || inForce, offered);
}

function coverageOf(
  view: JobView,
  { draw, places, measured }: ListProgress,
  offered: readonly OfferedSlate[]
): ListCoverage {
  const judged = new Set(
    offered.filter(({ standing }) => standing === 'judges').map(({ palletId }) => palletId)
  );
  const pallets = [...new Map(places.map(({ palletId, label }) => [palletId, label]))];
  const others = pallets.filter(([palletId]) => !judged.has(palletId));
  const toMeasure = places.filter(({ isMeasured }) => !isMeasured);
  const labelsOf = (of: readonly (readonly [string, string])[]): string[] =>
    of.map(([, label]) => label);
  return {
    state: others.length > 0 ? 'some-pallets' : toMeasure.length > 0 ? 'all-pallets' : 'finished',
    draw,
    places: places.length,
    measured,
    isFirst: places.slice(0, measured).every(({ isMeasured }) => isMeasured),
    reached: labelsOf(pallets.filter(([palletId]) => judged.has(palletId))),
    unreached: labelsOf(others),
    lost: labelsOf(others.filter(([palletId]) => sortingBegan(view, palletId) !== undefined)),
    open: pallets
      .map(([id, label]) => ({
        label,
        slates: toMeasure.filter(({ palletId }) => palletId === id).length
      }))
      .filter(({ slates }) => slates > 0)
  };
}

/**
 * Slates that a list is judged on when it is finished: its places, and slates of earlier lists that
 * judge beside them.
 */
export function slatesHeldTo(draw: SampleDraw, offered: readonly OfferedSlate[]): number {
  const places = draw.value.positions.map(placeKey);
  const judging = offered.filter(({ standing }) => standing === 'judges').map(placeKey);
  return new Set([...places, ...judging]).size;
}
