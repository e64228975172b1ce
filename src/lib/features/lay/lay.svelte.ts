import {
  type Plan,
  type PlannedCourse,
  type PlanRequest,
  type RogueCheck,
  rogueCheck
} from '$lib/engine/courses';
import type { NewEvent, StoredEvent } from '$lib/journal';
import {
  changeOfRest,
  handCount,
  jobPace,
  piecesOfParts,
  slicePieces,
  undereaveLaying,
  wholeCourse
} from '$lib/job';
import { type JobState, journalStore, preferences } from '$lib/app';
import { runTask } from '$lib/worker';
import {
  coursesLaidTwice,
  keptForCourse,
  drawOf,
  lastLaidAct,
  lastSlope,
  lowerElsewhere,
  rogueStretches,
  slopeProgress
} from '$lib/job';
import { type PlanWay, type RanOut, pilesLeft, ranOut } from '$lib/job';
import type { PlanState } from '$lib/app';

/** Largest accepted chance for each joint beside a rogue. Ours, a starting value. */
export const ROGUE_CHANCE = 0.1;
/** For so long after an act the big buttons rest, so that a second knock of a glove does nothing. */
const REST_MS = 700;

/** A rogue slate looked up among the courses that are left. */
export interface RogueAnswer {
  readonly thicknessMm: number;
  readonly check: RogueCheck;
  /** The course that was next when it was asked. */
  readonly here: { readonly slopeId: string; readonly course: number };
  /** Whether it may lie in that course, and its chance of kicking there. */
  readonly mayLieHere: boolean;
  readonly chanceHere: number;
  readonly elsewhere: ReturnType<typeof rogueStretches>;
}

/** What is done on the roof: courses laid, slates lost, piles counted, and the last of it undone. */
export class LayState {
  readonly #job: () => JobState;
  readonly #desk: PlanState;
  #slopeId = $state<string>();
  isBusy = $state(false);
  /** Whether the last act was not saved. */
  isUnsaved = $state(false);
  /** Whether the last thing done was an undo. */
  isUndone = $state(false);

  /** The course of another slope than the last that was asked about: pressed once more it is laid. */
  #asked = $state('');
  #deviceId = $state('');

