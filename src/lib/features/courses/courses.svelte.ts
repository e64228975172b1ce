import type { Plan, Shortage, SimulationSummary, WayOut, WhatIfRow } from '$lib/engine/courses';
import type { PlanGround } from '$lib/job';
import { type RunningTask, runTask } from '$lib/worker';
import {
  type WhatIfChange,
  stockKnowledge,
  unsortedStock,
  whatIfLines
} from './courses-choices.ts';
import type { JobState } from '$lib/app';
import { sharesThatRelease } from './narrow-reserve.ts';
import type { HeldRisk, PlanState } from '$lib/app';
import { ASSUMED_HAND_SD_MM, wideCount } from '$lib/job';

/** Roofs that a trial lays each way. */
export const TRIAL_TIMES = 500;
/** The same seed gives the same trial, so that two looks at one plan agree. */
const TRIAL_SEED = 11;

type PileCounts = typeof import('$lib/job/sorted');

/** A trial laying: on its way, stopped, or done. */
export type Trial =
  | { readonly kind: 'running'; readonly share: number }
  | { readonly kind: 'stopped' }
  | { readonly kind: 'failed'; readonly detail: string }
  | { readonly kind: 'done'; readonly plan: Plan; readonly summary: SimulationSummary };

/** One line of the what-if table. */
export interface WhatIfLine {
  readonly change: WhatIfChange;
  readonly row: WhatIfRow;
}

/** What the Courses screen works out beside the plan: ways out, risk, what if, trial laying. */
export class CoursesState {
  readonly #job: () => JobState;
  readonly #desk: PlanState;
  #counts = $state.raw<PileCounts>();
  #ways = $state.raw<{ of: Shortage; ways: readonly WayOut[] }>();
  #whatIf = $state.raw<{ of: PlanGround; lines: readonly WhatIfLine[] }>();
  #running: RunningTask<SimulationSummary> | undefined;
  isTryingWhatIf = $state(false);
  trial = $state.raw<Trial>();
  /** What was chosen here: a chance, none (null), or nothing yet. */
  #holdUnder = $state<number | null>();

  constructor(job: () => JobState, desk: PlanState) {
    this.#job = job;
    this.#desk = desk;
  }

