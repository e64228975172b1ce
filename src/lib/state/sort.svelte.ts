import { fromHundredths, toHundredths } from '$lib/engine';
import { pileOf } from '$lib/engine/grading';
import {
  type AcceptedReading,
  type CaptureField,
  type GaugedSlate,
  type LengthUnit,
  type PointsState,
  type RepeatState,
  addPoint,
  dropPoint,
  parseReading,
  repeatReading,
  startPoints,
  startRepeatCheck
} from '$lib/gauge';
import type { NewEvent, SetAsideReason, SetAsideUse, StoredEvent } from '$lib/journal';
import { words } from '$lib/text';
import { Announcer } from './announcer.svelte.ts';
import { Feedback } from './feedback.ts';
import { GaugeInput, type InputSource, type Refusal } from './gauge-input.svelte.ts';
import type { JobState } from './job.svelte.ts';
import { PalletDesk } from './pallet-desk.svelte.ts';
import type { Preferences } from './preferences.svelte.ts';
import { undoableActs } from './recent-acts.ts';
import { SerialConnection } from './serial-connection.svelte.ts';
import { SessionMark } from './session-mark.ts';
import { type JudgingGround, judgeSlate, orderBand } from './slate-judgement.ts';
import { type CheckTimer, afterTap, isHandKnown, nextCheckTimer } from './spot-checks.ts';
import { journalStore } from './store.ts';
import { type Prompt, type Told, sayTold } from './told.ts';
import { UsualRange } from './usual-range.ts';

/** A second tap on the same pile so soon is the finger bouncing, ms: no slate comes that fast. */
const BOUNCE_MS = 150;
/** Gauged slates from one reminder of the tail third to the next, and how long it stays. */
const TAIL_EVERY = 40;
const TAIL_FOR = 3;

/** A refusal of the app's own: a reading that no pallet could take. */
export interface NoPallet {
  readonly ok: false;
  readonly reason: 'no-pallet';
  readonly text: string;
}

type LastEntry =
  | { readonly kind: 'act'; readonly saved: Promise<StoredEvent[] | undefined> }
  | { readonly kind: 'point' | 'repeat' };

interface LastTap {
  readonly pile: number;
  readonly palletId: string;
  readonly gradesId: string;
}

/**
 * The sorting bench: a reading or a tap becomes one event of the journal, and the screen says on
 * which pile the slate goes.
 */
export class SortState {
  readonly #job: () => JobState;
  readonly #preferences: Preferences;
  readonly #random: () => number;
  readonly desk: PalletDesk;
  readonly input: GaugeInput;
  readonly serial: SerialConnection;
  readonly feedback: Feedback;
  readonly announcer = new Announcer();
  /** What the screen says of the last slate. */
  told = $state.raw<Told>();
  prompt = $state.raw<Prompt>();
  refusal = $state.raw<Refusal | NoPallet>();
  /** Whether the unit of the gauge was answered in this session. */
  isUnitKnown = $state(false);
  /** Whether the gauge was just learnt to send no end. */
  hasLearntEnding = $state(false);
  #saving = $state.raw<Told['act']>();
  #timer = $state.raw<CheckTimer>({ tapsUntil: 8, askedFor: null });
  #lastTap = $state.raw<LastTap>();
  #gaugedSlates = $state(0);
  #tailSeenAt = $state(-1);
  #deviceId = $state('');
  #points: PointsState = startPoints(1);
  #repeat: RepeatState = startRepeatCheck();
  #lastEntry: LastEntry | undefined;
  #lastSaved: Promise<StoredEvent[] | undefined> | undefined;
  #tappedAt = { pile: 0, at: -Infinity };
  readonly #usualRange = new UsualRange();
  readonly #unitMark = new SessionMark('evencourse.unit');