  constructor(job: () => JobState, desk: PlanState) {
    this.#job = job;
    this.#desk = desk;
    void journalStore()
      .deviceId()
      .then((deviceId) => (this.#deviceId = deviceId))
      .catch(() => undefined); // a database that fails shows itself at the next act
  }

  readonly slopes = $derived.by(() => {
    const { ground, adopted } = this.#desk;
    return ground && adopted ? slopeProgress(ground, adopted.rest) : [];
  });

  /** The slope last worked on, where a course of it is left to lay. */
  readonly lastSlopeId = $derived.by(() => {
    const last = lastSlope(this.#job().view, this.#job().newest, this.#deviceId);
    return this.slopes.find(({ slopeId, next }) => slopeId === last && next)?.slopeId;
  });

  /** The slope being laid: the one chosen, else the one last worked on, else the lowest course's. */
  get slopeId(): string | undefined {
    const chosen = this.slopes.find(({ slopeId, next }) => slopeId === this.#slopeId && next);
    const first = this.#desk.adopted?.rest.courses[0]?.slopeId;
    return chosen?.slopeId ?? this.lastSlopeId ?? first;
  }
  set slopeId(slopeId: string | undefined) {
    this.#slopeId = slopeId;
  }

  readonly here = $derived.by(() => this.slopes.find(({ slopeId }) => slopeId === this.slopeId));
  readonly next = $derived(this.here?.next);
  /** What lies of the course that is next, where it was begun or left with a note. */
  readonly begun = $derived(this.here?.begun);
  /** Slates of other piles that wait for the course that is next. */
  readonly kept = $derived.by(() => (this.next ? keptForCourse(this.#job().view, this.next) : []));
  /** Pieces of the whole of the course that is next. */
  readonly piecesOfNext = $derived(
    this.begun?.of ??
      (this.next?.parts ?? []).reduce((sum, part) => sum + part.slates + part.slateAndAHalves, 0)
  );
  readonly draw = $derived.by(() => {
    const { ground, adopted } = this.#desk;
    return ground && adopted && this.next && drawOf(ground, adopted.rest, this.next);
  });
  readonly lower = $derived.by(() => {
    const { adopted } = this.#desk;
    return adopted && this.next ? lowerElsewhere(adopted.rest, this.next) : 0;
  });
  readonly last = $derived.by(() => lastLaidAct(this.#job().view));
  /** Whether the course laid last was entered by two people. */
  readonly isLastTwice = $derived.by(() => {
    const { last } = this;
    if (last?.kind !== 'course') return false;
    const twice = coursesLaidTwice(this.#job().view);
    return twice.some(({ slopeId, course }) => slopeId === last.slopeId && course === last.course);
  });

  /** The piles by the book, pile 1 first; empty before there is a plan's ground. */
  readonly book = $derived.by(() => (this.#desk.ground ? pilesLeft(this.#desk.ground) : []));

  /** Slates left of a pile by the book. */
  leftOf(pile: number): number {
    return this.book[pile - 1]?.left ?? 0;
  }

  /** Slates left of a pile that are not sorted yet, as far as they were logged. */
  toComeOf(pile: number): number {
    return this.book[pile - 1]?.toCome ?? 0;
  }

  /** Slates of a pile that stand there sorted, by the book. */
  sortedOf(pile: number): number {
    return this.book[pile - 1]?.standing ?? 0;
  }

  /** The slope last worked on, where the course that is next lies on another and that was not asked. */
  get otherSlopeId(): string | undefined {
    const { next, lastSlopeId: last } = this;
    return next && last !== undefined && last !== next.slopeId ? last : undefined;
  }

  /** Whether it was asked if the course that is next is meant, though it lies on another slope. */
  get isAsked(): boolean {
    const { next } = this;
    return next !== undefined && this.#asked === `${next.slopeId}|${next.course}`;
  }

  /** The course after the one that is next on its slope, as planned. */
  readonly after = $derived.by(() => {
    const { next } = this;
    const courses = this.#desk.adopted?.rest.courses ?? [];
    return next && courses.find((one) => one.slopeId === next.slopeId && one.course > next.course);
  });

  /** Slates by pile of the course that is next and the undereave row that lies before it. */
  readonly #takenNext = $derived.by(() => {
    const parts = [...(this.next?.parts ?? []), ...(this.undereave?.parts ?? [])];
    return this.book.flatMap(({ pile }) => {
      const own = parts.filter((part) => part.pile === pile);
      const slates = own.reduce((sum, part) => sum + part.slates, 0);
      return slates > 0 ? [{ pile, slates }] : [];
    });
  });

  /** What the course that is next takes of a pile beyond the slates that are sorted. */
  readonly unsortedTaken = $derived.by(() =>
    this.#takenNext.flatMap(({ pile, slates }) => {
      const sorted = this.sortedOf(pile);
      return slates > sorted ? [{ pile, slates, sorted }] : [];
    })
  );

  /** The course that is next is laid as planned; on another slope than the last, asked once. */
  async layCourse(): Promise<void> {
    const { next } = this;
    if (!next) return;
    if (this.otherSlopeId !== undefined && !this.isAsked) {
      this.#asked = `${next.slopeId}|${next.course}`;
      return;
    }
    this.#slopeId = next.slopeId;
    const { slopeId, course, parts } = next;
    const piles = this.#byNumber(
      piecesOfParts(this.begun ? wholeCourse(this.begun, parts) : parts)
    );
    const undereave = this.#undereaveOf(next);
    await this.#act({
      type: 'courseLaid',
      body: { slopeId, course, piles, ...(undereave && { undereave }) }
    });
  }

  /**
   * So many pieces of the course that is next lie in all, from one end. What lies already stays as it
   * was laid; what is new comes from the piles that the plan has there.
   */
  async layPart(pieces: number, from: 'left' | 'right', note: string): Promise<void> {
    const { next, begun, piecesOfNext: of } = this;
    if (!next) return;
    this.#slopeId = next.slopeId;
    const whole = piecesOfParts(begun ? wholeCourse(begun, next.parts) : next.parts);
    const start = from === 'left' ? 0 : of - pieces;
    const piles = this.#byNumber(slicePieces(whole, start, start + pieces));
    const { slopeId, course } = next;
    const undereave = pieces > 0 ? this.#undereaveOf(next) : undefined;
    const body = {
      ...{ slopeId, course, from, piles },
      ...(note !== '' && { note }),
      ...(undereave && { undereave })
    };
    await this.#act({ type: 'coursePartLaid', body });
  }

  /** What the first course of a slope says of the undereave row, which lies before it. */
  #undereaveOf(course: PlannedCourse) {
    const { ground } = this.#desk;
    return ground && undereaveLaying(ground, course);
  }

  /** The undereave row that is laid before the course that is next; undefined where it lies. */
  readonly undereave = $derived.by(() => {
    const { next } = this;
    const rows = this.#desk.ground?.undereave ?? [];
    return next?.course === 1 ? rows.find(({ slopeId }) => slopeId === next.slopeId) : undefined;
  });

  /** Slates of a pile that will not be laid. */
  lose(
    pile: number,
    slates: number,
    reason: 'broken' | 'rogue',
    thicknessHundredths?: number
  ): Promise<void> {
    const gradesId = this.#job().grades?.gradesId ?? null;
    const body = {
      ...{ pile: this.#numberOf(pile), gradesId, slates, reason },
      ...(thicknessHundredths !== undefined && { thicknessHundredths })
    };
    return this.#act({ type: 'slatesLost', body });
  }

  /** A rogue leaves its pile and joins that of a course, for which it is kept. */
  moveTo(
    fromPile: number,
    place: { readonly slopeId: string; readonly course: number; readonly pile: number },
    thicknessHundredths: number
  ): Promise<void> {
    const { slopeId, course } = place;
    const gradesId = this.#job().grades?.gradesId ?? null;
    const keptFor = { slopeId, course };
    const body = {
      ...{ fromPile: this.#numberOf(fromPile), toPile: this.#numberOf(place.pile) },
      ...{ gradesId, slates: 1, thicknessHundredths, keptFor }
    };
    return this.#act({ type: 'slatesMoved', body });
  }

  /** What really stands on a pile. One that ran out, with none to come, gives up all it had. */
  count(pile: number, slates: number): Promise<void> {
    const gradesId = this.#job().grades?.gradesId ?? null;
    const left = this.leftOf(pile);
    if (slates === 0 && this.toComeOf(pile) === 0 && left > 0) {
      const number = this.#numberOf(pile);
      const body = { pile: number, gradesId, slates: left, reason: 'ranOut' } as const;
      return this.#act({ type: 'slatesLost', body });
    }
    const { ground } = this.#desk;
    if (!ground) return Promise.resolve();
    return this.#act({ type: 'pileCounted', body: handCount(ground, pile, slates, gradesId) });
  }

  /** What a pile that ran out leaves to do, as things stand now. */
  ranOut(pile: number): RanOut | undefined {
    const { ground, adopted } = this.#desk;
    return ground && adopted && ranOut(ground, adopted.rest, pile);
  }

  /** The plan of a request that counts on less, made as the rest is; `none` where there is none. */
  async planOf(request: PlanRequest): Promise<Plan | 'none'> {
    const plans = await runTask('planRoof', { request }).result.catch(() => undefined);
    const result = plans?.[this.#desk.way];
    return result?.status === 'optimal' ? result : 'none';
  }

  /** Puts another plan of the rest in force. Resolves to whether it was saved. */
  usePlan(plan: Plan, way: PlanWay = this.#desk.way): Promise<boolean> {
    return this.#desk.adopt(plan, way);
  }

  /** Courses that a plan of the rest changes of the one in force. */
  changedBy(plan: Plan): number {
    const { adopted } = this.#desk;
    return adopted ? changeOfRest(adopted, plan).changedCourses : 0;
  }

  /** Expected kickers of the rest as planned. */
  readonly restKickers = $derived.by(() => this.#desk.adopted?.rest.kickers ?? 0);
  readonly isGauged = $derived.by(() => this.#desk.ground?.stock.isGauged ?? false);
  /** Slates that came in all. */
  readonly delivered = $derived.by(() => this.#desk.ground?.stock.delivered ?? 0);

  /** Hours to sort so many slates at the job's pace; undefined where none is known. */
  hoursToSort(slates: number): number | undefined {
    const { view, settings } = this.#job();
    const pace = settings.sortingPacePerHour ?? jobPace(view).perHour;
    return pace ? slates / pace : undefined;
  }

  /** Where a slate of a thickness may lie; undefined where no thickness is known, or no course next. */
  askRogue(thicknessMm: number): RogueAnswer | undefined {
    const { ground, adopted } = this.#desk;
    const here = this.next;
    if (!ground || !adopted || !here || !ground.stock.isGauged) return undefined;
    const allowance = this.#job().settings.kickAllowanceMm;
    const check = rogueCheck(
      adopted.rest,
      ground.sortedBins,
      thicknessMm,
      allowance,
      ROGUE_CHANCE,
      ground.softness
    );
    const isHere = (place: { slopeId: string; course: number }): boolean =>
      place.slopeId === here.slopeId && place.course === here.course;
    const own = here.parts.map(({ pile }) => check.piles[pile - 1]);
    return {
      thicknessMm,
      check,
      here: { slopeId: here.slopeId, course: here.course },
      mayLieHere: own.some(({ mayLie }) => mayLie),
      chanceHere: own.length > 0 ? Math.min(...own.map(({ kickChance }) => kickChance)) : 0,
      elsewhere: rogueStretches(check.places.filter((place) => !isHere(place)))
    };
  }

  /** Takes the last act on the roof back. */
  async undo(): Promise<void> {
    const { last } = this;
    if (!last || this.isBusy) return;
    await this.#run(() => this.#job().undo(last.id), true);
  }

  /** The number that stands on the pile at a place. */
  #numberOf(pile: number): number {
    return this.#desk.ground?.numbers[pile - 1] ?? pile;
  }

  #byNumber<P extends { readonly pile: number }>(pieces: readonly P[]): P[] {
    return pieces.map((part) => ({ ...part, pile: this.#numberOf(part.pile) }));
  }

  #act(act: NewEvent): Promise<void> {
    if (this.isBusy) return Promise.resolve();
    return this.#run(() => this.#job().act(act, preferences.values.nickname));
  }

  async #run(save: () => Promise<StoredEvent[] | undefined>, isUndo = false): Promise<void> {
    this.isBusy = true;
    try {
      this.isUnsaved = !(await save());
      this.isUndone = isUndo && !this.isUnsaved;
      await new Promise((resume) => setTimeout(resume, REST_MS));
    } finally {
      this.isBusy = false;
    }
  }
}
