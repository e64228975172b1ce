import type { Plan, PlanChange, PlanRequest, PlanResult } from '$lib/engine/courses';
import type { PileEstimate } from '$lib/engine/courses/risk';
import {
  type AdoptedPlan,
  type PlanGround,
  adoptedPlanOf,
  planAdoption,
  isSameList,
  pilesRestOn,
  planRequestOf,
  stockOf,
  takeWorkedOut
} from '$lib/job';
import { runTask } from '$lib/worker';
import type { JobState } from './job.svelte.ts';
import type { PilesAsSorted, createPilesAsSorted } from '$lib/job/sorted';
import { changeOfRest, coursesOn, placesOf, wholeRoof } from '$lib/job';

/** A plan made from the stock as it was at one moment. */
export interface MadePlan {
  readonly ground: PlanGround;
  /** What was asked: the ground's request, with raised reserves where a chance was to be held. */
  readonly request: PlanRequest;
  readonly result: PlanResult;
  /** Where the plan was to hold the chance of running out: the limit and what it cost. */
  readonly held?: { readonly mostChance: number; readonly raisedBy: readonly number[] };
}

/** A chance of running out that no pile may exceed, with what it takes to reckon it. */
export interface HeldRisk {
  readonly estimates: readonly PileEstimate[];
  readonly mostChance: number;
  readonly breakages: readonly number[];
}

/** Where the work stands, for the sentence above the plan. */
export type PlanStage =
  | { readonly kind: 'before'; readonly sorted: number; readonly all: number }
  | { readonly kind: 'sorted' }
  | { readonly kind: 'partLaid'; readonly laid: number; readonly all: number }
  | { readonly kind: 'allLaid'; readonly all: number };

/**
 * The plan in force and the one that could take its place: what the Courses and the Lay screen
 * share. Plans are made in the worker; nothing is in the journal before `adopt`.
 */
export class PlanState {
  readonly #job: () => JobState;
  made = $state.raw<MadePlan>();
  isPlanning = $state(false);
  isAdopting = $state(false);
  /** Why no plan could be made, from the engine; empty when nothing is wrong. */
  problem = $state('');
  /** Whether the last adoption was not saved. */
  isUnsaved = $state(false);
  /** Counts requests, so that only the newest answer is taken. */
  #asked = 0;
  #safer = $state.raw<{ of: PlanGround; mostChance: number; made?: MadePlan }>();
  #sorting = $state.raw<ReturnType<typeof createPilesAsSorted> | 'unknown'>();
  /** Worked out off the page when the screen opened, and what that rests on. */
  #first = $state.raw<{ readonly restsOn: readonly unknown[]; readonly sorted: PilesAsSorted }>();

  constructor(job: () => JobState) {
    this.#job = job;
    void this.#load();
  }

