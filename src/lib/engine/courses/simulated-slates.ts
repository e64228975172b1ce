import { EngineError } from '../errors.ts';
import { type ThicknessBins, totalCount } from '../thickness/index.ts';
import type { PileStock, Plan } from './plan-types.ts';

/** The slates that a simulation deals from: thickness of each, in hundredths of a millimetre. */
export interface SimulatedSlates {
  /** One list per pile, pile 1 first. */
  readonly piles: readonly Int32Array[];
  /** Slate-and-a-halves of the common stock; empty without one. */
  readonly common: Int32Array;
}

/**
 * As many whole slates as stand on each pile, spread as its bins are: the slates up to each thickness
 * are rounded, so that a long tail of small chances keeps its slates. A
 * pile's slate-and-a-halves are as thick as its slates, so they stand in the same list.
 *
 * The exact chances of these slates, and so the exact expectation of a simulation, come from the
 * whole counts: {@link slatesAsBins}.
 *
 * @param bins spread of each pile, any scale; one for each pile of the plan
 * @param stocks what stands on each pile
 * @throws EngineError `wrong-length`; `empty` for a pile with slates but no spread; `inconsistent`
 * if the plan uses more than stands there
 */
export function simulatedSlates(
  plan: Plan,
  bins: readonly ThicknessBins[],
  stocks: readonly PileStock[],
  common?: { readonly bins: ThicknessBins; readonly slateAndAHalves: number }
): SimulatedSlates {
  if (bins.length !== plan.piles.length || stocks.length !== plan.piles.length)
    throw new EngineError(
      'wrong-length',
      `${bins.length} spreads and ${stocks.length} stocks for ${plan.piles.length} piles`
    );
  const commonNeed = plan.courses.reduce((sum, course) => sum + course.commonSlateAndAHalves, 0);
  return {
    piles: plan.piles.map((use, index) => {
      const wide = commonNeed > 0 ? 0 : stocks[index].slateAndAHalves;
      const count = stocks[index].slates + wide;
      if (use.slates + use.slateAndAHalves > count)
        throw new EngineError(
          'inconsistent',
          `pile ${use.pile} holds ${count}; the plan uses more`
        );
      return wholeSlates(bins[index], count, `pile ${use.pile}`);
    }),
    common: commonSlates(common, commonNeed)
  };
}

/** The same slates counted into bins. */
export function slatesAsBins(slates: Int32Array): ThicknessBins {
  const hundredths: number[] = [];
  const counts: number[] = [];
  for (const thickness of slates.toSorted()) {
    if (hundredths.at(-1) === thickness) counts[counts.length - 1]++;
    else {
      hundredths.push(thickness);
      counts.push(1);
    }
  }
  return { hundredths: Int32Array.from(hundredths), counts: Float64Array.from(counts) };
}

function commonSlates(
  common: { readonly bins: ThicknessBins; readonly slateAndAHalves: number } | undefined,
  need: number
): Int32Array {
  if ((common?.slateAndAHalves ?? 0) < need)
    throw new EngineError('inconsistent', `the plan uses ${need} common slate-and-a-halves`);
  if (!common) return new Int32Array();
  return wholeSlates(common.bins, common.slateAndAHalves, 'the common stock');
}

function wholeSlates(bins: ThicknessBins, count: number, name: string): Int32Array {
  if (count > 0 && bins.counts.length === 0)
    throw new EngineError('empty', `${name} holds ${count} slates but has no spread`);
  const slates = new Int32Array(count);
  const all = totalCount(bins);
  let passed = 0;
  let slate = 0;
  for (const [bin, weight] of bins.counts.entries()) {
    passed += weight;
    const upTo = Math.min(count, Math.round((passed / all) * count));
    slates.fill(bins.hundredths[bin], slate, upTo);
    slate = upTo;
  }
  return slates.fill(bins.hundredths[bins.hundredths.length - 1], slate);
}
