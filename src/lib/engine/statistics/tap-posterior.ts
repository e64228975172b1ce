import { EngineError, requireFinite } from '../errors.ts';
import { type ThicknessBins, binsFromPairs, squaresOf } from '../thickness/index.ts';
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
  const logs = Array.from(
    stock.counts,
    (count, bin) => Math.log(count) + logPileChances(hand, stock.hundredths[bin] / 100)[pile - 1]
  );
  const greatest = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - greatest));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const squares = squaresOf(stock);
  return {
    ok: true,
    bins: binsFromPairs(
      weights.map((weight, bin) => {
        const chance = weight / total;
        return [stock.hundredths[bin], chance, squares[bin] * (chance / stock.counts[bin]) ** 2];
      })
    )
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
