import { hypergeometric } from './count-distribution.ts';
import type { DeliverySummary } from './deliveries-compared.ts';

type Counted = Pick<DeliverySummary, 'sampled' | 'outside' | 'sdMm'>;

/**
 * Chance that two samples of equally good deliveries differ as much in their slates outside as
 * these do, or more: Fisher's exact test, two-sided.
 *
 * @returns 0 to 1. Tables as likely as the one seen, to one part in 10⁷, count with it.
 * @throws EngineError `not-whole`, `out-of-range`
 * Source: R. A. Fisher, The Design of Experiments, on the lady tasting tea.
 * @example chanceOfDifference({ outside: 1, sampled: 4 }, { outside: 3, sampled: 4 }) // 34/70
 */
export function chanceOfDifference(
  one: Pick<Counted, 'outside' | 'sampled'>,
  other: Pick<Counted, 'outside' | 'sampled'>
): number {
  const all = one.sampled + other.sampled;
  const { first, probabilities } = hypergeometric(all, one.outside + other.outside, one.sampled);
  const seen = probabilities[one.outside - first] * (1 + 1e-7);
  return Math.min(
    1,
    probabilities.reduce((sum, chance) => (chance <= seen ? sum + chance : sum), 0)
  );
}

/** The delivery with the smallest share outside beside another, and whether more than chance. */
export interface BetterDelivery<T> {
  readonly best: T;
  /** The worst where it is shown to be worse, else the one next to the best. */
  readonly against: T;
  /** Whether the shares outside differ by more than chance explains, at one in twenty. */
  readonly isShown: boolean;
  readonly chance: number;
  /** Whether the best varies less in its sample too. */
  readonly isMoreEven: boolean;
}

/** Chance below which a difference is shown. Common practice. */
const SHOWN_BELOW = 0.05;

/**
 * Which of several deliveries is better, by the share of its sample outside its order; of equal
 * shares the one that varies less.
 *
 * @param deliveries any order; not modified
 * @returns undefined below two deliveries
 *
 * The two told of are picked by what they show, from all pairs there are: so the chance is
 * multiplied by the number of pairs (Bonferroni), and many deliveries do not make a difference of
 * themselves.
 */
export function betterDelivery<T extends Counted>(
  deliveries: readonly T[]
): BetterDelivery<T> | undefined {
  const share = ({ outside, sampled }: Counted): number => outside / sampled;
  const ranked = [...deliveries].sort(
    (one, other) => share(one) - share(other) || one.sdMm - other.sdMm
  );
  const [best, ...others] = ranked;
  if (others.length === 0) return undefined;
  const pairs = (ranked.length * (ranked.length - 1)) / 2;
  const beside = (against: T): BetterDelivery<T> => {
    const chance = Math.min(1, pairs * chanceOfDifference(best, against));
    return {
      best,
      against,
      isShown: chance < SHOWN_BELOW,
      chance,
      isMoreEven: best.sdMm < against.sdMm
    };
  };
  const next = beside(others[0]);
  const worst = beside(others[others.length - 1]);
  return !next.isShown && worst.isShown ? worst : next;
}
