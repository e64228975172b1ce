import type { StockKnowledge, UnsortedStock, WhatIfChoices } from '$lib/engine/courses';
import { FEWEST_PILES, MOST_PILES, naturalBreaks } from '$lib/engine/grading';
import type { ThicknessBins } from '$lib/engine/thickness';
import type { Grades, JobSettings, PlanGround } from '$lib/job';

/** Most piles that the what-if table tries: more need more floor than a site has. Ours. */
const MOST_TRIED = 6;
/** Steps of the kick allowance that are tried, mm. Ours. */
const ALLOWANCE_STEP_MM = 0.5;

/** What one line of the what-if table changes. */
export type WhatIfChange =
  | { readonly kind: 'as-now' }
  | { readonly kind: 'piles'; readonly piles: number }
  | { readonly kind: 'allowance'; readonly kickAllowanceMm: number }
  | { readonly kind: 'reserve'; readonly reservedShare: number };

/** The lines of the what-if table: what is set now, and one thing changed at a time. */
export function whatIfLines(
  { stock }: PlanGround,
  grades: Grades,
  settings: JobSettings
): { change: WhatIfChange; choices: WhatIfChoices }[] {
  const reserved = settings.breakageShare + settings.sparesShare;
  const now = {
    thresholdsMm: [grades.thresholdsMm],
    kickAllowancesMm: [settings.kickAllowanceMm],
    reservedShares: [Math.min(1, reserved)]
  };
  const otherPiles = pileNumbers(FEWEST_PILES, MOST_TRIED).flatMap((piles) => {
    const breaks = naturalBreaks(stock.spread, piles);
    if (!breaks.ok) return [];
    const choices = { ...now, thresholdsMm: [breaks.thresholdsMm] };
    return [{ change: { kind: 'piles', piles } as const, choices }];
  });
  const allowances = [-ALLOWANCE_STEP_MM, ALLOWANCE_STEP_MM]
    .map((step) => settings.kickAllowanceMm + step)
    .filter((allowance) => allowance > 0)
    .map((kickAllowanceMm) => ({
      change: { kind: 'allowance', kickAllowanceMm } as const,
      choices: { ...now, kickAllowancesMm: [kickAllowanceMm] }
    }));
  const reserves = [0, 2 * reserved]
    .filter((share) => share !== reserved && share <= 1)
    .map((reservedShare) => ({
      change: { kind: 'reserve', reservedShare } as const,
      choices: { ...now, reservedShares: [reservedShare] }
    }));
  return [
    { change: { kind: 'as-now' } as const, choices: now },
    ...otherPiles,
    ...allowances,
    ...reserves
  ];
}

/**
 * The stock as if nothing were sorted, less what undereave rows take. Slate-and-a-halves that nobody
 * counted are taken to be enough: a thousand times what the roof needs.
 */
export function unsortedStock({
  stock,
  before,
  undereave,
  slateAndAHalvesNeeded,
  softness
}: PlanGround): UnsortedStock {
  const counted = before.map(({ slateAndAHalves }) => slateAndAHalves);
  const isCounted = counted.every((count) => count !== undefined);
  const under = undereave.flatMap(({ parts }) => parts);
  const underTaken = under.reduce((sum, { slates }) => sum + slates, 0);
  const underWide = under.reduce((sum, { slateAndAHalves: wide }) => sum + wide, 0);
  return {
    spread: stock.spread,
    slates: Math.max(0, stock.usable - underTaken),
    slateAndAHalves: isCounted
      ? Math.max(0, counted.reduce((sum, count) => sum + count, 0) - underWide)
      : 1000 * slateAndAHalvesNeeded,
    reservedShare: 0,
    softness
  };
}

/** What the ways out of a shortage may use; undefined where nothing was gauged or graded. */
export function stockKnowledge(
  { sortedBins: pileBins, stock, softness }: PlanGround,
  grades: Grades | undefined,
  kickAllowanceMm: number
): StockKnowledge | undefined {
  if (!grades || !stock.isGauged || pileBins.length !== grades.thresholdsMm.length + 1)
    return undefined;
  const piles = pileBins.length;
  return {
    kickAllowanceMm,
    softness,
    pileBins,
    thresholdsMm: grades.thresholdsMm,
    otherThresholdsMm: [piles - 1, piles + 1]
      .filter((other) => other >= FEWEST_PILES && other <= MOST_PILES)
      .flatMap((other) => breaksOf(stock.spread, other))
  };
}

function breaksOf(spread: ThicknessBins, piles: number): (readonly number[])[] {
  const breaks = naturalBreaks(spread, piles);
  return breaks.ok ? [breaks.thresholdsMm] : [];
}

function pileNumbers(from: number, to: number): number[] {
  return Array.from({ length: to - from + 1 }, (_, index) => from + index);
}
