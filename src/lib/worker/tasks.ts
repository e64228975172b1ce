import { type RiskPoint, findVariablesPlan } from '$lib/engine/delivery';
import { createRandom } from '$lib/engine';
import {
  type PlanRequest,
  type PlanResult,
  type Shortage,
  type SimulationRequest,
  type SimulationSummary,
  type StockKnowledge,
  type UnsortedStock,
  type WayOut,
  type WhatIfChoices,
  type WhatIfRow,
  checkPlan,
  createSimulation,
  waysOut,
  whatIf
} from '$lib/engine/courses';
import { type HeldRisk, type RoofPlans, roofPlans } from '$lib/engine/courses/risk';
import {
  type CutSpread,
  type GaugedPallet,
  type RoofToSuit,
  equalShares,
  crossValidationRound,
  naturalBreaks,
  suitTheRoof
} from '$lib/engine/grading';

import { type PilesWorkedOut, type RoofAsText, roofAsText, roofLayoutOf } from '$lib/job';
import { workOutPiles } from '$lib/job/sorted';
import type { JobView } from '$lib/journal';

/**
 * The engine's long tasks, by name. A task is a generator: it yields the share done (0 to 1) where
 * it can be stopped, and returns its result. Input and result are plain data that can be cloned.
 */
export const tasks = {
  /** Answers with its input: shows that the worker is alive. */
  *echo(input: string): Generator<number, string> {
    yield 1;
    return input;
  },

  /** What of a job's plan takes long to work out, from its view. */
  *workOutPiles(view: JobView): Generator<number, PilesWorkedOut> {
    yield 0;
    return workOutPiles(view);
  },

  /** A job's roof laid out, from its view: the pieces of many slopes take long. */
  *layOutRoof(view: JobView): Generator<number, RoofAsText> {
    yield 0;
    return roofAsText(roofLayoutOf(view));
  },

  /** Boundaries that suit the roof. */
  *suitTheRoof(roof: RoofToSuit): Generator<number, ReturnType<typeof suitTheRoof>> {
    yield 0;
    return suitTheRoof(roof);
  },

  /**
   * Kickers per 100 joints on slates that the boundaries were not cut from, in so many rounds: by natural
   * breaks, to suit the roof and by equal shares; undefined where a way cannot cut.
   */
  *tryHeldOut({
    roof,
    pallets,
    seed,
    rounds
  }: {
    roof: Omit<RoofToSuit, 'bins' | 'chanceAbove'>;
    pallets: readonly GaugedPallet[];
    seed: number;
    rounds: number;
  }): Generator<number, (number | undefined)[]> {
    const found = <T extends { readonly thresholdsMm: readonly number[] }>(
      cut: ({ readonly ok: true } & T) | { readonly ok: false }
    ): readonly number[] | undefined => (cut.ok ? cut.thresholdsMm : undefined);
    const cuts: CutSpread[] = [
      (bins) => found(naturalBreaks(bins, roof.piles)),
      (bins) => found(suitTheRoof({ ...roof, bins })),
      (bins) => found(equalShares(bins, roof.piles))
    ];
    const random = createRandom(seed);
    const told: (number | undefined)[][] = [];
    for (let round = 0; round < rounds; round++) {
      yield round / rounds;
      told.push(crossValidationRound(roof, pallets, cuts, random));
    }
    return cuts.map((_cut, way) =>
      told.reduce<number | undefined>((sum, round) => {
        const own = round[way];
        return sum === undefined || own === undefined ? undefined : sum + own / rounds;
      }, 0)
    );
  },

  /** The smallest plan by the gauge, for one limit, that keeps two risks. */
  *findVariablesPlan(input: {
    good: RiskPoint;
    poor: RiskPoint;
  }): Generator<number, ReturnType<typeof findVariablesPlan>> {
    yield 0;
    return findVariablesPlan(input.good, input.poor);
  },

  /** The plans that stand side by side, walked once more by the independent check. */
  *planRoof(input: { request: PlanRequest; risk?: HeldRisk }): Generator<number, RoofPlans> {
    yield 0;
    const plans = roofPlans(input.request, input.risk);
    check(input.request, plans.byRule);
    check(input.request, plans.mostEven);
    return plans;
  },

  /** The ways out of a shortage, each priced. */
  *waysOut(input: {
    request: PlanRequest;
    short: Shortage;
    knowledge?: StockKnowledge;
  }): Generator<number, WayOut[]> {
    yield 0;
    return waysOut(input.request, input.short, input.knowledge);
  },

  /** How the plan answers to piles, kick allowance and reserve; one set of choices at a time. */
  *whatIf(input: {
    courses: PlanRequest['courses'];
    stock: UnsortedStock;
    choices: readonly WhatIfChoices[];
  }): Generator<number, WhatIfRow[][]> {
    const rows: WhatIfRow[][] = [];
    for (const [index, choices] of input.choices.entries()) {
      yield index / input.choices.length;
      rows.push(whatIf(input.courses, input.stock, choices));
    }
    return rows;
  },

  /** Lays a plan many times with slates dealt at random. */
  *trialLaying(input: {
    request: SimulationRequest;
    seed: number;
    times: number;
  }): Generator<number, SimulationSummary> {
    const trial = createSimulation(input.request, createRandom(input.seed));
    for (let done = 0; done < input.times;) {
      yield done / input.times;
      const step = Math.min(ROOFS_A_STEP, input.times - done);
      trial.step(step);
      done += step;
    }
    return trial.summary();
  }
};

/** Roofs laid between two looks at the messages: enough to be quick, few enough to stop at once. */
const ROOFS_A_STEP = 5;

function check(request: PlanRequest, result: PlanResult): void {
  const faults = result.status === 'optimal' ? checkPlan(request, result) : [];
  if (faults.length > 0) throw new Error(faults.map(({ detail }) => detail).join('; '));
}

export type Tasks = typeof tasks;
export type TaskName = keyof Tasks;
export type TaskInput<N extends TaskName> = Parameters<Tasks[N]>[0];
type Returned<G> =
  G extends Generator<number, infer R> ? R : G extends AsyncGenerator<number, infer R> ? R : never;
export type TaskResult<N extends TaskName> = Returned<ReturnType<Tasks[N]>>;
