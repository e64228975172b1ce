/** Shares of a grade that the pallets of a delivery are likely to hold. */
export interface LikelyShares {
  /** By pallet, 0 to 1; a pallet not opened has the share of the stock. */
  readonly shares: readonly number[];
  /** Slates of the stock at large that the gauged ones of each pallet are mixed with. */
  readonly mixedIn: number;
}

/**
 * Least and greatest intraclass correlation taken for shares. Ours: with 0.1 the intervals of invented
 * deliveries held most evenly, whether their pallets differ not at all or more than slates of a pallet
 * do; with 0.2 they did not where pallets are alike.
 */
const LEAST_ALIKE = 0.1;
const MOST_ALIKE = 0.5;

/**
 * The share of a grade that each pallet is likely to hold, from its own slates and those of the others:
 * a pallet of which few were gauged and none was of the grade need not be without any.
 *
 * @param hits slates of the grade among those gauged, by pallet; not modified
 * @param gauged slates gauged, by pallet, whole, 0 for a pallet not opened; not modified
 * @param doubt slates of the grade, and as many others, that are added to those of the stock (0 unless
 * given), so that a grade not seen yet has a share all the same
 * @returns shares in the same order, all 0 where nothing was gauged and there is no doubt
 *
 * Definition: (xᵢ + aμ) / (mᵢ + a), the mean of a beta spread of pallets' shares whose intraclass
 * correlation is ρ = 1 / (a + 1): that of a one-way analysis of variance of the slates as 1 and 0,
 * within 0.1 and 0.5, and 0.1 where that cannot tell. The share μ of the stock is Σ wᵢxᵢ/mᵢ / Σ wᵢ
 * with wᵢ = mᵢ / (1 + (mᵢ − 1)ρ), the slates that mᵢ of one pallet are worth. Accuracy: a few units in
 * the last place. Cost: linear in pallets.
 *
 * @source beta-binomial model, analysis of variance estimate of ρ, weights under intraclass
 * correlation (Kish 1965), from memory
 * @example
 * likelyShares([3, 1], [10, 10]); // ρ 0.1, 9 slates mixed in: 4.8/19 and 2.8/19
 */
export function likelyShares(
  hits: readonly number[],
  gauged: readonly number[],
  doubt = 0
): LikelyShares {
  const alike = Math.min(MOST_ALIKE, Math.max(LEAST_ALIKE, intraclass(hits, gauged)));
  const mixedIn = (1 - alike) / alike;
  let ofGrade = doubt;
  let all = 2 * doubt;
  for (const [pallet, slates] of gauged.entries())
    if (slates > 0) {
      const worth = slates / (1 + (slates - 1) * alike);
      ofGrade += (worth * hits[pallet]) / slates;
      all += worth;
    }
  const ofStock = all > 0 ? ofGrade / all : 0;
  const shares = hits.map((own, pallet) => (own + mixedIn * ofStock) / (gauged[pallet] + mixedIn));
  return { shares, mixedIn };
}

/** Intraclass correlation of slates as 1 and 0; 0 where one pallet, or one slate of each, tells none. */
function intraclass(hits: readonly number[], gauged: readonly number[]): number {
  const pallets = gauged.filter((slates) => slates > 0).length;
  const all = sum(gauged);
  if (pallets < 2 || all === pallets) return 0;
  const mean = sum(hits) / all;
  const squares = (pallet: number) => gauged[pallet] * (hits[pallet] / gauged[pallet] - mean) ** 2;
  const between = sum(gauged.map((slates, pallet) => (slates > 0 ? squares(pallet) : 0)));
  const within = sum(
    gauged.map((slates, pallet) => (slates > 0 ? hits[pallet] * (1 - hits[pallet] / slates) : 0))
  );
  const ofSlates = within / (all - pallets);
  const even = (all - sum(gauged.map((slates) => slates ** 2)) / all) / (pallets - 1);
  const ofPallets = Math.max(0, between / (pallets - 1) - ofSlates) / even;
  return ofPallets > 0 ? ofPallets / (ofPallets + ofSlates) : 0;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
