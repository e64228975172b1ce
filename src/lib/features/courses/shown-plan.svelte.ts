import type { Plan } from '$lib/engine/courses';
import type { PlanState } from '$lib/app';
import type { PlanWay } from '$lib/job';
import { OwnPlan } from './own-plan.svelte.ts';

/** One of the plans that stand side by side: the whole roof, and what of it is left to lay. */
export interface PlanCard {
  readonly way: PlanWay;
  readonly whole: Plan;
  readonly rest: Plan;
  /** Whether it is an own plan that nobody has begun. */
  readonly isPlain: boolean;
}

/** Which of the plans the Courses screen shows, and whether as it is in use or as made now. */
export class ShownPlan {
  readonly #desk: PlanState;
  readonly #short: () => Plan | undefined;
  readonly own: OwnPlan;
  #chosen = $state<PlanWay>();
  /** Whether the new plan is looked at where one of its way is in use. */
  showsNew = $state(false);

  /** @param short what an own plan begins with where the stock is short of slates for a whole one */
  constructor(desk: PlanState, jobId: string, short: () => Plan | undefined) {
    this.#desk = desk;
    this.#short = short;
    this.own = new OwnPlan(desk, jobId);
  }

  /** The plan in use; one of another roof knows none of its courses and is none. */
  readonly inUse = $derived.by(() => {
    const { adopted } = this.#desk;
    return (adopted?.whole.courses.length ?? 0) > 0 ? adopted : undefined;
  });
  readonly way: PlanWay = $derived.by(() => this.#chosen ?? this.inUse?.way ?? 'byRule');
  /** The plan of the way shown as it would be made now. */
  readonly #fresh = $derived.by(() => this.#planOf(this.way));
  /** Whether the plan shown is not the one in use: of another way, made anew, or own and moved since. */
  readonly isNew = $derived.by(() => {
    const isMoved = this.way === 'own' && this.own.canUndo;
    const isOther = this.way !== this.inUse?.way || this.showsNew || isMoved;
    return this.#fresh !== undefined && isOther;
  });
  readonly rest = $derived.by(() => (this.isNew ? this.#fresh : this.inUse?.rest));
  readonly whole = $derived.by(() => {
    const fresh = this.isNew ? this.#fresh : undefined;
    return fresh ? this.#desk.wholeOf(fresh) : this.inUse?.whole;
  });
  /** The plans side by side; none before they are made. */
  readonly cards: readonly PlanCard[] = $derived.by(() =>
    (['byRule', 'mostEven', 'own'] as const).flatMap((way) => {
      const isSet = way === 'own' && this.own.rest !== undefined;
      const isInUse = way === this.inUse?.way && !(this.showsNew && way === this.way) && !isSet;
      if (isInUse && this.inUse)
        return [{ way, whole: this.inUse.whole, rest: this.inUse.rest, isPlain: false }];
      const rest = this.#planOf(way);
      const whole = rest && this.#desk.wholeOf(rest);
      return rest && whole ? [{ way, whole, rest, isPlain: way === 'own' && !isSet }] : [];
    })
  );

  /** Shows the plan of a way; an own plan begins as the plan that was shown, where none is in use. */
  show(way: PlanWay): void {
    if (way === 'own' && this.way !== 'own')
      this.own.begin(this.inUse?.way === 'own' ? this.inUse.rest : (this.rest ?? this.#begun));
    this.#chosen = way;
    this.showsNew = false;
  }

  /** A plan that was put in use is shown as it is in use. */
  settle(): void {
    this.own.clear();
    this.#chosen = undefined;
    this.showsNew = false;
  }

  #planOf(way: PlanWay): Plan | undefined {
    if (way !== 'own') return this.#desk.planOf(way);
    return this.own.rest ?? (this.inUse?.way === 'own' ? undefined : this.#begun);
  }

  /** What an own plan begins with: the plan by the rule, or what a short stock allows. */
  get #begun(): Plan | undefined {
    return this.#desk.planOf('byRule') ?? this.#short() ?? this.inUse?.rest;
  }
}
