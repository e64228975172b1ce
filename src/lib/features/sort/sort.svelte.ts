import { toHundredths } from '$lib/engine';
import { pileOf } from '$lib/engine/grading';
import {
  type AcceptedReading,
  type CaptureField,
  type GaugedSlate,
  type ReadingUnit,
  parseReading
} from '$lib/gauge';
import type { NewEvent, SetAsideReason, SetAsideUse, StoredEvent } from '$lib/journal';
import { words } from '$lib/text';
import { Announcer } from '$lib/app';
import { Feedback } from '$lib/app';
import { GaugeInput, type InputSource, type InputRefusal } from '$lib/app';
import type { JobState } from '$lib/app';
import { HandKeys } from './hand-keys.svelte.ts';
import { PalletState } from './pallet.svelte.ts';
import type { Preferences } from '$lib/app';
import { likelyRangeOf, listStep, sampleStep, undoableActs } from '$lib/job';
import { partOf } from '$lib/journal';
import { type NoPallet, sayRefusal } from './refusal-words.ts';
import { sayUndo } from '$lib/ui';
import type { SerialConnection } from './serial-connection.svelte.ts';
import { SessionMark } from '$lib/app';
import { type JudgingGround, judgeSlate, orderBand } from '$lib/job';
import { SlateInHand, keepPoints, keptPoints } from '$lib/app';
import { SpotChecks, type TappedSlate } from './spot-checks.svelte.ts';
import { journalStore } from '$lib/app';
import { type Prompt, type Told, sayTold } from '$lib/app';
import { UsualRange } from '$lib/job';

/** A second tap on the same pile so soon is the finger bouncing, ms: no slate comes that fast. */
const BOUNCE_MS = 150;
/** Slates sorted by key that a gauge's number can give back: it has no more digits. */
const MOST_TAKEN_BACK = 16;

type LastEntry =
  | { readonly kind: 'act'; readonly saved: Promise<StoredEvent[] | undefined> }
  | { readonly kind: 'asked' };

/**
 * The sorting bench: a reading or a tap becomes one event of the journal, and the screen says on
 * which pile the slate goes.
 */
export class SortState {
  readonly #job: () => JobState;
  readonly #preferences: Preferences;
  readonly desk: PalletState;
  readonly input: GaugeInput;
  /** The gauge on a cable, once its set-up was opened: see `openSerial`. */
  serial = $state.raw<SerialConnection>();
  #unit: ReadingUnit = 'mm';
  readonly feedback: Feedback;
  readonly checks: SpotChecks;
  readonly keys: HandKeys;
  readonly announcer = new Announcer();
  /** What the screen says of the last slate. */
  told = $state.raw<Told>();
  prompt = $state.raw<Prompt>();
  refusal = $state.raw<InputRefusal | NoPallet>();
  /** Whether a number is typed while sorting by hand, as for a spot check. */
  isTyping = $state(false);
  /** Whether the unit of the gauge was answered in this session. */
  #isUnitAnswered = $state(false);
  /** Whether the gauge was just learnt to send no end. */
  hasLearntEnding = $state(false);
  #saving = $state.raw<Told['act']>();
  /** The act of a slate that fits no neighbour and is kept all the same. */
  #kept = $state.raw<Told['act']>();
  #deviceId = $state('');
  readonly #slate = new SlateInHand();
  #lastEntry: LastEntry | undefined;
  #lastSaved: Promise<StoredEvent[] | undefined> | undefined;
  #tappedAt = { pile: 0, at: -Infinity };
  readonly #usualRange = new UsualRange();
  readonly #unitMark = new SessionMark('evencourse.unit');
  /** Saves of the slates sorted by key, newest last: a gauge may turn out to have typed them. */
  #byKey: Promise<StoredEvent[] | undefined>[] = [];

