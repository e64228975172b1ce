import { EngineError, requireFinite } from '../errors.ts';
import { type ThicknessBins, binsFromPairs, squaresOf, totalCount } from '../thickness/index.ts';
import { type Hand, type UnknownHand, logPileChances } from './hand.ts';

/** The taps of one sorter that were not gauged as well. */
export interface SorterTaps {
  /** Slates tapped onto each pile, thickest pile first. */
  readonly taps: readonly number[];
  /** The sorter's hand, or why it is not known. */
  readonly hand: Hand | UnknownHand;
}

/** Gauged slates and taps as one spread. */
export interface FusedSpread {
  readonly ok: true;
  /** Slates by thickness; they add up to the gauged slates and the taps that counted. */
  readonly bins: ThicknessBins;
  /** Taps that count for piles but not for millimetres, their sorter's hand being unknown. */
  readonly tapsLeftOut: number;
}

/** Why there is no spread in millimetres. */
export interface NoFusedSpread {
  readonly ok: false;
  readonly reason:
    /** Not one slate was gauged. */
    | 'nothing-gauged'
    /** There are taps, but no sorter's hand is known: they count for piles, never for millimetres. */
    | 'no-spot-checks';
}

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

const MOST_ROUNDS = 100_000;

/**
 * Adds taps to the gauged slates: the spread of the stock from both together.
 *
 * @param gauged gauged slates by thickness, those that were tapped as well included; not modified
 * @param sorters each sorter's other taps and hand; not modified
 * @returns the spread of all of them; or why there is none
 *
 * Definition: the spread f for which f = gauged slates + taps spread over bins by their posterior
 * given f itself, reached by repeating that step (expectation and maximisation) until no bin changes
 * by more than 1e-10 of the whole. The gauged slates stay as they are in every round, so f is
 * their spread reweighted smoothly towards what the taps say and has slates only where some were
 * gauged. A slate must be counted once: gauged, or among the taps. Cost: bins × piles × sorters a
 * round; rounds grow with taps per gauged slate.
 *
 * @throws EngineError `wrong-length` for taps that do not match the hand's piles, `out-of-range` for
 * a negative number of taps, `not-finite`
 * @example
 * fuseTaps(binsFromPairs([[500, 2]]), [{ taps: [9, 1], hand: { ok: false, reason: 'not-by-thickness' } }]);
 * // { ok: false, reason: 'no-spot-checks' }
 */
export function fuseTaps(
  gauged: ThicknessBins,
  sorters: readonly SorterTaps[]
): FusedSpread | NoFusedSpread {
  if (gauged.counts.length === 0) return { ok: false, reason: 'nothing-gauged' };
  let tapsLeftOut = 0;
  const known: { taps: readonly number[]; chances: Float64Array[] }[] = [];
  for (const { taps, hand } of sorters) {
    const total = requireTaps(taps);
    if (total === 0) continue;
    if (!hand.ok) {
      tapsLeftOut += total;
      continue;
    }
    requireHand(hand);
    if (taps.length !== hand.thresholdsMm.length + 1)
      throw new EngineError(
        'wrong-length',
        `taps for ${taps.length} piles; the hand knows ${hand.thresholdsMm.length + 1}`
      );
    known.push({ taps, chances: relativeChances(gauged, hand) });
  }
  if (known.length === 0)
    return tapsLeftOut > 0
      ? { ok: false, reason: 'no-spot-checks' }
      : { ok: true, bins: gauged, tapsLeftOut: 0 };

  let spread = gauged.counts;
  const all = totalCount(gauged) + known.reduce((sum, { taps }) => sum + requireTaps(taps), 0);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const next = Float64Array.from(gauged.counts);
    for (const { taps, chances } of known)
      for (const [pile, chance] of chances.entries()) {
        let reach = 0;
        for (let bin = 0; bin < spread.length; bin++) reach += spread[bin] * chance[bin];
        const each = taps[pile] / reach;
        if (taps[pile] > 0)
          for (let bin = 0; bin < spread.length; bin++)
            next[bin] += each * spread[bin] * chance[bin];
      }
    const change = next.reduce(
      (most, count, bin) => Math.max(most, Math.abs(count - spread[bin])),
      0
    );
    spread = next;
    if (change <= 1e-10 * all) break;
  }
  return { ok: true, bins: { hundredths: gauged.hundredths.slice(), counts: spread }, tapsLeftOut };
}

/** For each pile the chance of every bin to reach it, relative to the likeliest bin. */
export function relativeChances(
  { hundredths }: Pick<ThicknessBins, 'hundredths'>,
  hand: Pick<Hand, 'thresholdsMm' | 'sdMm'>
): Float64Array[] {
  const logs = Array.from(hundredths, (bin) => logPileChances(hand, bin / 100));
  return logs[0].map((_, pile) => {
    const greatest = logs.reduce((most, chances) => Math.max(most, chances[pile]), -Infinity);
    return Float64Array.from(logs, (chances) => Math.exp(chances[pile] - greatest));
  });
}

function requireTaps(taps: readonly number[]): number {
  let total = 0;
  for (const count of taps) {
    requireFinite(count, 'taps');
    if (count < 0) throw new EngineError('out-of-range', `${count} taps; give 0 or more`);
    total += count;
  }
  return total;
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