  /**
   * The chance of running out that plans are held under; undefined for none. As the plan in force was
   * held, until something else is chosen.
   */
  get holdUnder(): number | undefined {
    if (this.#holdUnder === undefined) return this.#desk.adopted?.body.heldUnder;
    return this.#holdUnder ?? undefined;
  }
  set holdUnder(share: number | undefined) {
    this.#holdUnder = share ?? null;
  }

  /** Loads the statistics that the first paint does without. */
  async load(): Promise<void> {
    this.#counts ??= await import('$lib/job/sorted');
  }

  /** Whether the statistics are there. */
  readonly isLoaded = $derived(this.#counts !== undefined);

  /** How surely each pile is counted; undefined while loading or where it is not known. */
  readonly estimates = $derived.by(() => {
    const { ground } = this.#desk;
    const { pallets, grades } = this.#job();
    return ground && this.#counts?.pileCounts(ground, pallets, grades);
  });

  /** Slates of each pile that are expected to break before they are laid. */
  readonly breakages = $derived.by(() => {
    const { ground } = this.#desk;
    return (ground?.request.piles ?? []).map(({ reservedSlates }, index) =>
      Math.max(0, reservedSlates - (ground?.before[index].sparesForRepairs ?? 0))
    );
  });

  /** The chance that each pile runs out under a plan of what is left. */
  chancesOf(plan: Plan): ReturnType<PileCounts['runOutChances']> | undefined {
    return this.estimates && this.#counts?.runOutChances(plan, this.estimates, this.breakages);
  }

  /** Whether a chance is to be held and what that takes is not loaded yet. */
  readonly isWaiting = $derived.by(() => this.holdUnder !== undefined && !this.isLoaded);

  /** What to hand to the planner so that it holds the chance; undefined where none is held. */
  readonly risk = $derived.by(() => this.#riskAt(this.holdUnder));

  #riskAt(mostChance: number | undefined): HeldRisk | undefined {
    return mostChance !== undefined && this.estimates
      ? { estimates: this.estimates, mostChance, breakages: this.breakages }
      : undefined;
  }

  /** Slates by which each pile's reserve rises to hold a chance; none where none is held or known. */
  raisedFor(heldUnder: number | undefined): readonly number[] {
    const { ground } = this.#desk;
    const risk = this.#riskAt(heldUnder);
    if (!ground || !risk || !this.#counts) return [];
    return this.#counts.reservesWithinRisk(
      ground.request.piles,
      risk.estimates,
      risk.mostChance,
      risk.breakages
    );
  }

  /**
   * What to hand to the planner for a plan held to the job's limit, where a plan of what is left has a
   * pile that runs out with a greater chance; undefined where every pile is within it, or nothing is known.
   */
  saferThan(plan: Plan): HeldRisk | undefined {
    const limit = this.#job().settings.runOutRisk;
    const isAbove = this.chancesOf(plan)?.piles.some(({ chance }) => chance > limit) ?? false;
    return isAbove && limit > 0 && limit < 1 ? this.#riskAt(limit) : undefined;
  }

  /** The ways out of the shortage that is shown; undefined while they are looked for. */
  readonly ways = $derived.by(() =>
    this.#ways && this.#ways.of === this.#desk.shortage ? this.#ways.ways : undefined
  );

  async findWays(): Promise<void> {
    const { ground, shortage, made } = this.#desk;
    if (!ground || !shortage || !made) return;
    const { grades, settings } = this.#job();
    const knowledge = stockKnowledge(ground, grades, settings.kickAllowanceMm);
    const input = { request: made.request, short: shortage, knowledge };
    const ways = await runTask('waysOut', input).result.catch(() => []);
    this.#ways = { of: shortage, ways };
  }

  /**
   * Records the slate-and-a-halves that stand with each pile now; piles without a number stay as they
   * are. Resolves to whether it was saved.
   */
  async countWides(counts: readonly (number | undefined)[]): Promise<boolean> {
    const { ground } = this.#desk;
    if (!ground) return false;
    const gradesId = this.#job().grades?.gradesId ?? null;
    const acts = counts.flatMap((wides, index) =>
      wides === undefined
        ? []
        : [
            {
              type: 'pileCounted' as const,
              body: wideCount(ground, index + 1, wides, gradesId)
            }
          ]
    );
    return acts.length > 0 && (await this.#job().act(acts)) !== undefined;
  }

  /** The shares for breakage and spares that a narrower reserve comes to. */
  sharesFor(way: Extract<WayOut, { way: 'narrow-reserve' }>) {
    return sharesThatRelease(this.#job().settings, this.#desk.ground?.before ?? [], way.release);
  }

  /** The what-if table; undefined before it was worked out for the stock as it is now. */
  readonly whatIf = $derived.by(() =>
    this.#whatIf && this.#whatIf.of === this.#desk.ground ? this.#whatIf.lines : undefined
  );

  async tryWhatIf(): Promise<void> {
    const { ground } = this.#desk;
    const { grades, settings } = this.#job();
    if (!ground || !grades) return;
    this.isTryingWhatIf = true;
    try {
      const lines = whatIfLines(ground, grades, settings);
      const rows = await runTask('whatIf', {
        courses: ground.request.courses,
        stock: unsortedStock(ground),
        choices: lines.map(({ choices }) => choices)
      }).result;
      this.#whatIf = {
        of: ground,
        lines: lines.map(({ change }, index) => ({ change, row: rows[index][0] }))
      };
    } finally {
      this.isTryingWhatIf = false;
    }
  }

  /** Whether every pile that is laid has a thickness to deal. */
  canTry(plan: Plan): boolean {
    const { ground } = this.#desk;
    return (
      ground !== undefined &&
      plan.joints > 0 &&
      ground.request.piles.every(
        ({ slates }, index) => slates === 0 || ground.sortedBins[index].counts.length > 0
      )
    );
  }

  /** Lays the plan again and again in the worker. */
  async tryLaying(plan: Plan): Promise<void> {
    const { ground } = this.#desk;
    if (!ground || this.trial?.kind === 'running') return;
    this.trial = { kind: 'running', share: 0 };
    await this.load();
    const measured = this.#counts?.handSdMm(this.#job().view);
    const hand =
      measured === undefined
        ? ({ sdMm: ASSUMED_HAND_SD_MM, source: 'assumed' } as const)
        : ({ sdMm: measured, source: 'measured' } as const);
    const request = {
      plan,
      courses: ground.request.courses,
      piles: ground.sortedBins,
      stocks: ground.request.piles,
      kickAllowanceMm: this.#job().settings.kickAllowanceMm,
      softness: ground.softness,
      hand
    };
    this.handSdMm = hand.sdMm;
    this.#running = runTask(
      'trialLaying',
      { request, seed: TRIAL_SEED, times: TRIAL_TIMES },
      (share) => {
        if (this.#running) this.trial = { kind: 'running', share };
      }
    );
    try {
      this.trial = { kind: 'done', plan, summary: await this.#running.result };
    } catch (error) {
      const isStopped = error instanceof DOMException && error.name === 'AbortError';
      this.trial = isStopped
        ? { kind: 'stopped' }
        : { kind: 'failed', detail: error instanceof Error ? error.message : `${error}` };
    } finally {
      this.#running = undefined;
    }
  }

  /** SD of the hand that the last trial graded with, mm. */
  handSdMm = $state(ASSUMED_HAND_SD_MM);

  stopTrial(): void {
    this.#running?.cancel();
  }
}
