import type { MeasuredSlate } from '$lib/engine/delivery';
import {
  type BodyOf,
  type JobView,
  type SampledSlate,
  type Setting,
  clockOfId,
  current,
  meanHundredths,
  minutesOfPallet,
  partOf
} from '$lib/journal';
import { tallyPallets } from './queries.ts';
import { type Place, placeKey, sampledPlace } from './sample-place.ts';

/**
 * Whether a slate that was offered as one of the unsorted sample judges the delivery, or why not:
 * its list was drawn, or it was measured, after sorting had begun on its pallet; its list is not in
 * the job; its place is not on the list; or the same place was measured again later.
 */
export type SampleStanding =
  'judges' | 'drawn-late' | 'measured-late' | 'list-unknown' | 'not-on-list' | 'measured-again';

/** One slate offered as a slate of the unsorted sample. */
export interface OfferedSlate extends Place {
  readonly id: string;
  readonly at: string;
  readonly label: string;
  readonly standing: SampleStanding;
  /** Mean of its points, mm; undefined where none was taken. */
  readonly thicknessMm?: number;
  /** Whether chance picked its place for the full check. */
  readonly isFull: boolean;
  readonly measured: MeasuredSlate;
}

/** A list of places drawn, as the journal has it. */
export type SampleDraw = Setting<BodyOf<'sampleDrawn'>>;

const minuteOf = (id: string): number => Math.floor(clockOfId(id) / 60_000);

/** What is written on each pallet, by its id. */
export function labelsOf(view: JobView): ReadonlyMap<string, string> {
  return new Map(tallyPallets(view).map(({ palletId, label }) => [palletId, label]));
}

/** The lists drawn so far, oldest first. */
export function drawsOf(view: JobView): readonly SampleDraw[] {
  return partOf(view, 'job').draws;
}

/** The list in force: the one drawn last. */
export function drawInForce(view: JobView): SampleDraw | undefined {
  return drawsOf(view).at(-1);
}

/**
 * The minute since 1970 in which sorting began on a pallet, by the clock in the ids of its events;
 * undefined while none of its slates was sorted.
 */
export function sortingBegan(view: JobView, palletId: string): number | undefined {
  let first: number | undefined;
  for (const key in minutesOfPallet(view, palletId))
    first = Math.min(first ?? Infinity, Number(key));
  return first;
}

/** Labels of pallets whose sorting began before now: a list drawn now could not judge them. */
export function palletsSorted(view: JobView): string[] {
  return tallyPallets(view)
    .filter(({ palletId }) => sortingBegan(view, palletId) !== undefined)
    .map(({ label }) => label);
}

/**
 * Every slate offered as one of the sample, in the order measured, with whether it judges.
 *
 * A list drawn, or a slate measured, in the very minute in which sorting began counts as before:
 * minutes are all that the journal keeps of sorting. Cost: linear in the sample and the lists.
 */
export function offeredSlates(view: JobView): OfferedSlate[] {
  const labels = labelsOf(view);
  const lists = new Map(
    drawsOf(view).map((draw) => [draw.id, new Set(draw.value.positions.map(placeKey))])
  );
  const began = new Map(
    [...labels.keys()].map((palletId) => [palletId, sortingBegan(view, palletId)])
  );
  const full = fullPlaces(drawsOf(view));
  const settings = partOf(view, 'sample').slates;
  const last = new Map(
    settings.map((setting) => [placeKey(sampledPlace(setting.value)), setting.id])
  );
  return settings.map((setting) => {
    const place = sampledPlace(setting.value);
    const standing = standingOf(setting, place, lists, began.get(place.palletId), last);
    const isFull = full.has(`${setting.value.sample.drawId}|${placeKey(place)}`);
    const { points } = setting.value;
    return {
      ...place,
      id: setting.id,
      at: setting.at,
      label: labels.get(place.palletId) ?? place.palletId,
      standing,
      ...(points.length > 0 && { thicknessMm: meanHundredths(points) / 100 }),
      isFull,
      measured: { ...measuredSlate(setting.value, standing === 'judges'), isFullCheck: isFull }
    };
  });
}

/** The places that chance picked for the full check, each with its list. */
function fullPlaces(draws: readonly SampleDraw[]): ReadonlySet<string> {
  return new Set(
    draws.flatMap(({ id, value }) =>
      value.positions.filter(({ full }) => full).map((place) => `${id}|${placeKey(place)}`)
    )
  );
}

