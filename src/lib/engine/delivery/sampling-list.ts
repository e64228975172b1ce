import { EngineError, requireWhole } from '../errors.ts';
import { largestRemainder } from '../grading/index.ts';
import { type Random, randomBelow, shuffled } from '../random.ts';

/** A pallet as it stands on the ground, before anything is taken off it. */
export interface PalletToSample {
  readonly id: string;
  /** Layers of slates, at least 1. */
  readonly layers: number;
  /** Slates in a full layer, at least 1. */
  readonly perLayer: number;
  /** Slates on the pallet; at most `layers × perLayer`. A short layer is the top one. */
  readonly count: number;
}

/** Where one slate of the sample stands. */
export interface SamplePlace {
  readonly palletId: string;
  /** 1 is the top layer. */
  readonly layer: number;
  /** 1 is the first slate of the layer, counted from the end agreed on site. */
  readonly place: number;
}

export type SamplingListResult =
  | {
      readonly ok: true;
      /** In walking order: pallets as given, then layer from the top, then place. */
      readonly places: readonly SamplePlace[];
      /** Slates drawn from each pallet, in the order given. */
      readonly perPallet: readonly number[];
    }
  | {
      readonly ok: false;
      readonly reason: 'lot-empty' | 'nothing-to-sample' | 'sample-exceeds-lot';
    };

/** From where on a pallet chance picks: any place, or a few layers and places in them. */
export type PlacesFrom = 'anywhere' | 'few-layers';

/**
 * Draws where the slates of a sample are taken from: each pallet by its share of the lot, each
 * slate of a pallet with the same chance, none twice.
 *
 * @param pallets in the order they are walked
 * @param sampleSize slates to draw, whole, 0 or more
 * @param random a seeded generator: the same seed gives the same list
 * @param from `few-layers` takes slates in groups that share a layer, so that about half as many
 *   layers are opened; each slate keeps exactly the same chance, but where slates of a layer are alike
 *   the sample tells less than one drawn from anywhere
 * @returns the list. Refused, with the reason: no slates on the pallets, a sample of 0, a sample
 *   larger than the lot.
 * @throws EngineError `not-whole`, `out-of-range`, `inconsistent` for a pallet that holds more than
 *   its layers can
 *
 * Definition: shares by largest remainder, ties to the earlier pallet; within a pallet, Floyd's
 * draw without repeats, or for a few layers circular systematic sampling of √n groups over the slates in
 * a chance order of the layers and within them. Cost: sample × log(sample), or slates.
 */
export function drawSamplingList(
  pallets: readonly PalletToSample[],
  sampleSize: number,
  random: Random,
  from: PlacesFrom = 'anywhere'
): SamplingListResult {
  requireWhole(sampleSize, 0, 'sample size');
  for (const pallet of pallets) requirePallet(pallet);
  const counts = pallets.map(({ count }) => count);
  const lotSize = counts.reduce((sum, count) => sum + count, 0);
  if (lotSize === 0) return { ok: false, reason: 'lot-empty' };
  if (sampleSize === 0) return { ok: false, reason: 'nothing-to-sample' };
  if (sampleSize > lotSize) return { ok: false, reason: 'sample-exceeds-lot' };

  const perPallet = largestRemainder(counts, sampleSize);
  const draw = from === 'anywhere' ? drawAnywhere : drawInGroups;
  const places = pallets.flatMap((pallet, index) =>
    draw(pallet, perPallet[index], random).map((slate) => placeOf(pallet, slate))
  );
  return { ok: true, places, perPallet };
}

/**
 * Picks by chance which slates of a list get the full check, each pallet by its share of the list.
 *
 * @param size slates to pick, whole, 0 or more; all of them from the length of the list on
 * @param random the generator that drew the list, so that one seed gives both
 * @returns for each place whether it is picked, in the order given
 * @throws EngineError `not-whole`, `out-of-range`
 *
 * Definition: shares by largest remainder, then Floyd's draw without repeats on each pallet.
 */
export function drawFullChecks(
  places: readonly SamplePlace[],
  size: number,
  random: Random
): readonly boolean[] {
  requireWhole(size, 0, 'slates for the full check');
  const pallets = [...new Set(places.map(({ palletId }) => palletId))].map((palletId) =>
    places.flatMap((place, index) => (place.palletId === palletId ? [index] : []))
  );
  const counts = pallets.map(({ length }) => length);
  const perPallet = largestRemainder(counts, Math.min(size, places.length));
  const picked = new Set(
    pallets.flatMap((indexes, at) =>
      drawWithoutRepeats(indexes.length, perPallet[at], random).map((index) => indexes[index])
    )
  );
  return places.map((_, index) => picked.has(index));
}

function drawAnywhere({ count }: PalletToSample, size: number, random: Random): number[] {
  return drawWithoutRepeats(count, size, random);
}

/**
 * Slates of a pallet in about √size groups, each of one layer but where a group runs on into the next.
 * Layers stand in a chance order, slates within them too, and the groups at even distances round this
 * circle from a chance start: a slate is drawn for `size` of the `count` starts, whatever its place.
 */
function drawInGroups(pallet: PalletToSample, size: number, random: Random): number[] {
  const { count } = pallet;
  // Half of a pallet and more opens its layers anyway, and groups would meet.
  if (size < 2 || size > count / 2) return drawAnywhere(pallet, size, random);
  const layers = new Map<number, number[]>();
  for (let slate = 0; slate < count; slate++) {
    const { layer } = placeOf(pallet, slate);
    const own = layers.get(layer);
    if (own) own.push(slate);
    else layers.set(layer, [slate]);
  }
  const circle = shuffled([...layers.values()], random).flatMap((own) => shuffled(own, random));
  const start = randomBelow(random, count);
  const groups = Math.ceil(Math.sqrt(size));
  const drawn = Array.from({ length: groups }, (_, group) => {
    const at = start + Math.floor((group * count) / groups);
    const own = Math.floor(((group + 1) * size) / groups) - Math.floor((group * size) / groups);
    return Array.from({ length: own }, (_one, step) => circle[(at + step) % count]);
  });
  return drawn.flat().sort((one, other) => one - other);
}

/** `size` different whole numbers below `bound`, rising. */
function drawWithoutRepeats(bound: number, size: number, random: Random): number[] {
  const drawn = new Set<number>();
  for (let last = bound - size; last < bound; last++) {
    const candidate = randomBelow(random, last + 1);
    drawn.add(drawn.has(candidate) ? last : candidate);
  }
  return [...drawn].sort((one, other) => one - other);
}

/** Place of the slate with this number from the top; the short top layer, if any, comes first. */
function placeOf({ id, perLayer, count }: PalletToSample, slate: number): SamplePlace {
  const inTopLayer = count % perLayer || perLayer;
  if (slate < inTopLayer) return { palletId: id, layer: 1, place: slate + 1 };
  const below = slate - inTopLayer;
  return {
    palletId: id,
    layer: 2 + Math.floor(below / perLayer),
    place: 1 + (below % perLayer)
  };
}

function requirePallet({ id, layers, perLayer, count }: PalletToSample): void {
  requireWhole(layers, 1, `layers of pallet ${id}`);
  requireWhole(perLayer, 1, `slates per layer of pallet ${id}`);
  requireWhole(count, 0, `slates on pallet ${id}`);
  if (count > layers * perLayer)
    throw new EngineError(
      'inconsistent',
      `pallet ${id} holds ${count}, but ${layers} layers of ${perLayer} hold ${layers * perLayer}`
    );
}
