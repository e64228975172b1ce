import type { Plan, PlanChange } from '$lib/engine/courses';
import type { HeldRisk, RoofPlans } from '$lib/engine/courses/risk';
import {
  type AdoptedPlan,
  type PlanGround,
  type PlanWay,
  adoptedPlanOf,
  planAdoption,
  isSameList,
  pilesRestOn,
  planRequestOf,
  stockOf,
  takeWorkedOut
} from '$lib/job';
import { runTask } from '$lib/worker';
import { inTurn } from './in-turn.ts';
import type { JobState } from './job.svelte.ts';
import { pilesAside } from './piles-aside.ts';
import type { PilesAsSorted, createPilesAsSorted } from '$lib/job/sorted';
import {
  type CoursePartDone,
  begunOn,
  changeOfRest,
  coursesOn,
  placesOf,
  wholeRoof
} from '$lib/job';

/** The plans made from the stock as it was at one moment. */
export interface MadePlans {
  readonly ground: PlanGround;
  readonly plans: RoofPlans;
  /** The chance that the plan by the rule was to hold; undefined where none was known. */
  readonly asked?: number;
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
  made = $state.raw<MadePlans>();
  isPlanning = $state(false);
  isAdopting = $state(false);
  /** Why no plan could be made, from the engine; empty when nothing is wrong. */
  problem = $state('');
  /** Whether the last adoption was not saved. */
  isUnsaved = $state(false);
  /** Counts requests, so that only the newest answer is taken. */
  #asked = 0;
  #sorting = $state.raw<ReturnType<typeof createPilesAsSorted> | 'unknown'>();
  /** Worked out off the page when the screen opened, and what that rests on. */
  #first = $state.raw<{ readonly restsOn: readonly unknown[]; readonly sorted: PilesAsSorted }>();
  /** Whether the plan in force was read once, part by part, so that it can be shown at little cost. */
  #isRead = $state(false);

  /** Resolves once the plan in force can be shown, or it is known that there is none. */
  readonly opened: Promise<void>;

  constructor(job: () => JobState) {
    this.#job = job;
    this.opened = this.#load();
  }

  /**
   * Has the worker work out the piles as they are now, so that the page stays quick; then loads what
   * does it here for every later state. Without either, piles are taken as sharp.
   */
  async #load(): Promise<void> {
    const { view, sizes } = this.#job();
    // A view of one of several sizes has its roof from the whole job, which the worker does not know.
    const worked = sizes.length === 0 ? await pilesAside(view) : undefined;
    if (worked) {
      takeWorkedOut(view, worked);
      this.#first = { restsOn: pilesRestOn(view), sorted: worked.sorted };
      await this.#read();
    }
    const loaded = await import('$lib/job/sorted').catch(() => undefined);
    this.#sorting = loaded?.createPilesAsSorted() ?? 'unknown';
    if (!this.#isRead) await this.#read();
  }

  /** Works out what a screen shows first, each part in a task of its own, and then lets it be shown. */
  async #read(): Promise<void> {
    await inTurn(
      () => this.readiness,
      () => this.#adoptedNow,
      () => (this.#isRead = true)
    );
  }

