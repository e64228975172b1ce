import { pileOf } from '$lib/engine/grading';
import { gradesBody, gradesOf, pilesUnder } from '$lib/job';
import {
  EMPTY_VIEW,
  type JobView,
  type JournalEvent,
  type NewEvent,
  applyEvent,
  readEvent
} from '$lib/journal';
import { ViewDraft } from '$lib/journal/draft.ts';
import { smallRoof } from './small-roof.ts';
import { TestJournal } from './test-journal.ts';

interface Slate {
  readonly event: string;
  readonly hundredths: number;
  /** The number of the pile that it lies on. */
  pile: number;
  /** Whether it, or others on its pile, came there with a whole pile. */
  isMoved: boolean;
}

interface Made {
  readonly ids: readonly string[];
  readonly type: NewEvent['type'];
  /** What is no longer true when it is taken back. */
  readonly takeBack: () => void;
}

const SET_UP: NewEvent[] = [
  ...smallRoof({ rafterLengthMm: 6000, eaveWidthMm: 1500 }),
  // Nobody said how many there are, so that the app counts the slates it saw and no others.
  { type: 'palletAdded', body: { palletId: 'a', label: 'A', slates: 0 } },
  { type: 'palletAdded', body: { palletId: 'b', label: 'B', slates: 0 } }
];

/**
 * A job with its truth beside it, slate by slate: which lie on which pile, by what a person put there.
 * Each act is done in the job and in the truth alike.
 */
export class PileYard {
  view: JobView = EMPTY_VIEW;
  readonly slates: Slate[] = [];
  /** Pieces that courses took of each pile. */
  readonly laid = new Map<number, number>();
  readonly done: Made[] = [];
  readonly seen = { opened: 0, kept: 0, beside: 0, merged: 0, again: 0, laid: 0, undone: 0 };
  readonly #known = new Map<string, JournalEvent>();
  readonly #random: () => number;
  #events = 0;
  #courses = 0;
  #lastMm: number[] = [];

  constructor(random: () => number) {
    this.#random = random;
    for (const act of SET_UP) this.#append(act);
  }

  on(pile: number): Slate[] {
    return this.slates.filter((slate) => slate.pile === pile);
  }

  get numbers(): number[] {
    return [...new Set(this.slates.map(({ pile }) => pile))].sort((one, other) => one - other);
  }

  /** New grades: near the last ones, or anywhere. */
  setGrades(): void {
    const near = this.#lastMm.length > 0 && this.#random() < 0.5;
    const moved = near
      ? this.#lastMm.map((mm) => mm + (Math.floor(this.#random() * 9) - 4) * 0.05)
      : Array.from({ length: 1 + this.#below(4) }, () => 5 + this.#below(60) * 0.05);
    const thresholdsMm = [...new Set(moved.map((mm) => Math.round(mm * 100) / 100))].sort(
      (one, other) => other - one
    );
    const before = this.#lastMm;
    this.#lastMm = thresholdsMm;
    const after = pilesUnder(this.view, thresholdsMm);
    this.seen.kept += after.kept.length;
    this.seen.opened += this.slates.length > 0 ? after.opened.length : 0;
    this.seen.beside += after.beside.length;
    this.#do(
      { type: 'gradesSet', body: gradesBody(this.view, { method: 'byHand' }, thresholdsMm) },
      () => (this.#lastMm = before)
    );
  }

  sort(): void {
    const grades = gradesOf(this.view);
    if (!grades) return;
    const hundredths = 400 + this.#below(500);
    const pile = grades.numbers[pileOf(hundredths / 100, grades.thresholdsMm) - 1];
    const palletId = this.#random() < 0.5 ? 'a' : 'b';
    const { gradesId } = grades;
    const id = this.#do(
      { type: 'slateGauged', body: { palletId, points: [hundredths], gradesId, pile } },
      () => this.slates.splice(this.slates.indexOf(slate), 1)
    );
    const slate = { event: id, hundredths, pile, isMoved: false };
    this.slates.push(slate);
  }

  lay(): void {
    const standing = this.numbers.filter((pile) => this.left(pile) >= 3);
    const pile = standing[this.#below(standing.length)];
    if (pile === undefined) return;
    const course = ++this.#courses;
    const pieces = 1 + this.#below(3);
    const body = { slopeId: 'south', course, piles: [{ pile, pieces }] };
    this.#add(pile, pieces);
    this.seen.laid++;
    this.#do({ type: 'courseLaid', body }, () => this.#add(pile, -pieces));
  }

  /** A pile beside the grades of which nothing is laid. */
  #beside(): number | undefined {
    const graded = gradesOf(this.view)?.numbers ?? [];
    const whole = this.numbers.filter((pile) => !graded.includes(pile) && !this.laid.get(pile));
    return whole[this.#below(whole.length)];
  }

  /** A pile beside the grades is sorted again, by the gauge: its slates go where they belong now. */
  again(): void {
    const from = this.#beside();
    const grades = gradesOf(this.view);
    if (from === undefined || !grades) return;
    const { gradesId, thresholdsMm, numbers } = grades;
    const all = this.on(from);
    for (const slate of all) slate.pile = numbers[pileOf(slate.hundredths / 100, thresholdsMm) - 1];
    for (const slate of this.slates) if (numbers.includes(slate.pile)) slate.isMoved = true;
    this.seen.again++;
    const moves = numbers.flatMap((toPile): NewEvent[] => {
      const slates = all.filter(({ pile }) => pile === toPile).length;
      const body = { fromPile: from, toPile, gradesId, slates, why: 'sortedAgain' } as const;
      return slates > 0 ? [{ type: 'slatesMoved', body }] : [];
    });
    this.#doAll(moves, () => {
      for (const slate of all) slate.pile = from;
    });
  }