/** How many slates stand in each way, in the order first met. */
export function countedByStanding(
  offered: readonly OfferedSlate[]
): { readonly reason: SampleStanding; readonly slates: number }[] {
  const counts = new Map<SampleStanding, number>();
  for (const { standing } of offered) counts.set(standing, (counts.get(standing) ?? 0) + 1);
  return [...counts].map(([reason, slates]) => ({ reason, slates }));
}

function standingOf(
  { id, value }: Setting<SampledSlate>,
  place: Place,
  lists: ReadonlyMap<string, ReadonlySet<string>>,
  began: number | undefined,
  last: ReadonlyMap<string, string>
): SampleStanding {
  const { drawId } = value.sample;
  const list = lists.get(drawId);
  if (!list) return 'list-unknown';
  if (!list.has(placeKey(place))) return 'not-on-list';
  if (began !== undefined && minuteOf(drawId) > began) return 'drawn-late';
  if (began !== undefined && minuteOf(id) > began) return 'measured-late';
  return last.get(placeKey(place)) === id ? 'judges' : 'measured-again';
}

/** A slate of the journal as the engine judges it. */
function measuredSlate(slate: SampledSlate, judges: boolean): MeasuredSlate {
  const { palletId, points, sample, setAside } = slate;
  const seen = [...(sample.defects ?? []), ...(setAside ? [setAside] : [])];
  const isLookedOver = sample.defects !== undefined || setAside !== undefined;
  return {
    palletId,
    drawnAs: judges ? 'unsorted sample' : 'other',
    pointsMm: points.map((point) => point / 100),
    ...(sample.lengthMm !== undefined && { lengthMm: sample.lengthMm }),
    ...(sample.widthMm !== undefined && { widthMm: sample.widthMm }),
    ...(sample.outOfSquareMm !== undefined && { squarenessMm: sample.outOfSquareMm }),
    ...(sample.edgeBowMm !== undefined && { edgeMm: sample.edgeBowMm }),
    ...(sample.flatnessMm !== undefined && { bowMm: sample.flatnessMm }),
    ...(sample.ring !== undefined && { ring: sample.ring }),
    ...(isLookedOver && { defects: [...new Set(seen)] })
  };
}

/** How far the list in force is measured. */
export interface ListProgress {
  readonly draw: SampleDraw;
  /** Every place of the list, in walking order. */
  readonly places: readonly (Place & {
    readonly label: string;
    readonly isMeasured: boolean;
    /** Whether chance picked it for the full check. */
    readonly isFull: boolean;
  })[];
  readonly measured: number;
}

/** The list in force with what is measured of it; undefined before one was drawn. */
export function listProgress(
  view: JobView,
  offered: readonly OfferedSlate[]
): ListProgress | undefined {
  const draw = drawInForce(view);
  return draw && progressOf(view, draw, offered);
}

/** One list with what is measured of it. */
export function progressOf(
  view: JobView,
  draw: SampleDraw,
  offered: readonly OfferedSlate[]
): ListProgress {
  const labels = labelsOf(view);
  const done = new Set(offered.map(placeKey));
  const places = draw.value.positions
    .map(({ full = false, ...place }) => ({
      ...place,
      isFull: full,
      label: labels.get(place.palletId) ?? place.palletId,
      isMeasured: done.has(placeKey(place))
    }))
    .sort(
      (one, other) =>
        one.label.localeCompare(other.label, 'en', { numeric: true }) ||
        one.layer - other.layer ||
        one.place - other.place
    );
  return { draw, places, measured: places.filter(({ isMeasured }) => isMeasured).length };
}

/** The verdict signed last, if any. */
export function signedVerdict(view: JobView): Setting<BodyOf<'verdictSigned'>> | undefined {
  return partOf(view, 'job').verdicts.at(-1);
}

/** Slates gauged while sorting, which judge nothing here. */
export function gaugedWhileSorting(view: JobView): number {
  return tallyPallets(view).reduce((sum, { gauged, sampled }) => sum + gauged - sampled, 0);
}

/** The order in force. */
export function orderInForce(view: JobView): BodyOf<'deliveryDeclared'> | undefined {
  return current(partOf(view, 'job').delivery);
}