  readonly saveStatus = $derived.by(() => {
    if (!this.told) return 'none';
    if (this.#job().isUnsaved(this.told.act)) return 'not-saved';
    return this.#saving === this.told.act ? 'saving' : 'saved';
  });
  /** The pile of the last tapped slate, when it is to be gauged as a spot check; else null. */
  readonly checkedPile: number | null = $derived(
    this.#timer.askedFor !== null && this.#lastTap ? this.#lastTap.pile : null
  );
  readonly isTailShown = $derived.by(() => {
    const round = Math.floor(this.#gaugedSlates / TAIL_EVERY);
    const isDue = this.#gaugedSlates % TAIL_EVERY < TAIL_FOR && round > this.#tailSeenAt;
    return isDue && (this.#preferences.values.way === 'gauge' || this.checkedPile !== null);
  });
  readonly undoable: StoredEvent[] = $derived.by(() =>
    undoableActs(this.#job().newest, this.#job().view, this.#deviceId)
  );

  constructor(job: () => JobState, preferences: Preferences, random: () => number = Math.random) {
    this.#job = job;
    this.#preferences = preferences;
    this.#random = random;
    this.desk = new PalletDesk(job, preferences);
    this.feedback = new Feedback(() => preferences.values);
    const { wedgeEnding, serialGauge } = preferences.values;
    const audience = {
      onReading: (reading: AcceptedReading, source: InputSource) => this.#take(reading, source),
      onRefused: (refusal: Refusal) => this.#refuse(refusal),
      onReopened: () => void this.#takeBackLast(),
      onEndingLearnt: (ending: typeof wedgeEnding) => {
        this.hasLearntEnding = true;
        preferences.set({ wedgeEnding: ending });
      }
    };
    this.input = new GaugeInput(audience, wedgeEnding);
    this.serial = new SerialConnection(
      serialGauge,
      (reading) => this.input.takeReading(reading, 'serial'),
      (learnt) => preferences.set({ serialGauge: learnt })
    );
  }

  /** Begins to listen for readings; the function returned ends it. */
  start(page: EventTarget, field: CaptureField & { focus?: () => void }): () => void {
    void journalStore()
      .deviceId()
      .then((deviceId) => (this.#deviceId = deviceId))
      .catch(() => undefined); // a database that fails shows itself at the next act
    this.#useUnit(this.#job().settings.readingUnit === 'in' ? 'inch' : 'mm');
    this.isUnitKnown = this.#unitMark.isSet;
    const stop = this.input.listen(page, field);
    return () => {
      stop();
      this.announcer.close();
      this.feedback.close();
      void this.serial.disconnect();
    };
  }

  /** A tap: the sorter felt that the slate goes on this pile. */
  tap(pile: number): void {
    const at = performance.now();
    const isBounce = this.#tappedAt.pile === pile && at - this.#tappedAt.at < BOUNCE_MS;
    const pallet = this.desk.current;
    if (isBounce || !pallet) return;
    this.#tappedAt = { pile, at };
    const { grades, piles } = this.#job();
    const { palletId, label } = pallet;
    const gradesId = grades?.gradesId ?? null;
    this.#restartSlate();
    this.#lastEntry = undefined;
    const act: NewEvent = { type: 'slateTapped', body: { palletId, pile, gradesId } };
    void this.#tell({ kind: 'tapped', act, palletLabel: label, pile, piles });
    this.feedback.tellPile(pile, piles, words.text.common.pile(pile, piles));
    if (!grades) return;
    this.#lastTap = { pile, palletId, gradesId: grades.gradesId };
    this.#timer = afterTap(this.#timer, this.#isSure(), this.#random);
    if (this.#timer.askedFor === 0) this.feedback.tellMind('');
  }

  /** Sets a slate aside: a new one, or the last one, whose entry is then taken back. */
  async setAside(reason: SetAsideReason, use: SetAsideUse, isLast: boolean): Promise<void> {
    const pallet = this.desk.current;
    if (!pallet) return;
    const { palletId, label } = pallet;
    const last = isLast ? this.lastOnPile : undefined;
    const voided = last && (await this.#lastSaved)?.at(-1);
    const points = last?.kind === 'gauged' ? { points: last.points } : {};
    const aside: NewEvent = { type: 'slateSetAside', body: { palletId, reason, use, ...points } };
    const act: NewEvent[] = voided
      ? [{ type: 'entryVoided', body: { voids: voided.id } }, aside]
      : [aside];
    this.#restartSlate();
    this.#lastEntry = undefined;
    this.feedback.tellTaken();
    await this.#tell({ kind: 'setAside', act, palletLabel: label, reason });
  }

  /** The last slate told a pile, when it can still be set aside instead. */
  get lastOnPile(): Told | undefined {
    const told = this.told;
    return told?.kind === 'gauged' || told?.kind === 'tapped' ? told : undefined;
  }

  /** Takes one of the last entries back. */
  async undo(eventId: string): Promise<void> {
    const undone = this.undoable.find(({ id }) => id === eventId);
    const isTap = undone?.type === 'slateTapped';
    if ((await this.#job().undo(eventId)) === undefined) return;
    this.told = undefined;
    this.refusal = undefined;
    this.#lastEntry = undefined;
    if (isTap) this.#lastTap = undefined;
    this.announcer.say(words.text.sort.told.undone);
    this.feedback.tellTaken();
  }

  /** Takes what a refused number may have meant. */
  choose(valueMm: number): void {
    this.input.takeReading(parseReading(`${valueMm} mm`, 'mm'), 'choice');
  }

  /** Puts the spot check off. */
  skipCheck(): void {
    this.#timer = nextCheckTimer(this.#isSure(), this.#random);
  }

  /** The reminder of the tail third was seen. */
  closeTail(): void {
    this.#tailSeenAt = Math.floor(this.#gaugedSlates / TAIL_EVERY);
  }

  /** Answers in which unit the gauge reads; kept for the job when it changed. */
  async setUnit(unit: LengthUnit): Promise<void> {
    this.isUnitKnown = true;
    this.#unitMark.set();
    this.#restartSlate();
    this.#useUnit(unit);
    const readingUnit = unit === 'mm' ? 'mm' : 'in';
    if (readingUnit !== this.#job().settings.readingUnit)
      await this.#job().act({ type: 'jobSettingsSet', body: { readingUnit } });
  }

  /** How many points are gauged on each slate of the job. */
  async setPoints(pointsPerSlate: number): Promise<void> {
    this.#restartSlate();
    await this.#job().act({ type: 'jobSettingsSet', body: { pointsPerSlate } });
  }

  /** Forgets how the gauge that types ends its readings. */
  forgetEnding(): void {
    this.hasLearntEnding = false;
    this.#preferences.set({ wedgeEnding: { kind: 'key' } });
    this.input.setEnding({ kind: 'key' });
  }

  #useUnit(unit: LengthUnit): void {
    this.input.setUnit(unit);
    this.serial.setUnit(unit);
  }

  /** One accepted number on its way to a slate: held still, then point by point. */
  #take(reading: AcceptedReading, source: InputSource): void {
    this.feedback.prime();
    this.refusal = undefined;
    if (!this.desk.current) return this.#refuseWithoutPallet(reading);
    const valueMm = this.#heldStill(reading.valueMm);
    if (valueMm === undefined) return;
    const wanted = this.#job().settings.pointsPerSlate;
    if (this.#points.wanted !== wanted) this.#points = startPoints(wanted);
    const { state, slate } = addPoint(this.#points, valueMm);
    this.#points = state;
    if (slate) {
      const saved = this.#takeSlate(slate);
      this.#lastEntry = source === 'keypad' ? { kind: 'act', saved } : undefined;
      return;
    }
    const done = state.pointsMm.length;
    this.#lastEntry = source === 'keypad' ? { kind: 'point' } : undefined;
    this.#ask({ kind: 'point', done, wanted }, words.text.sort.told.point(done, wanted));
  }

  /** The value of a point once two readings of it agree; undefined until then. */
  #heldStill(readMm: number): number | undefined {
    if (!this.#preferences.values.holdsStill) return readMm;
    const { state, effect } = repeatReading(this.#repeat, readMm);
    this.#repeat = state;
    if (effect.kind === 'agreed') return effect.valueMm;
    this.#lastEntry = { kind: 'repeat' };
    const { again, moved } = words.text.sort.told;
    this.#ask(effect, effect.kind === 'again' ? again : moved);
    return undefined;
  }

  #takeSlate(slate: GaugedSlate): Promise<StoredEvent[] | undefined> {
    const { thicknessMm, taperMm } = slate;
    const points = slate.pointsMm.map(toHundredths);
    const { palletId = '', label: palletLabel = '' } = this.desk.current ?? {};
    const { grades, piles } = this.#job();
    this.prompt = undefined;
    this.#gaugedSlates++;
    if (grades && this.checkedPile !== null && this.#lastTap)
      return this.#takeCheck(thicknessMm, points, this.#lastTap, grades.thresholdsMm);
    const judgement = judgeSlate(thicknessMm, this.#ground());
    const { pile } = judgement;
    const gradesId = grades?.gradesId ?? null;
    const act: NewEvent = { type: 'slateGauged', body: { palletId, points, gradesId, pile } };
    const told = { kind: 'gauged' as const, piles, thicknessMm, taperMm, points, judgement };
    const saved = this.#tell({ ...told, act, palletLabel });
    if (judgement.rogue) this.feedback.tellMind(words.text.sort.told.rogue);
    else if (pile === null) this.feedback.tellTaken();
    else this.feedback.tellPile(pile, piles, words.text.common.pile(pile, piles));
    return saved;
  }

  #takeCheck(
    thicknessMm: number,
    points: number[],
    tap: LastTap,
    thresholdsMm: readonly number[]
  ): Promise<StoredEvent[] | undefined> {
    const { pile, palletId, gradesId } = tap;
    const gauged = pileOf(fromHundredths(toHundredths(thicknessMm)), thresholdsMm);
    const body = { palletId, of: 'tap' as const, pile, gradesId, points };
    this.#timer = nextCheckTimer(this.#isSure(), this.#random);
    this.#lastTap = undefined;
    if (gauged === pile) this.feedback.tellTaken();
    else this.feedback.tellMind('');
    return this.#tell({
      kind: 'checked',
      act: { type: 'slateChecked', body },
      palletLabel: this.desk.all.find((pallet) => pallet.palletId === palletId)?.label ?? '',
      piles: this.#job().piles,
      thicknessMm,
      felt: pile,
      gauged
    });
  }

  #ground(): JudgingGround {
    const { grades, settings, delivery, view, summary } = this.#job();
    return {
      thresholdsMm: grades?.thresholdsMm,
      gaugeSdMm: settings.gaugeSdMm,
      kickAllowanceMm: settings.kickAllowanceMm,
      orderBand: orderBand(delivery),
      usualRange: this.#usualRange.at(view, summary?.events ?? 0)
    };
  }

  /** Shows what a slate was told and saves it; "saved" is shown once it is committed. */
  async #tell(told: Told): Promise<StoredEvent[] | undefined> {
    this.told = told;
    this.refusal = undefined;
    this.prompt = undefined;
    this.#saving = told.act;
    const saved = this.#job().act(told.act, this.#preferences.values.nickname);
    this.#lastSaved = saved;
    const events = await saved;
    if (this.#saving === told.act) this.#saving = undefined;
    if (events) this.announcer.say(sayTold(told, words.text, words.numbers));
    else this.feedback.tellRefused();
    return events;
  }

  #ask(prompt: Prompt, said: string): void {
    this.prompt = prompt;
    this.told = undefined;
    this.feedback.tellTaken();
    this.announcer.say(said);
  }

  #refuse(refusal: Refusal | NoPallet): void {
    this.refusal = refusal;
    this.feedback.tellRefused();
  }

  #refuseWithoutPallet(reading: AcceptedReading): void {
    this.input.hold(reading.text);
    this.#refuse({ ok: false, reason: 'no-pallet', text: reading.text });
  }

  /** Back on the keypad: what the number just taken made is unmade. */
  async #takeBackLast(): Promise<void> {
    const last = this.#lastEntry;
    this.#lastEntry = undefined;
    this.told = undefined;
    this.prompt = undefined;
    if (last?.kind === 'repeat') this.#repeat = startRepeatCheck();
    else if (last?.kind === 'point') this.#points = dropPoint(this.#points);
    else if (last?.kind === 'act') {
      const events = await last.saved;
      if (events) await this.#job().undo(events[0].id);
    }
  }

  /** Begins the slate in hand anew: its points so far are dropped. */
  #restartSlate(): void {
    this.#points = startPoints(this.#job().settings.pointsPerSlate);
    this.#repeat = startRepeatCheck();
    this.prompt = undefined;
  }

  #isSure(): boolean {
    const { grades, view } = this.#job();
    return grades ? isHandKnown(view, this.#preferences.values.nickname, grades) : false;
  }
}
