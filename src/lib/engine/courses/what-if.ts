import type { CourseDemand } from '../roof/index.ts';
import { type UnsortedStock, planBeforeSorting } from './expected-piles.ts';

/** What to try: every threshold set with every allowance and every reserve. */
export interface WhatIfChoices {
  /** Ways to cut the piles, mm; usually one for each number of piles. */
  readonly thresholdsMm: readonly (readonly number[])[];
  readonly kickAllowancesMm: readonly number[];
  readonly reservedShares: readonly number[];
}

/** One line of the what-if table. */
export interface WhatIfRow {
  readonly piles: number;
  readonly thresholdsMm: readonly number[];
  readonly kickAllowanceMm: number;
  readonly reservedShare: number;
  readonly status: 'optimal' | 'short';
  /** Expected kickers per 100 joints; undefined if short. */
  readonly per100Joints?: number;
  readonly kickers?: number;
  readonly changeovers?: number;
  /** Slates left beyond the reserve over all piles; undefined if short. */
  readonly spareSlates?: number;
  /** Slates missing; 0 unless short (and even then, where only the order of piles fails). */
  readonly missingSlates: number;
}

/**
 * How evenness, changeovers and spares answer to the number of piles, the kick allowance and the
 * reserve: one glance before anything is sorted.
 *
 * @param stock its `reservedShare` is replaced by each of the choices
 * @returns a row for each combination: by allowance, then reserve, then thresholds, as given
 *
 * Cost: a plan for each row.
 */
export function whatIf(
  courses: readonly CourseDemand[],
  stock: UnsortedStock,
  choices: WhatIfChoices
): WhatIfRow[] {
  return choices.kickAllowancesMm.flatMap((kickAllowanceMm) =>
    choices.reservedShares.flatMap((reservedShare) =>
      planBeforeSorting(
        courses,
        { ...stock, reservedShare },
        kickAllowanceMm,
        choices.thresholdsMm
      ).plans.map(({ thresholdsMm, result }): WhatIfRow => {
        const asked = {
          piles: thresholdsMm.length + 1,
          thresholdsMm,
          kickAllowanceMm,
          reservedShare
        };
        if (result.status === 'short')
          return { ...asked, status: 'short', missingSlates: result.missingSlates };
        return {
          ...asked,
          status: 'optimal',
          per100Joints: result.per100Joints,
          kickers: result.kickers,
          changeovers: result.changeovers,
          spareSlates: result.piles.reduce((sum, pile) => sum + pile.spareSlates, 0),
          missingSlates: 0
        };
      })
    )
  );
}
