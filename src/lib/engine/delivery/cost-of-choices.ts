import { requireFinite } from '../errors.ts';
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

/** One part of a cost; a credit is below 0. */
export interface CostPart {
  readonly code: CostPartCode;
  readonly low: number;
  readonly high: number;
}

export interface ChoiceCost {
  readonly choice: Verdict;
  /** Sum of the parts that are known. */
  readonly low: number;
  readonly high: number;
  readonly parts: readonly CostPart[];
  /** Parts that could not be computed, since a figure was not entered. */
  readonly unknown: readonly CostPartCode[];
}

/**
 * What taking, querying and refusing would each cost, in the user's money.
 *
 * The price of the delivery itself is in none of them. Take: sorting, if needed, and slates bought
 * to make up need and reserve. Query: the same, less the credit, with the days it holds up. Refuse:
 * the days until a replacement, and the return. Low and high come from the intervals.
 *
 * @throws EngineError `not-finite`
 */
export function costOfChoices(findings: DeliveryFindings, terms: ChoiceTerms): ChoiceCost[] {
  const { sorting, roof } = findings;
  for (const [name, value] of Object.entries(terms))
    if (value !== undefined) requireFinite(value, name);

  const delay = (days: number | undefined): CostPart | CostPartCode =>
    days === undefined || (days > 0 && terms.delayCostPerDay === undefined)
      ? 'delay'
      : exactly('delay', days * (terms.delayCostPerDay ?? 0));
  const sortingPart: CostPart | CostPartCode =
    sorting.isNeeded === 'no'
      ? exactly('sorting', 0)
      : sorting.isNeeded === 'yes' && sorting.cost
        ? { code: 'sorting', low: sorting.cost.low, high: sorting.cost.high }
        : 'sorting';
  const each = terms.pricePerThousand === undefined ? undefined : terms.pricePerThousand / 1000;
  const shortage: CostPart | CostPartCode =
    roof.missingInterval.high === 0
      ? exactly('shortage', 0)
      : each === undefined
        ? 'shortage'
        : {
            code: 'shortage',
            low: roof.missingInterval.low * each,
            high: roof.missingInterval.high * each
          };
  const credit: CostPart | CostPartCode =
    terms.creditWhenQueried === undefined ? 'credit' : exactly('credit', -terms.creditWhenQueried);
  const carriage: CostPart | CostPartCode =
    terms.returnCost === undefined ? 'return' : exactly('return', terms.returnCost);

  return [
    choiceOf('take', [sortingPart, shortage]),
    choiceOf('query', [sortingPart, shortage, credit, delay(terms.queryDelayDays)]),
    choiceOf('refuse', [delay(terms.replacementDelayDays), carriage])
  ];
}

function exactly(code: CostPartCode, amount: number): CostPart {
  return { code, low: amount, high: amount };
}

function choiceOf(choice: Verdict, entries: readonly (CostPart | CostPartCode)[]): ChoiceCost {
  const parts = entries.filter((entry) => typeof entry !== 'string');
  return {
    choice,
    low: parts.reduce((sum, { low }) => sum + low, 0),
    high: parts.reduce((sum, { high }) => sum + high, 0),
    parts,
    unknown: entries.filter((entry) => typeof entry === 'string')
  };
}
