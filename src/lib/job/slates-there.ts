import type { RoofLayout, SlatesThere } from '$lib/engine/roof';
import type { JobView } from '$lib/journal';
import { layingFacts } from './laying-facts.ts';
import { keptShare, reservedOf } from './reserve.ts';
import { settingsOf } from './queries.ts';
import { undereaveServedAtMost } from './roof-undereave.ts';
import { stockOf } from './stock.ts';

/**
 * What a job has of the slates that its roof takes, for the list of what to order: the piles as they
 * stood before laying, counted as a plan counts them; all pallets while there are no piles.
 *
 * @returns whole slates, those laid among them, since the list is of the whole roof; undefined for a job
 * with no stock
 */
export function slatesThere(view: JobView, roof: RoofLayout): SlatesThere | undefined {
  const settings = settingsOf(view);
  const { undereaveOrdered } = settings;
  const stock = stockOf(view);
  const facts = layingFacts(view, roof.demand, stock, 0);
  const onPiles = stock.piles.reduce(
    (sum, { slates }, index) =>
      sum + slates + facts.takenBeforeCount[index] - facts.strayPieces[index],
    0
  );
  const onPallets = stock.pallets.reduce(
    (sum, { usable, slatesOfPile }) => sum + usable - sumOf(slatesOfPile),
    0
  );
  const wides = facts.wideCounted.filter((counted) => counted !== undefined);
  const slates = Math.max(0, onPiles + onPallets);
  if (stock.delivered === 0 && slates === 0 && wides.length === 0) return undefined;
  return {
    slates,
    lost: sumOf(facts.lostOfPile),
    forUndereave: undereaveOrdered ? 0 : undereaveServedAtMost(view, roof),
    isUndereaveCut: !undereaveOrdered,
    roundedUp: roundedUpOf(
      stock.piles.map((pile, index) => pile.slates + facts.takenBeforeCount[index]),
      keptShare(settings)
    ),
    ...(wides.length > 0 && { slateAndAHalves: sumOf(wides) })
  };
}

/** Slates that piles keep back beyond a share of them, since each pile rounds up by itself. */
function roundedUpOf(piles: readonly number[], share: number): number {
  const kept = sumOf(piles.map((slates) => reservedOf(slates, share)));
  return Math.ceil(Number((kept - sumOf(piles) * share).toFixed(6)) / (1 - share));
}

function sumOf(numbers: readonly number[]): number {
  return numbers.reduce((sum, number) => sum + number, 0);
}
