import type { CoursePart, Plan } from '$lib/engine/courses';
import { type CourseDemand, piecesOfDemand } from '$lib/engine/roof';
import type { PlanState } from '$lib/app';
import {
  type OwnChange,
  type OwnParts,
  type PlanGround,
  isSameList,
  moveChange,
  ownPartsOf,
  ownPlanOf,
  pilesLacking,
  placeOf,
  setPileOfCourse
} from '$lib/job';
import { keepOwnPlan, keptOwnPlan } from './own-plan-kept.ts';

/**
 * The plan that the slater sets by hand, step by step. Nothing of it is an entry before it is put in use;
 * until then the tab keeps it.
 */
export class OwnPlan {
  readonly #desk: PlanState;
  readonly #jobId: string;
  #parts = $state.raw<OwnParts>();
  /** The parts that the figures speak of: those drawn, or of the frame before while one is dragged. */
  #told = $state.raw<OwnParts>();
  #isTellingLater = false;
  /** The numbers of the piles that its places stand for. */
  #numbers: readonly number[] = [];
  /** Courses to lay that the plan it began with leaves out, since the stock was short for them. */
  #leftOut: readonly string[] = [];
  #before = $state.raw<readonly OwnParts[]>([]);
  /** Whether it was to be used though a pile does not have what it takes. */
  isRefused = $state(false);

  constructor(desk: PlanState, jobId: string) {
    this.#desk = desk;
    this.#jobId = jobId;
    const kept = keptOwnPlan(jobId);
    if (!kept) return;
    this.#numbers = kept.numbers;
    this.#leftOut = kept.leftOut;
    this.#before = [kept.begunAs];
    this.#show(kept.parts);
  }

  /** Keeps what is not in use yet, for whoever leaves the screen and comes back. */
  keep(): void {
    const [numbers, leftOut, parts, begunAs] = [
      this.#numbers,
      this.#leftOut,
      this.#parts,
      this.#before.at(0)
    ];
    keepOwnPlan(this.#jobId, parts && begunAs && { numbers, leftOut, parts, begunAs });
  }

  /** The plan of what is left; undefined before it was begun, or where the roof has changed since. */
  readonly rest: Plan | undefined = $derived.by(() => this.#planOf(this.#told));
  /** The same as it is drawn: a change that is dragged is there before the figures are. */
  readonly drawn: Plan | undefined = $derived.by(() =>
    this.#parts === this.#told ? this.rest : this.#planOf(this.#parts)
  );

  #planOf(parts: OwnParts | undefined): Plan | undefined {
    const { ground } = this.#desk;
    if (!ground || !parts || !isSameList(ground.numbers, this.#numbers)) return undefined;
    const last = this.#plans.get(parts);
    if (last?.ground === ground) return last.plan;
    const isSameRoof = ground.request.courses.every((course) => {
      const own = parts.get(placeOf(course));
      return own ? fills(course, own) : this.#leftOut.includes(placeOf(course));
    });
    const plan = isSameRoof ? ownPlanOf(ground, parts) : undefined;
    this.#plans.set(parts, { ground, plan });
    return plan;
  }
  readonly #plans = new WeakMap<
    OwnParts,
    { readonly ground: PlanGround; readonly plan: Plan | undefined }
  >();

  readonly lacking = $derived.by(() =>
    this.rest && this.#desk.ground ? pilesLacking(this.#desk.ground, this.rest) : []
  );
  readonly canUndo = $derived(this.#before.length > 0);

  /** Begins with another plan, unless it was begun already. */
  begin(from: Plan | undefined): void {
    if (this.rest || !from) return;
    const { ground } = this.#desk;
    this.#before = [];
    const parts = ownPartsOf(from);
    const places = (ground?.request.courses ?? []).map(placeOf);
    this.#numbers = ground?.numbers ?? [];
    this.#leftOut = places.filter((place) => !parts.has(place));
    this.#show(parts);
  }

  /** Draws it moved in this frame; what it comes to is worked out and told in the next. */
  move(change: OwnChange, upTo: number): void {
    const { ground } = this.#desk;
    if (!ground || !this.#parts) return;
    this.#remember();
    this.#parts = moveChange(ground, this.#parts, change, upTo);
    if (this.#isTellingLater) return;
    this.#isTellingLater = true;
    requestAnimationFrame(() =>
      setTimeout(() => {
        this.#isTellingLater = false;
        this.#told = this.#parts;
      })
    );
  }

  setPile(place: { slopeId: string; course: number }, pile: number): void {
    const { ground } = this.#desk;
    if (!ground || !this.#parts) return;
    this.#remember();
    this.#show(setPileOfCourse(ground, this.#parts, place, pile));
  }

  /** Takes the last step back. */
  undo(): void {
    const last = this.#before.at(-1);
    if (!last) return;
    this.#before = this.#before.slice(0, -1);
    this.#show(last);
    this.isRefused = false;
  }

  /** Forgets the steps: it is in use now, or given up. */
  clear(): void {
    this.#show(undefined);
    this.#before = [];
    this.isRefused = false;
    this.keep();
  }

  #remember(): void {
    this.#before = [...this.#before, this.#parts as OwnParts];
    this.isRefused = false;
  }

  #show(parts: OwnParts | undefined): void {
    this.#parts = parts;
    this.#told = parts;
  }
}

/** Whether parts are as many pieces as a course takes, or none. */
function fills(course: CourseDemand, parts: readonly CoursePart[]): boolean {
  const pieces = parts.reduce((sum, part) => sum + part.slates + part.slateAndAHalves, 0);
  return parts.length === 0 || pieces === piecesOfDemand(course);
}
