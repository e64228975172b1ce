import type { Plan } from '$lib/engine/courses';
import type { PlanState } from '$lib/app';
import {
  type OwnChange,
  type OwnParts,
  isSameList,
  moveChange,
  ownPartsOf,
  ownPlanOf,
  pilesLacking,
  placeOf,
  setPileOfCourse
} from '$lib/job';

/** The plan that the slater sets by hand, step by step; nothing is stored before it is put in use. */
export class OwnPlan {
  readonly #desk: PlanState;
  #parts = $state.raw<OwnParts>();
  /** The numbers of the piles that its places stand for. */
  #numbers: readonly number[] = [];
  /** Courses to lay that the plan it began with leaves out, since the stock was short for them. */
  #leftOut: readonly string[] = [];
  #before = $state.raw<readonly OwnParts[]>([]);
  /** Whether it was to be used though a pile does not have what it takes. */
  isRefused = $state(false);

  constructor(desk: PlanState) {
    this.#desk = desk;
  }

  /** The plan of what is left; undefined before it was begun, or where the roof has changed since. */
  readonly rest: Plan | undefined = $derived.by(() => {
    const { ground } = this.#desk;
    const parts = this.#parts;
    if (!ground || !parts || !isSameList(ground.numbers, this.#numbers)) return undefined;
    const places = ground.request.courses.map(placeOf);
    const isSameRoof = places.every((place) => parts.has(place) || this.#leftOut.includes(place));
    return isSameRoof ? ownPlanOf(ground, parts) : undefined;
  });
  readonly lacking = $derived.by(() =>
    this.rest && this.#desk.ground ? pilesLacking(this.#desk.ground, this.rest) : []
  );
  readonly canUndo = $derived(this.#before.length > 0);

  /** Begins with another plan, unless it was begun already. */
  begin(from: Plan | undefined): void {
    if (this.rest || !from) return;
    const { ground } = this.#desk;
    const parts = ownPartsOf(from);
    const places = (ground?.request.courses ?? []).map(placeOf);
    this.#numbers = ground?.numbers ?? [];
    this.#leftOut = places.filter((place) => !parts.has(place));
    this.#parts = parts;
  }

  move(change: OwnChange, upTo: number): void {
    const { ground } = this.#desk;
    if (ground && this.#parts) this.#set(moveChange(ground, this.#parts, change, upTo));
  }

  setPile(place: { slopeId: string; course: number }, pile: number): void {
    const { ground } = this.#desk;
    if (ground && this.#parts) this.#set(setPileOfCourse(ground, this.#parts, place, pile));
  }

  /** Takes the last step back. */
  undo(): void {
    const last = this.#before.at(-1);
    if (!last) return;
    this.#before = this.#before.slice(0, -1);
    this.#parts = last;
    this.isRefused = false;
  }

  /** Forgets the steps: it is in use now, or given up. */
  clear(): void {
    this.#parts = undefined;
    this.#before = [];
    this.isRefused = false;
  }

  #set(parts: OwnParts): void {
    this.#before = [...this.#before, this.#parts as OwnParts];
    this.#parts = parts;
    this.isRefused = false;
  }
}