  /** Whether each slate is put on its pile by a tap or a key. */
  readonly isByHand = $derived.by(() => this.#preferences.values.way === 'hand' && !this.isTyping);
  /** Whether the unit of the gauge was answered, here or in the job, or slates were measured in it. */
  readonly isUnitKnown = $derived.by(() => {
    const { view, pallets } = this.#job();
    return (
      this.#isUnitAnswered ||
      partOf(view, 'job').settings.some(({ value }) => value.readingUnit !== undefined) ||
      pallets.some(({ gauged }) => gauged > 0)
    );
  });
  /** A slate that fits no neighbour, until it is said what to do with it. */
  readonly rogue = $derived.by(() => {
    const { told } = this;
    if (told?.kind !== 'gauged' || !told.judgement.rogue || told.act === this.#kept)
      return undefined;
    return told.judgement.rogue;
  });
  readonly saveStatus = $derived.by(() => {
    if (!this.told) return 'none';
    if (this.#job().isUnsaved(this.told.act)) return 'not-saved';
    return this.#saving === this.told.act ? 'saving' : 'saved';
  });
  /**
   * What is asked or recalled in the place of the verdict: the unit where reading after reading is
   * refused, the rest only while there is no verdict.
   */
  readonly asks = $derived.by(() => {
    if (this.input.isUnitInDoubt) return 'unit';
    if (this.#preferences.values.way === 'hand') return undefined;
    if (this.prompt || this.refusal) return undefined;
    if (!this.isUnitKnown) return 'unit';
    if (this.told) return undefined;
    return this.#preferences.values.hasSeenTail ? undefined : 'tail';
  });
  /** How far the sample before grades is. */
  readonly sample = $derived.by(() =>
    this.#job().grades ? undefined : sampleStep(this.desk.all, this.desk.current?.palletId)
  );
  /** The delivery's sample list, while nothing else was taken from the current pallet. */
  readonly list = $derived.by(() => {
    const pallet = this.desk.current;
    return pallet && listStep(this.#job().view, pallet.palletId);
  });
  readonly undoable: StoredEvent[] = $derived.by(() =>
    undoableActs(this.#job().newest, this.#job().view, this.#deviceId)
  );

  constructor(job: () => JobState, preferences: Preferences, random: () => number = Math.random) {
    this.#job = job;
    this.#preferences = preferences;
    this.desk = new PalletState(job, preferences);
    this.feedback = new Feedback(() => preferences.values);
    this.checks = new SpotChecks(job, () => preferences.values.nickname, random);
    this.keys = new HandKeys(preferences, {
      piles: () => job().piles,
      isByHand: () => this.isByHand,
      onSort: (pile) => this.#sortByKey(pile),
      onUndo: () => {
        const [last] = this.undoable;
        if (last) void this.undo(last.id);
      },
      onTakeBack: (slates) => this.#takeBackKeys(slates),
      onDropTyped: () => this.input.clear()
    });
    const { wedgeEnding } = preferences.values;
    const audience = {
      onReading: (reading: AcceptedReading, source: InputSource) => this.#take(reading, source),
      onRefused: (refusal: InputRefusal) => this.#refuse(refusal),
      onReopened: () => void this.#takeBackLast(),
      onCleared: () => (this.refusal = undefined),
      onEndingLearnt: (ending: typeof wedgeEnding) => {
        this.hasLearntEnding = true;
        preferences.set({ wedgeEnding: ending });
      },
      likely: () => likelyRangeOf(job().view),
      onKey: (...key: Parameters<HandKeys['press']>) => this.keys.press(...key),
      onKeyUp: (...up: Parameters<HandKeys['release']>) => this.keys.release(...up)
    };
    this.input = new GaugeInput(audience, wedgeEnding);
  }

  /** Begins to listen for readings; the function returned ends it. */
  start(page: EventTarget, field: CaptureField & { focus?: () => void }): () => void {
    void journalStore()
      .deviceId()
      .then((deviceId) => (this.#deviceId = deviceId))
      .catch(() => undefined); // a database that fails shows itself at the next act
    this.#useUnit(this.#job().settings.readingUnit === 'in' ? 'inch' : 'mm');
    this.#isUnitAnswered = this.#unitMark.isSet;
    const { jobId, settings } = this.#job();
    const kept = keptPoints(jobId);
    this.prompt = kept && this.#slate.resume(kept, settings.pointsPerSlate);
    const stop = this.input.listen(page, field);
    return () => {
      this.keys.flush();
      stop();
      this.announcer.close();
      this.feedback.close();
      void this.serial?.disconnect();
    };
  }

  /** A tap of a finger: the sorter felt that the slate goes on this pile. */
  tap(pile: number): void {
    const at = performance.now();
    const isBounce = this.#tappedAt.pile === pile && at - this.#tappedAt.at < BOUNCE_MS;
    if (isBounce) return;
    this.#tappedAt = { pile, at };
    this.#sort(pile);
  }

  #sortByKey(pile: number): void {
    this.feedback.prime();
    this.#sort(pile);
    if (this.#lastSaved) this.#byKey = [...this.#byKey, this.#lastSaved].slice(-MOST_TAKEN_BACK);
  }

  #sort(pile: number): void {
    const pallet = this.desk.current;
    if (!pallet) return;
    const { grades, piles } = this.#job();
    const { palletId, label } = pallet;
    const gradesId = grades?.gradesId ?? null;
    this.#restart();
    this.#lastEntry = undefined;
    const act: NewEvent = { type: 'slateTapped', body: { palletId, pile, gradesId } };
    void this.#tell({ kind: 'tapped', act, palletLabel: label, pile, piles });
    this.feedback.tellPile(pile, piles, words.text.common.pile(pile, piles));
    if (grades && this.checks.tapped({ pile, palletId, gradesId: grades.gradesId }))
      this.feedback.tellMind('');
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
    this.#restart();
    this.#lastEntry = undefined;
    this.feedback.tellSetAside(
      `${words.text.sort.told.setAside}: ${words.text.sort.setAside.reasons[reason]}`
    );
    await this.#tell({ kind: 'setAside', act, palletLabel: label, reason });
  }

  /** The last slate told a pile, when it can still be set aside instead. */
  get lastOnPile(): Told | undefined {
    const told = this.told;
    return told?.kind === 'gauged' || told?.kind === 'tapped' ? told : undefined;
  }

  /** The slate is kept, though it fits no neighbour. */
  keepRogue(): void {
    this.#kept = this.told?.act;
  }

  /** The last slate is measured again: what was read of it is taken back. */
  async measureAgain(): Promise<void> {
    const events = await this.#lastSaved;
    if (events) await this.undo(events[0].id);
  }

  /** Takes one of the last entries back. */
  async undo(eventId: string): Promise<void> {
    const undone = this.undoable.find(({ id }) => id === eventId);
    if (!undone) return;
    const what = this.sayUndo(undone);
    const act: NewEvent = { type: 'entryVoided', body: { voids: eventId } };
    this.#lastEntry = undefined;
    this.input.drop();
    this.feedback.tellUndone(`${words.text.sort.told.undone}: ${what}`);
    if (undone.type === 'slateTapped') this.checks.forgetLast();
    await this.#tell({ kind: 'undone', act, palletLabel: '', what });
  }

  /** What Undo would take back, in words. */
  sayUndo(event: StoredEvent): string {
    const { palletId } = event.body as { palletId?: unknown };
    const pallet = this.desk.all.find((each) => each.palletId === palletId)?.label ?? '';
    return sayUndo(event, this.#job().piles, pallet, words.text, words.numbers);
  }

  /** Takes what a refused number may have meant. */
  choose(valueMm: number): void {
    this.input.takeReading(parseReading(`${valueMm} mm`, 'mm'), 'choice');
  }

  /** The reminder of the tail third was seen: this device needs it no more. */
  closeTail(): void {
    this.#preferences.set({ hasSeenTail: true });
  }

  /** Answers in which unit the gauge reads; kept for the job when it changed. */
  async setUnit(unit: ReadingUnit): Promise<void> {
    this.#isUnitAnswered = true;
    this.#unitMark.set();
    this.refusal = undefined;
    this.#restart();
    this.#useUnit(unit);
    const readingUnit = unit === 'mm' ? 'mm' : 'in';
    const { settings } = partOf(this.#job().view, 'job');
    const isSaid = settings.some(({ value }) => value.readingUnit !== undefined);
    if (!isSaid || readingUnit !== this.#job().settings.readingUnit)
      await this.#job().act({ type: 'jobSettingsSet', body: { readingUnit } });
  }

  /** How many points are gauged on each slate of the job. */
  async setPoints(pointsPerSlate: number): Promise<void> {
    this.#restart();
    await this.#job().act({ type: 'jobSettingsSet', body: { pointsPerSlate } });
  }

  /** Forgets how the gauge that types ends its readings. */
  forgetEnding(): void {
    this.hasLearntEnding = false;
    this.#preferences.set({ wedgeEnding: { kind: 'key' } });
    this.input.setEnding({ kind: 'key' });
  }

  /** Fetches what a gauge on a cable needs; few have one, and every start would carry it. */
  async openSerial(): Promise<void> {
    const { SerialConnection: Connection } = await import('./serial-connection.svelte.ts');
    this.serial ??= new Connection(
      this.#preferences.values.serialGauge,
      (reading) => this.input.takeReading(reading, 'serial'),
      (learnt) => this.#preferences.set({ serialGauge: learnt })
    );
    this.serial.setUnit(this.#unit);
  }

  /** The last piles sorted by key were the head of a gauge's number: they are taken back. */
  #takeBackKeys(count: number): void {
    const taken = this.#byKey.splice(-count);
    this.told = undefined;
    this.checks.forgetLast();
    for (const saved of taken)
      void saved.then((events) => events && this.#job().undo(events[0].id));
  }

  #useUnit(unit: ReadingUnit): void {
    this.#unit = unit;
    this.input.setUnit(unit);
    this.serial?.setUnit(unit);
  }

  /** One accepted number on its way to a slate: held still, then point by point. */
  #take(reading: AcceptedReading, source: InputSource): void {
    this.feedback.prime();
    this.refusal = undefined;
    this.#isUnitAnswered = true;
    this.#unitMark.set();
    if (!this.desk.current) return this.#refuseWithoutPallet(reading);
    const wanted = this.#job().settings.pointsPerSlate;
    const step = this.#slate.take(reading.valueMm, wanted, this.#preferences.values.holdsStill);
    keepPoints(this.#job().jobId, this.#slate.begun);
    const isTyped = source === 'keypad';
    if (step.kind === 'slate') {
      const saved = this.#takeSlate(step.slate);
      this.#lastEntry = isTyped ? { kind: 'act', saved } : undefined;
    } else {
      this.#lastEntry = isTyped ? { kind: 'asked' } : undefined;
      this.#ask(step.prompt);
    }
  }

  #takeSlate(slate: GaugedSlate): Promise<StoredEvent[] | undefined> {
    const { thicknessMm, taperMm } = slate;
    const points = slate.pointsMm.map(toHundredths);
    const { palletId = '', label: palletLabel = '' } = this.desk.current ?? {};
    const { grades, piles } = this.#job();
    this.prompt = undefined;
    if (grades && this.checks.asked)
      return this.#takeCheck(thicknessMm, points, this.checks.asked, grades.thresholdsMm);
    const judgement = judgeSlate(thicknessMm, this.#ground());
    const { pile } = judgement;
    const gradesId = grades?.gradesId ?? null;
    const act: NewEvent = { type: 'slateGauged', body: { palletId, points, gradesId, pile } };
    const told = { kind: 'gauged' as const, piles, thicknessMm, taperMm, points, judgement };
    const saved = this.#tell({ ...told, act, palletLabel });
    const { tooThick, tooThin } = words.text.sort.told;
    if (judgement.rogue) this.feedback.tellMind(judgement.rogue.isTooThick ? tooThick : tooThin);
    else if (pile === null)
      this.feedback.tellMeasured(sayTold({ ...told, act, palletLabel }, words.text, words.numbers));
    else this.feedback.tellPile(pile, piles, words.text.common.pile(pile, piles));
    return saved;
  }

  #takeCheck(
    thicknessMm: number,
    points: number[],
    tap: TappedSlate,
    thresholdsMm: readonly number[]
  ): Promise<StoredEvent[] | undefined> {
    const { pile, palletId, gradesId } = tap;
    const gauged = pileOf(thicknessMm, thresholdsMm);
    const body = { palletId, of: 'tap' as const, pile, gradesId, points };
    this.checks.putOff();
    const { checkAgrees, checkDiffers } = words.text.sort.told;
    if (gauged === pile) this.feedback.tellMeasured(checkAgrees);
    else this.feedback.tellMind(checkDiffers);
    const saved = this.#tell({
      kind: 'checked',
      act: { type: 'slateChecked', body },
      palletLabel: this.desk.all.find((pallet) => pallet.palletId === palletId)?.label ?? '',
      piles: this.#job().piles,
      thicknessMm,
      felt: pile,
      gauged
    });
    void saved.then(() => this.checks.learn());
    return saved;
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
    else this.feedback.tellRefused(words.text.common.notSaved);
    return events;
  }

  #ask(prompt: Prompt): void {
    const { point, again, moved } = words.text.sort.told;
    this.prompt = prompt;
    this.told = undefined;
    this.feedback.tellMeasured();
    if (prompt.kind === 'point') this.announcer.say(point(prompt.done, prompt.wanted));
    else this.announcer.say(prompt.kind === 'again' ? again : moved);
  }

  #refuse(refusal: InputRefusal | NoPallet): void {
    const sentence = sayRefusal(refusal, words.text.sort, words.numbers);
    this.refusal = refusal;
    this.announcer.say(sentence);
    this.feedback.tellRefused(sentence);
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
    if (last?.kind === 'asked') {
      this.#slate.takeBack();
      keepPoints(this.#job().jobId, this.#slate.begun);
    } else if (last?.kind === 'act') {
      const events = await last.saved;
      if (events) await this.#job().undo(events[0].id);
    }
  }

  /** Begins the slate in hand anew: what was read or refused of it is dropped. */
  #restart(): void {
    this.#slate.restart();
    keepPoints(this.#job().jobId, undefined);
    this.input.drop();
    this.prompt = undefined;
  }
}