  /** Whether it is known how slates come on to the piles: before, nothing is ready to be shown. */
  readonly isLoaded = $derived.by(() => this.#isRead && this.#areHandsKnown);
  readonly #areHandsKnown = $derived.by(() => this.#sorting !== undefined || this.#isAsAtFirst());
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
  readonly #adoptedNow = $derived.by(() =>
    this.readiness.ok ? adoptedPlanOf(this.#job().view, this.readiness) : undefined
  );
  readonly adopted: AdoptedPlan | undefined = $derived.by(() => this.ground && this.#adoptedNow);

  /** Whether what was made is made from the stock and the roof as they are now. */
  readonly isFresh = $derived(this.made !== undefined && this.made.ground === this.ground);
  /** The way in which the rest is planned again: an own plan is followed by one by the rule. */
  readonly way: 'byRule' | 'mostEven' = $derived(
    this.adopted?.way === 'mostEven' ? 'mostEven' : 'byRule'
  );
  /** The plan of that way made last, where it is one and still holds. */
  readonly madePlan: Plan | undefined = $derived.by(() => this.planOf(this.way));
  readonly shortage = $derived.by(() => {
    const even = this.isFresh ? this.made?.plans.mostEven : undefined;
    return even?.status === 'short' ? even : undefined;
  });
  /** The chance that the plan by the rule holds each pile to; undefined where it holds none. */
  readonly heldUnder = $derived(this.isFresh ? this.made?.plans.heldUnder : undefined);
  /** The chance that no plan of what is left holds each pile to; undefined where one does. */
  readonly notHeld = $derived(
    this.isFresh && this.heldUnder === undefined ? this.made?.asked : undefined
  );

  /** The plan made last in a way, where it is one and still holds. */
  planOf(way: 'byRule' | 'mostEven'): Plan | undefined {
    const result = this.isFresh ? this.made?.plans[way] : undefined;
    return result?.status === 'optimal' ? result : undefined;
  }

  /** What the fresh plan changes of the one in force; undefined without both. */
  readonly change: PlanChange | undefined = $derived.by(() => {
    return this.madePlan && this.adopted ? changeOfRest(this.adopted, this.madePlan) : undefined;
  });
  readonly unknownCourses = $derived(this.adopted?.unknownCourses ?? 0);
  /** Whether planning again would change the plan in force; an own plan stays as it was set. */
  readonly isOutOfDate = $derived.by(() => {
    const changed = this.adopted?.way === 'own' ? 0 : (this.change?.changedCourses ?? 0);
    return changed > 0 || this.unknownCourses > 0;
  });

  /** The whole roof under a plan of the rest, laid courses as they were laid. */
  wholeOf(rest: Plan): Plan | undefined {
    const { ground } = this;
    if (!ground) return undefined;
    const last = this.#wholes.get(rest);
    if (last?.ground === ground) return last.whole;
    const whole = wholeRoof(ground, rest);
    this.#wholes.set(rest, { ground, whole });
    return whole;
  }
  /** Whole roofs by the plan of their rest: cards and drawing ask for the same ones at every step. */
  readonly #wholes = new WeakMap<Plan, { readonly ground: PlanGround; readonly whole: Plan }>();

  readonly laidPlaces = $derived(placesOf(this.ground?.laid ?? []));

  /** Numbers of the courses of a slope that are laid. */
  doneOn(slopeId: string): ReadonlySet<number> {
    return coursesOn(this.ground?.laid ?? [], slopeId);
  }

  /** Courses of a slope of which a part lies, by number. */
  begunOn(slopeId: string): ReadonlyMap<number, CoursePartDone> {
    return begunOn(this.ground?.partLaid ?? [], slopeId);
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

  /** Makes the plans of what is left, the one by the rule within a chance where one is given. */
  async make(risk?: HeldRisk): Promise<void> {
    const { ground } = this;
    if (!ground) return;
    const asked = ++this.#asked;
    this.isPlanning = true;
    this.problem = '';
    try {
      const { request } = ground;
      const plans = await runTask('planRoof', { request, risk }).result;
      if (asked === this.#asked) this.made = { ground, plans, asked: risk?.mostChance };
    } catch (error) {
      if (asked === this.#asked) this.problem = error instanceof Error ? error.message : `${error}`;
    } finally {
      if (asked === this.#asked) this.isPlanning = false;
    }
  }

  /** Puts a plan of what is left in force. Resolves to whether it was saved. */
  async adopt(plan: Plan | undefined = this.madePlan, way: PlanWay = this.way): Promise<boolean> {
    const { ground } = this;
    if (!ground || !plan) return false;
    const { grades, settings } = this.#job();
    this.isAdopting = true;
    try {
      const gradesId = grades?.gradesId ?? null;
      const heldUnder = plan === this.planOf('byRule') ? this.heldUnder : undefined;
      const body = planAdoption(ground, plan, gradesId, settings.kickAllowanceMm, way, heldUnder);
      const stored = await this.#job().act({ type: 'planAdopted', body });
      this.isUnsaved = !stored;
      return !this.isUnsaved;
    } finally {
      this.isAdopting = false;
    }
  }
}
