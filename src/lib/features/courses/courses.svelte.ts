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
import type { HeldRisk, RunOutChance } from '$lib/engine/courses/risk';
import { type PlanState, inTurn } from '$lib/app';
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
  #counts = $state.raw<PileCounts | 'missing'>();
  /** Whether what the statistics tell of the plan's ground was worked out once. */
  #isCounted = $state(false);
  #ways = $state.raw<{ of: Shortage; ways: readonly WayOut[] }>();
  #whatIf = $state.raw<{ of: PlanGround; lines: readonly WhatIfLine[] }>();
  #running: RunningTask<SimulationSummary> | undefined;
  isTryingWhatIf = $state(false);
  trial = $state.raw<Trial>();

  constructor(job: () => JobState, desk: PlanState) {
    this.#job = job;
    this.#desk = desk;
  }

  /** Loads the statistics that the first paint does without. */
  async load(): Promise<void> {
    const counts = await import('$lib/job/sorted').catch(() => 'missing' as const);
    await this.#desk.opened;
    this.#counts ??= counts;
    await inTurn(
      () => this.#riskNow,
      () => this.#estimatesNow,
      () => (this.#isCounted = true)
    );
  }

  /** Whether the statistics are there, or were looked for in vain. */
  readonly isLoaded = $derived(this.#isCounted);
  get #statistics(): PileCounts | undefined {
    return this.#counts === 'missing' ? undefined : this.#counts;
  }

  readonly #riskNow: HeldRisk | undefined = $derived.by(() => {
    const { ground } = this.#desk;
    const { pallets, grades, settings } = this.#job();
    return ground && this.#statistics?.heldRiskOf(ground, pallets, grades, settings.runOutRisk);
  });

  /** What holds the piles to the job's limit; undefined while loading or where it is not known. */
  readonly risk: HeldRisk | undefined = $derived(this.isLoaded ? this.#riskNow : undefined);

  readonly #estimatesNow = $derived.by(() => {
    const { ground } = this.#desk;
    const { pallets, grades } = this.#job();
    return (
      this.#riskNow?.estimates ?? (ground && this.#statistics?.pileCounts(ground, pallets, grades))
    );
  });

  /** How surely each pile is counted; undefined while loading or where it is not known. */
  readonly estimates = $derived(this.isLoaded ? this.#estimatesNow : undefined);

  /** Slates of each pile that are expected to break before they are laid. */
  readonly breakages = $derived.by(() => {
    const { ground } = this.#desk;
    return (ground && this.#statistics?.breakagesOf(ground)) ?? [];
  });

  /** The chance that each pile runs out under a plan of what is left, pile 1 first. */
  chancesOf(plan: Plan): readonly RunOutChance[] | undefined {
    const { estimates, breakages } = this;
    if (!estimates) return undefined;
    const last = this.#chances.get(plan);
    if (last?.estimates === estimates && last.breakages === breakages) return last.chances;
    const chances = this.#statistics?.runOutChances(plan, estimates, breakages);
    this.#chances.set(plan, { estimates, breakages, chances });
    return chances;
  }
  /** The chances by plan: every card asks at each step, and only the one that is set by hand changes. */
  readonly #chances = new WeakMap<
    Plan,
    {
      readonly estimates: unknown;
      readonly breakages: unknown;
      readonly chances: readonly RunOutChance[] | undefined;
    }
  >();

  /** The pile that is likeliest to run out, the thickest of several; undefined where it is not known. */
  likeliestOf(plan: Plan | undefined): RunOutChance | undefined {
    const chances = plan && this.chancesOf(plan);
    return chances?.reduce((most, one) => (one.chance > most.chance ? one : most));
  }

  /** The ways out of the shortage that is shown; undefined while they are looked for. */
  readonly ways = $derived.by(() =>
    this.#ways && this.#ways.of === this.#desk.shortage ? this.#ways.ways : undefined
  );

  /**
   * What an own plan may begin with where the stock is short: the whole roof with less kept back, else
   * the lowest courses. Undefined where no course has slates, or the ways are still looked for.
   */
  readonly shortStart: Plan | undefined = $derived.by(() => {
    const all = this.ways ?? [];
    const way =
      all.find((one) => one.way === 'narrow-reserve') ?? all.find((one) => one.way === 'lay-part');
    return way?.plan;
  });

  async findWays(): Promise<void> {
    const { ground, shortage } = this.#desk;
    if (!ground || !shortage) return;
    const { grades, settings } = this.#job();
    const knowledge = stockKnowledge(ground, grades, settings.kickAllowanceMm);
    const input = { request: ground.request, short: shortage, knowledge };
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

  /** Whether undereave slates come as an article of their own, cut from no pile. */
  async orderUndereave(undereaveOrdered: boolean): Promise<void> {
    await this.#job().act({ type: 'jobSettingsSet', body: { undereaveOrdered } });
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
    const measured = this.#statistics?.handSdMm(this.#job().view);
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
