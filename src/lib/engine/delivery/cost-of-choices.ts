import { requireFinite } from '../errors.ts';
import type { Interval } from './basis.ts';
import type { RoofFinding } from './finding-roof.ts';
import type { SortingFigure, SortingFinding } from './finding-sorting.ts';
import type { DeliveryFindings } from './findings.ts';
import type { Verdict } from './verdict.ts';

/** What each choice would bring, as the user enters it. Anything may be left out. */
export interface ChoiceTerms {
  /** Price of a thousand slates, for slates bought to make up a shortage. */
  readonly pricePerThousand?: number;
  /** Taken off the bill if the delivery is queried and then kept. */
  readonly creditWhenQueried?: number;
  /** Days that a query holds the work up. */
  readonly queryDelayDays?: number;
  /** Days until a replacement is there. */
  readonly replacementDelayDays?: number;
  /** Cost of a day's delay. */
  readonly delayCostPerDay?: number;
  /** Loading and carriage back that the buyer bears. */
  readonly returnCost?: number;
}

export type CostPartCode = 'sorting' | 'shortage' | 'credit' | 'delay' | 'return';

/** A figure that a part of a cost waits for. */
export type CostFigure =
  | SortingFigure
  | 'roof'
  | 'price'
  | 'credit'
  | 'query-days'
  | 'replacement-days'
  | 'delay-cost'
  | 'return-cost';

/** One part of a cost that has an amount; a credit is below 0. */
export interface CostPart {
  readonly code: CostPartCode;
  readonly low: number;
  readonly high: number;
  /** What it costs if it is needed, where that is not decided: `low` is then 0. */
  readonly ifNeeded?: Interval;
  /** The figure that would decide it. */
  readonly undecidedFor?: CostFigure;
}

/** One part of a cost that has no amount. */
export interface UnknownCostPart {
  readonly code: CostPartCode;
  /** Whether the part is sure to arise; else that, too, waits for a figure. */
  readonly isDecided: boolean;
  /** The figures it waits for: at least one. */
  readonly missing: readonly CostFigure[];
}

export interface ChoiceCost {
  readonly choice: Verdict;
  /** Sum of the parts that have an amount: all of the cost only where nothing is unknown. */
  readonly low: number;
  readonly high: number;
  readonly parts: readonly CostPart[];
  readonly unknown: readonly UnknownCostPart[];
}

/**
 * What taking, querying and refusing would each cost, in the user's money.
 *
 * The price of the delivery itself is in none of them. Take: sorting, if needed, and slates bought
 * to make up need and reserve. Query: the same, less the credit, with the days it holds up. Refuse:
 * the days until a replacement, and the return. Low and high come from the intervals. Where hours
 * and rate are known but not whether sorting is needed, it costs from nothing to its cost if needed.
 * A roof that takes no slates is one that is not entered: what would be missing for it is unknown.
 *
 * @returns take, query, refuse, in that order; no part is both named and unknown
 * @throws EngineError `not-finite`
 */
export function costOfChoices(findings: DeliveryFindings, terms: ChoiceTerms): ChoiceCost[] {
  for (const [name, value] of Object.entries(terms))
    if (value !== undefined) requireFinite(value, name);
  const { creditWhenQueried, queryDelayDays, replacementDelayDays, returnCost } = terms;

  const sorting = sortingPart(findings.sorting);
  const shortage = shortagePart(findings.roof, terms.pricePerThousand);
  const credit =
    creditWhenQueried === undefined
      ? waitsFor('credit', 'credit')
      : exactly('credit', -creditWhenQueried);
  const carriage =
    returnCost === undefined ? waitsFor('return', 'return-cost') : exactly('return', returnCost);
  const delay = (days: number | undefined, figure: CostFigure): Entry => {
    if (days === undefined) return waitsFor('delay', figure);
    if (days > 0 && terms.delayCostPerDay === undefined) return waitsFor('delay', 'delay-cost');
    return exactly('delay', days * (terms.delayCostPerDay ?? 0));
  };

  return [
    choiceOf('take', [sorting, shortage]),
    choiceOf('query', [sorting, shortage, credit, delay(queryDelayDays, 'query-days')]),
    choiceOf('refuse', [delay(replacementDelayDays, 'replacement-days'), carriage])
  ];
}

type Entry = CostPart | UnknownCostPart;

function sortingPart({ isNeeded, cost, missing }: SortingFinding): Entry {
  const code = 'sorting';
  if (isNeeded === 'no') return exactly(code, 0);
  const isDecided = isNeeded === 'yes';
  if (!cost) return { code, isDecided, missing };
  if (isDecided) return { code, low: cost.low, high: cost.high };
  return { code, low: 0, high: cost.high, ifNeeded: cost, undecidedFor: missing[0] };
}

function shortagePart({ need, missingInterval }: RoofFinding, perThousand?: number): Entry {
  const code = 'shortage';
  if (need.slates === 0) return { code, isDecided: false, missing: ['roof'] };
  if (missingInterval.high === 0) return exactly(code, 0);
  if (perThousand === undefined) return waitsFor(code, 'price');
  const each = perThousand / 1000;
  return { code, low: missingInterval.low * each, high: missingInterval.high * each };
}

function exactly(code: CostPartCode, amount: number): CostPart {
  return { code, low: amount, high: amount };
}

function waitsFor(code: CostPartCode, figure: CostFigure): UnknownCostPart {
  return { code, isDecided: true, missing: [figure] };
}

function choiceOf(choice: Verdict, entries: readonly Entry[]): ChoiceCost {
  const parts = entries.filter((entry) => 'low' in entry);
  return {
    choice,
    low: parts.reduce((sum, { low }) => sum + low, 0),
    high: parts.reduce((sum, { high }) => sum + high, 0),
    parts,
    unknown: entries.filter((entry) => 'missing' in entry)
  };
}
