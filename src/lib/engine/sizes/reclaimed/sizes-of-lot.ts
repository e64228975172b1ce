import { EngineError, requireFinite } from '../../errors.ts';
import { type LotSample, countInLot } from '../../delivery/index.ts';
import { type SlateSet, meanWidthMm } from '../slate-sets.ts';

/** A slate shorter or narrower than its size by this is of it all the same, mm. Ours: a worn edge. */
const WORN_MM = 3;

/** A slate as measured, mm. */
export interface SizedSlate {
  readonly lengthMm: number;
  readonly widthMm: number;
}

/** What a reclaimed lot has of one size. */
export interface SizeInLot {
  readonly setId: string;
  /** Measured slates that make one of this size. */
  readonly found: number;
  /** Sound slates of the lot, likeliest, and the range it lies in. */
  readonly slates: number;
  readonly low: number;
  readonly high: number;
  /** Mean width of those found, cut down to the widest asked; that of the size where none was found. */
  readonly meanWidthMm: number;
}

/** A reclaimed lot by sizes. */
export interface SizesInLot {
  readonly sizes: readonly SizeInLot[];
  /** Measured slates too short or too narrow for every size. */
  readonly unfit: number;
}

/**
 * How many sound slates of each size a reclaimed lot has, from the sizes of some sound ones.
 *
 * A slate goes to the longest size that can be cut from it: as long and as wide, or longer and wider.
 *
 * @param measured sound slates of the sample, mm; not modified
 * @param sets sizes that the roof takes, longest first, sound
 * @param sound of the sample tried: how many were sound, tried, and in the lot
 * @param level confidence of each range, above 0 and below 1
 * @returns each size in the order given, and how many slates make none; whole slates
 * @throws EngineError `empty` for nothing measured, `inconsistent` for more measured than sound,
 * `not-finite`, and `out-of-range` for what `countInLot` refuses
 *
 * Definition: the sound slates of the lot lie in an exact interval, and those of a size among them in
 * another; each has half the risk, so that together they hold at least as often as asked (Bonferroni).
 * @source exact intervals of a finite lot; held to simulation in the tests
 */
export function sizesOfLot(
  measured: readonly SizedSlate[],
  sets: readonly SlateSet[],
  sound: LotSample,
  level = 0.95
): SizesInLot {
  if (measured.length === 0) throw new EngineError('empty', 'no slate measured; give at least one');
  if (measured.length > sound.found)
    throw new EngineError('inconsistent', `${measured.length} measured of ${sound.found} sound`);
  for (const { lengthMm, widthMm } of measured)
    for (const value of [lengthMm, widthMm]) requireFinite(value, 'length');
  const half = 1 - (1 - level) / 2;
  const all = countInLot(sound, half);
  if (!all.ok) throw new EngineError('out-of-range', all.reason);
  const soundInLot = (sound.found / sound.sampled) * sound.lotSize;
  const placed = measured.map((slate) => sets.find((set) => isCutFrom(set, slate))?.id);
  const sizes = sets.map((set): SizeInLot => {
    const widths = measured.filter((_slate, at) => placed[at] === set.id);
    const found = widths.length;
    const within = (lotSize: number) => {
      const count = countInLot({ found, sampled: measured.length, lotSize }, half);
      if (!count.ok) throw new EngineError('out-of-range', count.reason);
      return count.count;
    };
    const most = set.widths.kind === 'one' ? set.widths.widthMm : set.widths.toMm;
    return {
      setId: set.id,
      found,
      slates: Math.round((found / measured.length) * soundInLot),
      low: within(all.count.low).low,
      high: within(all.count.high).high,
      meanWidthMm:
        found === 0
          ? meanWidthMm(set.widths)
          : widths.reduce((sum, { widthMm }) => sum + Math.min(widthMm, most), 0) / found
    };
  });
  return { sizes, unfit: placed.filter((id) => id === undefined).length };
}

function isCutFrom({ lengthMm, widths }: SlateSet, slate: SizedSlate): boolean {
  const least = widths.kind === 'one' ? widths.widthMm : widths.fromMm;
  return slate.lengthMm >= lengthMm - WORN_MM && slate.widthMm >= least - WORN_MM;
}
