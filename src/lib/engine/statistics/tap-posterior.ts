import { EngineError, requireFinite } from '../errors.ts';
import { type ThicknessBins, squaresOf } from '../thickness/index.ts';
import { type Hand, logPileChances } from './hand.ts';

/**
 * What a tap says in millimetres: the chances of each thickness for a slate that a hand put on a
 * pile, given the spread of the stock it was drawn from.
 *
 * @param stock slates of the stock by thickness, in any number; not modified
 * @param hand thresholds (mm, falling) and spread (mm, at least 1e-6) of the hand; not modified
 * @param pile the pile, 1 for the thickest
 * @returns bins whose counts are chances that add up to 1; or `empty` without a stock
 *
 * Definition: Bayes' rule, P(bin | pile) ∝ P(bin) · P(pile | bin), with the ordered probit model of
 * `learnHand`. Accuracy: about 1e-13; worked in logs, so a pile the stock can hardly reach still
 * gets the thicknesses nearest to it. Cost: linear in the bins.
 *
 * @throws EngineError `out-of-range` for a pile the hand does not know or a spread below 1e-6 mm
 * @example
 * // 5 mm and 7 mm alike, one cut at 6 mm, spread 1 mm: the thick pile holds 7 mm with chance Φ(1)
 * tapPosterior(binsFromPairs([[500, 1], [700, 1]]), { thresholdsMm: [6], sdMm: 1 }, 1); // 0.1587, 0.8413
 */
export function tapPosterior(
  stock: ThicknessBins,
  hand: Pick<Hand, 'thresholdsMm' | 'sdMm'>,
  pile: number
):
  | { readonly ok: true; readonly bins: ThicknessBins }
  | { readonly ok: false; readonly reason: 'empty' } {
  requireHand(hand);
  if (!Number.isInteger(pile) || pile < 1 || pile > hand.thresholdsMm.length + 1)
    throw new EngineError(
      'out-of-range',
      `pile ${pile}; the hand knows ${hand.thresholdsMm.length + 1}`
    );
  if (stock.counts.length === 0) return { ok: false, reason: 'empty' };
  const chancesOf = rememberedChances(hand);
  const { hundredths, counts } = stock;
  const size = counts.length;
  const weights = new Float64Array(size);
  let greatest = -Infinity;
  for (let bin = 0; bin < size; bin++) {
    weights[bin] = Math.log(counts[bin]) + chancesOf(hundredths[bin])[pile - 1];
    if (weights[bin] > greatest) greatest = weights[bin];
  }
  let [total, filled] = [0, 0];
  for (let bin = 0; bin < size; bin++) {
    weights[bin] = Math.exp(weights[bin] - greatest);
    total += weights[bin];
    if (weights[bin] > 0) filled++;
  }
  const squares = squaresOf(stock);
  const told = {
    hundredths: new Int32Array(filled),
    counts: new Float64Array(filled),
    squares: new Float64Array(filled)
  };
  for (let bin = 0, at = 0; bin < size; bin++) {
    if (weights[bin] === 0) continue;
    const chance = weights[bin] / total;
    told.hundredths[at] = hundredths[bin];
    told.counts[at] = chance;
    told.squares[at++] = squares[bin] * (chance / counts[bin]) ** 2;
  }
  return { ok: true, bins: told };
}

/** By hand, its chances at each thickness: a hand is asked at the same thicknesses by every pallet. */
const remembered = new WeakMap<
  object,
  { readonly of: string; readonly at: Map<number, number[]> }
>();

function rememberedChances(hand: Pick<Hand, 'thresholdsMm' | 'sdMm'>) {
  const of = `${hand.thresholdsMm.join()}|${hand.sdMm}`;
  let known = remembered.get(hand);
  if (known?.of !== of) {
    known = { of, at: new Map() };
    remembered.set(hand, known);
  }
  const { at } = known;
  return (hundredths: number): number[] => {
    let chances = at.get(hundredths);
    if (!chances) {
      chances = logPileChances(hand, hundredths / 100);
      at.set(hundredths, chances);
    }
    return chances;
  };
}

function requireHand({ thresholdsMm, sdMm }: Pick<Hand, 'thresholdsMm' | 'sdMm'>): void {
  if (!(sdMm >= 1e-6 && sdMm < Infinity))
    throw new EngineError('out-of-range', `the hand's spread is ${sdMm} mm; give at least 1e-6`);
  for (const [k, thresholdMm] of thresholdsMm.entries()) {
    requireFinite(thresholdMm, 'threshold of the hand');
    if (k > 0 && thresholdMm >= thresholdsMm[k - 1])
      throw new EngineError('wrong-order', "the hand's thresholds must fall");
  }
}