  /** A whole pile beside the grades, of which nothing is laid, is put on another. */
  merge(): void {
    const from = this.#beside();
    const others = this.numbers.filter((pile) => pile !== from);
    const to = others[this.#below(others.length)];
    if (from === undefined || to === undefined) return;
    const all = this.on(from);
    const gradesId = gradesOf(this.view)?.gradesId ?? null;
    const body = {
      fromPile: from,
      toPile: to,
      gradesId,
      slates: all.length,
      why: 'merged'
    } as const;
    for (const slate of [...all, ...this.on(to)]) slate.isMoved = true;
    for (const slate of all) slate.pile = to;
    this.seen.merged++;
    this.#do({ type: 'slatesMoved', body }, () => {
      for (const slate of all) slate.pile = from;
    });
  }

  /** The last act that is in force is taken back. */
  undo(): void {
    const last = this.done.at(-1);
    if (last) this.#takeBack(last);
  }

  /** Any grades, or any slate that still lies where it was put and was not laid. */
  undoOld(): void {
    const may = this.done.filter(({ ids, type }) => {
      // Not where a pile that was put on another would be sorted on to again.
      if (type === 'gradesSet') return this.done.every((made) => made.type !== 'slatesMoved');
      const slate = this.slates.find((one) => one.event === ids[0]);
      return slate && !slate.isMoved && !this.laid.get(slate.pile);
    });
    const one = may[this.#below(may.length)];
    if (one) this.#takeBack(one);
  }

  act(what: string): void {
    if (what === 'grades') this.setGrades();
    else if (what === 'sort') this.sort();
    else if (what === 'lay') this.lay();
    else if (what === 'merge') this.merge();
    else if (what === 'again') this.again();
    else if (what === 'undo') this.undo();
    else this.undoOld();
  }

  #takeBack(made: Made): void {
    this.done.splice(this.done.indexOf(made), 1);
    made.takeBack();
    this.seen.undone++;
    for (const voids of made.ids) this.#append({ type: 'entryVoided', body: { voids } });
  }

  left(pile: number): number {
    return this.on(pile).length - (this.laid.get(pile) ?? 0);
  }

  #add(pile: number, pieces: number): void {
    this.laid.set(pile, (this.laid.get(pile) ?? 0) + pieces);
  }

  #below(n: number): number {
    return Math.floor(this.#random() * n);
  }

  #do(event: NewEvent, takeBack: () => void): string {
    return this.#doAll([event], takeBack)[0];
  }

  #doAll(events: readonly NewEvent[], takeBack: () => void): string[] {
    const ids = events.map((event) => this.#append(event));
    if (events.length > 0) this.done.push({ ids, type: events[0].type, takeBack });
    return ids;
  }

  #append(act: NewEvent): string {
    const id = TestJournal.id(this.#events++);
    const read = readEvent({
      ...{ ...act, id, jobId: TestJournal.id(999_999), deviceId: TestJournal.id(999_998) },
      ...{ deviceSeq: this.#events, at: '2024-05-01T08:00:00.000Z', sorter: '', v: 1 }
    });
    if (read.kind !== 'known') throw new Error(JSON.stringify(read));
    this.#known.set(id, read.event);
    const draft = new ViewDraft(this.view);
    applyEvent(draft, read, (named) => this.#known.get(named));
    this.view = draft.finish();
    return id;
  }
}
