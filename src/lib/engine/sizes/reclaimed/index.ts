import { EngineError, requireWhole } from '../../errors.ts';
import { type LotSample, type LotSampleRefusal, countInLot } from '../../delivery/index.ts';

export { type SizedSlate, type SizeInLot, type SizesInLot, sizesOfLot } from './sizes-of-lot.ts';

/** How many sound slates a reclaimed lot really has, and how far they go. */
export interface SoundStock {
  readonly ok: true;
  /** Likeliest number of sound slates, and the exact interval of it. */
  readonly sound: number;
  readonly low: number;
  readonly high: number;
  readonly level: number;
  /** Times the slates needed that the lot holds: low, likeliest, high. */
  readonly roofs: { readonly low: number; readonly likely: number; readonly high: number };
}

/**
 * How many slates of a reclaimed lot are sound, from a sample tried by ring, edges, thickness and
 * old holes, and how many roofs they are.
 *
 * @param sample sound slates found, slates tried, slates in the lot
 * @param needed slates the roof takes, reserve included, at least 1
 * @param level confidence, above 0 and below 1
 * @returns the exact interval of a finite lot; refused where nothing was tried, the lot is empty or
 * smaller than what was tried
 * @throws EngineError `not-whole`, `out-of-range`
 * Definition: hypergeometric tails, see `countInLot`.
 * Source: exact interval of a finite lot; held to simulation in the tests.
 */
export function soundStock(
  sample: LotSample,
  needed: number,
  level = 0.95
): SoundStock | LotSampleRefusal {
  requireWhole(needed, 1, 'slates needed');
  if (sample.sampled > 0 && sample.found > sample.sampled)
    throw new EngineError('out-of-range', `${sample.found} sound of ${sample.sampled} tried`);
  const interval = countInLot(sample, level);
  if (!interval.ok) return interval;
  const { low, high } = interval.count;
  const sound = Math.round((sample.found / sample.sampled) * sample.lotSize);
  return {
    ok: true,
    sound,
    low,
    high,
    level,
    roofs: { low: low / needed, likely: sound / needed, high: high / needed }
  };
}