  /**
   * Has the worker work out the piles as they are now, so that the page stays quick; then loads what
   * does it here for every later state. Without either, piles are taken as sharp.
   */
  async #load(): Promise<void> {
    const { view } = this.#job();
    const worked = await runTask('workOutPiles', view).result.catch(() => undefined);
    if (worked) {
      takeWorkedOut(view, worked);
      this.#first = { restsOn: pilesRestOn(view), sorted: worked.sorted };
    }
    const loaded = await import('$lib/job/sorted').catch(() => undefined);
    this.#sorting = loaded?.createPilesAsSorted() ?? 'unknown';
  }

  /** Whether it is known how slates come on to the piles: before, nothing is ready to be shown. */
  readonly isLoaded = $derived.by(() => this.#sorting !== undefined || this.#isAsAtFirst());
  /** What stands on the piles as they were sorted; undefined where that is not known. */
  readonly sorted: PilesAsSorted | undefined = $derived.by(() => {
    const { view } = this.#job();
    if (this.#isAsAtFirst()) return this.#first?.sorted;
    return typeof this.#sorting === 'function' ? this.#sorting(view, stockOf(view)) : undefined;
  });
  #isAsAtFirst(): boolean {
    return !!this.#first && isSameList(this.#first.restsOn, pilesRestOn(this.#job().view));
  }
  readonly readiness = $derived.by(() => {
    const { sorted } = this;
    return planRequestOf(this.#job().view, sorted && (() => sorted.bins));
  });
  readonly ground = $derived(this.isLoaded && this.readiness.ok ? this.readiness : undefined);
  readonly adopted: AdoptedPlan | undefined = $derived.by(
    () => this.ground && adoptedPlanOf(this.#job().view, this.ground)
  );

  /** Whether what was made is made from the stock and the roof as they are now. */
  readonly isFresh = $derived(this.made !== undefined && this.made.ground === this.ground);
  /** The plan made last, where it is one and still holds. */
  readonly madePlan: Plan | undefined = $derived.by(() =>
    this.isFresh && this.made?.result.status === 'optimal' ? this.made.result : undefined
  );
  readonly shortage = $derived.by(() =>
    this.isFresh && this.made?.result.status === 'short' ? this.made.result : undefined
  );

  /** What the fresh plan changes of the one in force; undefined without both. */
  readonly change: PlanChange | undefined = $derived.by(() => {
    return this.madePlan && this.adopted ? changeOfRest(this.adopted, this.madePlan) : undefined;
  });
  readonly unknownCourses = $derived(this.adopted?.unknownCourses ?? 0);
  /** Whether planning again would change the plan in force. */
  readonly isOutOfDate = $derived(
    (this.change?.changedCourses ?? 0) > 0 || this.unknownCourses > 0
  );

  /** The whole roof under the fresh plan, laid courses as they were laid. */
  readonly madeWhole: Plan | undefined = $derived.by(() => {
    return this.ground && this.madePlan ? wholeRoof(this.ground, this.madePlan) : undefined;
  });

  readonly laidPlaces = $derived(placesOf(this.ground?.laid ?? []));

  /** Numbers of the courses of a slope that are laid. */
  doneOn(slopeId: string): ReadonlySet<number> {
    return coursesOn(this.ground?.laid ?? [], slopeId);
  }

  readonly stage: PlanStage | undefined = $derived.by(() => {
    const { ground } = this;
    if (!ground) return undefined;
    const all = ground.roof.demand.length;
    if (ground.request.courses.length === 0) return { kind: 'allLaid', all };
    if (ground.laid.length > 0) return { kind: 'partLaid', laid: ground.laid.length, all };
    const toCome = ground.stock.piles.reduce((sum, pile) => sum + pile.toCome, 0);
    if (toCome === 0) return { kind: 'sorted' };
    return { kind: 'before', sorted: ground.stock.usable - toCome, all: ground.stock.usable };
  });

  /** Makes the most even plan for what is left; within a chance of running out where one is given. */
  async make(risk?: HeldRisk): Promise<void> {
    const { ground } = this;
    if (!ground) return;
    const asked = ++this.#asked;
    this.isPlanning = true;
    this.problem = '';
    try {
      const made = risk
        ? await heldPlan(ground, risk)
        : {
            ground,
            request: ground.request,
            result: await runTask('planRoof', ground.request).result
          };
      if (asked === this.#asked) this.made = made;
    } catch (error) {
      if (asked === this.#asked) this.problem = error instanceof Error ? error.message : `${error}`;
    } finally {
      if (asked === this.#asked) this.isPlanning = false;
    }
  }

  /**
   * Looks for the most even plan within a chance, to stand beside one that is shown: it is neither
   * shown nor adopted by itself. One look for each stock and chance.
   */
  async seekSafer(risk: HeldRisk): Promise<void> {
    const { ground } = this;
    if (!ground) return;
    const isSought = this.#safer?.of === ground && this.#safer.mostChance === risk.mostChance;
    if (isSought) return;
    const seeking = { of: ground, mostChance: risk.mostChance };
    this.#safer = seeking;
    const made = await heldPlan(ground, risk).catch(() => undefined);
    if (this.#safer.of === ground && this.#safer.mostChance === risk.mostChance)
      this.#safer = { ...seeking, made };
  }

  /** The plan held to a chance that was sought, where there is one and it still holds. */
  saferWithin(mostChance: number): Plan | undefined {
    const { made, of } = this.#safer ?? {};
    const isOfNow = of === this.ground && made?.held?.mostChance === mostChance;
    return isOfNow && made?.result.status === 'optimal' ? made.result : undefined;
  }

  /**
   * Puts a plan of what is left in force. Resolves to whether it was saved.
   *
   * @param heldTo the chance that the plan is held to, where it is not the one made last
   */
  async adopt(plan: Plan | undefined = this.madePlan, heldTo?: number): Promise<boolean> {
    const { ground } = this;
    if (!ground || !plan) return false;
    const { grades, settings } = this.#job();
    this.isAdopting = true;
    try {
      const gradesId = grades?.gradesId ?? null;
      const isMade = plan === this.madePlan;
      const heldUnder = isMade ? this.made?.held?.mostChance : heldTo;
      const body = planAdoption(ground, plan, gradesId, settings.kickAllowanceMm, heldUnder);
      const stored = await this.#job().act({ type: 'planAdopted', body });
      this.isUnsaved = !stored;
      return !this.isUnsaved;
    } finally {
      this.isAdopting = false;
    }
  }
}

async function heldPlan(ground: PlanGround, risk: HeldRisk): Promise<MadePlan> {
  const { request, result, raisedBy } = await runTask('planWithinRisk', {
    request: ground.request,
    ...risk
  }).result;
  return { ground, request, result, held: { mostChance: risk.mostChance, raisedBy } };
}
