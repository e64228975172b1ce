import type { ChoiceCost, CostFigure, CostPart, Verdict } from '$lib/engine/delivery';
import type { Catalogue, NumberWords } from '$lib/text';
import type { SortingPace } from './delivery-pace.ts';

/** One answer with its cost, as a reader sees it. */
export interface SaidCost {
  readonly choice: Verdict;
  readonly cost: string;
  readonly parts: string;
}

/** A range of money in whole units, with its currency, or that the order names none. */
export function sayMoney(
  { low, high }: { readonly low: number; readonly high: number },
  currency: string,
  { delivery }: Catalogue,
  numbers: NumberWords
): string {
  const [from, to] = [low, high].map((amount) => numbers.whole(Math.round(amount) || 0)); // no −0
  const sum = `${delivery.findings.interval(from, to)} ${currency || delivery.verdict.noCurrency}`;
  return sum.replaceAll(' ', '\u00a0'); // stays on one line
}

/**
 * What each answer costs: the sum of what is known, called so while something is not, what it is
 * made up of, and which figures are missing.
 */
export function sayCosts(
  costs: readonly ChoiceCost[],
  currency: string,
  text: Catalogue,
  numbers: NumberWords
): SaidCost[] {
  const { verdict } = text.delivery;
  const money = (range: { readonly low: number; readonly high: number }): string =>
    sayMoney(range, currency, text, numbers);
  const sayPart = (part: CostPart): string => {
    const name = verdict.costParts[part.code];
    if (part.high < 0) return verdict.costLess(name, money({ low: -part.high, high: -part.low }));
    return part.ifNeeded && part.undecidedFor
      ? verdict.costIfNeeded(name, money(part.ifNeeded), verdict.costUndecided[part.undecidedFor])
      : verdict.costPart(name, money(part));
  };
  return costs.map((cost) => {
    const { choice, low, high, parts, unknown } = cost;
    const counted = parts.filter((part) => part.low !== 0 || part.high !== 0);
    const said = [
      ...counted.map(sayPart),
      ...unknown.map(({ code, isDecided, missing }) =>
        verdict.costWaits(
          verdict.costParts[code],
          missing.map((figure) => verdict.costFigures[figure]),
          isDecided
        )
      )
    ];
    const sum = money({ low, high });
    const nothingCounted = counted.length === 0 ? verdict.costNotKnown : verdict.costSoFar(sum);
    return {
      choice,
      cost: unknown.length === 0 ? sum : nothingCounted,
      parts: said.length > 0 ? said.join('; ') : verdict.costNone
    };
  });
}

/** Which pace sorting is priced at; empty where no answer has a price of sorting. */
export function sayCostPace(
  costs: readonly ChoiceCost[],
  pace: SortingPace | undefined,
  { delivery }: Catalogue,
  numbers: NumberWords
): string {
  const isPriced = costs.some(({ parts }) =>
    parts.some(({ code, high }) => code === 'sorting' && high > 0)
  );
  if (!pace || !isPriced) return '';
  const { costPace } = delivery.verdict;
  const used = numbers.whole(pace.perHour);
  if (!pace.isEntered) return costPace.measured(used);
  return pace.measuredPerHour === undefined
    ? costPace.entered(used)
    : costPace.both(used, numbers.whole(pace.measuredPerHour));
}

/** Every figure that a cost waits for, or that decides whether it arises; each once. */
export function missingFigures(costs: readonly ChoiceCost[]): CostFigure[] {
  const figures = costs.flatMap(({ parts, unknown }) => [
    ...parts.flatMap(({ undecidedFor }) => undecidedFor ?? []),
    ...unknown.flatMap(({ missing }) => missing)
  ]);
  return [...new Set(figures)];
}

/** Whether any answer has an amount of money in it. */
export function hasAmounts(costs: readonly ChoiceCost[]): boolean {
  return costs.some(({ parts }) => parts.some(({ low, high }) => low !== 0 || high !== 0));
}
