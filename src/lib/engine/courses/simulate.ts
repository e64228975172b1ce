import { EngineError, requireFinite, requireWhole } from '../errors.ts';
import { type Random, randomNormal } from '../random.ts';
import type { KickSoftness } from '../grading/index.ts';
import type { CourseDemand } from '../roof/index.ts';
import type { ThicknessBins } from '../thickness/index.ts';
import { toHundredths } from '../units.ts';
import { type Scatter, dealRoof, scatterOfDecks } from './deal.ts';
import { kickChances } from './kick-chances.ts';
import { expectedKickersOfRows, laidRows, mixedRows } from './laid-rows.ts';
import type { PileStock, Plan } from './plan-types.ts';
import { simulatedSlates, slatesAsBins } from './simulated-slates.ts';
import { type KickerTally, type SimulatedKickers, createTally } from './simulation-tally.ts';

/** What a simulation lays. Never modified. */
export interface SimulationRequest {
  readonly plan: Plan;
  /** The courses the plan was made for, in any order. */
  readonly courses: readonly CourseDemand[];
  /** Spread of what really stands on each pile, misgraded slates included; any scale. */
  readonly piles: readonly ThicknessBins[];
  /** What stands on each pile. */
  readonly stocks: readonly PileStock[];
  /** The common stock of slate-and-a-halves, if the plan draws on one. */
  readonly common?: { readonly bins: ThicknessBins; readonly slateAndAHalves: number };
  readonly kickAllowanceMm: number;
  /** How far steps scatter about the difference of two slates; not at all if left out. */
  readonly softness?: KickSoftness;
  /** Spread of a grader's hand: the SD of the thickness felt about the true one. */
  readonly hand?: { readonly sdMm: number; readonly source: 'measured' | 'assumed' };
}

/** What the simulation has found so far. */
export interface SimulationSummary {
  /** Roofs laid each way. */
  readonly times: number;
  readonly joints: number;
  /** Exact expected kickers of the plan, for the whole slates that are dealt. */
  readonly expectedKickers: number;
  /** The same for the unsorted stock. */
  readonly expectedKickersUnsorted: number;
  readonly planned: SimulatedKickers;
  /** The same courses laid from the whole stock as it comes. */
  readonly unsorted: SimulatedKickers;
  /** The same plan from piles graded by hand; only where a hand was given. */
  readonly byHand?: SimulatedKickers & { readonly source: 'measured' | 'assumed' };
}

/** A simulation that goes on in steps, so that a worker can report progress and stop between them. */
export interface Simulation {
  /** Lays the roof `times` more times each way. */
  step(times: number): void;
  summary(): SimulationSummary;
}

/**
 * Lays the plan again and again with slates dealt at random and counts the kickers that come out:
 * the plan, the same roof unsorted, and the same plan graded by hand.
 *
 * Planned: each roof deals every pile's slates without replacement to its places. Unsorted: the
 * slates of all piles are mixed and dealt to the same places. By hand: every slate is felt as
 * its thickness plus a normal error of the hand's SD; the thickest felt make pile 1 as large as it
 * stands now, the next pile 2, and so on; then the plan is laid. Slate-and-a-halves of a common
 * stock are dealt from that stock each way.
 *
 * The mean of `planned` agrees with `expectedKickers` within its standard error: in a pile dealt
 * without replacement any two neighbours are a random pair of distinct slates. With softness each joint
 * steps by the difference of its slates and a normal error of its own.
 *
 * @param random seeded; the same seed and the same number of roofs give the same summary, whatever
 * the steps
 * @throws EngineError as {@link simulatedSlates}; `out-of-range` for a negative SD or allowance
 *
 * Cost: of a step, linear in the slates dealt; grading by hand sorts the stock each time.
 */
export function createSimulation(request: SimulationRequest, random: Random): Simulation {
  const { plan, hand } = request;
  const allowance = toHundredths(request.kickAllowanceMm);
  if (allowance < 0)
    throw new EngineError('out-of-range', `kick allowance is ${request.kickAllowanceMm} mm`);
  if (hand) requireFinite(hand.sdMm, 'SD of the hand');
  if (hand && hand.sdMm < 0)
    throw new EngineError('out-of-range', `SD of the hand is ${hand.sdMm} mm`);

  const slates = simulatedSlates(plan, request.piles, request.stocks, request.common);
  const mixed = joined(slates.piles);
  const rows = laidRows(plan, request.courses);
  const rowsUnsorted = mixedRows(rows, plan.piles.length);
  const expected = (of: typeof rows, piles: readonly Int32Array[]) =>
    expectedKickersOfRows(
      of,
      kickChances(
        piles.map(slatesAsBins),
        request.kickAllowanceMm,
        slatesAsBins(slates.common),
        request.softness
      )
    );
  const expectedKickers = expected(rows, slates.piles);
  const expectedKickersUnsorted = expected(rowsUnsorted, [mixed]);

  const decks = [...slates.piles, slates.common];
  const deckUnsorted = [mixed.slice(), slates.common];
  const grade = hand && createHandGrader(mixed, slates.piles, hand.sdMm, random);
  const planned = createTally(plan.courses);
  const unsorted = createTally(plan.courses);
  const byHand = createTally(plan.courses);
  const scatterOf = (from: readonly Int32Array[]): Scatter | undefined =>
    request.softness && scatterOfDecks(from, request.softness);
  const [scatterPlanned, scatterUnsorted] = [decks, deckUnsorted].map(scatterOf);
  const lay = (
    tally: KickerTally,
    laid: typeof rows,
    from: readonly Int32Array[],
    scatter: Scatter | undefined
  ) => {
    dealRoof(laid, from, allowance, random, tally.kick, scatter);
    tally.endRoof();
  };
  let done = 0;
  return {
    step(times) {
      requireWhole(times, 0, 'times');
      for (let time = 0; time < times; time++) {
        lay(planned, rows, decks, scatterPlanned);
        lay(unsorted, rowsUnsorted, deckUnsorted, scatterUnsorted);
        if (grade) {
          const graded = [...grade(), slates.common];
          lay(byHand, rows, graded, scatterOf(graded));
        }
        done++;
      }
    },
    summary: () => ({
      times: done,
      joints: rows.joints,
      expectedKickers,
      expectedKickersUnsorted,
      planned: planned.result(rows.joints),
      unsorted: unsorted.result(rows.joints),
      ...(hand && { byHand: { ...byHand.result(rows.joints), source: hand.source } })
    })
  };
}

/** A grader who feels each slate with an error and fills the piles, thickest felt first. */
function createHandGrader(
  stock: Int32Array,
  piles: readonly Int32Array[],
  sdMm: number,
  random: Random
): () => Int32Array[] {
  const felt = new Float64Array(stock.length);
  const order = Uint32Array.from(stock.keys());
  return () => {
    for (let slate = 0; slate < stock.length; slate++)
      felt[slate] = stock[slate] + 100 * sdMm * randomNormal(random);
    order.sort((one, other) => felt[other] - felt[one] || one - other);
    let rank = 0;
    return piles.map((pile) => pile.map(() => stock[order[rank++]]));
  };
}

function joined(parts: readonly Int32Array[]): Int32Array {
  return Int32Array.from(parts.flatMap((part) => [...part]));
}
