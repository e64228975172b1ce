import {
  type ThicknessBins,
  binsFromPairs,
  mergeBins,
  squaresOf,
  totalCount
} from '../thickness/index.ts';
import { toHundredths } from '../units.ts';
import { expectedPiles } from './expected-piles.ts';
import { kickChances } from './kick-chances.ts';
import { planIfAny } from './planner.ts';
import type { PileStock, PlanRequest } from './plan-types.ts';
import type { MoveThreshold, OtherPiles, StockKnowledge } from './way-out-types.ts';

/** Thresholds are moved in steps of 0.05 mm, up to 1 mm either way. */
const STEP_HUNDREDTHS = 5;
const MOST_STEPS = 20;

/**
 * For each threshold, the least move that makes a plan fit, down (slates of the thinner pile go to
 * the thicker) or up; of two equal moves the one with fewer expected kickers, then the one down.
 *
 * Moved slates are taken to be spread as the pile's bins are; slate-and-a-halves move with them.
 */
export function moveThresholds(request: PlanRequest, knowledge: StockKnowledge): MoveThreshold[] {
  const { thresholdsMm } = knowledge;
  if (!canPrice(request, knowledge)) return [];
  return thresholdsMm.flatMap((fromMm, index) => {
    const from = toHundredths(fromMm);
    const above = index === 0 ? Infinity : toHundredths(thresholdsMm[index - 1]);
    const below =
      index + 1 === thresholdsMm.length ? -Infinity : toHundredths(thresholdsMm[index + 1]);
    for (let step = 1; step <= MOST_STEPS; step++) {
      const ways = [from - step * STEP_HUNDREDTHS, from + step * STEP_HUNDREDTHS]
        .filter((to) => to > below && to < above)
        .flatMap((to) => movedTo(request, knowledge, index, from, to));
      if (ways.length > 0)
        return [
          ways.reduce((best, way) => (way.plan.objective < best.plan.objective ? way : best))
        ];
    }
    return [];
  });
}

/** Sorts everything again at other thresholds; reserves stay as large as they are in sum. */
export function sortAgain(request: PlanRequest, knowledge: StockKnowledge): OtherPiles[] {
  const { piles, common } = request;
  if (request.laid?.length || !canPrice(request, knowledge)) return [];
  const total = (read: (pile: PileStock) => number) =>
    piles.reduce((sum, pile) => sum + read(pile), 0);
  const slates = total((pile) => pile.slates);
  const slateAndAHalves = total((pile) => pile.slateAndAHalves);
  const spread = mergeBins(
    knowledge.pileBins,
    piles.map((pile, index) => perReading(pile, knowledge.pileBins[index]))
  );
  if (slates === 0) return [];
  const kept = Math.min(1, total((pile) => pile.reservedSlates) / slates);
  return (knowledge.otherThresholdsMm ?? []).flatMap((thresholdsMm): OtherPiles[] => {
    const sorted = expectedPiles(
      { spread, slates, slateAndAHalves, reservedShare: kept },
      thresholdsMm
    );
    const plan = planIfAny({
      ...request,
      piles: sorted.stocks,
      kicks: kickChances(
        sorted.bins,
        knowledge.kickAllowanceMm,
        knowledge.commonBins,
        knowledge.softness
      )
    });
    if (!plan) return [];
    return [
      {
        way: 'other-piles',
        plan,
        thresholdsMm,
        lookAgain: slates + (common ? 0 : slateAndAHalves)
      }
    ];
  });
}

function movedTo(
  request: PlanRequest,
  knowledge: StockKnowledge,
  index: number,
  from: number,
  to: number
): MoveThreshold[] {
  const [giving, taking] = to < from ? [index + 1, index] : [index, index + 1];
  const bins = knowledge.pileBins[giving];
  const stock = request.piles[giving];
  const known = totalCount(bins);
  if (known === 0) return [];
  const moves = (hundredths: number) => (to < from ? hundredths >= to : hundredths < to);
  const [moving, staying] = divide(bins, moves);
  const share = totalCount(moving) / known;
  const slates = Math.round(share * stock.slates);
  const slateAndAHalves = Math.round(share * stock.slateAndAHalves);
  if (slates + slateAndAHalves === 0) return [];

  const grown = mergeBins(
    [knowledge.pileBins[taking], moving],
    [perReading(request.piles[taking], knowledge.pileBins[taking]), perReading(stock, bins)]
  );
  const pileBins = knowledge.pileBins.with(giving, staying).with(taking, grown);
  const plan = planIfAny({
    ...request,
    piles: request.piles
      .with(giving, gain(stock, -slates, -slateAndAHalves))
      .with(taking, gain(request.piles[taking], slates, slateAndAHalves)),
    kicks: kickChances(
      pileBins,
      knowledge.kickAllowanceMm,
      knowledge.commonBins,
      knowledge.softness
    )
  });
  if (!plan) return [];
  const wide = request.common ? 0 : 1;
  return [
    {
      way: 'move-threshold',
      plan,
      threshold: index + 1,
      fromMm: from / 100,
      toMm: to / 100,
      pile: giving + 1,
      lookAgain: stock.slates + wide * stock.slateAndAHalves,
      move: slates + wide * slateAndAHalves
    }
  ];
}

/** Whether the spread of everything that may be laid is known. */
function canPrice(
  { piles, common }: PlanRequest,
  { pileBins, commonBins }: StockKnowledge
): boolean {
  if (common && !commonBins) return false;
  return piles.every(({ slates, slateAndAHalves }, index) =>
    slates + slateAndAHalves > 0 ? totalCount(pileBins[index]) > 0 : true
  );
}

/** Slates that stand for one reading of the pile's spread; 0 for a pile without readings. */
function perReading(pile: PileStock, bins: ThicknessBins): number {
  const known = totalCount(bins);
  return known === 0 ? 0 : pile.slates / known;
}

function divide(
  bins: ThicknessBins,
  isFirst: (hundredths: number) => boolean
): [ThicknessBins, ThicknessBins] {
  const parts: [number, number, number][][] = [[], []];
  for (const [bin, hundredths] of bins.hundredths.entries())
    parts[isFirst(hundredths) ? 0 : 1].push([hundredths, bins.counts[bin], squaresOf(bins)[bin]]);
  return [binsFromPairs(parts[0]), binsFromPairs(parts[1])];
}

function gain(pile: PileStock, slates: number, slateAndAHalves: number): PileStock {
  return {
    ...pile,
    slates: pile.slates + slates,
    slateAndAHalves: pile.slateAndAHalves + slateAndAHalves
  };
}
